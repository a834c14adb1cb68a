using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Ground;

/// <summary>One plate of a screw anchor.</summary>
/// <param name="DiameterM">Diameter, m.</param>
/// <param name="DepthM">Vertical depth of the plate below ground, m.</param>
public sealed record Helix(double DiameterM, double DepthM);

/// <summary>A screw anchor turned in along the guy: each helix pulls on its own, and the installation torque tells what was met.</summary>
/// <param name="Helices">Its plates.</param>
/// <param name="RatedN">Rated strength of shaft and eye, N.</param>
public sealed record ScrewAnchor(ImmutableArray<Helix> Helices, double RatedN) : Anchor
{
    private static readonly Source Plates = Source.FromMemory("individual plate bearing, Hoyt and Clemence 1989; Vesic's factors");
    private static readonly Source Correlation = Source.FromMemory("Hoyt and Clemence 1989, 12th ICSMFE: torque correlation");

    /// <summary>Torque measured over the last turns, N·m; null before it is in.</summary>
    public double? InstallationTorqueNm { get; init; }

    /// <summary>Uplift per torque, 1/m: 33 for square shafts up to 89 mm and round ones below, 23 for 89 mm round, 9.8 for 219 mm round.</summary>
    public double TorqueFactorPerM { get; init; } = 33;

    /// <inheritdoc/>
    public override IEnumerable<Check> Examine(AnchorDuty duty)
    {
        const string title = "Screw anchor against pull-out, from the soil";
        if (!duty.Soil.IsClay && !duty.Soil.IsSand)
        {
            yield return Unknown(duty, "screw-pull-out", title, duty.Pull.Total, "friction angle or undrained shear strength");
        }
        else
        {
            var ultimate = Ultimate(duty.Soil);
            var fs = GroundFactors.Trail("uplift in soil", duty.Factors.Uplift);
            yield return AtMost(
                duty, "screw-pull-out", title, duty.Pull.Total, Trail.Computed("allowable pull", "Qa", ultimate.Value / fs.Value, QuantityKind.Force, "Qa = Qu/FS", Source.CommonPractice, ultimate, fs),
                "Turn it in deeper, or take one with more or larger helices.");
        }

        if (InstallationTorqueNm is { } torque)
        {
            var t = Trail.Given("installation torque over the last turns", "Ti", torque, QuantityKind.Moment, InputSource.Design);
            var k = Trail.Given("uplift per torque", "Kt", TorqueFactorPerM, QuantityKind.Ratio, Correlation, "1/m; by shaft shape, a correlation and not a law");
            var fs = GroundFactors.Trail("screw anchors by torque", duty.Factors.ScrewTorque);
            yield return AtMost(
                duty, "screw-torque", "Screw anchor by its installation torque (correlation)", duty.Pull.Total,
                Trail.Computed("allowable pull by torque", "Qa", TorqueFactorPerM * torque / fs.Value, QuantityKind.Force, "Qa = Kt·Ti/FS", Correlation, k, t, fs).Within("a correlation from many installations; single anchors scatter widely, so proof-pull yours"),
                "Turn it in until the torque is enough, or add a second anchor; then proof-pull it.");
        }

        yield return AtMost(
            duty, "screw-steel", "Screw anchor's shaft and eye", duty.Pull.Total,
            Trail.Computed("allowable pull of shaft and eye", "Ra", RatedN / duty.Factors.Uplift, QuantityKind.Force, "Ra = R/FS", Source.CommonPractice, Trail.Given("rated ultimate strength", "R", RatedN, QuantityKind.Force, InputSource.Design), GroundFactors.Trail("rated strength", duty.Factors.Uplift)),
            "Take one of a higher rating.");
    }

    /// <summary>
    /// Ultimate pull: the sum over helices. Deep ones (over five diameters) bear as plates, cu·9 or q·Nq; shallow ones lift a body of
    /// soil (Meyerhof and Adams). Helices nearer than three diameters share soil and are flagged.
    /// </summary>
    public Trail Ultimate(Soil soil)
    {
        var parts = Helices.Select(h => Plate(soil, h)).ToArray();
        // Depths are vertical; along a shaft at 45° the same plates are 1/0.7 as far apart.
        var crowded = Helices.OrderBy(h => h.DepthM).Zip(Helices.OrderBy(h => h.DepthM).Skip(1)).Any(p => p.Second.DepthM - p.First.DepthM < 3 * Math.Max(p.First.DiameterM, p.Second.DiameterM) * 0.7);
        return Trail.Computed("ultimate pull of the screw anchor", "Qu", parts.Sum(p => p.Value), QuantityKind.Force, "Qu = Σ over helices", Plates, parts)
            .Within("helices at least three diameters apart along the shaft; no friction on the shaft", crowded ? "Helices stand too near each other to count each in full." : null);
    }

    private static Trail Plate(Soil soil, Helix helix)
    {
        if (helix.DepthM < 5 * helix.DiameterM)
        {
            return PlateUplift.Circle(soil, helix.DiameterM, helix.DepthM).Remark("shallow helix: under five diameters deep");
        }

        var a = Trail.Given("area of the helix", "A", Math.PI / 4 * helix.DiameterM * helix.DiameterM, QuantityKind.Area, InputSource.Design);
        if (soil.IsClay)
        {
            return Trail.Computed("ultimate pull of a helix", "Qh", 9 * soil.UndrainedShearPa!.Value * a.Value, QuantityKind.Force, "Qh = 9·cu·A", Plates, soil.UndrainedShear, a);
        }

        var z = Trail.Given("depth of the helix", "z", helix.DepthM, QuantityKind.Length, InputSource.Design);
        var gamma = soil.UnitWeight;
        var nq = BearingCapacity.Nq(soil);
        // Pressure from depth stops growing below the critical depth; ten diameters is the usual cut.
        var depth = Math.Min(helix.DepthM, 10 * helix.DiameterM);
        return Trail.Computed("ultimate pull of a helix", "Qh", gamma.Value * depth * nq.Value * a.Value, QuantityKind.Force, "Qh = γ·z·Nq·A, z counted to ten diameters", Plates, gamma, z, nq, a);
    }
}
