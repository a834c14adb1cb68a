using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>Rankine's coefficients of earth pressure for level ground, and earth at rest.</summary>
public static class EarthPressure
{
    private static readonly Source Rankine = Source.Literature("Rankine 1857, in Terzaghi, Theoretical Soil Mechanics");

    /// <summary>Active: tan²(45° - φ/2).</summary>
    public static Trail Active(Soil soil) => Trail.Computed(
        "active earth pressure coefficient", "Ka", Math.Pow(Math.Tan((Math.PI / 4) - ((soil.FrictionAngleRad ?? 0) / 2)), 2), QuantityKind.Ratio, "Ka = tan²(45° - φ/2)", Rankine, soil.FrictionAngle);

    /// <summary>Passive: tan²(45° + φ/2).</summary>
    public static Trail Passive(Soil soil) => Trail.Computed(
        "passive earth pressure coefficient", "Kp", Math.Pow(Math.Tan((Math.PI / 4) + ((soil.FrictionAngleRad ?? 0) / 2)), 2), QuantityKind.Ratio, "Kp = tan²(45° + φ/2)", Rankine, soil.FrictionAngle);

    /// <summary>At rest: 1 - sin φ.</summary>
    public static Trail AtRest(Soil soil) => Trail.Computed(
        "earth pressure coefficient at rest", "K0", 1 - Math.Sin(soil.FrictionAngleRad ?? 0), QuantityKind.Ratio, "K0 = 1 - sin φ", Source.FromMemory("Jaky 1944"), soil.FrictionAngle);

    /// <summary>
    /// Passive less active thrust on a vertical face per metre of width, between two depths:
    /// sand ½ γ (z2² - z1²)(Kp - Ka); clay (z2 - z1)·(γ z + 2 cu) less the active side, never less than nothing.
    /// </summary>
    public static Trail NetPassive(Soil soil, double topM, double bottomM)
    {
        var top = Trail.Given("depth of the top of the face", "z1", topM, QuantityKind.Length, InputSource.Design);
        var bottom = Trail.Given("depth of the bottom of the face", "z2", bottomM, QuantityKind.Length, InputSource.Design);
        var gamma = soil.UnitWeight;
        var weight = 0.5 * gamma.Value * ((bottomM * bottomM) - (topM * topM));
        if (soil.IsClay)
        {
            var cohesion = 2 * soil.UndrainedShearPa!.Value * (bottomM - topM);
            // Clay that stands by itself does not push: the active side is cut off at nothing.
            var active = Math.Max(0, weight - cohesion);
            return Trail.Computed(
                "net passive thrust per width", "Pn", weight + cohesion - active, QuantityKind.LinearForce, "Pn = (½·γ·(z2² - z1²) + 2·cu·(z2 - z1)) - Pa, Pa not below 0", Rankine, gamma, soil.UndrainedShear, top, bottom);
        }

        var kp = Passive(soil);
        var ka = Active(soil);
        return Trail.Computed("net passive thrust per width", "Pn", weight * (kp.Value - ka.Value), QuantityKind.LinearForce, "Pn = ½·γ·(z2² - z1²)·(Kp - Ka)", Rankine, gamma, top, bottom, kp, ka);
    }
}
