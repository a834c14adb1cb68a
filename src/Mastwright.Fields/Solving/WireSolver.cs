using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Wires;
using Mastwright.Model.Trails;
using Mastwright.Numerics.Dense;

namespace Mastwright.Fields.Solving;

/// <summary>
/// Currents and port impedances of thin wires by the method of moments: mixed-potential integral equation, triangle functions,
/// Galerkin testing, tubular kernel. See docs/theory/fields-wires.md.
/// </summary>
public static class WireSolver
{
    // Below this order more threads cost more than they save.
    private const int SmallOrder = 500;

    // Below this order looking for symmetry costs more than it saves.
    private const int SmallestSymmetric = 40;

    /// <summary>Solves a model at one frequency.</summary>
    /// <param name="model">Wires, feeds, loads and ground.</param>
    /// <param name="frequencyHz">Frequency in hertz, positive.</param>
    /// <param name="options">How to solve; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="progress">Told the share done, 0 to 1, while the matrix is filled.</param>
    /// <returns>The solution, or findings that name what is wrong with the model.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SolveResult Solve(
        WireModel model, double frequencyHz, SolverOptions? options = null, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        options ??= SolverOptions.Default;
        var (mesh, findings) = WireMesh.Build(model, frequencyHz, options.Mesh);
        if (mesh is null)
            return new(null, findings);
        var result = Solve(mesh, frequencyHz, cancellation, progress);
        return result with { Findings = findings.AddRange(result.Findings) };
    }

    /// <summary>Solves a ready mesh at one frequency, which should not exceed the one it was cut for.</summary>
    /// <returns>The solution, or a finding when the equations have none.</returns>
    public static SolveResult Solve(WireMesh mesh, double frequencyHz, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        var excitations = mesh.FeedEnds.Select(end => Excitation(mesh, end)).ToArray();
        var unit = excitations.Select(e => new Complex[e.Length]).ToArray();
        var symmetry = mesh.UnknownCount >= SmallestSymmetric ? RotationSymmetry.Find(mesh) : null;
        long rows = symmetry is null ? mesh.UnknownCount : symmetry.Axis.Length + symmetry.Sectors[0].Length;
        if (rows * mesh.UnknownCount > (long)mesh.Options.MaxUnknowns * mesh.Options.MaxUnknowns)
            return new(null, [Segmenter.TooMany(rows, mesh.UnknownCount)]);
        var failure = symmetry is null
            ? SolveWhole(mesh, frequencyHz, excitations, unit, cancellation, progress)
            : SectorSystem.Fill(mesh, symmetry, frequencyHz, cancellation, progress).Solve(excitations, unit, cancellation);
        if (failure is not null)
            return new(null, [Failure(failure)]);
        return new(new(mesh, frequencyHz, unit), []);
    }

    /// <summary>Solves a model at several frequencies, each with the mesh that suits it.</summary>
    /// <param name="model">Wires, feeds, loads and ground.</param>
    /// <param name="frequenciesHz">Frequencies in hertz, in any order.</param>
    /// <param name="options">How to solve; null for the defaults.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    public static SweepResult Sweep(
        WireModel model, IReadOnlyList<double> frequenciesHz, SolverOptions? options = null, CancellationToken cancellation = default, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(frequenciesHz);
        var results = new SolveResult[frequenciesHz.Count];
        var done = 0;
        Parallel.For(0, results.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
        {
            results[i] = Solve(model, frequenciesHz[i], options, cancellation);
            progress?.Report((double)Interlocked.Increment(ref done) / results.Length);
        });
        var findings = results.SelectMany(r => r.Findings).Distinct().ToImmutableArray();
        return findings.Any(f => f.Severity == Severity.Error)
            ? new([], findings)
            : new([.. results.Select(r => r.Solution!)], findings);
    }

    /// <summary>
    /// How far the feed impedances still move when the mesh is made finer: the largest relative change over all entries of the
    /// port impedance matrix's diagonal when every segment is divided by <paramref name="refinement"/>.
    /// </summary>
    public static double MeshError(WireModel model, double frequencyHz, SolverOptions? options = null, double refinement = 1.6, CancellationToken cancellation = default)
    {
        options ??= SolverOptions.Default;
        var coarse = Solve(model, frequencyHz, options, cancellation).Require();
        var fineMesh = options.Mesh with { Refinement = options.Mesh.Refinement * refinement };
        var fine = Solve(model, frequencyHz, options with { Mesh = fineMesh }, cancellation).Require();
        var worst = 0.0;
        for (var i = 0; i < model.Feeds.Length; i++)
            worst = Math.Max(worst, (coarse.PortImpedances[i, i] - fine.PortImpedances[i, i]).Magnitude / fine.PortImpedances[i, i].Magnitude);
        return worst;
    }

    /// <summary>Factorises the whole matrix, symmetric or not.</summary>
    internal static LuOutcome? SolveWhole(
        WireMesh mesh, double frequencyHz, Complex[][] excitations, Complex[][] solutions, CancellationToken cancellation, IProgress<double>? progress = null)
    {
        var matrix = ImpedanceMatrix.Fill(mesh, frequencyHz, cancellation, progress);
        var outcome = ComplexLu.Factor(matrix, new(Threads: matrix.Rows < SmallOrder ? 1 : 0, Overwrite: true), cancellation);
        if (!outcome.TryGet(out var factor))
            return outcome;
        for (var f = 0; f < excitations.Length; f++)
            solutions[f] = factor.Solve(excitations[f]);
        return null;
    }

    /// <summary>One volt in the gap at a segment end, as seen by every unknown.</summary>
    internal static Complex[] Excitation(WireMesh mesh, SegmentEnd gap)
    {
        var excitation = new Complex[mesh.UnknownCount];
        foreach (var term in mesh.Basis.At(gap))
            excitation[term.Unknown] += BasisSet.OutwardSign(gap.End) * term.Weight;
        return excitation;
    }

    private static Finding Failure(LuOutcome outcome) => outcome switch
    {
        LuOutcome.TooLarge large => ModelCheck.Error(
            "too-little-memory", $"There is not enough memory to solve this model: {large.Memory}", null, null, "Cut more coarsely or leave out wires that matter little."),
        _ => ModelCheck.Error(
            "no-solution", "The equations of this model have no solution: a load is infinite (a trap exactly on its resonance) or zero over zero.",
            null, null, "Give the trap a finite quality factor, or move the frequency a little."),
    };
}
