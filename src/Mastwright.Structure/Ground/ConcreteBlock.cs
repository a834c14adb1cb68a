using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>A block of concrete with the guy's eye on it: weight against lifting, friction and half of the passive pressure against sliding, weight against tipping.</summary>
/// <param name="LengthM">Length along the pull, m.</param>
/// <param name="WidthM">Width across the pull, m.</param>
/// <param name="HeightM">Height, m.</param>
/// <param name="TopDepthM">Depth of its top below ground, m; 0 when flush or proud.</param>
public sealed record ConcreteBlock(double LengthM, double WidthM, double HeightM, double TopDepthM) : Anchor
{
    /// <summary>Unit weight of the concrete, N/m³.</summary>
    public double ConcreteNPerM3 { get; init; } = 23.5e3;

    /// <summary>Depth of its bottom below ground, m, when it stands proud of the ground; its top depth plus height otherwise.</summary>
    public double? BottomDepthM { get; init; }

    /// <summary>Height of the eye over the block's bottom, m.</summary>
    public double EyeHeightM { get; init; } = HeightM;

    /// <summary>Distance of the eye from the edge nearest to the mast, m; the middle by default.</summary>
    public double EyeFromFrontM { get; init; } = LengthM / 2;

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        var weight = Weight(duty.Soil);
        var deadFs = GroundFactors.Trail("dead weight", duty.Factors.DeadWeight);
        yield return AtMost(
            duty, "block-uplift", "Block against being lifted", duty.Pull.Up,
            Trail.Computed("allowable upward pull", "Va", weight.Value / deadFs.Value, QuantityKind.Force, "Va = W/FS", Source.CommonPractice, weight, deadFs), "Make it heavier, or move it out so that the guy pulls flatter.");
        yield return Sliding(duty, weight);
        yield return Tipping(duty, weight);
    }

    private Trail Weight(Soil soil)
    {
        var gamma = Trail.Given("unit weight of concrete", "γc", ConcreteNPerM3, QuantityKind.UnitWeight, Source.CommonPractice);
        var buoyancy = soil.Submerged ? Soil.WaterNPerM3 : 0;
        var volume = Trail.Given("volume of the block", "Vc", LengthM * WidthM * HeightM, QuantityKind.Volume, InputSource.Design);
        var value = ((ConcreteNPerM3 - buoyancy) * volume.Value) + (soil.UnitWeight.Value * LengthM * WidthM * TopDepthM);
        return Trail.Computed(
            "weight of the block and the soil on it", "W", value, QuantityKind.Force, soil.Submerged ? "W = (γc - γw)·Vc + γ·L·B·z1" : "W = γc·Vc + γ·L·B·z1", Source.Literature("statics"), gamma, volume, soil.UnitWeight);
    }

    private Check Sliding(AnchorDuty duty, Trail weight)
    {
        var soil = duty.Soil;
        const string title = "Block against sliding";
        if (soil.BaseFriction is null && soil.BaseAdhesionPa is null)
        {
            return Unknown(duty, "block-sliding", title, duty.Pull.Horizontal, "friction or adhesion under a footing");
        }

        var net = Math.Max(0, weight.Value - duty.Pull.UpN);
        var friction = soil.BaseFriction is { } mu
            ? Trail.Computed(
                "friction under the block", "F", mu * net, QuantityKind.Force, "F = μ·(W - V)", Source.FromMemory("IBC table 1806.2", "2012"),
                Trail.Given("friction coefficient", "μ", mu, QuantityKind.Ratio, soil.Source), weight, duty.Pull.Up)
            : Trail.Computed(
                "adhesion under the block", "F", Math.Min(soil.BaseAdhesionPa!.Value * LengthM * WidthM, net / 2), QuantityKind.Force, "F = ca·L·B, at most half of W - V", Source.FromMemory("IBC section 1806.3.2", "2012"),
                Trail.Given("adhesion", "ca", soil.BaseAdhesionPa!.Value, QuantityKind.Pressure, soil.Source), weight, duty.Pull.Up);
        var bottom = BottomDepthM ?? TopDepthM + HeightM;
        Trail[] parts = [friction];
        if (bottom > 0 && (soil.IsClay || soil.IsSand))
        {
            var passive = EarthPressure.NetPassive(soil, Math.Max(0, bottom - HeightM), bottom);
            var width = Trail.Given("width across the pull", "B", WidthM, QuantityKind.Length, InputSource.Design);
            parts = [friction, Trail.Computed("half of the passive pressure on the face", "P", 0.5 * passive.Value * WidthM, QuantityKind.Force, "P = ½·Pn·B", Source.CommonPractice, passive, width).Remark("full passive pressure asks for more movement than a guy can afford")];
        }

        var fs = GroundFactors.Trail("sliding", duty.Factors.Sliding);
        return AtMost(
            duty, "block-sliding", title, duty.Pull.Horizontal,
            Trail.Computed("allowable horizontal pull", "Ha", parts.Sum(t => t.Value) / fs.Value, QuantityKind.Force, "Ha = (F + P)/FS", Source.CommonPractice, [.. parts, fs]),
            "Make it heavier or wider, or set it deeper against undisturbed soil.");
    }

    private Check Tipping(AnchorDuty duty, Trail weight)
    {
        var eye = Trail.Given("height of the eye over the bottom", "a", EyeHeightM, QuantityKind.Length, InputSource.Design);
        var front = Trail.Given("distance of the eye from the front edge", "x", EyeFromFrontM, QuantityKind.Length, InputSource.Design);
        var length = Trail.Given("length along the pull", "L", LengthM, QuantityKind.Length, InputSource.Design);
        var demand = Trail.Computed(
            "tipping moment about the front edge", "Mt", (duty.Pull.HorizontalN * EyeHeightM) + (duty.Pull.UpN * EyeFromFrontM), QuantityKind.Moment, "Mt = H·a + V·x", Source.Literature("statics"), duty.Pull.Horizontal, eye, duty.Pull.Up, front);
        var fs = GroundFactors.Trail("tipping over", duty.Factors.Overturning);
        return AtMost(
            duty, "block-tipping", "Block against tipping", demand,
            Trail.Computed("allowable tipping moment", "Ma", weight.Value * LengthM / 2 / fs.Value, QuantityKind.Moment, "Ma = W·L/(2·FS)", Source.Literature("statics"), weight, length, fs),
            "Make it longer towards the mast, or bring the eye lower.");
    }
}
