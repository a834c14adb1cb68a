using System.Collections.Immutable;
using Mastwright.Catalog;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// The smallest passing strand of each level. Each level's least size is found first with the other levels as strong as the
/// catalogue allows, which loads it least; from there the combinations are judged from the cheapest up.
/// </summary>
internal sealed class StrandSearch(Mast mast, string path, Judge judge)
{
    private const int MostJudged = 60;

    /// <summary>The sizes a level may take: strand of its grade or rope of its fibre, from the lightest up.</summary>
    public static ImmutableArray<string> Sizes(string strand)
    {
        var catalogue = Catalogue.Default;
        return catalogue.Strands.Find(strand).Part is { } s
            ? [.. catalogue.Strands.All.Where(x => x.Grade == s.Grade).OrderBy(x => x.BreakingN).Select(x => x.Name)]
            : [.. catalogue.Ropes.All.Where(x => x.Fibre == catalogue.Ropes[strand].Fibre).OrderBy(x => x.BreakingN).Select(x => x.Name)];
    }

    public SearchResult Run(Judgement now)
    {
        var sizes = mast.Guys.Select(g => Sizes(g.Strand)).ToList();
        var least = sizes.Select((s, level) => Least(sizes, level)).ToArray();
        var looked = new List<Judgement>();
        var remarks = ImmutableArray.CreateBuilder<string>();
        Judgement? best = null;

        // From the cheapest up: the first to pass the first look is confirmed with every direction.
        foreach (var pick in Combinations(least, sizes).OrderBy(p => MassOf(sizes, p)))
        {
            if (looked.Count >= MostJudged)
            {
                remarks.Add($"The search stopped after {MostJudged} combinations without one that passes.");
                break;
            }

            var look = judge.Look(Pick(sizes, pick));
            looked.Add(look);
            if (look.Passes && judge.Confirm(look.Candidate) is { Passes: true } whole)
            {
                best = whole;
                break;
            }
        }

        var confirmed = best is null ? [] : Heavier(best, sizes).Prepend(best).ToList();
        return new SearchResult(SearchGoal.Strand, now, best, SearchResult.FrontOf([.. confirmed, now]), [.. looked], judge.Judged, remarks.ToImmutable());
    }

    // One size more at each level in turn and at all: what margin money buys.
    private IEnumerable<Judgement> Heavier(Judgement best, List<ImmutableArray<string>> sizes)
    {
        var at = best.Candidate.Mast.Guys.Select((g, l) => sizes[l].IndexOf(g.Strand)).ToArray();
        var picks = Enumerable.Range(0, at.Length).Select(l => at.Select((x, i) => i == l ? x + 1 : x).ToArray()).Append([.. at.Select(x => x + 1)])
            .Where(p => p.Select((x, l) => x < sizes[l].Length).All(x => x)).DistinctBy(p => string.Join(',', p));
        return picks.Select(p => judge.Look(Pick(sizes, p))).Where(j => j.Passes).Select(j => judge.Confirm(j.Candidate)).ToList();
    }

    private int Least(List<ImmutableArray<string>> sizes, int level)
    {
        var (low, high) = (0, sizes[level].Length - 1);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var pick = sizes.Select((s, l) => l == level ? middle : Math.Max(s.IndexOf(mast.Guys[l].Strand), s.Length / 2)).ToArray();
            var own = judge.Look(Pick(sizes, pick)).Failing.Any(c => c.Id == $"stand.guy.strength[{mast.Name}, level {level + 1}]" || c.Id.StartsWith("stand.stability", StringComparison.Ordinal));
            (low, high) = own ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    private static IEnumerable<int[]> Combinations(int[] least, List<ImmutableArray<string>> sizes)
    {
        IEnumerable<int[]> all = [[]];
        for (var l = 0; l < least.Length; l++)
        {
            var level = l;
            all = all.SelectMany(a => Enumerable.Range(least[level], sizes[level].Length - least[level]).Select(i => a.Append(i).ToArray()));
        }

        return all;
    }

    private double MassOf(List<ImmutableArray<string>> sizes, int[] pick) => mast.Guys.Select((g, l) =>
        StandModel.StrandOf(sizes[l][pick[l]]).MassKgPerM * StandModel.AnchorsOf(mast, g).Sum(a => double.Hypot(a.DistanceM, g.HeightM - a.RiseM))).Sum();

    private Candidate Pick(List<ImmutableArray<string>> sizes, int[] pick)
    {
        // Fittings go with the strand; where the catalogue has none that develop it, the chain's own check will say so.
        var names = pick.Select((p, l) => sizes[l][p]).ToArray();
        var levels = mast.Guys.Select((g, l) => Fittings.For(g, names[l]) ?? g with { Strand = names[l] }).ToArray();
        return new Candidate(
            "strand " + string.Join(" / ", names), mast with { Guys = [.. levels] },
            [.. levels.SelectMany((g, l) => Fittings.Changes($"{path}.guys[{l}]", mast.Guys[l], g))]);
    }
}
