using System.Collections.Immutable;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// Everything at once: strand and fittings of each level, guy heights, anchor distance within the plot, and initial tension are
/// moved together. For several margins asked of the mast the cheapest design that keeps them is sought, one input moved at a time in
/// steps that grow finer, from the design as it is and from what earlier margins found. What no other beats in both cost and margin is the front.
/// </summary>
internal sealed class JointSearch(Station station, Mast mast, string path, Judge judge)
{
    private const int MostLooks = 220;
    private const int MostConfirmed = 8;

    private static readonly double[] Margins = [0, 0.1, 0.2, 0.35, 0.5];
    private readonly List<ImmutableArray<string>> sizes = [.. mast.Guys.Select(g => StrandSearch.Sizes(g.Strand))];
    private readonly List<Judgement> looked = [];

    /// <summary>One point of the search: indices into the catalogue and values as the file would write them.</summary>
    private sealed record Point(ImmutableArray<int> Strands, ImmutableArray<double> HeightsM, ImmutableArray<double> DistancesM, double? TensionShare);

    public SearchResult Run(Judgement now)
    {
        var start = new Point(
            [.. mast.Guys.Select((g, l) => sizes[l].IndexOf(g.Strand))], [.. mast.Guys.Select(g => g.HeightM)], [.. mast.Anchors.Select(a => a.DistanceM)],
            mast.Guys.All(g => g.InitialTension.ShareOfStrength is not null) ? mast.Guys.Average(g => g.InitialTension.ShareOfStrength!.Value) : null);
        var from = start;
        foreach (var margin in Margins)
        {
            from = Descend(from, margin);
        }

        // Back again from the strong end: what is cheap there is often cheaper still with less margin asked.
        foreach (var margin in Margins.Reverse().Skip(1))
        {
            from = Descend(from, margin);
        }

        var front = SearchResult.FrontOf(looked);
        var confirmed = Thinned(front).Select(j => judge.Confirm(j.Candidate)).Where(j => j.Passes).ToList();
        var whole = SearchResult.FrontOf(confirmed.Append(now));
        var best = confirmed.Where(j => !now.Passes || j.Margin >= now.Margin - 1e-9).MinBy(j => j.Cost) ?? confirmed.MinBy(j => j.Cost);
        return new SearchResult(SearchGoal.Joint, now, best, whole, [.. looked.DistinctBy(j => j.Candidate.Words)], judge.Judged, [.. Remarks(now)]);
    }

    private IEnumerable<string> Remarks(Judgement now)
    {
        yield return "Strand, fittings, heights, anchor distance and tension (8 to 15 % of strength) are moved together, the free top kept within half the span below it; a shackle, turnbuckle or insulator that would break before the strand is changed with it."
            + (now.Passes ? " The best is the cheapest design with at least the margin the mast has now; the front shows what less or more margin costs." : " The best is the cheapest design that passes; the front shows what more margin costs.");
        yield return "Only the structure is judged here: guys elsewhere carry other currents and need other lengths, so check the whole station again.";
        if (looked.Count >= MostLooks)
        {
            yield return $"The search stopped after {MostLooks} designs; a better one may exist.";
        }
    }

    // Cheapest first, and below the margin asked whatever brings it nearer.
    private static double Loss(Judgement j, double margin) => j.Margin >= margin && j.Passes ? j.Cost : 1e6 * (1 + Math.Max(0, margin - Math.Max(j.Margin, -100))) + j.Cost;

    private Point Descend(Point at, double margin)
    {
        if (Look(at) is not { } best)
        {
            return at;
        }

        for (var fine = 0; fine < 2; fine++)
        {
            for (var moved = true; moved && looked.Count < MostLooks;)
            {
                moved = false;
                foreach (var next in Moves(at, fine == 0 ? 1 : 0.5))
                {
                    if (looked.Count >= MostLooks)
                    {
                        break;
                    }

                    if (Look(next) is { } j && Loss(j, margin) < Loss(best, margin) - 1e-6)
                    {
                        (at, best, moved) = (next, j, true);
                    }
                }
            }
        }

        return at;
    }

    private IEnumerable<Point> Moves(Point p, double share)
    {
        for (var l = 0; l < mast.Guys.Length; l++)
        {
            foreach (var step in new[] { -1, 1 })
            {
                if (p.Strands[l] + step >= 0 && p.Strands[l] + step < sizes[l].Length)
                {
                    yield return p with { Strands = p.Strands.SetItem(l, p.Strands[l] + step) };
                }
            }
        }

        foreach (var way in new[] { -1, 1 })
        {
            var scaled = p.DistancesM.Select(d => Written.Round(d * (1 + (way * 0.12 * share)), station.UnitSystem, down: way > 0)).ToImmutableArray();
            if (scaled.Max() <= Widest && scaled.Min() >= 0.3 * mast.TopM)
            {
                yield return p with { DistancesM = scaled };
            }

            if (p.TensionShare is { } t && Math.Round(t + (way * 0.02 * share), 3) is >= 0.08 and <= 0.15 and var other)
            {
                yield return p with { TensionShare = other };
            }

            for (var l = 0; l < mast.Guys.Length; l++)
            {
                var heights = p.HeightsM.SetItem(l, Written.Round(Math.Min(p.HeightsM[l] + (way * mast.LengthM / 12 * share), mast.TopM), station.UnitSystem, down: true));
                if (Apart(heights))
                {
                    yield return p with { HeightsM = heights };
                }
            }
        }
    }

    private double Widest => Math.Min(1.1 * mast.TopM, station.Site.BoundaryDistanceM ?? double.PositiveInfinity);

    // No longer a free top than the static methods cover, unless the mast has one already.
    private bool TopHeld(ImmutableArray<double> heights)
    {
        double Over(double top, double below) => (mast.TopM - top) - ((top - below) / 2);
        var below = heights.Length > 1 ? heights[^2] : mast.Base.HeightM;
        var belowNow = mast.Guys.Length > 1 ? mast.Guys[^2].HeightM : mast.Base.HeightM;
        return Over(heights[^1], below) <= Math.Max(0, Over(mast.Guys[^1].HeightM, belowNow)) + 1e-9;
    }

    private bool Apart(ImmutableArray<double> heights) => TopHeld(heights) && HeightSearch.Apart(mast, heights);

    private Judgement? Look(Point p)
    {
        if (Pick(p) is not { } candidate)
        {
            return null;
        }

        var judgement = judge.Look(candidate);
        if (!looked.Contains(judgement))
        {
            looked.Add(judgement);
        }

        return judgement;
    }

    private Candidate? Pick(Point p)
    {
        var levels = new GuyLevel[mast.Guys.Length];
        var changes = new List<DesignChange>();
        for (var l = 0; l < levels.Length; l++)
        {
            if (Fittings.For(mast.Guys[l], sizes[l][p.Strands[l]]) is not { } level)
            {
                return null;
            }

            var tension = p.TensionShare is { } share ? InitialTension.Share(share) : level.InitialTension;
            levels[l] = level with { HeightM = p.HeightsM[l], InitialTension = tension };
            changes.AddRange(Fittings.Changes($"{path}.guys[{l}]", mast.Guys[l], levels[l]));
            if (Math.Abs(p.HeightsM[l] - mast.Guys[l].HeightM) > 1e-9)
            {
                changes.Add(new DesignChange($"{path}.guys[{l}].height", "height", Written.Length(p.HeightsM[l], station.UnitSystem)));
            }

            if (p.TensionShare is { } s && (mast.Guys[l].InitialTension.ShareOfStrength is not { } old || Math.Abs(old - s) > 1e-9))
            {
                changes.Add(new DesignChange($"{path}.guys[{l}].initial-tension", "initial-tension", Written.Percent(s)));
            }
        }

        // Insulators that would lie beyond the anchor end of a shorter guy would have to go from the list in the file too.
        if (Enumerable.Range(0, levels.Length).Any(l => !InsulatorsFit(p, l)))
        {
            return null;
        }

        changes.AddRange(p.DistancesM.Select((d, i) => (d, i)).Where(x => Math.Abs(x.d - mast.Anchors[x.i].DistanceM) > 1e-9)
            .Select(x => new DesignChange($"{path}.anchors[{x.i}].distance", "distance", Written.Length(x.d, station.UnitSystem))));
        var changed = mast with { Guys = [.. levels], Anchors = [.. mast.Anchors.Select((a, i) => a with { DistanceM = p.DistancesM[i] })] };
        return new Candidate(Words(p), changed, [.. changes]);
    }

    // Where a guy grows no shorter, the insulators stay where the design has them.
    private bool InsulatorsFit(Point p, int level) => Shortest(p.DistancesM, p.HeightsM[level], level) is var length
        && (mast.Guys[level].InsulatorsAtM.All(x => x < 0.9 * length) || length >= Shortest([.. mast.Anchors.Select(a => a.DistanceM)], mast.Guys[level].HeightM, level) - 1e-9);

    private double Shortest(ImmutableArray<double> distancesM, double heightM, int level) =>
        StandModel.AnchorsOf(mast, mast.Guys[level]).Min(a => double.Hypot(distancesM[mast.Anchors.IndexOf(a)], heightM - a.RiseM));

    private string Words(Point p) =>
        string.Join(", ", mast.Guys.Select((_, l) => $"{sizes[l][p.Strands[l]]} at {Written.Length(p.HeightsM[l], station.UnitSystem)}"))
        + $"; anchors {string.Join(" / ", p.DistancesM.Distinct().Select(d => Written.Length(d, station.UnitSystem)))}" + (p.TensionShare is { } t ? $"; {Written.Percent(t)}" : "");

    private static IEnumerable<Judgement> Thinned(ImmutableArray<Judgement> front) => front.Length <= MostConfirmed ? front
        : Enumerable.Range(0, MostConfirmed).Select(i => front[i * (front.Length - 1) / (MostConfirmed - 1)]);
}
