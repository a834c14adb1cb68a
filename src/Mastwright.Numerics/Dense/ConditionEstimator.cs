namespace Mastwright.Numerics.Dense;

/// <summary>
/// Estimates the 1-norm of an inverse from a few solves. N. J. Higham, "FORTRAN codes for estimating the one-norm of a
/// real or complex matrix", ACM Trans. Math. Softw. 14 (1988) 381-396, algorithm 4.1 with the alternating test vector.
/// The estimate is a lower bound, almost always within a factor 3.
/// </summary>
internal static class ConditionEstimator
{
    private const int MostRounds = 5;

    /// <summary>Estimate of the 1-norm of the inverse of A.</summary>
    /// <param name="n">Order.</param>
    /// <param name="solve">Replaces a vector by the inverse of A times it.</param>
    /// <param name="solveAdjoint">Replaces a vector by the inverse of A^H times it.</param>
    public static double InverseOneNorm(int n, Action<PlanarVector<double>> solve, Action<PlanarVector<double>> solveAdjoint)
    {
        var x = PlanarVector<double>.Zero(n);
        x.Re.AsSpan(0, n).Fill(1.0 / n);
        var estimate = 0.0;
        var lastUnit = -1;
        for (var round = 0; round < MostRounds; round++)
        {
            solve(x);
            var norm = AbsSum(x);
            if (round > 0 && norm <= estimate)
                break;
            estimate = norm;
            ToSigns(x);
            solveAdjoint(x);
            var unit = LargestAt(x);
            if (unit == lastUnit)
                break;
            lastUnit = unit;
            x = PlanarVector<double>.Zero(n);
            x.Re[unit] = 1;
        }

        // The alternating vector catches matrices built to fool the walk above.
        var alternating = PlanarVector<double>.Zero(n);
        for (var i = 0; i < n; i++)
            alternating.Re[i] = (i % 2 == 0 ? 1 : -1) * (1 + (n > 1 ? (double)i / (n - 1) : 0));
        solve(alternating);
        return Math.Max(estimate, 2 * AbsSum(alternating) / (3.0 * n));
    }

    private static double AbsSum(PlanarVector<double> x)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
            sum += double.Hypot(x.Re[i], x.Im[i]);
        return sum;
    }

    private static void ToSigns(PlanarVector<double> x)
    {
        for (var i = 0; i < x.Length; i++)
        {
            var abs = double.Hypot(x.Re[i], x.Im[i]);
            (x.Re[i], x.Im[i]) = abs > 0 ? (x.Re[i] / abs, x.Im[i] / abs) : (1, 0);
        }
    }

    private static int LargestAt(PlanarVector<double> x)
    {
        var best = 0;
        var largest = -1.0;
        for (var i = 0; i < x.Length; i++)
        {
            var abs = double.Hypot(x.Re[i], x.Im[i]);
            if (abs > largest)
                (best, largest) = (i, abs);
        }

        return best;
    }
}
