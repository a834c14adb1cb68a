using Mastwright.Catalog;

namespace Mastwright.Analysis;

/// <summary>The catalogue lists by the names the design file and the command line use.</summary>
public static class CatalogueNames
{
    private static readonly Dictionary<string, Func<IEnumerable<Part>>> Lists = new()
    {
        ["strands"] = () => [.. Catalogue.Default.Strands.All, .. Catalogue.Default.Ropes.All],
        ["lattices"] = () => Catalogue.Default.Lattices.All,
        ["tubes"] = () => Catalogue.Default.Tubes.All,
        ["metals"] = () => Catalogue.Default.Metals.All,
        ["base-insulators"] = () => Catalogue.Default.BaseInsulators.All,
        ["strain-insulators"] = () => Catalogue.Default.StrainInsulators.All,
        ["soils"] = () => Catalogue.Default.ElectricalSoils.All,
        ["grounds"] = () => Catalogue.Default.MechanicalSoils.All,
        ["shackles"] = () => Catalogue.Default.Shackles.All,
        ["turnbuckles"] = () => Catalogue.Default.Turnbuckles.All,
        ["thimbles"] = () => Catalogue.Default.Thimbles.All,
        ["clips"] = () => Catalogue.Default.Clips.All,
        ["grips"] = () => Catalogue.Default.Grips.All,
        ["bars"] = () => Catalogue.Default.Bars.All,
        ["concretes"] = () => Catalogue.Default.Concretes.All,
        ["screw-anchors"] = () => Catalogue.Default.ScrewAnchors.All,
        ["wires"] = () => Catalogue.Default.Wires.All,
        ["capacitors"] = () => Catalogue.Default.Capacitors.All,
        ["lines"] = () => Catalogue.Default.Lines.All,
        ["cores"] = () => Catalogue.Default.Cores.All,
    };

    /// <summary>The lists there are.</summary>
    public static IReadOnlyCollection<string> All => Lists.Keys;

    /// <summary>The parts in a list; null when there is no such list.</summary>
    public static IReadOnlyList<Part>? Parts(string list) => Lists.TryGetValue(list, out var parts) ? [.. parts()] : null;

    /// <summary>The names in a list; null when there is no such list. This is what reading a design file asks.</summary>
    public static IReadOnlyCollection<string>? Of(string list) => Parts(list)?.Select(p => p.Name).ToList();
}
