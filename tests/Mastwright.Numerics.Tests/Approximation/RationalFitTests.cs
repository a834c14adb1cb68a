using System.Numerics;
using Mastwright.Numerics.Approximation;

namespace Mastwright.Numerics.Tests.Approximation;

public class RationalFitTests
{
    [Fact]
    public void Fit_RecoversARationalFunctionFromFewSamples()
    {
        Complex F(Complex z) => ((2 * z) + 1) / ((z * z) + new Complex(1, 0.2));
        var points = Enumerable.Range(0, 9).Select(i => new Complex(-2 + (0.5 * i), 0)).ToArray();

        var fit = RationalFit.To(points, [.. points.Select(z => new[] { F(z) })]);

        Assert.Equal(3, fit.Support.Length);
        foreach (var z in (Complex[])[0.123, -1.77, new(0.5, 0.5), 5])
            Assert.True((fit.Evaluate(z)[0] - F(z)).Magnitude < 1e-11 * F(z).Magnitude);
    }

    [Fact]
    public void Fit_OfTanBeyondItsPoles()
    {
        // Nakatsukasa, Sète and Trefethen fit tan(π z / 2) on the interval [-1, 1] beyond its poles to many digits.
        var points = Enumerable.Range(0, 60).Select(i => new Complex(1.9 * Math.Cos(Math.PI * (i + 0.5) / 60), 0.3)).ToArray();
        var fit = RationalFit.To(points, [.. points.Select(z => new[] { Complex.Tan(Math.PI / 2 * z) })], 1e-12);

        Assert.InRange(fit.SampleError, 0, 1e-12);
        Assert.True((fit.Evaluate(new Complex(0.4, -0.1))[0] - Complex.Tan(Math.PI / 2 * new Complex(0.4, -0.1))).Magnitude < 1e-8);
    }

    [Fact]
    public void Poles_AreThoseOfTheFunction()
    {
        Complex[] poles = [new(0.8, 0.01), new(1.3, -0.2), new(2.1, 0.05)];
        var points = Enumerable.Range(0, 15).Select(i => new Complex(0.5 + (0.13 * i), 0)).ToArray();
        var fit = RationalFit.To(points, [.. points.Select(z => new[] { poles.Aggregate(new Complex(2, 1), (sum, p) => sum + (1 / (z - p))) })]);

        var found = fit.Poles();

        Assert.Equal(3, found.Length);
        Assert.All(poles, p => Assert.True(found.Min(f => (f - p).Magnitude) < 1e-9));
    }

    [Fact]
    public void Poles_OfTanAreTheOddNumbers()
    {
        var points = Enumerable.Range(0, 60).Select(i => new Complex(1.9 * Math.Cos(Math.PI * (i + 0.5) / 60), 0.3)).ToArray();
        var found = RationalFit.To(points, [.. points.Select(z => new[] { Complex.Tan(Math.PI / 2 * z) })], 1e-12).Poles();
        Assert.True(found.Min(f => (f - 1).Magnitude) < 1e-8);
        Assert.True(found.Min(f => (f + 1).Magnitude) < 1e-8);
        Assert.True(found.Min(f => (f - 3).Magnitude) < 1e-3);
    }

    [Fact]
    public void Fit_OfSeveralFunctionsSharesItsPoles()
    {
        Complex[] F(Complex z) => [1 / (z - new Complex(0.2, 0.3)), z / (z - new Complex(0.2, 0.3)) + 1e-6, 3];
        var points = Enumerable.Range(0, 5).Select(i => new Complex(i, 0)).ToArray();
        var fit = RationalFit.To(points, [.. points.Select(F)]);

        Assert.Equal(2, fit.Support.Length);
        var got = fit.Evaluate(0.77);
        Assert.All(got.Zip(F(0.77)), p => Assert.True((p.First - p.Second).Magnitude < 1e-10));
    }

    [Fact]
    public void Sweep_OfALineWithLossNeedsADozenSamples()
    {
        // Input impedance of an open line a quarter wave long at 1, with a loading inductance and loss: closed form.
        Complex[] Z(double f)
        {
            var gamma = new Complex(0.02 * Math.Sqrt(f), Math.PI / 2 * f);
            return [(300 / Complex.Tanh(gamma)) + new Complex(2, 90 * f)];
        }

        var sweep = AdaptiveSweep.Run(Z, 0.5, 1.5, new(1e-3));

        Assert.True(sweep.Converged);
        Assert.InRange(sweep.Points.Length, 5, 12);
        for (var i = 0; i <= 300; i++)
        {
            var f = 0.5 + (i / 300.0);
            var exact = Z(f)[0];
            Assert.True((sweep.Fit.Evaluate(f)[0] - exact).Magnitude < 2e-3 * Math.Max(exact.Magnitude, 0.01 * 350));
        }
    }

    [Fact]
    public void Sweep_FollowsNarrowResonances()
    {
        // A sharp series circuit beside a broad one.
        Complex[] Y(double f) => [(1 / new Complex(0.02, f - (1 / f))) + (1 / new Complex(1, 3 * (f - (1.69 / f))))];
        var sweep = AdaptiveSweep.Run(Y, 0.5, 2, new(1e-3));

        Assert.True(sweep.Converged);
        for (var i = 0; i <= 1000; i++)
        {
            var f = 0.5 + (1.5 * i / 1000.0);
            Assert.True((sweep.Fit.Evaluate(f)[0] - Y(f)[0]).Magnitude < 2e-3 * Math.Max(Y(f)[0].Magnitude, 0.5));
        }
    }

    [Fact]
    public void Sweep_SaysWhenItGaveUp()
    {
        var sweep = AdaptiveSweep.Run(f => [Math.Abs(f - 0.37) < 0.2 ? 1 : 0.2], 0, 1, new(1e-6, 1e-2, 12));
        Assert.False(sweep.Converged);
        Assert.Equal(12, sweep.Points.Length);
    }
}
