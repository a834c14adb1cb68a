using Mastwright.Model.Trails;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// The voltage at which a short air gap sparks over, for direct, power-frequency and slow impulse voltage: from the published tables where they
/// reach, from the streamer criterion elsewhere.
/// </summary>
public static class GapBreakdown
{
    private const double LongestGapM = 0.25;

    private static readonly Source Iec60052 = Source.FromMemory("IEC 60052, Voltage measurement by means of standard air gaps", "2002");
    private static readonly Source Aiee = Source.Literature("AIEE standard needle-gap table, 25 °C, 760 mmHg", "as reprinted");
    private static readonly Source Streamer = Source.FromMemory("Petcharaks, Applicability of the streamer breakdown criterion, ETH Zürich", "1995");
    private static readonly Source PeekRf = Source.Literature("Peek, Dielectric Phenomena in High-Voltage Engineering: sphere gaps at 40 kHz against 60 Hz, as quoted", "1929");

    /// <summary>
    /// Spark voltage in volts peak, corrected for air density and humidity.
    /// </summary>
    /// <param name="electrodes">The electrodes.</param>
    /// <param name="spacingM">Spacing in metres, more than 0; beyond the tables the trail says so.</param>
    /// <param name="air">The air.</param>
    /// <exception cref="ArgumentOutOfRangeException">Spacing or diameter is not positive and finite.</exception>
    public static Trail PeakVolts(GapElectrodes electrodes, double spacingM, AirState air)
    {
        RequirePositive(spacingM, nameof(spacingM));
        var spacing = Trail.Given("gap spacing", "s", spacingM, QuantityKind.FineLength, Source.DesignFile);
        if (electrodes.IsSharp)
            return Needle(spacing, air);
        RequirePositive(electrodes.DiameterM, nameof(electrodes));
        var diameter = Trail.Given("ball diameter", "D", electrodes.DiameterM, QuantityKind.FineLength, Source.DesignFile);
        var table = electrodes.FacesPlate ? null : SparkTables.SpherePeakVolts(electrodes.DiameterM, spacingM);
        return table is { } volts ? FromTable(volts, diameter, spacing, air) : FromStreamer(electrodes, diameter, spacing, air);
    }

    /// <summary>
    /// The uniform-field formula 24.22 δd + 6.08 √(δd) kV peak, d in cm (Kuffel, Zaengl and Kuffel; from memory), in volts. It lies 6 to 8 % below
    /// the sphere tables at 1 to 5 mm: a hand check, not what the window is set with.
    /// </summary>
    public static Trail UniformFieldPeakVolts(double spacingM, AirState air)
    {
        RequirePositive(spacingM, nameof(spacingM));
        var density = air.RelativeDensity();
        var dd = density.Value * spacingM * 100;
        return Trail.Computed("uniform-field spark voltage", "Us", 1e3 * ((24.22 * dd) + (6.08 * Math.Sqrt(dd))), QuantityKind.PeakVoltage,
            "Us = 24.22 δ·s + 6.08 √(δ·s) kV, s in cm",
            Source.FromMemory("Kuffel, Zaengl, Kuffel, High Voltage Engineering", "2000"),
            density, Trail.Given("gap spacing", "s", spacingM, QuantityKind.FineLength, Source.DesignFile))
            .Within("0.01 to 20 cm", spacingM is < 1e-4 or > 0.2 ? "Spacing is outside 0.1 mm to 0.2 m." : null);
    }

    /// <summary>
    /// How much lower the spark voltage is at radio frequency than at power frequency. Peek's 5 cm spheres at 40 kHz gave 0.74 at 1 mm and 0.88 at 10 mm;
    /// between them the ratio is taken straight against the logarithm of the spacing, outside at the nearer end. No table for MHz exists.
    /// </summary>
    public static Trail RadioFrequencyFactor(double spacingM)
    {
        RequirePositive(spacingM, nameof(spacingM));
        const double at1Mm = 3.65 / 4.95;
        const double at10Mm = 28 / 31.8;
        var t = Math.Clamp(Math.Log10(spacingM / 1e-3), 0, 1);
        var inside = spacingM is >= 1e-3 and <= 1e-2;
        return Trail.Computed("radio-frequency factor", "krf", at1Mm + (t * (at10Mm - at1Mm)), QuantityKind.Ratio,
            "krf = 0.737 + 0.143 log10(s/1 mm)", PeekRf, Trail.Given("gap spacing", "s", spacingM, QuantityKind.FineLength, Source.DesignFile))
            .Within("1 to 10 mm, 40 kHz; no published table reaches the MHz range",
                inside ? null : $"Spacing of {1000 * spacingM:0.0} mm is outside the two spacings (1 and 10 mm) at which the radio-frequency lowering was measured.");
    }

    private static Trail FromTable(double volts, Trail diameter, Trail spacing, AirState air)
    {
        var row = Trail.Computed("table spark voltage", "U0", volts, QuantityKind.PeakVoltage, "U0 = table(D, s), monotone interpolation", Iec60052, diameter, spacing)
            .Remark("One sphere earthed; 20 °C, 101.3 kPa, 8.5 g/m³; the standard's own uncertainty is 3 % to half a diameter.");
        var k = air.DensityFactor();
        var kh = air.HumidityFactor();
        var beyondHalf = spacing.Value > 0.5 * diameter.Value;
        return Trail.Computed("spark voltage", "Us", volts * k.Value * kh.Value, QuantityKind.PeakVoltage, "Us = U0·k·kh", Iec60052, row, k, kh)
            .Within("spacing up to half the ball diameter",
                beyondHalf ? "The spacing is more than half the ball diameter, where the sphere-gap table is less certain (bracketed values)." : null);
    }

    private static Trail FromStreamer(GapElectrodes electrodes, Trail diameter, Trail spacing, AirState air)
    {
        var density = air.RelativeDensity();
        var kh = air.HumidityFactor();
        var radius = 0.5 * diameter.Value;
        var s = spacing.Value;
        var inception = StreamerCriterion.InceptionVolts(radius, s, electrodes.FacesPlate, density.Value);
        var crossing = StreamerCriterion.StreamerGradientVPerM * s * density.Value;
        var factor = Trail.Computed("field factor", "f", SphereImages.FieldFactor(radius, s, electrodes.FacesPlate), QuantityKind.Ratio,
            "f = Emax·s/U, successive images", Source.Derived("docs/theory/spark-gap.md"), diameter, spacing);
        var onset = Trail.Computed("streamer inception voltage", "Ui", inception, QuantityKind.PeakVoltage,
            "∫ ᾱ(E/p) p dx = 9.15, ᾱ/p = 1.6053 (E/p − 2.165)² − 0.2873 per mm·bar", Streamer, factor, density, spacing);
        var range = electrodes.FacesPlate ? 0.5 : 0.75;
        var outside = s > range * diameter.Value
            ? $"The spacing is more than {range:0.##} of the ball diameter: the field is no longer near uniform, corona may come before the spark, and the figure is a lower bound."
            : s > LongestGapM ? "The spacing is beyond 250 mm; the streamer criterion is not meant for such long gaps." : null;
        return Trail.Computed("spark voltage", "Us", Math.Max(inception, crossing) * kh.Value, QuantityKind.PeakVoltage,
            "Us = max(Ui, 500 kV/m·δ·s)·kh", Source.Derived("docs/theory/spark-gap.md"), onset, kh)
            .Within($"spacing up to {range:0.##} of the ball diameter", outside)
            .Remark("The published sphere table does not hold this pair; the streamer criterion lies 0 to 5 % below the table where both exist.");
    }

    private static Trail Needle(Trail spacing, AirState air)
    {
        var density = air.RelativeDensity();
        var s = spacing.Value;
        var row = Trail.Computed("needle-gap spark voltage", "U0", SparkTables.NeedlePeakVolts(s), QuantityKind.PeakVoltage, "U0 = table(s), monotone interpolation", Aiee, spacing);
        var outside = s < SparkTables.ShortestNeedleM
            ? "The spacing is below the needle-gap table (4.2 mm); the value is drawn on towards zero."
            : s > SparkTables.LongestNeedleM ? "The spacing is beyond the needle-gap table (155 mm); the value is drawn on in a straight line." : null;
        return Trail.Computed("spark voltage", "Us", row.Value * density.Value / SparkTables.NeedleTableDensity, QuantityKind.PeakVoltage,
            "Us = U0·δ/0.983", Aiee, row, density)
            .Within("4.2 to 155 mm", outside)
            .Remark("Sharp points scatter widely and are raised by humidity; rods with cut ends hold somewhat more than needles. Rounded electrodes give a steadier gap.");
    }

    private static void RequirePositive(double value, string name)
    {
        if (!(value > 0) || double.IsInfinity(value))
            throw new ArgumentOutOfRangeException(name, value, "must be positive and finite");
    }
}
