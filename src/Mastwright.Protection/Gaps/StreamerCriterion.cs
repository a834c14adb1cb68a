using MathNet.Numerics.Integration;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// The voltage at which an electron avalanche along the axis of a gap grows into a streamer: the smallest U for which
/// the largest running ∫ ᾱ(E(x)) dx along the axis reaches K. In a gap that is near uniform
/// this is the spark voltage; in one that is not it is the onset of corona.
/// Dry air: ᾱ/p = 1.6053 (E/p − 2.165)² − 0.2873 in 1/(mm·bar) with E/p in kV/(mm·bar), K = 9.15 (Petcharaks, ETH Zürich 1995; from memory).
/// </summary>
public static class StreamerCriterion
{
    /// <summary>The streamer constant K.</summary>
    public const double StreamerConstant = 9.15;

    /// <summary>Streamer channels need about this average field to cross a gap, in V/m (positive streamers, 4.5 to 5 kV/cm).</summary>
    public const double StreamerGradientVPerM = 500e3;

    /// <summary>
    /// Streamer inception voltage in volts peak of a ball gap.
    /// </summary>
    /// <param name="radiusM">Ball radius in metres, positive.</param>
    /// <param name="spacingM">Gap in metres, positive.</param>
    /// <param name="facesPlate">True for a ball facing a plate, false for two equal balls at opposite potentials.</param>
    /// <param name="relativeDensity">Air density relative to 20 °C, 101.325 kPa.</param>
    public static double InceptionVolts(double radiusM, double spacingM, bool facesPlate, double relativeDensity)
    {
        // Two panels, the first short: the field falls fastest next to the ball.
        var split = Math.Min(0.5 * spacingM, 0.5 * radiusM);
        var (x, w) = Nodes(split, spacingM);
        var field = SphereImages.AxisFieldPerVolt(radiusM, spacingM, facesPlate, x);
        var pressureBar = 1.01325 * relativeDensity;
        var low = 0.0;
        var high = 1e4;
        while (Avalanche(high, field, w, pressureBar) < StreamerConstant)
            high *= 2;
        for (var i = 0; i < 60 && high - low > 1e-9 * high; i++)
        {
            var mid = 0.5 * (low + high);
            if (Avalanche(mid, field, w, pressureBar) < StreamerConstant)
                low = mid;
            else
                high = mid;
        }

        return 0.5 * (low + high);
    }

    /// <summary>
    /// Effective ionisation coefficient ᾱ in 1/m at a field in V/m and a pressure in bar: ionisation less attachment, negative below about
    /// 2.59 kV/(mm·bar), and held at its least value below 2.165.
    /// </summary>
    public static double EffectiveIonisationPerM(double fieldVPerM, double pressureBar)
    {
        var e = fieldVPerM * 1e-6 / pressureBar; // kV/(mm·bar)
        var above = Math.Max(0, e - 2.165);
        return 1000 * pressureBar * ((1.6053 * above * above) - 0.2873);
    }

    private static double Avalanche(double volts, double[] fieldPerVolt, double[] weightM, double pressureBar)
    {
        // The avalanche shrinks where the coefficient is negative: what counts is the largest it ever becomes on its way.
        var sum = 0.0;
        var largest = 0.0;
        for (var i = 0; i < weightM.Length; i++)
        {
            sum += weightM[i] * EffectiveIonisationPerM(volts * fieldPerVolt[i], pressureBar);
            largest = Math.Max(largest, sum);
        }

        return largest;
    }

    private static (double[] X, double[] W) Nodes(double split, double end)
    {
        const int n = 24;
        var rule = new GaussLegendreRule(0, 1, n);
        var x = new double[2 * n];
        var w = new double[2 * n];
        for (var i = 0; i < n; i++)
        {
            (x[i], w[i]) = (split * rule.GetAbscissa(i), split * rule.GetWeight(i));
            (x[n + i], w[n + i]) = (split + ((end - split) * rule.GetAbscissa(i)), (end - split) * rule.GetWeight(i));
        }

        return (x, w);
    }
}
