using MathNet.Numerics.Interpolation;

namespace Mastwright.Numerics.Tests.Approximation;

/// <summary>Math.NET's interpolation does well enough to be used as it is; this is the ground for saying so.</summary>
public class InterpolationTests
{
    [Fact]
    public void Pchip_OfMathNetMatchesSciPy()
    {
        // scripts/library_values.py
        var p = CubicSpline.InterpolatePchip([0.0, 1.0, 1.5, 4.0, 5.0, 7.0], [0.0, 0.5, 2.0, 2.0, 1.0, 6.0]);
        var expected = new (double X, double Y)[]
        {
            (0.3, 0.04934482758620689), (1.2, 1.0950344827586205), (2.0, 2.0), (4.4, 1.6479999999999995), (6.5, 3.8593749999999996),
        };
        Assert.All(expected, e => Assert.Equal(e.Y, p.Interpolate(e.X), 1e-12));
    }

    [Fact]
    public void Barycentric_OfMathNetReproducesAPolynomial()
    {
        var x = Enumerable.Range(0, 5).Select(i => (double)i).ToArray();
        var p = Barycentric.InterpolatePolynomialEquidistant(x, x.Select(v => (v * v * v) - v));
        Assert.Equal((2.5 * 2.5 * 2.5) - 2.5, p.Interpolate(2.5), 1e-12);
    }
}
