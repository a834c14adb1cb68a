using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>A bar grouted into rock: bond to rock and to the bar, the weight of a cone of rock, and the bar itself.</summary>
/// <param name="HoleDiameterM">Diameter of the drilled hole, m.</param>
/// <param name="BondLengthM">Grouted length in sound rock, m; what lies over it is not counted.</param>
/// <param name="BarDiameterM">Bar diameter, m.</param>
public sealed record RockAnchor(double HoleDiameterM, double BondLengthM, double BarDiameterM) : Anchor
{
    private static readonly Source Cone = Source.FromMemory("Littlejohn and Bruce, Rock anchors: state of the art, 1977; 90° cone in sound rock, 60° where it is broken");

    /// <summary>Ultimate bond between grout and rock, Pa: weak shale or limestone about 0.5 MPa, sound granite 1.5 MPa and more; measure it.</summary>
    public double RockBondPa { get; init; } = 0.5e6;

    /// <summary>Ultimate bond between grout and a deformed bar, Pa.</summary>
    public double BarBondPa { get; init; } = 2.0e6;

    /// <summary>Full angle of the cone of rock at its tip, rad: 90° in sound rock, 60° where it is broken.</summary>
    public double ConeAngleRad { get; init; } = Math.PI / 3;

    /// <summary>Angle of the bar above level, rad; 90° straight up.</summary>
    public double BarAngleRad { get; init; } = Math.PI / 2;

    /// <summary>Yield strength of the bar, Pa.</summary>
    public double BarYieldPa { get; init; } = 420e6;

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        var t = duty.Pull.Total;
        var bondFs = GroundFactors.Trail("bond", duty.Factors.Bond);
        var length = Trail.Given("bond length", "l", BondLengthM, QuantityKind.Length, InputSource.Design);
        yield return AtMost(duty, "rock-bond", "Grout against sliding out of the rock", t, Bond("rock", HoleDiameterM, RockBondPa, length, bondFs), "Drill deeper into sound rock.");
        yield return AtMost(duty, "rock-bar-bond", "Bar against sliding out of the grout", t, Bond("bar", BarDiameterM, BarBondPa, length, bondFs), "Use a longer or thicker deformed bar.");
        yield return ConeCheck(duty);
        var fs = GroundFactors.Trail("steel", duty.Factors.Steel);
        var area = Trail.Given("cross-section of the bar", "A", Math.PI / 4 * BarDiameterM * BarDiameterM, QuantityKind.SectionArea, InputSource.Design);
        var fy = Trail.Given("yield strength of the bar", "fy", BarYieldPa, QuantityKind.Stress, InputSource.Design);
        yield return AtMost(
            duty, "rock-bar", "Bar in tension", t, Trail.Computed("allowable pull of the bar", "Ra", area.Value * fy.Value / fs.Value, QuantityKind.Force, "Ra = A·fy/FS", Source.CommonPractice, area, fy, fs),
            "Take a thicker bar; where it is threaded count the root of the thread.");
    }

    private static Trail Bond(string side, double diameterM, double bondPa, Trail length, Trail fs) => Trail.Computed(
        $"allowable pull by bond to the {side}", "Qa", Math.PI * diameterM * length.Value * bondPa / fs.Value, QuantityKind.Force, "Qa = π·d·l·τ/FS", Cone,
        Trail.Given("diameter", "d", diameterM, QuantityKind.FineLength, InputSource.Design), length,
        Trail.Given($"ultimate bond to the {side}", "τ", bondPa, QuantityKind.Pressure, InputSource.Design, "measure it by a proof pull"), fs)
        .Within("bond even over at most 10 m", length.Value > 10 ? "Bond beyond 10 m hardly adds." : null);

    private Check ConeCheck(AnchorDuty duty)
    {
        // The tip of the cone is taken at mid-bond; only rock, not the soil over it, is weighed, and no strength of the rock is counted.
        var depth = BondLengthM / 2 * Math.Sin(BarAngleRad);
        var half = Math.Tan(ConeAngleRad / 2);
        var gamma = duty.Soil.UnitWeight;
        var h = Trail.Computed(
            "depth of the cone's tip in rock", "h", depth, QuantityKind.Length, "h = l/2·sin β", Cone,
            Trail.Given("bond length", "l", BondLengthM, QuantityKind.Length, InputSource.Design), Trail.Given("angle of the bar above level", "β", BarAngleRad, QuantityKind.Angle, InputSource.Design));
        var cone = Trail.Computed(
            "weight of the cone of rock", "W", gamma.Value * Math.PI / 3 * half * half * Math.Pow(depth, 3), QuantityKind.Force, "W = γ·π/3·tan²(α/2)·h³", Cone, gamma, h, Trail.Given("angle of the cone", "α", ConeAngleRad, QuantityKind.Angle, InputSource.Design));
        var fs = GroundFactors.Trail("dead weight", duty.Factors.DeadWeight);
        return AtMost(
            duty, "rock-cone", "Cone of rock against being lifted", duty.Pull.Up,
            Trail.Computed("allowable upward pull", "Va", cone.Value / fs.Value, QuantityKind.Force, "Va = W/FS", Source.CommonPractice, cone, fs).Remark("the rock's own strength is left out, which is far on the safe side in sound rock"),
            "Drill deeper; or show by a proof pull that the rock is sound.");
    }
}
