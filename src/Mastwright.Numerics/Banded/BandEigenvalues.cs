namespace Mastwright.Numerics.Banded;

/// <summary>
/// Eigenvalues of K v = λ M v by counting: the number of negative pivots of K - λ M is the number of eigenvalues below λ
/// when M is positive definite. Bisection on that count cannot miss one. B. N. Parlett, The Symmetric Eigenvalue Problem,
/// SIAM 1998, section 3.3.
/// </summary>
public static class BandEigenvalues
{
    /// <summary>The number of eigenvalues of K v = λ M v below <paramref name="lambda"/>.</summary>
    public static int CountBelow(SymmetricBand k, SymmetricBand m, double lambda)
    {
        ArgumentNullException.ThrowIfNull(k);

        // A pivot of exactly zero says that λ is an eigenvalue of a leading part; a nudge steps off it.
        for (var nudge = 0; nudge < 8; nudge++)
        {
            var at = lambda + (nudge * 1e-14 * Math.Max(Math.Abs(lambda), 1e-300));
            if (BandLdl.TryFactor(k.Plus(-at, m), out _) is { } ldl)
                return ldl.NegativePivots;
        }

        throw new ArithmeticException("The shifted matrix stays singular: a whole row of K and M is zero or not finite.");
    }

    /// <summary>Eigenvalue number <paramref name="index"/> (0 the lowest) of K v = λ M v between two bounds.</summary>
    /// <param name="k">Symmetric.</param>
    /// <param name="m">Symmetric positive definite, of the same shape.</param>
    /// <param name="index">Which, counted from 0 at the lowest.</param>
    /// <param name="low">At most <paramref name="index"/> eigenvalues lie below.</param>
    /// <param name="high">More than <paramref name="index"/> eigenvalues lie below.</param>
    /// <param name="relativeTolerance">Wanted accuracy.</param>
    /// <returns>The eigenvalue, or null when it does not lie between the bounds.</returns>
    public static double? TryFind(SymmetricBand k, SymmetricBand m, int index, double low, double high, double relativeTolerance = 1e-12)
    {
        if (CountBelow(k, m, low) > index || CountBelow(k, m, high) <= index)
            return null;
        for (var step = 0; step < 200 && high - low > relativeTolerance * Math.Max(Math.Abs(low), Math.Abs(high)); step++)
        {
            var middle = (low + high) / 2;
            if (CountBelow(k, m, middle) > index)
                high = middle;
            else
                low = middle;
        }

        return (low + high) / 2;
    }
}
