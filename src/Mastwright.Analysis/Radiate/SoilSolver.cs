using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>Solves stations over their soil, cut more coarsely where long radials on the high bands would make too many segments.</summary>
internal static class SoilSolver
{
    private static readonly double[] PerWavelength = [MeshOptions.Default.SegmentsPerWavelength, 20, 14];

    /// <summary>One frequency.</summary>
    public static SolveResult Solve(WireModel model, double frequencyHz, CancellationToken cancellation) =>
        First(options => WireSolver.Solve(model, frequencyHz, options, cancellation), r => r.Solution is not null, r => r.Findings, frequencyHz,
            (r, note) => r with { Findings = r.Findings.Add(note) });

    /// <summary>A band as a smooth curve.</summary>
    public static (Fields.Solving.BandSweep Sweep, Finding? Note) Sweep(WireModel model, double lowHz, double highHz, double tolerance, CancellationToken cancellation, IProgress<int>? solved = null) =>
        First(options => (Sweep: Fields.Solving.BandSweep.Run(model, lowHz, highHz, tolerance, options, cancellation, solved), Note: (Finding?)null), r => r.Sweep.HasValues, r => r.Sweep.Findings, highHz,
            (r, note) => (r.Sweep, note));

    private static T First<T>(Func<SolverOptions, T> solve, Func<T, bool> good, Func<T, IEnumerable<Finding>> findings, double frequencyHz, Func<T, Finding, T> noted)
    {
        var result = solve(SolverOptions.Default);
        foreach (var n in PerWavelength.Skip(1))
        {
            if (good(result) || !findings(result).Any(f => f.Code == "too-many-unknowns"))
            {
                return result;
            }

            result = solve(SolverOptions.Default with { Mesh = MeshOptions.Default with { SegmentsPerWavelength = n } });
            if (good(result))
            {
                return noted(result, new Finding("soil-cut-coarsely", Severity.Note,
                    FormattableString.Invariant($"At {frequencyHz / 1e6:0.##} MHz the wires are cut into {n:0} pieces to the wavelength instead of {PerWavelength[0]:0}, so that all radials can be solved.")));
            }
        }

        return result;
    }
}
