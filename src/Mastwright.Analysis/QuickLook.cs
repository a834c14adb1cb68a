using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Site;
using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Solver;

namespace Mastwright.Analysis;

/// <summary>What can be said of a design within the blink of an eye, before the whole analysis is there.</summary>
public static class QuickLook
{
    // How much of its load a mast carries that cannot carry half of it is found to an eighth.
    private static readonly SolverOptions Coarse = SolverOptions.Default with { SmallestLoadStep = 1.0 / 8 };

    /// <summary>The checks of the site: closed formulas, whole and final.</summary>
    public static ImmutableArray<Check> Site(Station station) => SiteRun.Of(station);

    /// <summary>A first look at the structure with few wind directions and without the screens for vibration: what passes here may still fail under another wind. What fails here
    /// fails in the whole analysis too, except that a case which long load steps stop below half of its load is not tried again with short ones: it may, rarely, turn out to stand.</summary>
    public static StandStage Stand(Station station, CancellationToken cancellation = default)
    {
        var answers = new StandAnswer[station.Masts.Length];
        Parallel.For(0, answers.Length, new ParallelOptions { CancellationToken = cancellation }, i => answers[i] = StandRun.Of(station, station.Masts[i], cancellation, Judge.FirstLook, false, Coarse));
        return new StandStage(station, Fingerprint.Of(station), [.. answers.Select(a => a.Result)], [.. SiteRun.Of(station), .. answers.SelectMany(a => a.Checks)]) { FirstLook = true };
    }
}
