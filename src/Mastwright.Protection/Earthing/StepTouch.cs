using Mastwright.Model.Trails;

namespace Mastwright.Protection.Earthing;

/// <summary>Weight of the person in IEEE Std 80's limits.</summary>
public enum BodyWeight
{
    /// <summary>50 kg, k = 0.116.</summary>
    Kg50,

    /// <summary>70 kg, k = 0.157.</summary>
    Kg70,
}

/// <summary>
/// Step and touch voltage limits of IEEE Std 80 for power-frequency current. No published standard gives limits for the microseconds of a strike;
/// the ratio of the hazard, and where it falls off, is what these figures are for.
/// </summary>
public static class StepTouch
{
    private static readonly Source Ieee80 = Source.FromMemory("IEEE Std 80, Guide for safety in AC substation grounding", "2000");

    /// <summary>Surface-layer derating Cs = 1 − 0.09 (1 − ρ/ρs)/(2hs + 0.09).</summary>
    public static Trail SurfaceFactor(double soilOhmM, double layerOhmM, double layerM) =>
        Trail.Computed("surface-layer factor", "Cs", layerM <= 0 ? 1 : 1 - (0.09 * (1 - (soilOhmM / layerOhmM)) / ((2 * layerM) + 0.09)), QuantityKind.Ratio,
            "Cs = 1 − 0.09 (1 − ρ/ρs)/(2hs + 0.09)", Ieee80, Soil(soilOhmM), Trail.Given("layer resistivity", "ρs", layerOhmM, QuantityKind.Resistivity, Source.DesignFile),
            Trail.Given("layer thickness", "hs", layerM, QuantityKind.Length, Source.DesignFile));

    /// <summary>Step voltage limit (1000 + 6 Cs ρs) k/√t in volts rms.</summary>
    public static Trail StepLimit(Trail surfaceFactor, double layerOhmM, Trail durationS, BodyWeight weight) =>
        Limit("step voltage limit", "Estep", 6, surfaceFactor, layerOhmM, durationS, weight);

    /// <summary>Touch voltage limit (1000 + 1.5 Cs ρs) k/√t in volts rms.</summary>
    public static Trail TouchLimit(Trail surfaceFactor, double layerOhmM, Trail durationS, BodyWeight weight) =>
        Limit("touch voltage limit", "Etouch", 1.5, surfaceFactor, layerOhmM, durationS, weight);

    /// <summary>Voltage over one step of a metre beside a half-ball electrode: ρI/(2π)·(1/r − 1/(r + 1)), the hand formula beside the solved earth.</summary>
    public static Trail StepBesideHemisphere(double resistivityOhmM, Trail currentA, double distanceM) =>
        Trail.Computed("step voltage by hand", "Us", resistivityOhmM * currentA.Value / (2 * Math.PI) * ((1 / distanceM) - (1 / (distanceM + 1))), QuantityKind.PeakVoltage,
            "Us = ρ·I/(2π)·(1/r − 1/(r + 1 m))", Source.Derived("docs/theory/earth.md"), Soil(resistivityOhmM), currentA, Trail.Given("distance", "r", distanceM, QuantityKind.Length, Source.DesignFile));

    private static Trail Limit(string name, string symbol, double feet, Trail cs, double layerOhmM, Trail durationS, BodyWeight weight)
    {
        var k = weight == BodyWeight.Kg50 ? 0.116 : 0.157;
        return Trail.Computed(name, symbol, (1000 + (feet * cs.Value * layerOhmM)) * k / Math.Sqrt(durationS.Value), QuantityKind.RmsVoltage,
            $"{symbol} = (1000 + {feet}·Cs·ρs)·k/√t", Ieee80, cs, Trail.Given("layer resistivity", "ρs", layerOhmM, QuantityKind.Resistivity, Source.DesignFile),
            Trail.Given("body factor", "k", k, QuantityKind.Ratio, Ieee80), durationS)
            .Within("power frequency, 0.03 to 3 s", durationS.Value is < 0.03 or > 3 ? "The limit was established for 0.03 to 3 s of power-frequency current; for a strike it is an orientation only." : null);
    }

    private static Trail Soil(double v) => Trail.Given("soil resistivity", "ρ", v, QuantityKind.Resistivity, Source.DesignFile);
}
