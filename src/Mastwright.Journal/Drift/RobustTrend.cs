using MathNet.Numerics.Distributions;

namespace Mastwright.Journal.Drift;

/// <summary>A straight line through scattered points that a few wild ones cannot bend.</summary>
/// <param name="Slope">Median of the slopes between all pairs of points.</param>
/// <param name="Intercept">Value at x = 0: median of y less slope times median of x.</param>
/// <param name="SlopeLow">Lower confidence bound of the slope.</param>
/// <param name="SlopeHigh">Upper confidence bound of the slope.</param>
/// <param name="Confidence">The confidence of the bounds.</param>
public sealed record RobustTrend(double Slope, double Intercept, double SlopeLow, double SlopeHigh, double Confidence)
{
    /// <summary>Value of the line.</summary>
    public double At(double x) => Intercept + (Slope * x);

    /// <summary>
    /// The Theil-Sen line (Theil 1950; Sen, J. Am. Stat. Assoc. 63 (1968) 1379-1389, from memory): slope and bounds are
    /// order statistics of the pairwise slopes, the bounds from the variance of Kendall's count, ties in y taken into it.
    /// It withstands up to 29 % of wild points.
    /// </summary>
    /// <param name="x">Abscissae, at least two different ones.</param>
    /// <param name="y">Values.</param>
    /// <param name="confidence">Confidence of the bounds, above 0, below 1.</param>
    /// <returns>The line; null when all points lie at one x.</returns>
    public static RobustTrend? Through(IReadOnlyList<double> x, IReadOnlyList<double> y, double confidence = 0.95)
    {
        if (x.Count != y.Count) throw new ArgumentException("One value for each abscissa.", nameof(y));
        if (confidence is not (> 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "Above 0, below 1.");
        var slopes = new List<double>(x.Count * (x.Count - 1) / 2);
        for (var i = 0; i < x.Count; i++)
            for (var j = i + 1; j < x.Count; j++)
                if (x[i] != x[j]) slopes.Add((y[j] - y[i]) / (x[j] - x[i]));
        if (slopes.Count == 0) return null;
        slopes.Sort();
        var slope = Median(slopes);
        var n = (double)x.Count;
        var ties = Ties(x) + Ties(y);
        var deviation = Math.Sqrt(Math.Max(0, ((n * (n - 1) * ((2 * n) + 5)) - ties) / 18));
        var z = Normal.InvCDF(0, 1, (1 - confidence) / 2);
        var high = Math.Min((int)Math.Round((slopes.Count - (z * deviation)) / 2), slopes.Count - 1);
        var low = Math.Max((int)Math.Round((slopes.Count + (z * deviation)) / 2) - 1, 0);
        return new(slope, Median([.. y.Order()]) - (slope * Median([.. x.Order()])), slopes[low], slopes[high], confidence);
    }

    internal static double Median(IReadOnlyList<double> sorted) => sorted.Count % 2 == 1
        ? sorted[sorted.Count / 2]
        : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2;

    // Kendall's correction: t(t − 1)(2t + 5) for every group of t equal values.
    private static double Ties(IReadOnlyList<double> values) => values.GroupBy(v => v).Select(g => (double)g.Count()).Sum(t => t * (t - 1) * ((2 * t) + 5));
}
