using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>A solution corrected by iterative refinement.</summary>
/// <param name="X">The solution.</param>
/// <param name="Iterations">Corrections made.</param>
/// <param name="BackwardError">
/// Norm-wise backward error ||b - A x|| / (||A|| ||x|| + ||b||) in the 1-norm: the relative change of A and b for which x is
/// exact (Higham, Accuracy and Stability, theorem 7.1).
/// </param>
/// <param name="Converged">Whether the backward error came down to the level of double round-off.</param>
public sealed record RefinedSolution(Complex[] X, int Iterations, double BackwardError, bool Converged);

/// <summary>Iterative refinement with residuals in double precision, whatever precision the factor has.</summary>
internal static class Refinement
{
    private const int MostIterations = 20;

    // A correction must win at least this factor, or going on is a waste.
    private const double LeastGain = 0.5;

    private const double RoundOff = 1.1102230246251565e-16;

    /// <summary>Refines the solution of A x = b, <paramref name="oneNorm"/> being the 1-norm of A; <paramref name="solve"/> replaces a vector by (about) the inverse of A times it.</summary>
    public static State Run(
        PlanarStorage<double> a, double oneNorm, PlanarVector<double> b, Action<PlanarVector<double>> solve, int threads)
    {
        var n = a.Rows;
        var bNorm = AbsSum(b);

        // The residual itself is only known to about this level; LAPACK's zcgesv stops there too.
        var target = Math.Sqrt(n) * RoundOff;
        var x = PlanarVector<double>.Zero(n);
        var r = Copy(b);
        var best = new State(x, 0, bNorm == 0 ? 0 : double.PositiveInfinity, bNorm == 0);
        for (var iteration = 0; iteration <= MostIterations && !best.Converged; iteration++)
        {
            solve(r);
            x = Sum(best.X, r);
            r = Residual(a, x, b, threads);
            var error = AbsSum(r) / ((oneNorm * AbsSum(x)) + bNorm);

            // The comparison is written so that not-a-number stops the loop as well.
            if (!(error < best.BackwardError))
                break;
            var gain = error / best.BackwardError;
            best = new(x, iteration, error, error <= target);
            if (gain > LeastGain)
                break;
        }

        return best;
    }

    private static PlanarVector<double> Residual(PlanarStorage<double> a, PlanarVector<double> x, PlanarVector<double> b, int threads)
    {
        var minusX = PlanarVector<double>.Zero(x.Length);
        for (var i = 0; i < x.Length; i++)
            (minusX.Re[i], minusX.Im[i]) = (-x.Re[i], -x.Im[i]);
        var r = Copy(b);
        PlanarOps<double>.MultiplyAdd(a, minusX, r, threads);
        return r;
    }

    private static PlanarVector<double> Copy(PlanarVector<double> v) => Sum(v, PlanarVector<double>.Zero(v.Length));

    private static PlanarVector<double> Sum(PlanarVector<double> a, PlanarVector<double> b)
    {
        var sum = PlanarVector<double>.Zero(a.Length);
        for (var i = 0; i < a.Length; i++)
            (sum.Re[i], sum.Im[i]) = (a.Re[i] + b.Re[i], a.Im[i] + b.Im[i]);
        return sum;
    }

    private static double AbsSum(PlanarVector<double> v) =>
        PlanarOps<double>.AbsSum(v.Re.AsSpan(0, v.Length), v.Im.AsSpan(0, v.Length));

    /// <summary>Where refinement stands.</summary>
    internal sealed record State(PlanarVector<double> X, int Iterations, double BackwardError, bool Converged)
    {
        public RefinedSolution ToSolution() => new(X.ToComplex(), Iterations, BackwardError, Converged);
    }
}
