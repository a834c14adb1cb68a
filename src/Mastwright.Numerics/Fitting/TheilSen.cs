using MathNet.Numerics.Distributions;

namespace Mastwright.Numerics.Fitting;

/// <summary>A straight line that up to 29 % wild points cannot bend.</summary>
/// <param name="Slope">The median of the slopes between all pairs of points.</param>
/// <param name="Intercept">Median y minus slope times median x.</param>
/// <param name="SlopeLow">Lower bound of the slope at the confidence asked for.</param>
/// <param name="SlopeHigh">Upper bound of the slope.</param>
public sealed record RobustLine(double Slope, double Intercept, double SlopeLow, double SlopeHigh)
{
    /// <summary>The line at x.</summary>
    public double At(double x) => Intercept + (Slope * x);
}

/// <summary>
/// Robust line fit: P. K. Sen, "Estimates of the regression coefficient based on Kendall's tau", J. Am. Stat. Assoc. 63 (1968)
/// 1379-1389. No library at hand has it.
/// </summary>
public static class TheilSen
{
    private const int MostPoints = 5000;

    /// <summary>Fits a line.</summary>
    /// <param name="x">Abscissas, at least two different ones.</param>
    /// <param name="y">Ordinates.</param>
    /// <param name="confidence">Confidence of the slope's bounds, between 0.5 and 1.</param>
    /// <exception cref="ArgumentException">Lengths differ, no two abscissas differ, or there are more than 5000 points.</exception>
    public static RobustLine Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double confidence = 0.95)
    {
        if (x.Length != y.Length || x.Length > MostPoints)
            throw new ArgumentException($"A robust line needs as many ordinates as abscissas, at most {MostPoints}.", nameof(y));
        if (!(confidence is > 0.5 and < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence));
        var n = x.Length;
        var slopes = new List<double>(n * (n - 1) / 2);
        for (var i = 0; i < n; i++)
        {
            for (var j = i + 1; j < n; j++)
            {
                if (x[i] != x[j])
                    slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
            }
        }

        if (slopes.Count == 0)
            throw new ArgumentException("A line needs two different abscissas.", nameof(x));
        slopes.Sort();
        var slope = Median(slopes);
        var intercept = Median([.. y.ToArray().Order()]) - (slope * Median([.. x.ToArray().Order()]));

        // Kendall's statistic is normal with this variance; ties among the abscissas and among the ordinates lower it (Sen, eq. 2.6).
        var z = Normal.InvCDF(0, 1, 1 - ((1 - confidence) / 2));
        var variance = ((n * (n - 1.0) * ((2 * n) + 5)) - Ties(x) - Ties(y)) / 18;
        var spread = z * Math.Sqrt(Math.Max(0, variance));
        var low = (int)Math.Round((slopes.Count - spread) / 2);
        var high = (int)Math.Round((slopes.Count + spread) / 2);
        return new(slope, intercept, slopes[Math.Clamp(low - 1, 0, slopes.Count - 1)], slopes[Math.Clamp(high, 0, slopes.Count - 1)]);
    }

    private static double Median(List<double> sorted) =>
        sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;

    private static double Ties(ReadOnlySpan<double> values) =>
        values.ToArray().GroupBy(v => v).Select(g => (double)g.Count()).Sum(k => k * (k - 1) * ((2 * k) + 5));
}
