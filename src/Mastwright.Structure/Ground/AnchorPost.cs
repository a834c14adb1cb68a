using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>A post set in a drilled hole, standing above ground to hold the guys: Broms against sideways force, skin friction and weight against uplift, its section against bending.</summary>
/// <param name="Section">Section of the post above and below ground.</param>
/// <param name="EmbeddedM">Embedded length, m.</param>
/// <param name="PullHeightM">Height of the pull above ground, m.</param>
public sealed record AnchorPost(ShaftSection Section, double EmbeddedM, double PullHeightM) : Anchor
{
    private static readonly Source Shafts = Source.FromMemory("FHWA drilled shafts manual: side resistance, α = 0.55 without the upper 1.5 m in clay, K0·tan(0.75·φ) less a quarter for uplift in sand", "2010");

    /// <summary>Diameter of the hole when it is filled with concrete around the post, m; the post's own by default.</summary>
    public double HoleDiameterM { get; init; } = Section.DiameterM;

    /// <summary>Weight of the post and the concrete around it, N; 0 to count none.</summary>
    public double WeightN { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        var soil = duty.Soil;
        if (!soil.IsClay && !soil.IsSand)
        {
            yield return Unknown(duty, "post-lateral", "Post against turning in the ground", duty.Pull.Horizontal, "friction angle or undrained shear strength");
        }
        else
        {
            yield return Lateral(duty);
            yield return Bending(duty);
            yield return Uplift(duty);
        }

        if (soil.LateralPaPerM is { } lateral)
        {
            yield return CodeDepth(duty, lateral);
        }
    }

    private Check Lateral(AnchorDuty duty)
    {
        var strength = Section.NominalMoment(-duty.Pull.UpN).Value;
        var broms = Broms.FreeHead(duty.Soil, HoleDiameterM, EmbeddedM, PullHeightM, strength);
        var fs = GroundFactors.Trail("sideways failure of soil", duty.Factors.Lateral);
        return AtMost(
            duty, "post-lateral", "Post against turning in the ground", duty.Pull.Horizontal,
            Trail.Computed("allowable horizontal pull", "Ha", broms.Ultimate.Value / fs.Value, QuantityKind.Force, "Ha = Hu/FS", Source.CommonPractice, broms.Ultimate, fs)
                .Remark(broms.Mode == LateralMode.ShortPost ? "a short post: the soil gives way first" : "a long post: the post bends first"),
            broms.Mode == LateralMode.ShortPost ? "Set it deeper or in a wider hole, or bring the pull lower." : "Take a stronger post, fill it and put bars in it, or bring the pull lower.");
    }

    private Check Bending(AnchorDuty duty)
    {
        var demand = Broms.MomentUnder(duty.Soil, duty.Pull.Horizontal, HoleDiameterM, PullHeightM);
        var nominal = Section.NominalMoment(-duty.Pull.UpN);
        var fs = GroundFactors.Trail("sections of steel and concrete", duty.Factors.Steel);
        return AtMost(
            duty, "post-bending", "Post in bending", demand,
            Trail.Computed("allowable moment of the post", "Ma", nominal.Value / fs.Value, QuantityKind.Moment, "Ma = Mn/FS", Source.CommonPractice, nominal, fs), "Take a larger or thicker tube, fill it with concrete and bars, or bring the pull lower.");
    }

    private Check Uplift(AnchorDuty duty)
    {
        var soil = duty.Soil;
        var d = Trail.Given("diameter of the hole", "D", HoleDiameterM, QuantityKind.Length, InputSource.Design);
        var l = Trail.Given("embedded length", "L", EmbeddedM, QuantityKind.Length, InputSource.Design);
        var perimeter = Math.PI * HoleDiameterM;
        Trail friction;
        if (soil.IsClay)
        {
            const double idle = 1.5;
            friction = Trail.Computed(
                "friction of the soil on the shaft", "Qs", 0.55 * soil.UndrainedShearPa!.Value * perimeter * Math.Max(0, EmbeddedM - idle), QuantityKind.Force, "Qs = 0.55·cu·π·D·(L - 1.5 m)", Shafts, soil.UndrainedShear, d, l);
        }
        else
        {
            var k0 = EarthPressure.AtRest(soil);
            friction = Trail.Computed(
                "friction of the soil on the shaft", "Qs", 0.75 * k0.Value * Math.Tan(0.75 * soil.FrictionAngleRad!.Value) * soil.UnitWeight.Value * perimeter * EmbeddedM * EmbeddedM / 2, QuantityKind.Force,
                "Qs = 0.75·K0·tan(0.75·φ)·γ·π·D·L²/2", Shafts, k0, soil.FrictionAngle, soil.UnitWeight, d, l);
        }

        var weight = Trail.Given("weight of post and concrete", "W", WeightN, QuantityKind.Force, InputSource.Design);
        var fsSoil = GroundFactors.Trail("uplift in soil", duty.Factors.Uplift);
        var fsDead = GroundFactors.Trail("dead weight", duty.Factors.DeadWeight);
        return AtMost(
            duty, "post-uplift", "Post against being pulled out", duty.Pull.Up,
            Trail.Computed("allowable upward pull", "Va", (friction.Value / fsSoil.Value) + (weight.Value / fsDead.Value), QuantityKind.Force, "Va = Qs/FS + W/FS", Source.CommonPractice, friction, fsSoil, weight, fsDead),
            "Set it deeper, widen the foot of the hole, or move the anchor out so that the guy pulls flatter.");
    }

    /// <summary>The building code's embedment for a post not held at the ground (IBC 1807.3.2.1).</summary>
    private Check CodeDepth(AnchorDuty duty, double lateralPaPerM)
    {
        var need = RequiredDepth(duty.Pull.HorizontalN, lateralPaPerM, HoleDiameterM, PullHeightM);
        var source = Source.FromMemory("IBC section 1807.3.2.1", "2018");
        var trail = Trail.Computed(
            "embedment the code asks for", "d", need, QuantityKind.Length, "d = ½·A·(1 + √(1 + 4.36·h/A)), A = 2.34·P/(S1·b), S1 = S·d/3", source,
            duty.Pull.Horizontal, Trail.Given("allowable lateral bearing per depth", "S", lateralPaPerM, QuantityKind.UnitWeight, duty.Soil.Source),
            Trail.Given("width", "b", HoleDiameterM, QuantityKind.Length, InputSource.Design), Trail.Given("height of the pull", "h", PullHeightM, QuantityKind.Length, InputSource.Design))
            .Within("depth counted for pressure up to 12 ft", need / 3 > 12 * 0.3048 ? "The post is deeper than the code counts pressure for." : null);
        return AtMost(duty, "post-code-depth", "Post is as deep as the building code asks", trail, Trail.Given("embedded length", "L", EmbeddedM, QuantityKind.Length, InputSource.Design), "Set it deeper.");
    }

    /// <summary>Solves the code's formula, in which the allowable pressure S1 at a third of the depth itself grows with depth.</summary>
    internal static double RequiredDepth(double forceN, double lateralPaPerM, double widthM, double heightM)
    {
        double Formula(double depth)
        {
            var a = 2.34 * forceN / (lateralPaPerM * depth / 3 * widthM);
            return 0.5 * a * (1 + Math.Sqrt(1 + (4.36 * heightM / a)));
        }

        if (forceN <= 0)
        {
            return 0;
        }

        // Formula falls with depth, so formula(d) - d has one root.
        var (low, high) = (1e-3, 100.0);
        for (var i = 0; i < 80; i++)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Formula(middle) > middle ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
