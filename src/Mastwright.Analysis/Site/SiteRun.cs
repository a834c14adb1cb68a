using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.People;

namespace Mastwright.Analysis.Site;

/// <summary>What stands around and must not be hit.</summary>
internal static class SiteRun
{
    /// <summary>Fall circle and power lines of the tallest mast: distances are given for the nearest foot.</summary>
    public static ImmutableArray<Check> Of(Station station)
    {
        var tallest = station.Masts.MaxBy(m => m.TopM)!;
        var falling = new FallingMast(tallest.TopM, 0, station.Masts.Max(m => m.Anchors.Max(a => a.DistanceM)));
        var neighbours = ImmutableArray.CreateBuilder<Neighbour>();
        if (station.Site.PeopleDistanceM is { } people)
        {
            neighbours.Add(new Neighbour("place where people stay", people));
        }

        if (station.Site.BoundaryDistanceM is { } boundary)
        {
            neighbours.Add(new Neighbour("boundary", boundary));
        }

        var lines = station.Site.PowerLineDistanceM is { } line ? ImmutableArray.Create(new OverheadLine("overhead line", line)) : [];
        return [.. FallCircle.PowerLines(falling, lines), .. FallCircle.Neighbours(falling, neighbours.ToImmutable())];
    }

    /// <summary>What the site leaves unsaid and must be looked at on the ground.</summary>
    public static ImmutableArray<Finding> Unsaid(Station station)
    {
        var unsaid = new (string Field, bool Missing, string What)[]
        {
            ("site.power-line-distance", station.Site.PowerLineDistanceM is null, "how far the nearest power line is"),
            ("site.people-distance", station.Site.PeopleDistanceM is null, "how near people come"),
            ("site.boundary-distance", station.Site.BoundaryDistanceM is null, "how far the boundary is"),
        };
        return
        [
            .. unsaid.Where(u => u.Missing).Select(u => new Finding("site-unsaid", Severity.Warning, $"The file does not say {u.What}, so nothing was checked against it.",
                WayOut: $"Measure it and add “{u.Field[5..]}:” to the block “site”.")),
        ];
    }
}
