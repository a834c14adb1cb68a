using Mastwright.Numerics.Fitting;

namespace Mastwright.Numerics.Tests.Fitting;

/// <summary>Against scipy.stats.theilslopes (scripts/library_values.py).</summary>
public class TheilSenTests
{
    [Fact]
    public void Fit_MatchesSciPyThroughWildPoints()
    {
        double[] y = [1.2, 2.9, 5.1, 7.3, 8.8, 40.0, 13.1, 15.2, 16.8, -20.0, 21.3, 22.9];
        var line = TheilSen.Fit([.. Enumerable.Range(0, 12).Select(i => (double)i)], y);
        Assert.Equal(1.9805555555555554, line.Slope, 1e-14);
        Assert.Equal(0.05694444444444535, line.Intercept, 1e-13);
        Assert.Equal(1.8500000000000005, line.SlopeLow, 1e-14);
        Assert.Equal(2.04, line.SlopeHigh, 1e-14);
    }

    [Fact]
    public void Fit_MatchesSciPyWithTies()
    {
        var line = TheilSen.Fit([1, 1, 2, 2, 3, 4, 5, 5, 6, 7], [2.0, 2.5, 2.5, 3.0, 3.5, 4.0, 4.0, 5.0, 5.5, 5.5], 0.90);
        Assert.Equal(0.5416666666666667, line.Slope, 1e-14);
        Assert.Equal(1.8541666666666665, line.Intercept, 1e-14);
        Assert.Equal(0.5, line.SlopeLow, 1e-14);
        Assert.Equal(0.75, line.SlopeHigh, 1e-14);
    }

    [Fact]
    public void Fit_RefusesAVerticalLine() =>
        Assert.Throws<ArgumentException>(() => TheilSen.Fit([1.0, 1.0], [1.0, 2.0]));
}
