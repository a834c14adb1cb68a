using Mastwright.Numerics.Fitting;

namespace Mastwright.Numerics.Tests.Fitting;

public class LeastSquaresTests
{
    private static readonly double[] X = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
    private static readonly double[] Y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];

    [Theory]
    [InlineData(500, 0.0001)]
    [InlineData(250, 0.0005)]
    public void Fit_ReproducesTheCertifiedValuesOfMisra1a(double b1, double b2)
    {
        // NIST Statistical Reference Datasets, nonlinear regression, Misra1a (from memory, confirmed by scripts/library_values.py).
        var fit = LeastSquares.Fit(Misra, X.Length, [b1, b2]);

        Assert.True(fit.Converged);
        Assert.Equal(2.3894212918e+02, fit.Parameters[0], 1e-5);
        Assert.Equal(5.5015643181e-04, fit.Parameters[1], 1e-11);
        Assert.Equal(2.7070075241, fit.StandardErrors[0], 1e-4);
        Assert.Equal(7.2668688436e-06, fit.StandardErrors[1], 1e-10);
        Assert.Equal(1.2455138894e-01, fit.SumOfSquares, 1e-10);
        Assert.Equal(12, fit.DegreesOfFreedom);

        // Student's t for 12 degrees of freedom at 97.5 %: 2.17881 (Abramowitz and Stegun, table 26.10).
        var (low, high) = fit.Interval(0);
        Assert.Equal(2 * 2.17881 * 2.7070075241, high - low, 1e-3);
    }

    [Fact]
    public void Fit_StaysInsideItsBounds()
    {
        // scipy.optimize.least_squares with b1 held at or below 220.
        var fit = LeastSquares.Fit(Misra, X.Length, [210, 6e-4], new() { Lower = [0, 0], Upper = [220, 1] });

        Assert.Equal(220, fit.Parameters[0]);
        Assert.Equal(6.0611564954988584e-04, fit.Parameters[1], 1e-10);
        Assert.Equal(0.7352901939837819, fit.SumOfSquares, 1e-8);
    }

    [Fact]
    public void Fit_SolvesTheValleyOfRosenbrock()
    {
        // Rosenbrock 1960: minimum at (1, 1) from (-1.2, 1).
        var fit = LeastSquares.Fit((p, r) => (r[0], r[1]) = (10 * (p[1] - (p[0] * p[0])), 1 - p[0]), 2, [-1.2, 1]);
        Assert.Equal(1, fit.Parameters[0], 1e-8);
        Assert.Equal(1, fit.Parameters[1], 1e-8);
    }

    [Fact]
    public void Fit_SaysWhenAParameterIsNotSettled()
    {
        var fit = LeastSquares.Fit((p, r) => r.Fill(p[0] + p[1] - 3), 5, [1, 1]);
        Assert.True(double.IsPositiveInfinity(fit.StandardErrors[0]));
        Assert.Equal(double.NegativeInfinity, fit.Interval(0).Low);
    }

    private static void Misra(ReadOnlySpan<double> p, Span<double> r)
    {
        for (var i = 0; i < X.Length; i++)
            r[i] = (p[0] * (1 - Math.Exp(-p[1] * X[i]))) - Y[i];
    }
}
