using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>
/// A concrete beam buried across the pull. Sideways it is held by passive pressure (Teng 1962; the ends of a short one add
/// friction of the soil wedge), upwards by its own weight and the soil on it.
/// </summary>
/// <param name="LengthM">Length across the pull, m.</param>
/// <param name="HeightM">Height of the beam, m.</param>
/// <param name="ThicknessM">Thickness along the pull, m.</param>
/// <param name="TopDepthM">Depth of its top below ground, m.</param>
public sealed record Deadman(double LengthM, double HeightM, double ThicknessM, double TopDepthM) : Anchor
{
    private static readonly Source Teng = Source.FromMemory("Teng, Foundation Design, 1962, anchors of limited length");

    /// <summary>Unit weight of the concrete, N/m³.</summary>
    public double ConcreteNPerM3 { get; init; } = 23.5e3;

    /// <summary>Coefficient of earth pressure at rest used on the ends of a short deadman (Teng takes 0.4).</summary>
    public double AtRestCoefficient { get; init; } = 0.4;

    /// <summary>Steel area on the tension face at the middle, m²; null when its bending is not to be checked.</summary>
    public double? BarAreaM2 { get; init; }

    /// <summary>Yield strength of the bars, Pa.</summary>
    public double BarYieldPa { get; init; } = 420e6;

    /// <summary>Concrete cover to the middle of the bars, m.</summary>
    public double CoverM { get; init; } = 0.075;

    private double BottomDepthM => TopDepthM + HeightM;

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        if (!duty.Soil.IsClay && !duty.Soil.IsSand)
        {
            yield return Unknown(duty, "deadman-pull", "Deadman against being dragged", duty.Pull.Horizontal, "friction angle or undrained shear strength");
        }
        else
        {
            var ultimate = Ultimate(duty.Soil);
            var fs = GroundFactors.Trail("sideways failure of soil", duty.Factors.Lateral);
            yield return AtMost(
                duty, "deadman-pull", "Deadman against being dragged", duty.Pull.Horizontal,
                Trail.Computed("allowable horizontal pull", "Ha", ultimate.Value / fs.Value, QuantityKind.Force, "Ha = Tu/FS", Source.CommonPractice, ultimate, fs), "Make it longer or bury it deeper.");
        }

        yield return Uplift(duty);
        if (BarAreaM2 is { } bars)
        {
            yield return Bending(duty, bars);
        }
    }

    /// <summary>Ultimate horizontal pull: with the top within half of its bottom's depth it counts as reaching the surface.</summary>
    public Trail Ultimate(Soil soil)
    {
        var length = Trail.Given("length across the pull", "L", LengthM, QuantityKind.Length, InputSource.Design);
        var bottom = Trail.Given("depth of the bottom", "H", BottomDepthM, QuantityKind.Length, InputSource.Design);
        var reachesSurface = TopDepthM <= BottomDepthM / 2;
        var face = EarthPressure.NetPassive(soil, reachesSurface ? 0 : TopDepthM, BottomDepthM);
        if (!reachesSurface)
        {
            return Trail.Computed("ultimate horizontal pull of the deadman", "Tu", LengthM * face.Value, QuantityKind.Force, "Tu = L·Pn over its own height (deep)", Teng, length, face);
        }

        double ends;
        string formula;
        if (soil.IsClay)
        {
            ends = 2 * soil.UndrainedShearPa!.Value * BottomDepthM * BottomDepthM;
            formula = "Tu = L·Pn + 2·cu·H² (ends)";
        }
        else
        {
            var (kp, ka) = (EarthPressure.Passive(soil).Value, EarthPressure.Active(soil).Value);
            ends = AtRestCoefficient * soil.UnitWeight.Value / 3 * (Math.Sqrt(kp) + Math.Sqrt(ka)) * Math.Pow(BottomDepthM, 3) * Math.Tan(soil.FrictionAngleRad!.Value);
            formula = "Tu = L·Pn + K0·γ/3·(√Kp + √Ka)·H³·tan φ (ends)";
        }

        return Trail.Computed("ultimate horizontal pull of the deadman", "Tu", (LengthM * face.Value) + ends, QuantityKind.Force, formula, Teng, length, face, bottom, soil.UnitWeight, soil.IsClay ? soil.UndrainedShear : soil.FrictionAngle)
            .Within("ground level and undisturbed towards the mast for three times the depth");
    }

    private Check Uplift(AnchorDuty duty)
    {
        var buoyancy = duty.Soil.Submerged ? Soil.WaterNPerM3 : 0;
        var concrete = Trail.Computed(
            "weight of the beam", "Wc", (ConcreteNPerM3 - buoyancy) * LengthM * HeightM * ThicknessM, QuantityKind.Force, duty.Soil.Submerged ? "Wc = (γc - γw)·L·h·t" : "Wc = γc·L·h·t", Source.Literature("statics"),
            Trail.Given("unit weight of concrete", "γc", ConcreteNPerM3, QuantityKind.UnitWeight, Source.CommonPractice));
        var soil = Trail.Computed(
            "weight of soil on the beam", "Ws", duty.Soil.UnitWeight.Value * LengthM * ThicknessM * TopDepthM, QuantityKind.Force, "Ws = γ·L·t·z1", Source.Literature("statics"), duty.Soil.UnitWeight);
        var fs = GroundFactors.Trail("dead weight", duty.Factors.DeadWeight);
        return AtMost(
            duty, "deadman-uplift", "Deadman against being lifted", duty.Pull.Up,
            Trail.Computed("allowable upward pull", "Va", (concrete.Value + soil.Value) / fs.Value, QuantityKind.Force, "Va = (Wc + Ws)/FS", Source.CommonPractice, concrete, soil, fs).Remark("friction on the sides not counted"),
            "Make it heavier, bury it deeper, or move the anchor out so that the guy pulls flatter.");
    }

    private Check Bending(AnchorDuty duty, double bars)
    {
        var length = Trail.Given("length across the pull", "L", LengthM, QuantityKind.Length, InputSource.Design);
        var moment = Trail.Computed("moment at the middle, rod in the middle, even soil pressure", "M", duty.Pull.TotalN * LengthM / 8, QuantityKind.Moment, "M = T·L/8", Source.Literature("statics"), duty.Pull.Total, length);
        var lever = 0.9 * (ThicknessM - CoverM);
        var fs = GroundFactors.Trail("steel", duty.Factors.Steel);
        var capacity = Trail.Computed(
            "allowable moment of the bars", "Ma", bars * BarYieldPa * lever / fs.Value, QuantityKind.Moment, "Ma = As·fy·0.9·d/FS", Source.CommonPractice,
            Trail.Given("steel area", "As", bars, QuantityKind.SectionArea, InputSource.Design), Trail.Given("yield strength of the bars", "fy", BarYieldPa, QuantityKind.Stress, InputSource.Design),
            Trail.Given("depth to the bars", "d", ThicknessM - CoverM, QuantityKind.Length, InputSource.Design), fs);
        return AtMost(duty, "deadman-bending", "Deadman as a beam", moment, capacity, "Put more steel on the tension face, the one away from the mast, or make it thicker.");
    }
}
