using System.Numerics;
using Mastwright.Numerics.Integration;

namespace Mastwright.Numerics.Tests.Integration;

public class QuadratureTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(32)]
    public void GaussLegendre_IsExactToTwiceItsPointsMinusOne(int n)
    {
        var rule = GaussLegendre.WithPoints(n);
        for (var power = 0; power <= (2 * n) - 1; power++)
        {
            var exact = power % 2 == 0 ? 2.0 / (power + 1) : 0;
            Assert.Equal(exact, rule.Integrate(x => Math.Pow(x, power), -1, 1), 1e-14);
        }
    }

    [Fact]
    public void Adaptive_MatchesSciPyOnAnOscillation()
    {
        // scripts/library_values.py
        var r = Quadrature.Adaptive(x => Math.Sin(x * x), 0, 10);
        Assert.True(r.Converged);
        Assert.Equal(0.5836708999296244, r.Value, 1e-10);
        Assert.True(Math.Abs(r.Value - 0.5836708999296244) <= r.ErrorEstimate + 1e-15);
    }

    [Fact]
    public void Adaptive_MatchesSciPyOnAPeak()
    {
        var r = Quadrature.Adaptive(x => 1 / (1e-4 + ((x - 0.3) * (x - 0.3))), 0, 1);
        Assert.True(r.Converged);
        Assert.Equal(309.3986915124149, r.Value, 1e-7);
    }

    [Fact]
    public void Adaptive_HandlesInfiniteEnds()
    {
        Assert.Equal(Math.Sqrt(Math.PI), Quadrature.Adaptive(x => Math.Exp(-x * x), double.NegativeInfinity, double.PositiveInfinity).Value, 1e-10);
        Assert.Equal(Math.PI / 2, Quadrature.Adaptive(x => 1 / (1 + (x * x)), 0, double.PositiveInfinity).Value, 1e-10);
        Assert.Equal(-Math.PI / 4, Quadrature.Adaptive(x => 1 / (1 + (x * x)), -1, double.NegativeInfinity).Value, 1e-10);
    }

    [Fact]
    public void Adaptive_IntegratesComplexAndSeveralFunctionsAtOnce()
    {
        // ∫ exp(i k x) from 0 to 1 = (exp(i k) - 1) / (i k).
        Complex Exact(int k) => (Complex.Exp(new(0, k)) - 1) / new Complex(0, k);
        var one = Quadrature.Adaptive(x => Complex.Exp(new(0, 30 * x)), 0, 1);
        Assert.True((one.Value - Exact(30)).Magnitude < 1e-12);

        var many = Quadrature.Adaptive(
            (x, v) =>
            {
                v[0] = Complex.Exp(new(0, x));
                v[1] = Complex.Exp(new(0, 50 * x));
                v[2] = 0;
            },
            3, 0, 1);
        Assert.True(many.Converged);
        Assert.True((many.Values[0] - Exact(1)).Magnitude < 1e-12);
        Assert.True((many.Values[1] - Exact(50)).Magnitude < 1e-11);
        Assert.Equal(Complex.Zero, many.Values[2]);
    }

    [Fact]
    public void Adaptive_SaysWhenItGaveUp()
    {
        var r = Quadrature.Adaptive(x => Math.Sin(1 / x) / x, 0, 1, new(1e-12, 0, 2000));
        Assert.False(r.Converged);
        Assert.InRange(r.Evaluations, 1, 2000);
    }

    [Fact]
    public void TanhSinh_TakesSingularEnds()
    {
        // Closed forms: ∫ x^(-3/4) = 4; ∫ ln x = -1; ∫ dx / sqrt(x (1 - x)) = π.
        Assert.Equal(4, Quadrature.TanhSinh((_, d) => Math.Pow(d > 0 ? d : 1 + d, -0.75), 0, 1).Value.Real, 1e-9);
        Assert.Equal(-1, Quadrature.TanhSinh((x, _) => Math.Log(x), 0, 1).Value.Real, 1e-10);
        var r = Quadrature.TanhSinh((x, d) => 1 / Math.Sqrt(d > 0 ? d * (1 - d) : -d * (1 + d)), 0, 1);
        Assert.True(r.Converged);
        Assert.Equal(Math.PI, r.Value.Real, 1e-10);
        Assert.InRange(r.Evaluations, 10, 400);
    }
}
