using System.Collections.Immutable;
using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Tune;
using Mastwright.Catalog;
using Mastwright.Journal.Due;
using Mastwright.Model.Design;

namespace Mastwright.Report.Keep;

/// <summary>What a station has that wants looking after, from its design.</summary>
public static class UpkeepParts
{
    /// <summary>The checklist of the station.</summary>
    public static ImmutableArray<ChecklistItem> Checklist(Station station) => Journal.Due.Checklist.For(Of(station));

    /// <summary>Its masts with their parts; guys by level and anchor, e.g. <c>1/north</c>.</summary>
    public static ImmutableArray<MastParts> Of(Station station) => [.. station.Masts.Select(Mast)];

    private static MastParts Mast(Mast mast) => new(
        mast.Name,
        [.. mast.Guys.SelectMany((level, l) => StandModel.AnchorsOf(mast, level).Select(a => Guy(level, GuyNames.Short($"level {l + 1} to {a.Name}"))))],
        HasBaseInsulator: true,

        // The design always has a gap, and a mast at high voltage always needs to be fenced off.
        HasGap: true,
        mast.Radials.Count,
        HasFence: true,
        mast.Sections.Any(IsSteel));

    // A level whose fittings are not described has turnbuckles all the same: how else is it tensioned. Whether clips hold it is not known then: they are looked for.
    private static GuyParts Guy(GuyLevel level, string name) => new(
        name, HasTurnbuckle: true, level.Hardware is not { } h || h.EndFitting == StrandEnd.Clips || h.BackUpClip, Math.Max(1, level.InsulatorsAtM.Length));

    private static bool IsSteel(Section section)
    {
        var metal = section.Tube?.Metal ?? Catalogue.Default.Lattices[section.Lattice!].Metal;
        return Catalogue.Default.Metals[metal].Family == "steel";
    }
}
