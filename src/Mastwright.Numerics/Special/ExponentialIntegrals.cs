using System.Numerics;

namespace Mastwright.Numerics.Special;

/// <summary>The exponential integral of complex argument, and the sine and cosine integrals.</summary>
/// <remarks>
/// Power series near zero, continued fraction by the modified Lentz method elsewhere: M. Abramowitz and I. A. Stegun,
/// Handbook of Mathematical Functions, 5.1.11, 5.1.22, 5.2.8 and 5.2.9. Math.NET has the real exponential integral only.
/// Relative error below about 1e-12 (1e-10 next to the negative real axis).
/// </remarks>
public static class ExponentialIntegrals
{
    private const double EulerGamma = 0.57721566490153286;
    private const int MostTerms = 1000;

    /// <summary>E1(z) = ∫ exp(-t)/t dt from z to infinity, principal branch with the cut along the negative real axis.</summary>
    /// <param name="z">Any complex number but zero; on the cut itself the value from above (imaginary part -π) is given.</param>
    /// <exception cref="ArgumentOutOfRangeException">z is zero, where E1 is infinite.</exception>
    public static Complex E1(Complex z)
    {
        if (z == Complex.Zero)
            throw new ArgumentOutOfRangeException(nameof(z), "E1 is infinite at zero.");

        // The fraction fails along the cut, where the series still holds although its terms grow to exp|z|: of one sign there.
        var r = z.Magnitude;
        return r < 2 || (z.Real < 0 && Math.Abs(z.Imaginary) < 3 && r < 40) ? Series(z) : Fraction(z);
    }

    /// <summary>Si(x) = ∫ sin(t)/t dt from 0 to x, odd in x.</summary>
    public static double Si(double x)
    {
        if (x < 0)
            return -Si(-x);
        if (x > 2)
            return (Math.PI / 2) + E1(new(0, x)).Imaginary;
        var term = x;
        var sum = x;
        for (var k = 1; k < 30; k++)
        {
            term *= -x * x / (2 * k * ((2 * k) + 1));
            sum += term / ((2 * k) + 1);
        }

        return sum;
    }

    /// <summary>Ci(x) = γ + ln x + ∫ (cos(t) - 1)/t dt from 0 to x.</summary>
    /// <exception cref="ArgumentOutOfRangeException">x is not positive.</exception>
    public static double Ci(double x)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(x);
        return -E1(new(0, x)).Real;
    }

    /// <summary>Cin(x) = ∫ (1 - cos(t))/t dt from 0 to x: the entire cousin of Ci, fit for small x.</summary>
    public static double Cin(double x)
    {
        x = Math.Abs(x);
        if (x > 2)
            return EulerGamma + Math.Log(x) - Ci(x);
        var term = -1.0;
        var sum = 0.0;
        for (var k = 1; k < 30; k++)
        {
            term *= -x * x / (2 * k * ((2 * k) - 1));
            sum += term / (2 * k);
        }

        return sum;
    }

    private static Complex Series(Complex z)
    {
        var sum = Complex.Zero;
        var term = Complex.One;
        for (var k = 1; k < MostTerms; k++)
        {
            term *= -z / k;
            sum += term / k;
            if (term.Magnitude / k < 1e-17 * sum.Magnitude)
                break;
        }

        return -EulerGamma - Complex.Log(z) - sum;
    }

    private static Complex Fraction(Complex z)
    {
        // Abramowitz and Stegun 5.1.22 in its contracted form: e^-z / (z + 1 - 1/(z + 3 - 4/(z + 5 - ...))).
        var b = z + 1;
        var c = new Complex(1e300, 0);
        var d = 1 / b;
        var h = d;
        for (var k = 1; k < MostTerms; k++)
        {
            var a = -(double)k * k;
            b += 2;
            d = 1 / ((a * d) + b);
            c = b + (a / c);
            var change = c * d;
            h *= change;
            if (Complex.Abs(change - 1) < 1e-16)
                break;
        }

        return h * Complex.Exp(-z);
    }
}
