using System.Collections.Immutable;
using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Workbench.Desks;

namespace Mastwright.Workbench.Tests;

/// <summary>Answers at once with a result that holds nothing but the station: for tests of the desk, not of the physics.</summary>
internal sealed class QuickSolver : IStationSolver
{
    public StationResult Solve(DesignReading reading, IProgress<AnalysisStep> progress, Action<StandStage> stood, CancellationToken cancellation)
    {
        var station = reading.Station!;
        cancellation.ThrowIfCancellationRequested();
        stood(new StandStage(station, Fingerprint.Of(station), [], []));
        return Nothing(reading);
    }

    /// <summary>A result that holds nothing but the station.</summary>
    public static StationResult Nothing(DesignReading reading) => new()
    {
        Station = reading.Station!,
        Fingerprint = Fingerprint.Of(reading.Station!),
        Masts = [],
        Groups = [],
        Checks = ImmutableArray<Check>.Empty,
        Assumptions = reading.Assumptions,
        Findings = [],
        Quantities = [],
        Cautions = [],
    };

    public BandSweepResult Sweep(StationResult result, int mast, int band, CancellationToken cancellation) => new("", "", []);
}
