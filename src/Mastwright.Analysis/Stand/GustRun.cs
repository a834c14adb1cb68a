using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Vibration;
using SolverCase = Mastwright.Structure.Mast.LoadCase;

namespace Mastwright.Analysis.Stand;

/// <summary>Whether the wind method's gust factor fits a mast as slow as this one, and the one that does.</summary>
internal static class GustRun
{
    /// <summary>The gust factor to use in the place of the method's own (null for that), and the check that says on what ground.</summary>
    public static (Trail? Factor, ImmutableArray<Check> Checks) Of(Station station, StandModel model, CancellationToken cancellation)
    {
        if (station.Site.Wind.GustFactor is not null || station.Site.Wind.Method is not (WindMethod.Asce7_16 or WindMethod.Asce7_22))
        {
            return (null, []);
        }

        var still = new SolverCase("still air", station.Site.TensioningTemperatureK);
        var prepared = MastSolver.Prepare(model.Structure, [still]);
        var solution = prepared.Solve(still, null, cancellation);
        if (!solution.IsStable || MastVibration.Of(prepared, solution, 1, cancellation: cancellation) is not [var lowest, ..])
        {
            return (null, []);
        }

        var frequency = lowest.Explain();
        var check = GustRange.RigidEnough(model.Mast.Name, frequency);
        if (check.Verdict != Verdict.Fail)
        {
            return (null, [check]);
        }

        var wind = LoadCases.WindOf(station.Site);
        var factor = AsceGust.Flexible(wind, model.Mast.TopM, model.Runs.Max(WidthM), frequency, station.Site.Wind.Method == WindMethod.Asce7_22 ? 2022 : 2016);
        return (factor, [check with
        {
            Verdict = Verdict.Caution,
            GoverningCase = FormattableString.Invariant($"slower than 1 Hz: the gust factor of a flexible structure, {factor.Value:0.00}, was taken in the place of 0.85"),
        }]);
    }

    private static double WidthM(MastRun run) => run.Tube?.OuterDiameterM ?? run.Lattice?.FaceWidthM ?? 0;
}
