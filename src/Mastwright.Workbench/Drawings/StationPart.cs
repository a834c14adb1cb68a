using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Workbench.Drawings;

/// <summary>What a part of the station is.</summary>
internal enum StationPartKind
{
    Mast,
    Foot,
    Guy,
    Anchor,
    Radials,
    TopWires,
}

/// <summary>A part of the station that can be picked in a drawing or in the list of parts.</summary>
/// <param name="Id">Stable name within this design, e.g. <c>guy/0/1/2</c>.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Mast">Index of its mast.</param>
/// <param name="Index">Index of the level or the anchor; 0 for the rest.</param>
/// <param name="Anchor">Index of a guy's anchor; 0 for the rest.</param>
/// <param name="Path">Where its fields stand in the file.</param>
internal sealed record StationPart(string Id, StationPartKind Kind, string Title, int Mast, int Index, int Anchor, string Path)
{
    /// <summary>Every part, mast by mast from the ground up.</summary>
    public static IEnumerable<StationPart> Of(Station station)
    {
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var mast = station.Masts[m];
            var of = station.Masts.Length > 1 ? $" of mast {mast.Name}" : "";
            var path = $"masts[{m}]";
            yield return new(IdOf(StationPartKind.Mast, m), StationPartKind.Mast, $"Mast {mast.Name}", m, 0, 0, path);
            yield return new(IdOf(StationPartKind.Foot, m), StationPartKind.Foot, $"Foot{of}", m, 0, 0, path + ".base");
            for (var l = 0; l < mast.Guys.Length; l++)
            {
                for (var a = 0; a < mast.Anchors.Length; a++)
                {
                    if (mast.Guys[l].Anchors.IsEmpty || mast.Guys[l].Anchors.Contains(mast.Anchors[a].Name))
                    {
                        yield return new(GuyId(m, l, a), StationPartKind.Guy, $"Guy level {l + 1} to {mast.Anchors[a].Name}{of}", m, l, a, $"{path}.guys[{l}]");
                    }
                }
            }

            for (var a = 0; a < mast.Anchors.Length; a++)
            {
                yield return new(IdOf(StationPartKind.Anchor, m, a), StationPartKind.Anchor, $"Anchor {mast.Anchors[a].Name}{of}", m, a, 0, $"{path}.anchors[{a}]");
            }

            yield return new(IdOf(StationPartKind.Radials, m), StationPartKind.Radials, $"Radials{of}", m, 0, 0, path + ".radials");
            if (mast.TopWires is not null)
            {
                yield return new(IdOf(StationPartKind.TopWires, m), StationPartKind.TopWires, $"Top wires{of}", m, 0, 0, path + ".top-wires");
            }
        }
    }

    /// <summary>The id of a part that is no guy.</summary>
    public static string IdOf(StationPartKind kind, int mast, int index = 0) => string.Create(CultureInfo.InvariantCulture, $"{kind.ToString().ToLowerInvariant()}/{mast}/{index}");

    /// <summary>The id of a guy.</summary>
    public static string GuyId(int mast, int level, int anchor) => string.Create(CultureInfo.InvariantCulture, $"guy/{mast}/{level}/{anchor}");

    /// <summary>Whether a check is about this part.</summary>
    public bool Has(Check check, Station station)
    {
        var bracket = check.Id.IndexOf('[', StringComparison.Ordinal);
        if (bracket < 0)
        {
            return false;
        }

        var (kind, inside) = (check.Id[..bracket], check.Id[(bracket + 1)..].TrimEnd(']'));
        var mast = station.Masts[Mast];
        var own = inside == mast.Name || inside.StartsWith(mast.Name + ", ", StringComparison.Ordinal) || inside.EndsWith(" of " + mast.Name, StringComparison.Ordinal);
        bool Starts(params ReadOnlySpan<string> kinds)
        {
            foreach (var k in kinds)
            {
                if (kind.StartsWith(k, StringComparison.Ordinal))
                {
                    return true;
                }
            }

            return false;
        }

        return Kind switch
        {
            StationPartKind.Guy => inside == $"{mast.Name}, level {Index + 1}" || inside == $"{mast.Name}, level {Index + 1} to {mast.Anchors[Anchor].Name}",
            StationPartKind.Anchor => Starts("stand.anchor.") && inside == $"{mast.Name}, {mast.Anchors[Index].Name}",
            StationPartKind.Foot => own && Starts("stand.base.", "stand.footing.", "survive.gap", "survive.burn", "survive.drain", "survive.fence.reach", "survive.metals"),
            StationPartKind.Mast => own && Starts("stand.stability", "stand.mast.", "stand.buckling", "stand.tilt", "survive.corona", "survive.strike"),
            StationPartKind.Radials => own && Starts("radiate.efficiency", "survive.earth"),
            _ => false,
        };
    }

    /// <summary>Whether a wire of the currents belongs to this part.</summary>
    public bool HasWire(string wire, Station station)
    {
        var mast = station.Masts[Mast];
        return Kind switch
        {
            StationPartKind.Mast => wire.StartsWith($"mast {mast.Name},", StringComparison.Ordinal),
            StationPartKind.Guy => wire.StartsWith(string.Create(CultureInfo.InvariantCulture, $"guy {Index + 1} of {mast.Name} to {mast.Anchors[Anchor].Name},"), StringComparison.Ordinal),
            StationPartKind.TopWires => wire.StartsWith("top wire", StringComparison.Ordinal) && wire.EndsWith(" of " + mast.Name, StringComparison.Ordinal),
            _ => false,
        };
    }
}
