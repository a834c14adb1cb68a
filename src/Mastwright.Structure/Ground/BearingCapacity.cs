using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>Bearing capacity of a shallow footing by Meyerhof 1963: factors, shape and depth.</summary>
public static class BearingCapacity
{
    private static readonly Source Meyerhof = Source.FromMemory("Meyerhof 1963, Canadian Geotechnical Journal 1");

    /// <summary>Nq = e^(π tan φ) tan²(45° + φ/2).</summary>
    public static Trail Nq(Soil soil) => Trail.Computed(
        "bearing factor for depth", "Nq", NqOf(soil.FrictionAngleRad ?? 0), QuantityKind.Ratio, "Nq = e^(π·tan φ)·tan²(45° + φ/2)", Meyerhof, soil.FrictionAngle);

    /// <summary>Nc = (Nq - 1) cot φ, or 2 + π when φ is 0.</summary>
    public static Trail Nc(Soil soil)
    {
        var phi = soil.FrictionAngleRad ?? 0;
        return Trail.Computed("bearing factor for cohesion", "Nc", phi > 0 ? (NqOf(phi) - 1) / Math.Tan(phi) : 2 + Math.PI, QuantityKind.Ratio, "Nc = (Nq - 1)·cot φ, 2 + π for φ = 0", Meyerhof, soil.FrictionAngle);
    }

    /// <summary>Nγ = (Nq - 1) tan(1.4 φ).</summary>
    public static Trail Ngamma(Soil soil) => Trail.Computed(
        "bearing factor for weight", "Nγ", (NqOf(soil.FrictionAngleRad ?? 0) - 1) * Math.Tan(1.4 * (soil.FrictionAngleRad ?? 0)), QuantityKind.Ratio, "Nγ = (Nq - 1)·tan(1.4·φ)", Meyerhof, soil.FrictionAngle);

    /// <summary>Vesic's Nγ = 2 (Nq + 1) tan φ, for comparison.</summary>
    public static Trail NgammaVesic(Soil soil) => Trail.Computed(
        "bearing factor for weight", "Nγ", 2 * (NqOf(soil.FrictionAngleRad ?? 0) + 1) * Math.Tan(soil.FrictionAngleRad ?? 0), QuantityKind.Ratio, "Nγ = 2·(Nq + 1)·tan φ", Source.FromMemory("Vesic 1973, J. SMFD ASCE 99"), soil.FrictionAngle);

    /// <summary>Ultimate bearing pressure under a rectangle.</summary>
    /// <param name="soil">The soil.</param>
    /// <param name="widthM">Shorter side, reduced for eccentricity.</param>
    /// <param name="lengthM">Longer side, reduced for eccentricity.</param>
    /// <param name="depthM">Depth of the bottom below ground.</param>
    public static Trail Ultimate(Soil soil, double widthM, double lengthM, double depthM)
    {
        var (b, l) = (Math.Min(widthM, lengthM), Math.Max(widthM, lengthM));
        var width = Trail.Given("effective width", "B", b, QuantityKind.Length, InputSource.Design);
        var length = Trail.Given("effective length", "L", l, QuantityKind.Length, InputSource.Design);
        var depth = Trail.Given("depth of the bottom", "D", depthM, QuantityKind.Length, InputSource.Design);
        var gamma = soil.UnitWeight;
        var phi = soil.IsClay ? 0 : soil.FrictionAngleRad ?? 0;
        var used = soil with { FrictionAngleRad = phi };
        var kp = EarthPressure.Passive(used).Value;
        var sc = 1 + (0.2 * kp * b / l);
        var dc = 1 + (0.2 * Math.Sqrt(kp) * depthM / b);
        var s = phi > Math.PI / 18 ? 1 + (0.1 * kp * b / l) : 1;
        var d = phi > Math.PI / 18 ? 1 + (0.1 * Math.Sqrt(kp) * depthM / b) : 1;
        var (nc, nq, ng) = (Nc(used), Nq(used), Ngamma(used));
        var value = ((soil.UndrainedShearPa ?? 0) * nc.Value * sc * dc) + (gamma.Value * depthM * nq.Value * s * d) + (0.5 * gamma.Value * b * ng.Value * s * d);
        return Trail.Computed(
            "ultimate bearing pressure", "qu", value, QuantityKind.Pressure, "qu = cu·Nc·sc·dc + γ·D·Nq·sq·dq + ½·γ·B·Nγ·sγ·dγ", Meyerhof, soil.UndrainedShear, nc, gamma, depth, nq, width, length, ng)
            .Within("level ground, depth up to the width", depthM > b ? "The footing is deeper than wide; the depth factors run high there." : null);
    }

    private static double NqOf(double phi) => Math.Exp(Math.PI * Math.Tan(phi)) * Math.Pow(Math.Tan((Math.PI / 4) + (phi / 2)), 2);
}
