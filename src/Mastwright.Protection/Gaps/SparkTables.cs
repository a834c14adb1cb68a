using System.Collections.Immutable;
using MathNet.Numerics.Interpolation;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// Published spark tables in SI units: sphere gaps of IEC 60052 (one sphere earthed, kV peak at 20 °C, 101.3 kPa, 8.5 g/m³;
/// alternating, direct and negative impulse voltage) and the AIEE needle gap (25 °C, 760 mmHg). Rows are joined by
/// monotone cubic pieces (Fritsch and Carlson), so the strength never falls as the spacing grows.
/// </summary>
public static class SparkTables
{
    /// <summary>One sphere size: spacings in metres and spark voltages in volts peak, both rising.</summary>
    /// <param name="DiameterM">Sphere diameter in metres.</param>
    /// <param name="SpacingM">Spacings in metres.</param>
    /// <param name="PeakV">Spark voltage at each spacing in volts peak.</param>
    public sealed record SphereRow(double DiameterM, ImmutableArray<double> SpacingM, ImmutableArray<double> PeakV)
    {
        private readonly CubicSpline _spline = CubicSpline.InterpolatePchipSorted([.. SpacingM], [.. PeakV]);

        /// <summary>Whether a spacing in metres lies inside this row.</summary>
        public bool Reaches(double spacingM) => spacingM >= SpacingM[0] && spacingM <= SpacingM[^1];

        /// <summary>Spark voltage in volts peak at a spacing inside the row.</summary>
        public double PeakVolts(double spacingM) => _spline.Interpolate(spacingM);
    }

    /// <summary>The rows for 2, 5, 6.25 and 10 cm spheres. Entries beyond half a diameter are the standard's bracketed, less certain ones.</summary>
    public static ImmutableArray<SphereRow> SphereRows { get; } =
    [
        Row(2,
            [.05, .10, .15, .20, .25, .30, .40, .50, .60, .70, .80, .90, 1.0, 1.2, 1.4, 1.5],
            [2.8, 4.7, 6.4, 8.0, 9.6, 11.2, 14.4, 17.4, 20.4, 23.2, 25.8, 28.3, 30.7, 35.1, 38.5, 40.0]),
        Row(5,
            [.20, .25, .30, .40, .50, .60, .70, .80, .90, 1.0, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.6, 2.8, 3.0, 3.5, 4.0],
            [8.0, 9.6, 11.2, 14.3, 17.4, 20.4, 23.4, 26.3, 29.2, 32.0, 37.6, 42.9, 45.5, 48.1, 53.0, 57.5, 61.5, 65.5, 69.0, 72.5, 75.5, 82.5, 88.5]),
        Row(6.25,
            [.50, .60, .70, .80, .90, 1.0, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.6, 2.8, 3.0, 3.5, 4.0, 4.5, 5.0],
            [17.2, 20.2, 23.2, 26.2, 29.1, 31.9, 37.5, 42.9, 45.5, 48.1, 53.5, 58.5, 63.0, 67.5, 72.0, 76.0, 79.5, 87.5, 95.0, 101, 107]),
        Row(10,
            [.50, .60, .70, .80, .90, 1.0, 1.2, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.6, 2.8, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 7.5],
            [16.8, 19.9, 23.0, 26.0, 28.9, 31.7, 37.4, 42.9, 45.5, 48.1, 53.5, 59.0, 64.5, 69.5, 74.5, 79.5, 84.0, 95.0, 105, 115, 123, 131, 138, 144, 150, 155]),
    ];

    private static readonly CubicSpline Needles = CubicSpline.InterpolatePchipSorted(
        [0, .0042, .0085, .0130, .0175, .0220, .0269, .0381, .0520, .0681, .111, .155],
        [0, 5e3, 10e3, 15e3, 20e3, 25e3, 30e3, 40e3, 50e3, 60e3, 80e3, 100e3]);

    /// <summary>Shortest spacing of the needle table in metres.</summary>
    public const double ShortestNeedleM = 0.0042;

    /// <summary>Longest spacing of the needle table in metres.</summary>
    public const double LongestNeedleM = 0.155;

    /// <summary>Air density relative to 20 °C, 101.3 kPa at which the needle table was taken (25 °C, 760 mmHg).</summary>
    public const double NeedleTableDensity = 293.15 / 298.15;

    /// <summary>Needle-gap spark voltage in volts peak at the table's own air; drawn on in a straight line beyond its ends.</summary>
    public static double NeedlePeakVolts(double spacingM) => spacingM <= LongestNeedleM
        ? Needles.Interpolate(spacingM)
        : 100e3 + ((spacingM - LongestNeedleM) * (20e3 / 0.044));

    /// <summary>
    /// Spark voltage in volts peak of spheres with one earthed, at reference air, by interpolation in spacing along a row and in the logarithm
    /// of the diameter between rows; null when the table does not hold the pair.
    /// </summary>
    public static double? SpherePeakVolts(double diameterM, double spacingM)
    {
        for (var i = 0; i < SphereRows.Length; i++)
        {
            if (Math.Abs(SphereRows[i].DiameterM - diameterM) < 1e-9)
                return SphereRows[i].Reaches(spacingM) ? SphereRows[i].PeakVolts(spacingM) : null;
        }

        for (var i = 1; i < SphereRows.Length; i++)
        {
            var (small, large) = (SphereRows[i - 1], SphereRows[i]);
            if (diameterM < small.DiameterM || diameterM > large.DiameterM)
                continue;
            if (!small.Reaches(spacingM) || !large.Reaches(spacingM))
                return null;
            var w = Math.Log(diameterM / small.DiameterM) / Math.Log(large.DiameterM / small.DiameterM);
            return ((1 - w) * small.PeakVolts(spacingM)) + (w * large.PeakVolts(spacingM));
        }

        return null;
    }

    private static SphereRow Row(double diameterCm, double[] spacingCm, double[] peakKv) =>
        new(diameterCm / 100, [.. spacingCm.Select(s => s / 100)], [.. peakKv.Select(u => u * 1000)]);
}
