using Mastwright.Build.Sweeps.Fit;
using Mastwright.Build.Tests.Reference;

namespace Mastwright.Build.Tests.Sweeps;

public class LevenbergMarquardtTests
{
    private static readonly double[] X = [.. Enumerable.Range(0, 30).Select(i => i * 0.25)];

    private static double[] Decay(double[] p) => [.. X.Select(x => (p[0] * Math.Exp(-p[1] * x)) + p[2])];

    private static double[] Noisy(int seed, bool wild = false)
    {
        var random = new Random(seed);
        return [.. Decay([5, 0.8, 1.5]).Select((v, i) => v + (0.3 * (random.NextDouble() - 0.5)) + (wild && i % 7 == 3 ? 4 : 0))];
    }

    private static LeastSquaresResult Fit(double[] y, LeastSquaresOptions? options = null, double[]? lower = null, double[]? upper = null) =>
        LevenbergMarquardt.Minimise(p => [.. Decay(p).Zip(y, (a, b) => a - b)], [1, 0.3, 0.5], lower ?? [-1e3, -10, -1e3], upper ?? [1e3, 10, 1e3], [1, 0.1, 1], options);

    [Fact]
    public void Parameters_and_covariance_agree_with_SciPy()
    {
        var y = Noisy(1);
        var outside = SciPy.Run("least_squares.py", new { model = "decay", how = "plain", x = X, y, start = new[] { 1, 0.3, 0.5 } });
        var ours = Fit(y);
        Assert.True(ours.Converged);
        var covariance = FitCovariance.Of(ours, new())!;
        for (var i = 0; i < 3; i++)
        {
            Assert.Equal(outside.GetProperty("p")[i].GetDouble(), ours.Parameters[i], 1e-6);
            for (var j = 0; j < 3; j++)
            {
                var expected = outside.GetProperty("cov")[i][j].GetDouble();
                Assert.Equal(expected, covariance[i, j], 1e-4 * Math.Abs(expected));
            }
        }
    }

    [Fact]
    public void The_soft_loss_agrees_with_SciPy()
    {
        var y = Noisy(2, wild: true);
        var outside = SciPy.Run("least_squares.py", new { model = "decay", how = "soft", x = X, y, start = new[] { 1, 0.3, 0.5 }, scale = 0.15 });
        var ours = Fit(y, new(SoftScale: 0.15));
        Assert.Equal(outside.GetProperty("cost").GetDouble(), ours.Cost, 1e-9);
        for (var i = 0; i < 3; i++) Assert.Equal(outside.GetProperty("p")[i].GetDouble(), ours.Parameters[i], 2e-5);
    }

    [Fact]
    public void Bounds_agree_with_SciPy()
    {
        var y = Noisy(3);
        double[] lower = [0, 0, 1.6];
        double[] upper = [10, 5, 4];
        var outside = SciPy.Run("least_squares.py", new { model = "decay", how = "bounds", x = X, y, start = new[] { 1, 0.3, 2 }, lower, upper });
        var ours = LevenbergMarquardt.Minimise(p => [.. Decay(p).Zip(y, (a, b) => a - b)], [1, 0.3, 2], lower, upper, [1, 0.1, 1]);
        Assert.True(ours.AtBound[2]);
        Assert.Equal(outside.GetProperty("cost").GetDouble(), ours.Cost, 1e-7);
        for (var i = 0; i < 3; i++) Assert.Equal(outside.GetProperty("p")[i].GetDouble(), ours.Parameters[i], 2e-5);
    }

    [Theory]
    [InlineData(500, 0.0001)]
    [InlineData(250, 0.0005)]
    public void The_certified_exponential_is_reached_from_both_starts(double b1, double b2)
    {
        // NIST StRD nonlinear regression, Misra1a (from memory): y = b1 (1 − exp(−b2 x)).
        double[] x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
        double[] y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78];
        var found = LevenbergMarquardt.Minimise(p => [.. x.Zip(y, (u, v) => (p[0] * (1 - Math.Exp(-p[1] * u))) - v)], [b1, b2], [0, 0], [1e4, 1], [100, 1e-4]);
        Assert.Equal(238.94212918, found.Parameters[0], 2e-4);
        Assert.Equal(5.5015643181e-4, found.Parameters[1], 1e-9);
        Assert.Equal(0.12455138894, 2 * found.Cost, 1e-9);
        var covariance = FitCovariance.Of(found, new())!;
        Assert.Equal(2.7070075241, Math.Sqrt(covariance[0, 0]), 1e-4);
        Assert.Equal(7.2668688436e-6, Math.Sqrt(covariance[1, 1]), 1e-9);
    }
}
