using Mastwright.Model.Trails;
using MathNet.Numerics.Interpolation;

namespace Mastwright.Protection.Gaps;

/// <summary>
/// The air in and around a gap. Dense (cold, low-lying) air holds more voltage, thin (hot, high) air less,
/// so a setting is judged with the thinnest air for holding off and the densest for firing.
/// </summary>
/// <param name="ElevationM">Height of the site above sea level in metres; −400 to 6000.</param>
/// <param name="TemperatureK">Air temperature in kelvin; 220 to 330.</param>
/// <param name="AbsoluteHumidityKgPerM3">Water vapour in the air in kg/m³; 0.0085 is the reference humidity of the spark tables.</param>
/// <param name="PressurePa">Station pressure in pascals when it was measured; null takes the standard atmosphere at the elevation.</param>
public sealed record AirState(
    double ElevationM,
    double TemperatureK = 293.15,
    double AbsoluteHumidityKgPerM3 = AirState.ReferenceHumidityKgPerM3,
    double? PressurePa = null)
{
    /// <summary>Pressure at sea level, and the reference pressure of the spark tables: 101 325 Pa.</summary>
    public const double ReferencePressurePa = 101325;

    /// <summary>Reference temperature of the spark tables: 20 °C.</summary>
    public const double ReferenceTemperatureK = 293.15;

    /// <summary>Reference humidity of the spark tables: 8.5 g/m³.</summary>
    public const double ReferenceHumidityKgPerM3 = 0.0085;

    /// <summary>Most humidity for which the sphere-gap correction was established: 12 g/m³; at more, water can settle on the spheres.</summary>
    public const double HighestHumidityKgPerM3 = 0.012;

    private static readonly Source Isa = Source.Standard("ISO 2533, Standard Atmosphere", "1975");
    private static readonly Source Iec60052 = Source.FromMemory("IEC 60052, Voltage measurement by means of standard air gaps", "2002");

    // k against relative density, IEC 60052 table; the last entry is printed 1.13 in one reprint and 1.12 in another.
    private static readonly CubicSpline DensityFactorTable = CubicSpline.InterpolatePchipSorted(
        [0.70, 0.75, 0.80, 0.85, 0.90, 0.95, 1.00, 1.05, 1.10, 1.15],
        [0.72, 0.77, 0.82, 0.86, 0.91, 0.95, 1.00, 1.05, 1.09, 1.13]);

    /// <summary>The reference air of the spark tables: 20 °C, 101.325 kPa, 8.5 g/m³.</summary>
    public static AirState Reference { get; } = new(0, ReferenceTemperatureK, ReferenceHumidityKgPerM3, ReferencePressurePa);

    /// <summary>Temperature of the standard atmosphere at an elevation in metres, in kelvin: 288.15 − 0.0065 h (ISO 2533).</summary>
    public static double StandardTemperatureK(double elevationM) => 288.15 - (0.0065 * elevationM);

    /// <summary>Pressure of the standard atmosphere at an elevation in metres, in pascals: 101325 (T/288.15)^5.255876 (ISO 2533).</summary>
    public static double StandardPressurePa(double elevationM) =>
        ReferencePressurePa * Math.Pow(StandardTemperatureK(elevationM) / 288.15, 5.255876);

    /// <summary>Relative air density δ = (p/101.325 kPa)·(293.15 K/T), with the trail of its pressure.</summary>
    public Trail RelativeDensity()
    {
        var elevation = Trail.Given("site elevation", "h", ElevationM, QuantityKind.Length, Source.DesignFile);
        var pressure = PressurePa is { } measured
            ? Trail.Given("station pressure", "p", measured, QuantityKind.Pressure, Source.DesignFile)
            : Trail.Computed("station pressure", "p", StandardPressurePa(ElevationM), QuantityKind.Pressure,
                "p = 101325 Pa · ((288.15 − 0.0065 h)/288.15)^5.255876", Isa, elevation)
                .Remark("Weather moves it by about ±3 %.");
        var temperature = Trail.Given("air temperature", "T", TemperatureK, QuantityKind.Temperature, Source.DesignFile);
        var value = pressure.Value / ReferencePressurePa * (ReferenceTemperatureK / TemperatureK);
        return Trail.Computed("relative air density", "δ", value, QuantityKind.Ratio,
            "δ = (p/101.325 kPa)·(293.15 K/T)", Iec60052, pressure, temperature);
    }

    /// <summary>The factor k(δ) by which a spark voltage at reference density is multiplied: IEC 60052 table, monotone interpolation; δ itself beyond the table.</summary>
    public Trail DensityFactor()
    {
        var density = RelativeDensity();
        var d = density.Value;
        var inside = d is >= 0.70 and <= 1.15;
        var k = inside ? DensityFactorTable.Interpolate(d) : d < 0.70 ? d * (0.72 / 0.70) : d * (1.13 / 1.15);
        return Trail.Computed("density factor", "k", k, QuantityKind.Ratio,
            "k = k(δ), table", Iec60052, density)
            .Within("δ from 0.70 to 1.15", inside ? null : $"Relative air density {d:0.000} is outside the correction table (0.70 to 1.15); k was taken in proportion to δ.");
    }

    /// <summary>The humidity factor of sphere gaps, 1 + 0.002 (h/δ − 8.5 g/m³) with h in g/m³ (IEC 60052).</summary>
    public Trail HumidityFactor()
    {
        var density = RelativeDensity();
        var humidity = Trail.Given("absolute humidity", "h", AbsoluteHumidityKgPerM3, QuantityKind.Density, Source.DesignFile);
        var value = 1 + (0.002 * ((1000 * AbsoluteHumidityKgPerM3 / density.Value) - 8.5));
        return Trail.Computed("humidity factor", "kh", value, QuantityKind.Ratio,
            "kh = 1 + 0.002 (h/δ − 8.5), h in g/m³", Iec60052, humidity, density)
            .Within("up to 12 g/m³, no dew", AbsoluteHumidityKgPerM3 > HighestHumidityKgPerM3
                ? $"Humidity of {1000 * AbsoluteHumidityKgPerM3:0.0} g/m³ is above the 12 g/m³ for which the correction was established." : null);
    }
}
