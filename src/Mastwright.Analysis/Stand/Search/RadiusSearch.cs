using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>The distance of the anchors, all moved in the same proportion and kept within the plot.</summary>
internal sealed class RadiusSearch(Station station, Mast mast, string path, Judge judge)
{
    private const int Tries = 9;

    private UnitSystem Units => station.UnitSystem;

    public SearchResult Run(Judgement now)
    {
        var widest = mast.Anchors.Max(a => a.DistanceM);
        var plot = station.Site.BoundaryDistanceM;
        var (low, high) = (0.35 * mast.TopM, Math.Min(1.1 * mast.TopM, plot ?? double.PositiveInfinity));
        var looked = new List<Judgement>();
        if (high > low)
        {
            looked.AddRange(Enumerable.Range(0, Tries).Select(i => low + ((high - low) * i / (Tries - 1))).Append(Math.Min(widest, high)).Order()
                .Select(r => Written.Round(r, Units, down: true)).Distinct().Select(r => judge.Look(Pick(r / widest))));
        }

        var confirmed = Ends(SearchResult.FrontOf(looked)).Select(j => judge.Confirm(j.Candidate)).Where(j => j.Passes).ToList();
        var remarks = ImmutableArray.Create(
            plot is { } b ? $"No anchor lies farther out than the boundary, {Written.Length(b, Units)} from the foot." : "The file does not say how far the boundary is (site: boundary-distance), so the anchors are kept within 1.1 times the mast’s height.",
            "Only the structure is judged here: guys at another slope carry other currents and need other lengths, so check the whole station again. The best is the one with the most margin; the front shows what is cheaper.");
        if (high <= low)
        {
            remarks = remarks.Add("The plot is too small for anchors at a third of the mast’s height.");
        }

        return new SearchResult(SearchGoal.Radius, now, confirmed.MinBy(j => j.Use), SearchResult.FrontOf(confirmed.Append(now)), [.. looked], judge.Judged, remarks);
    }

    // Both ends of the front and what lies between, at most five, so that a large front does not cost minutes.
    private static IEnumerable<Judgement> Ends(ImmutableArray<Judgement> front) =>
        front.Length <= 5 ? front : Enumerable.Range(0, 5).Select(i => front[i * (front.Length - 1) / 4]);

    private Candidate Pick(double share)
    {
        var distances = mast.Anchors.Select(a => Math.Abs(share - 1) < 1e-9 ? a.DistanceM : Written.Round(a.DistanceM * share, Units)).ToArray();
        return new Candidate(
            "anchors at " + string.Join(" / ", distances.Distinct().Select(d => Written.Length(d, Units))), mast with { Anchors = [.. mast.Anchors.Select((a, i) => a with { DistanceM = distances[i] })] },
            [.. distances.Select((d, i) => (d, i)).Where(x => x.d != mast.Anchors[x.i].DistanceM).Select(x => new DesignChange($"{path}.anchors[{x.i}].distance", "distance", Written.Length(x.d, Units)))]);
    }
}
