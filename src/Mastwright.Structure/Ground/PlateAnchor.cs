using Mastwright.Model.Trails;

namespace Mastwright.Structure.Ground;

/// <summary>A plate or slab buried square to the guy's rod, pulled along it.</summary>
/// <param name="WidthM">Width, m.</param>
/// <param name="LengthM">Length, m.</param>
/// <param name="DepthM">Vertical depth of its middle below ground, m.</param>
public sealed record PlateAnchor(double WidthM, double LengthM, double DepthM) : Anchor
{
    private const string Cure = "Bury it deeper, or make it larger.";

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        const string id = "plate-pull-out";
        const string title = "Buried plate against pull-out";
        if (!duty.Soil.IsClay && !duty.Soil.IsSand)
        {
            yield return Unknown(duty, id, title, duty.Pull.Total, "friction angle or undrained shear strength");
            yield break;
        }

        var ultimate = PlateUplift.Rectangle(duty.Soil, WidthM, LengthM, DepthM);
        var fs = GroundFactors.Trail("uplift in soil", duty.Factors.Uplift);
        yield return AtMost(
            duty, id, title, duty.Pull.Total,
            Trail.Computed("allowable pull of the plate", "Qa", ultimate.Value / fs.Value, QuantityKind.Force, "Qa = Qu/FS", Source.CommonPractice, ultimate, fs)
                .Remark("the uplift of a level plate at this depth stands for a plate square to a slanting rod, which is on the safe side while the rod is steeper than 30°"),
            Cure);
    }
}
