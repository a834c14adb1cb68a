using Mastwright.Model.Trails;

namespace Mastwright.Protection.Earthing;

/// <summary>Resistance to remote earth of the usual electrodes in uniform soil by hand formulas (Dwight 1936; IEEE Std 142 table), in ohms.</summary>
public static class EarthElectrode
{
    private static readonly Source Dwight = Source.FromMemory("Dwight, Calculation of resistances to ground, AIEE Trans. 55", "1936");

    // Arms, m in ρ/(m π L), and the constants of the star formulas.
    private static readonly (int Arms, double M, double C0, double C1, double C2, double C4)[] Stars =
    [
        (3, 6, 1.071, -0.209, 0.238, -0.054),
        (4, 8, 2.912, -1.071, 0.645, -0.145),
        (6, 12, 6.851, -3.128, 1.758, -0.490),
        (8, 16, 10.98, -5.51, 3.26, -1.17),
    ];

    /// <summary>Numbers of arms for which a star formula exists.</summary>
    public static ReadOnlySpan<int> StarArms => [2, 3, 4, 6, 8];

    /// <summary>Driven rod: ρ/(2πL)(ln(4L/a) − 1).</summary>
    public static Trail Rod(double resistivityOhmM, double lengthM, double radiusM) =>
        Ohms("resistance of the rod", resistivityOhmM / (2 * Math.PI * lengthM) * (Math.Log(4 * lengthM / radiusM) - 1), "R = ρ/(2πL)·(ln(4L/a) − 1)",
            Soil(resistivityOhmM), Length(lengthM), Radius(radiusM));

    /// <summary>Two equal rods side by side.</summary>
    public static Trail TwoRods(double resistivityOhmM, double lengthM, double radiusM, double spacingM)
    {
        var (l, s) = (lengthM, spacingM);
        var value = s > l
            ? (resistivityOhmM / (4 * Math.PI * l) * (Math.Log(4 * l / radiusM) - 1))
                + (resistivityOhmM / (4 * Math.PI * s) * (1 - (l * l / (3 * s * s)) + (2 * Math.Pow(l / s, 4) / 5)))
            : Near(resistivityOhmM, l, radiusM, s);
        return Ohms("resistance of two rods", value, s > l ? "R = ρ/(4πL)(ln(4L/a) − 1) + ρ/(4πs)(1 − L²/3s² + 2L⁴/5s⁴)" : "R = ρ/(4πL)[ln(4L/a) + ln(4L/s) − 2 + s/2L − s²/16L² + s⁴/512L⁴]",
            Soil(resistivityOhmM), Length(l), Radius(radiusM), Trail.Given("spacing", "s", s, QuantityKind.Length, Source.DesignFile));
    }

    /// <summary>Straight buried wire, fed at its middle or anywhere.</summary>
    /// <param name="resistivityOhmM">Soil resistivity in Ω·m.</param>
    /// <param name="totalLengthM">Whole length in metres.</param>
    /// <param name="radiusM">Wire radius in metres.</param>
    /// <param name="depthM">Depth in metres, positive.</param>
    public static Trail BuriedWire(double resistivityOhmM, double totalLengthM, double radiusM, double depthM) =>
        Ohms("resistance of the buried wire", Near(resistivityOhmM, totalLengthM / 2, radiusM, 2 * depthM),
            "R = ρ/(4πL)[ln(4L/a) + ln(4L/s) − 2 + s/2L − s²/16L² + s⁴/512L⁴], 2L long, s = 2·depth",
            Soil(resistivityOhmM), Length(totalLengthM / 2), Radius(radiusM), Depth(depthM))
            .Within("depth small against length", 2 * depthM > totalLengthM / 2 ? "The wire lies deeper than half its half-length." : null);

    /// <summary>Star of equal buried arms; 2 arms are at a right angle. Null when no formula exists for that number.</summary>
    /// <param name="arms">2, 3, 4, 6 or 8.</param>
    /// <param name="resistivityOhmM">Soil resistivity in Ω·m.</param>
    /// <param name="armLengthM">Length of an arm in metres.</param>
    /// <param name="radiusM">Wire radius in metres.</param>
    /// <param name="depthM">Depth in metres, positive.</param>
    public static Trail? Star(int arms, double resistivityOhmM, double armLengthM, double radiusM, double depthM)
    {
        var found = arms == 2 ? (2, 4, -0.2373, 0.2146, 0.1035, -0.0424) : Stars.FirstOrDefault(s => s.Arms == arms);
        if (found.Item1 != arms || arms == 0)
            return null;
        var (_, m, c0, c1, c2, c4) = found;
        var s = 2 * depthM;
        var x = s / armLengthM;
        var value = resistivityOhmM / (m * Math.PI * armLengthM)
            * (Math.Log(2 * armLengthM / radiusM) + Math.Log(2 * armLengthM / s) + c0 + (c1 * x) + (c2 * x * x) + (c4 * x * x * x * x));
        return Ohms($"resistance of a star of {arms} arms", value, $"R = ρ/({m}πL)[ln(2L/a) + ln(2L/s) + {c0} + {c1} s/L + {c2} (s/L)² + {c4} (s/L)⁴], s = 2·depth",
            Soil(resistivityOhmM), Length(armLengthM), Radius(radiusM), Depth(depthM))
            .Within("depth small against the arm", x > 1 ? "The arms lie deeper than half their length." : null);
    }

    /// <summary>Buried ring: ρ/(2π²D)(ln(8D/d) + ln(4D/s)).</summary>
    public static Trail Ring(double resistivityOhmM, double ringDiameterM, double wireRadiusM, double depthM)
    {
        var d = ringDiameterM;
        return Ohms("resistance of the ring", resistivityOhmM / (2 * Math.PI * Math.PI * d) * (Math.Log(8 * d / (2 * wireRadiusM)) + Math.Log(4 * d / (2 * depthM))),
            "R = ρ/(2π²D)(ln(8D/d) + ln(4D/s)), s = 2·depth", Soil(resistivityOhmM), Trail.Given("ring diameter", "D", d, QuantityKind.Length, Source.DesignFile), Radius(wireRadiusM), Depth(depthM));
    }

    /// <summary>Half ball in the surface: ρ/(2πr).</summary>
    public static Trail Hemisphere(double resistivityOhmM, double radiusM) =>
        Ohms("resistance of a half ball", resistivityOhmM / (2 * Math.PI * radiusM), "R = ρ/(2πr)", Soil(resistivityOhmM), Radius(radiusM));

    /// <summary>Flat disc on the surface: ρ/(4r).</summary>
    public static Trail SurfacePlate(double resistivityOhmM, double radiusM) =>
        Ohms("resistance of a plate on the surface", resistivityOhmM / (4 * radiusM), "R = ρ/(4r)", Soil(resistivityOhmM), Radius(radiusM));

    private static double Near(double rho, double l, double a, double s) =>
        rho / (4 * Math.PI * l) * (Math.Log(4 * l / a) + Math.Log(4 * l / s) - 2 + (s / (2 * l)) - (s * s / (16 * l * l)) + (s * s * s * s / (512 * l * l * l * l)));

    private static Trail Ohms(string name, double value, string formula, params ReadOnlySpan<Trail> inputs) =>
        Trail.Computed(name, "R", value, QuantityKind.Resistance, formula, Dwight, inputs).Remark("Uniform soil, low frequency.");

    private static Trail Soil(double v) => Trail.Given("soil resistivity", "ρ", v, QuantityKind.Resistivity, Source.DesignFile);

    private static Trail Length(double v) => Trail.Given("length", "L", v, QuantityKind.Length, Source.DesignFile);

    private static Trail Radius(double v) => Trail.Given("radius", "a", v, QuantityKind.FineLength, Source.DesignFile);

    private static Trail Depth(double v) => Trail.Given("depth", "s/2", v, QuantityKind.Length, Source.DesignFile);
}
