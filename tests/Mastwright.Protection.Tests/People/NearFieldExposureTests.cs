using System.Numerics;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Protection.People;

namespace Mastwright.Protection.Tests.People;

/// <summary>Near-field exposure with the exact field of a short upright dipole in a perfect plane (Hertz; any antenna text) as the antenna.</summary>
public class NearFieldExposureTests
{
    // Field at height z and distance r of a short monopole radiating P: the far field on the ground is √(90 P)/r, the near terms follow Hertz.
    private static FieldStrength ShortMonopole(Vec3 p, double frequencyHz, double powerW)
    {
        const double eta = 376.730313668;
        var k = 2 * Math.PI * frequencyHz / 299792458.0;
        var r = Math.Max(p.Length, 0.05);
        var cos = p.Z / r;
        var sin = Math.Sqrt(1 - (cos * cos));
        var e0 = Math.Sqrt(90 * powerW) / r;
        var kr = new Complex(0, k * r);
        var eTheta = e0 * sin * Complex.Abs(1 + (1 / kr) + (1 / (kr * kr)));
        var eR = 2 * e0 * cos * Complex.Abs((1 / kr) + (1 / (kr * kr)));
        var h = e0 / eta * sin * Complex.Abs(1 + (1 / kr));
        return new(Math.Sqrt((eTheta * eTheta) + (eR * eR)), h);
    }

    private static NearFieldRequest Request(double frequencyHz, double powerW, double duty = 1) => new(
        p => ShortMonopole(p, frequencyHz, 100), 100, new(frequencyHz, powerW, 3, duty), Vec3.Zero, 0.5, 400)
    { Bearings = 3, BodyHeightsM = [0.0] };

    // Far out the plane-wave estimate with gain 3 (short monopole over a perfect plane) must come back.
    [Fact]
    public void Far_out_it_meets_the_far_field_estimate()
    {
        var request = Request(28.5e6, 400e3);
        var near = NearFieldExposure.Distances(request, Population.Public).Single(d => d.Limit.Rule == ExposureRule.Fcc1310);
        var far = FarFieldExposure.Distance(request.Emission, near.Limit, GroundReflection.InGain);
        Assert.Equal(1, near.Governing.Value / far.DistanceM.Value, 0.04);
    }

    // The distance found for each field is where the exact field crosses the limit.
    [Theory]
    [InlineData(1.85e6)]
    [InlineData(7.1e6)]
    public void Each_distance_is_where_its_own_field_crosses(double frequencyHz)
    {
        var request = Request(frequencyHz, 1500);
        foreach (var d in NearFieldExposure.Distances(request, Population.Public))
        {
            var atE = ShortMonopole(new(d.ElectricM.Value, 0, 0), frequencyHz, 1500);
            Assert.InRange(atE.ElectricVPerM / d.Limit.ElectricVPerM.Value, 0.9, 1.0001);
            if (d.MagneticM.Value > 0)
                Assert.InRange(ShortMonopole(new(d.MagneticM.Value, 0, 0), frequencyHz, 1500).MagneticAPerM / d.Limit.MagneticAPerM.Value, 0.9, 1.0001);
        }
    }

    [Fact]
    public void Electric_and_magnetic_distances_differ_close_in()
    {
        var d = NearFieldExposure.Distances(Request(1.85e6, 1500), Population.Public).Single(x => x.Limit.Rule == ExposureRule.Fcc1310);
        Assert.True(d.ElectricM.Value > 1.2 * d.MagneticM.Value);
    }

    [Fact]
    public void Duty_counts_for_averaged_limits_only()
    {
        double At(double duty, ExposureRule rule) => NearFieldExposure.Distances(Request(3.6e6, 1500, duty), Population.Public).Single(d => d.Limit.Rule == rule).Governing.Value;
        Assert.True(At(0.2, ExposureRule.IcnirpWholeBody) < At(1, ExposureRule.IcnirpWholeBody));
        Assert.Equal(At(1, ExposureRule.IcnirpStimulation), At(0.2, ExposureRule.IcnirpStimulation));
    }

    [Fact]
    public void A_range_too_short_is_told()
    {
        var request = Request(3.6e6, 1500) with { FarthestM = 1 };
        Assert.Contains(NearFieldExposure.Distances(request, Population.Public).SelectMany(d => d.Findings), f => f.Code == "exposure-beyond-range");
    }

    [Fact]
    public void A_low_fence_is_leant_over_and_high_voltage_asks_for_seven_feet()
    {
        Assert.Equal(1, RfBurn.ReachOver(1.8).Value, 1e-12);
        Assert.Equal(1.5, RfBurn.ReachOver(1.0).Value, 1e-12);
        Assert.Equal(1, RfBurn.ReachOver(null).Value, 1e-12);
        var volts = Trail.Given("base voltage", "U", 1500, QuantityKind.RmsVoltage, Source.DesignFile);
        // NFPA 70 110.31, from memory: 7 ft above 1000 V.
        Assert.Equal(Verdict.Caution, RfBurn.HeightCheck(1.8, volts)!.Verdict);
        Assert.Equal(Verdict.Pass, RfBurn.HeightCheck(2.6, volts)!.Verdict);
        Assert.Null(RfBurn.HeightCheck(1.8, volts with { Value = 900 }));
    }

    [Fact]
    public void Fence_keeps_beyond_the_limits_and_an_arm_from_what_burns()
    {
        var volts = Trail.Given("base voltage", "U", 200, QuantityKind.RmsVoltage, Source.DesignFile);
        var burn = RfBurn.Checks([new("mast base", volts, 0.3), new("top guy", volts, 12)], Population.Public, 3.6e6, false);
        var check = Assert.Single(burn);
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(RfBurn.Caution, check.Caution);
        Assert.Equal(0.4, check.Demand.Value, 1e-12);
        var far = Trail.Given("distance", "R", 4.2, QuantityKind.Length, Source.DesignFile);
        Assert.Equal(4.2, RfBurn.FenceRadius([far], 0.5).Value);
        Assert.Equal(3.5, RfBurn.FenceRadius([], 2.5).Value);
        Assert.Equal(Verdict.Fail, RfBurn.FenceCheck(far, RfBurn.FenceRadius([far], 4)).Verdict);
    }
}
