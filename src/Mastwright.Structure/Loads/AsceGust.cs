using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Structure.Loads;

/// <summary>
/// Gust-effect factor of a flexible structure by ASCE 7 section 26.11.5, for a mast whose lowest frequency is below 1 Hz. The formulas of
/// the 2016 and the 2022 edition are the same; table 26.11-1 was given new profiles of the mean speed (b and α) in 2022. Both tables from memory.
/// </summary>
public static class AsceGust
{
    private const double FootM = 0.3048;
    private const double MphMPerS = 0.44704;
    private const double Peak = 3.4;

    /// <summary>Damping ratio of steel masts in wind; ASCE 7 commentary C26.11 gives 1 % for steel (from memory).</summary>
    public const double Damping = 0.01;

    /// <summary>The factor Gf; never below the 0.85 of a rigid structure.</summary>
    /// <param name="site">The wind; exposure B, C or D.</param>
    /// <param name="heightM">Height of the mast, m.</param>
    /// <param name="widthM">Width across the wind, m.</param>
    /// <param name="frequency">Lowest natural frequency.</param>
    /// <param name="edition">Year of the edition, 2016 or 2022.</param>
    public static Trail Flexible(WindSite site, double heightM, double widthM, Trail frequency, int edition)
    {
        var year = edition.ToString(CultureInfo.InvariantCulture);
        var source = Source.FromMemory($"ASCE 7-{edition % 100}, section 26.11.5", year);
        var (alpha, b, c, length, epsilon, least) = Terrain(site.Exposure, edition);
        var n = frequency.Value;
        var h = heightM / FootM;
        var z = Math.Max(0.6 * h, least);
        var intensity = c * Math.Pow(33 / z, 1.0 / 6);
        var scale = length * Math.Pow(z / 33, epsilon);
        var speed = b * Math.Pow(z / 33, alpha) * (88.0 / 60) * (site.SpeedMps / MphMPerS);
        var q = Math.Sqrt(1 / (1 + (0.63 * Math.Pow((h + (widthM / FootM)) / scale, 0.63))));
        var reduced = n * scale / speed;
        var resonance = 7.47 * reduced / Math.Pow(1 + (10.3 * reduced), 5.0 / 3);
        var along = n / speed;
        var r = Math.Sqrt(resonance * Lateral(4.6 * along * h) * Lateral(4.6 * along * widthM / FootM) * (0.53 + (0.47 * Lateral(15.4 * along * widthM / FootM))) / Damping);
        var root = Math.Sqrt(2 * Math.Log(3600 * n));
        var peak = root + (0.577 / root);
        var factor = 0.925 * (1 + (1.7 * intensity * Math.Sqrt((Peak * Peak * q * q) + (peak * peak * r * r)))) / (1 + (1.7 * Peak * intensity));
        return Trail.Computed(
            "gust-effect factor, flexible", "Gf", Math.Max(0.85, factor), QuantityKind.Ratio, "Gf = 0.925·(1 + 1.7·Iz·√(gQ²·Q² + gR²·R²))/(1 + 1.7·gv·Iz), not below 0.85", source,
            frequency, Trail.Computed("mean hourly speed at 0.6·h", "Vz", speed * FootM, QuantityKind.Speed, "Vz = b·(z/33)^α·V, z = 0.6·h in ft", Source.FromMemory($"ASCE 7-{edition % 100}, table 26.11-1", year)),
            Trail.Computed("intensity of turbulence", "Iz", intensity, QuantityKind.Ratio, "Iz = c·(33/z)^(1/6), z = 0.6·h in ft", source),
            Trail.Computed("background response", "Q", q, QuantityKind.Ratio, "Q = √(1/(1 + 0.63·((B + h)/Lz)^0.63))", source),
            Trail.Computed("resonant response", "R", r, QuantityKind.Ratio, "R = √(Rn·Rh·RB·(0.53 + 0.47·RL)/β)", source),
            Trail.Given("damping ratio", "β", Damping, QuantityKind.Ratio, Source.FromMemory("ASCE 7 commentary C26.11: 1 % for steel", year)))
            .Within($"constants of table 26.11-1 of the {year} edition, from memory")
            .Remark("worked out because the mast answers the wind more slowly than 1 Hz");
    }

    private static double Lateral(double eta) => eta < 1e-6 ? 1 : (1 / eta) - ((1 - Math.Exp(-2 * eta)) / (2 * eta * eta));

    // Table 26.11-1, in feet, from memory.
    private static (double Alpha, double B, double C, double Length, double Epsilon, double Least) Terrain(string exposure, int edition) => (exposure.ToUpperInvariant(), edition >= 2022) switch
    {
        ("B", false) => (1 / 4.0, 0.45, 0.30, 320, 1 / 3.0, 30),
        ("B", true) => (1 / 4.5, 0.47, 0.30, 320, 1 / 3.0, 30),
        ("D", false) => (1 / 9.0, 0.80, 0.15, 650, 1 / 8.0, 7),
        ("D", true) => (1 / 8.0, 0.78, 0.15, 650, 1 / 8.0, 7),
        (_, false) => (1 / 6.5, 0.65, 0.20, 500, 1 / 5.0, 15),
        _ => (1 / 6.4, 0.66, 0.20, 500, 1 / 5.0, 15),
    };
}
