using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>The heights of the guy levels that leave the most margin: each level in turn is moved while that helps, in steps that grow finer.</summary>
internal sealed class HeightSearch(Mast mast, string path, UnitSystem units, Judge judge)
{
    private const int MostJudged = 45;
    private const double ApartM = 1;

    public SearchResult Run(Judgement now)
    {
        var heights = mast.Guys.Select(g => g.HeightM).ToArray();
        var looked = new List<Judgement> { judge.Look(Pick(heights)) };
        var best = looked[0];
        for (var step = mast.LengthM / 12; step > mast.LengthM / 60 && looked.Count < MostJudged;)
        {
            var (moved, found) = Round(heights, best, step, looked);
            if (ReferenceEquals(found, best))
            {
                step /= 2;
            }

            (heights, best) = (moved, found);
        }

        var confirmed = SearchResult.FrontOf(looked).Reverse().Take(6).Select(j => judge.Confirm(j.Candidate)).Where(j => j.Passes).ToList();
        return new SearchResult(SearchGoal.Heights, now, confirmed.MinBy(j => j.Use), SearchResult.FrontOf(confirmed.Append(now)), [.. looked.DistinctBy(j => j.Candidate.Words)], judge.Judged,
            ["Only the structure is judged here: guys at other heights carry other currents, so check the whole station again, and put the attachments at joints or panel points of the mast."]);
    }

    private (double[] Heights, Judgement Best) Round(double[] heights, Judgement best, double stepM, List<Judgement> looked)
    {
        for (var level = heights.Length - 1; level >= 0; level--)
        {
            foreach (var way in new[] { 1, -1 })
            {
                var moved = heights.ToArray();
                moved[level] = Written.Round(Math.Min(heights[level] + (way * stepM), mast.TopM), units, down: true);
                if (!Apart(mast, moved) || looked.Count >= MostJudged)
                {
                    continue;
                }

                var judgement = judge.Look(Pick(moved));
                looked.Add(judgement);
                if (judgement.Use < best.Use - 1e-6)
                {
                    (heights, best) = (moved, judgement);
                    break;
                }
            }
        }

        return (heights, best);
    }

    /// <summary>Whether levels at these heights keep clear of the foot, of each other and of their anchors.</summary>
    internal static bool Apart(Mast mast, IReadOnlyList<double> heights) => heights[0] >= mast.Base.HeightM + ApartM && heights.Zip(heights.Skip(1), (a, b) => b - a).All(d => d >= ApartM)
        && mast.Guys.Select((g, l) => StandModel.AnchorsOf(mast, g).All(a => a.RiseM < heights[l] - ApartM)).All(x => x);

    private Candidate Pick(double[] heights) => new(
        "guys at " + string.Join(" / ", heights.Select(h => Written.Length(h, units))), mast with { Guys = [.. mast.Guys.Select((g, l) => g with { HeightM = heights[l] })] },
        [.. heights.Select((h, l) => (h, l)).Where(x => x.h != mast.Guys[x.l].HeightM).Select(x => new DesignChange($"{path}.guys[{x.l}].height", "height", Written.Length(x.h, units)))]);
}
