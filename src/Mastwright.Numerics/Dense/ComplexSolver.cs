using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>How <see cref="ComplexSolver"/> got its answer.</summary>
public enum SolveRoute
{
    /// <summary>Single-precision factor, refined to double accuracy.</summary>
    SingleRefined,

    /// <summary>Double-precision factor, refined.</summary>
    Double,
}

/// <summary>What came of a solve.</summary>
/// <param name="Route">How it was done.</param>
/// <param name="Solution">The solution with its backward error; null when the matrix is singular or not finite.</param>
/// <param name="Failure">Why there is no solution; null when there is one.</param>
/// <param name="FellBackBecause">Why single precision was not enough; null when it was.</param>
public sealed record SolveOutcome(SolveRoute Route, RefinedSolution? Solution, LuOutcome? Failure, string? FellBackBecause)
{
    /// <summary>The solution.</summary>
    /// <exception cref="SingularMatrixException">There is none.</exception>
    public Complex[] Require()
    {
        Failure?.Require();
        return Solution!.X;
    }
}

/// <summary>
/// Solves one system to full double accuracy in about half the time of a double factorisation: factors in single
/// precision and refines with double residuals, and falls back to a double factor by itself when the matrix is too
/// ill-conditioned for that.
/// </summary>
/// <remarks>
/// Refinement contracts the error by about the condition number times 6e-8 a step, so it works up to condition numbers of
/// about 1e6. J. Langou et al., "Exploiting the performance of 32 bit floating point arithmetic in obtaining 64 bit
/// accuracy", SC 2006; Higham, Accuracy and Stability of Numerical Algorithms, 2nd ed., section 12.1.
/// </remarks>
public static class ComplexSolver
{
    private const double SafeLow = 1e-8;
    private const double SafeHigh = 1e8;

    /// <summary>Solves A x = b.</summary>
    /// <param name="matrix">A, square; kept.</param>
    /// <param name="rhs">b.</param>
    /// <param name="options">How; <see cref="LuOptions.Overwrite"/> has no effect here. Null for the default.</param>
    /// <param name="cancellation">Stops the work between panels.</param>
    public static SolveOutcome Solve(
        ComplexMatrix matrix, ReadOnlySpan<Complex> rhs, LuOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        options = (options ?? LuOptions.Default) with { Overwrite = false };
        if (matrix.Rows != matrix.Columns || rhs.Length != matrix.Rows)
            throw new ArgumentException($"A {matrix.Rows} x {matrix.Columns} matrix and {rhs.Length} right-hand values do not make a square system.");

        // Scaled by one unless that could leave the range of single precision, so that one pass over the matrix does.
        var reduced = PlanarOps<double>.ToSingle(matrix.Storage, 1, options.ThreadCount, out var sums);
        if (!ComplexLu.TryOneNorm(sums, out var norm, out var notFinite))
            return new(SolveRoute.SingleRefined, null, new LuOutcome.NotFinite(notFinite), null);
        var scale = 1.0;
        if (norm is > 0 and (< SafeLow or > SafeHigh))
        {
            scale = Math.ScaleB(1, -Math.ILogB(norm));
            reduced = PlanarOps<double>.ToSingle(matrix.Storage, scale, options.ThreadCount, out _);
        }

        var whyNot = "the matrix is singular in single precision";
        if (PlanarLu<float>.Factor(reduced, options, cancellation, out _) is { } single)
        {
            var b = PlanarVector<double>.From(rhs, rhs.Length);
            var state = Refinement.Run(matrix.Storage, norm, b, r => SolveSingle(single, r, scale), options.ThreadCount);
            if (state.Converged)
                return new(SolveRoute.SingleRefined, state.ToSolution(), null, null);
            whyNot = "refinement from single precision did not converge: the condition number is above about 1e6";
        }

        var outcome = ComplexLu.Factor(matrix, options, cancellation);
        return outcome.TryGet(out var lu)
            ? new(SolveRoute.Double, lu.SolveRefined(matrix, rhs), null, whyNot)
            : new(SolveRoute.Double, null, outcome, whyNot);
    }

    private static void SolveSingle(PlanarLu<float> lu, PlanarVector<double> r, double matrixScale)
    {
        var largest = 0.0;
        for (var i = 0; i < r.Length; i++)
            largest = Math.Max(largest, Math.Max(Math.Abs(r.Re[i]), Math.Abs(r.Im[i])));
        if (largest == 0)
            return;
        var scale = Math.ScaleB(1, -Math.ILogB(largest));
        var x = PlanarVector<float>.Zero(r.Length);
        for (var i = 0; i < r.Length; i++)
            (x.Re[i], x.Im[i]) = ((float)(r.Re[i] * scale), (float)(r.Im[i] * scale));
        lu.Solve(x);
        for (var i = 0; i < r.Length; i++)
            (r.Re[i], r.Im[i]) = (x.Re[i] / scale * matrixScale, x.Im[i] / scale * matrixScale);
    }
}
