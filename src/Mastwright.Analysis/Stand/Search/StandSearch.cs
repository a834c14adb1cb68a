using System.Collections.Immutable;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// Searches for a better mast among real catalogue parts, each candidate judged by the very checks the station is held to,
/// structure only. A first look with few wind directions comes before the whole check, and only what passed the whole check is offered.
/// </summary>
public static class StandSearch
{
    /// <summary>Searches for one thing.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">Which mast, from 0.</param>
    /// <param name="goal">What to look for.</param>
    /// <param name="cost">How cost is counted; null for the usual.</param>
    /// <param name="progress">Told which candidate is judged; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SearchResult Run(
        Station station, int mastIndex, SearchGoal goal, SearchCost? cost = null, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default) =>
        Run(station, mastIndex, [goal], cost, progress, cancellation)[0];

    /// <summary>Searches for several things, each from the design as it is.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">Which mast, from 0.</param>
    /// <param name="goals">What to look for.</param>
    /// <param name="cost">How cost is counted; null for the usual.</param>
    /// <param name="progress">Told which candidate is judged; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="judged">Told every judgement as it is made, from any thread; null for nobody.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ImmutableArray<SearchResult> Run(
        Station station, int mastIndex, ImmutableArray<SearchGoal> goals, SearchCost? cost = null, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default,
        Action<Judgement>? judged = null)
    {
        var mast = station.Masts[mastIndex];
        var path = $"masts[{mastIndex}]";
        var done = 0;
        var judge = new Judge(station, cost ?? new SearchCost(), words => progress?.Report(new AnalysisStep($"Mast {mast.Name}: {words}", (double)done / goals.Length)), cancellation, judged);
        var now = judge.Confirm(new Candidate("as it is", mast, []));
        var results = ImmutableArray.CreateBuilder<SearchResult>();
        foreach (var goal in goals)
        {
            results.Add(goal switch
            {
                SearchGoal.Strand => new StrandSearch(mast, path, judge).Run(now),
                SearchGoal.Tension => new TensionSearch(mast, path, judge).Run(now),
                SearchGoal.Heights => new HeightSearch(mast, path, station.UnitSystem, judge).Run(now),
                SearchGoal.Radius => new RadiusSearch(station, mast, path, judge).Run(now),
                SearchGoal.Joint => new JointSearch(station, mast, path, judge).Run(now),
                _ => new LevelSearch(mast, station.UnitSystem, judge).Run(now),
            });
            done++;
        }

        return results.ToImmutable();
    }
}
