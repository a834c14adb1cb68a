namespace Mastwright.Numerics.Special;

/// <summary>Complete elliptic integrals by the arithmetic-geometric mean (Abramowitz and Stegun 17.6). Math.NET has none.</summary>
/// <remarks>The argument is the parameter m = k², not the modulus k.</remarks>
public static class EllipticIntegrals
{
    /// <summary>K(m) = ∫ (1 - m sin²θ)^(-1/2) dθ from 0 to π/2.</summary>
    /// <param name="m">Parameter below 1; negative values are allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">m is 1 or above.</exception>
    public static double K(double m) => Mean(m).K;

    /// <summary>E(m) = ∫ (1 - m sin²θ)^(1/2) dθ from 0 to π/2.</summary>
    /// <param name="m">Parameter up to 1; negative values are allowed.</param>
    /// <exception cref="ArgumentOutOfRangeException">m is above 1.</exception>
    public static double E(double m) => m == 1 ? 1 : Mean(m).E;

    /// <summary>K from the complementary parameter 1 - m, exact also where m rounds to 1.</summary>
    /// <param name="complement">1 - m, positive.</param>
    public static double KFromComplement(double complement)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(complement);
        var (a, g) = (1.0, Math.Sqrt(complement));
        while (Math.Abs(a - g) > 1e-15 * a)
            (a, g) = ((a + g) / 2, Math.Sqrt(a * g));
        return Math.PI / (a + g);
    }

    private static (double K, double E) Mean(double m)
    {
        if (!(m < 1))
            throw new ArgumentOutOfRangeException(nameof(m), m, "The parameter m = k² must be below 1.");
        var (a, g) = (1.0, Math.Sqrt(1 - m));
        var sum = m / 2;
        var power = 0.5;
        for (var step = 0; step < 60 && Math.Abs(a - g) > 1e-16 * a; step++)
        {
            var c = (a - g) / 2;
            (a, g) = ((a + g) / 2, Math.Sqrt(a * g));
            power *= 2;
            sum += power * c * c;
        }

        var k = Math.PI / (a + g);
        return (k, k * (1 - sum));
    }
}
