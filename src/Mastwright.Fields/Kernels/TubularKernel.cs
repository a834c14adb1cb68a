using System.Numerics;
using System.Runtime.CompilerServices;

namespace Mastwright.Fields.Kernels;

/// <summary>
/// The kernel between two coaxial tubes with currents spread evenly around them, averaged over both circumferences:
/// K(u) = (1/π) ∫₀^π exp(−jkR)/R dφ, R² = u² + (a − b)² + 4ab sin²(φ/2), u the distance along the common axis.
/// The static part is exact, 1/AGM(√(u² + (a + b)²), √(u² + (a − b)²)), by the complete elliptic integral's
/// arithmetic-geometric mean; the remainder (exp(−jkR) − 1)/R is bounded and is averaged numerically.
/// Source: elliptic-integral form of the cylindrical kernel, Schelkunoff, Advanced Antenna Theory, 1952 (from memory); AGM,
/// Abramowitz and Stegun 17.6 (from memory).
/// </summary>
internal readonly struct TubularKernel(double radiusA, double radiusB, Complex waveNumber)
{
    // sin²(φ/2) at φ = π/8, 3π/8, 5π/8, 7π/8: the midpoint rule, which for a periodic integrand converges fastest.
    private static readonly double[] HalfSineSquares =
        [.. Enumerable.Range(0, 4).Select(i => Math.Pow(Math.Sin(Math.PI * ((2 * i) + 1) / 16), 2))];

    private readonly double _sumSquared = (radiusA + radiusB) * (radiusA + radiusB);
    private readonly double _differenceSquared = (radiusA - radiusB) * (radiusA - radiusB);
    private readonly double _product = 4 * radiusA * radiusB;

    /// <summary>Radius scale on which the kernel changes from a logarithm to 1/u.</summary>
    public double Scale => 0.5 * Math.Sqrt(_sumSquared);

    /// <summary>The kernel at squared axial distance u².</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Complex At(double distanceSquared)
    {
        var value = new Complex(Static(distanceSquared), 0);
        if (distanceSquared > 25 * _sumSquared)
            return value + Remainder(Math.Sqrt(distanceSquared + (0.5 * (_sumSquared + _differenceSquared))));
        var sum = Complex.Zero;
        foreach (var s in HalfSineSquares)
            sum += Remainder(Math.Sqrt(distanceSquared + _differenceSquared + (_product * s)));
        return value + (0.25 * sum);
    }

    /// <summary>The zero-frequency kernel, real.</summary>
    public double Static(double distanceSquared)
    {
        double a = Math.Sqrt(distanceSquared + _sumSquared), b = Math.Sqrt(distanceSquared + _differenceSquared);
        while (a - b > 1e-9 * a)
            (a, b) = (0.5 * (a + b), Math.Sqrt(a * b));
        return 2 / (a + b);
    }

    // (exp(-jkR) - 1)/R without cancellation: -2 sin²(kR/2)/R - j sin(kR)/R.
    private Complex Remainder(double r) => SmoothPart(waveNumber, r);

    /// <summary>(exp(−jkR) − 1)/R, well behaved down to R = 0.</summary>
    public static Complex SmoothPart(Complex k, double r)
    {
        var phase = new Complex(k.Imaginary, -k.Real) * r;
        if (phase.Magnitude < 1e-4)
            return new Complex(k.Imaginary, -k.Real) * (1 + (0.5 * phase) + (phase * phase / 6));
        if (k.Imaginary != 0)
            return (Complex.Exp(phase) - 1) / r;
        var (sin, cos) = Math.SinCos(0.5 * k.Real * r);
        return new(-2 * sin * sin / r, -2 * sin * cos / r);
    }
}
