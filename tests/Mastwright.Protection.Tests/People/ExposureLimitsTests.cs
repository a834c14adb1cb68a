using Mastwright.Protection.People;

namespace Mastwright.Protection.Tests.People;

/// <summary>Limits against the regulation's own table and the guideline's, and the estimate against OET 65.</summary>
public class ExposureLimitsTests
{
    // 47 CFR 1.1310 table 1 and ICNIRP 2020 table 5 evaluated outside: f, FCC occupational E, H, public E, H, ICNIRP occupational E, H, public E, H.
    [Theory]
    [InlineData(1.85, new[] { 614.0, 1.63, 445.405, 1.18378, 429.0656, 2.64865, 195.0298, 1.18919 })]
    [InlineData(3.65, new[] { 504.658, 1.33973, 225.753, .60000, 266.6484, 1.34247, 121.2038, .60274 })]
    [InlineData(7.1, new[] { 259.437, .68873, 116.056, .30845, 167.3644, .69014, 76.0747, .30986 })]
    [InlineData(14.2, new[] { 129.718, .34437, 58.028, .15423, 103.0249, .34507, 46.8295, .15493 })]
    [InlineData(28.5, new[] { 64.632, .17158, 28.912, .07684, 63.2634, .17193, 28.7561, .07719 })]
    public void Limits_match_the_published_tables(double mhz, double[] values)
    {
        var i = 0;
        foreach (var rule in new[] { ExposureRule.Fcc1310, ExposureRule.IcnirpWholeBody })
        {
            foreach (var who in new[] { Population.Occupational, Population.Public })
            {
                var limit = ExposureLimits.For(rule, who, mhz * 1e6)!;
                Assert.Equal(1, limit.ElectricVPerM.Value / values[i++], 1e-5);
                Assert.Equal(1, limit.MagneticAPerM.Value / values[i++], 1e-4);
            }
        }
    }

    [Theory]
    [InlineData(Population.Public, 30)]
    [InlineData(Population.Occupational, 6)]
    public void Fcc_averaging_times(Population who, double minutes) =>
        Assert.Equal(minutes * 60, ExposureLimits.For(ExposureRule.Fcc1310, who, 7e6)!.AveragingS);

    // ICNIRP: 83 V/m is the lower of the two sets below 6.26909 MHz, 170 V/m below 6.94327 MHz (computed outside).
    [Theory]
    [InlineData(Population.Public, 6.26909)]
    [InlineData(Population.Occupational, 6.94327)]
    public void Stimulation_limit_governs_at_low_frequency(Population who, double crossingMhz)
    {
        foreach (var (mhz, lower) in new[] { (crossingMhz * 0.999, true), (crossingMhz * 1.001, false) })
        {
            var heat = ExposureLimits.For(ExposureRule.IcnirpWholeBody, who, mhz * 1e6)!;
            var nerve = ExposureLimits.For(ExposureRule.IcnirpStimulation, who, mhz * 1e6)!;
            Assert.Equal(lower, nerve.ElectricVPerM.Value < heat.ElectricVPerM.Value);
        }

        Assert.False(ExposureLimits.For(ExposureRule.IcnirpStimulation, who, 5e6)!.Averages);
        Assert.Null(ExposureLimits.For(ExposureRule.IcnirpStimulation, who, 14e6));
    }

    // OET Bulletin 65: 100 W, G 1.64, 10 m: 0.130507 W/m², 0.334098 with 2.56, 0.522028 with 4.
    [Theory]
    [InlineData(GroundReflection.InGain, .130507)]
    [InlineData(GroundReflection.Typical, .334098)]
    [InlineData(GroundReflection.Worst, .522028)]
    public void Power_density_follows_oet65(GroundReflection ground, double wPerM2) =>
        Assert.Equal(wPerM2, FarFieldExposure.PowerDensity(100, 1.64, 10, ground).Value, 1e-6);

    [Fact]
    public void At_the_distance_the_field_is_the_limit()
    {
        var emission = new Emission(28.5e6, 1500, 2.5, 0.4, 0.5);
        foreach (var d in FarFieldExposure.Distances(emission, Population.Public))
        {
            var power = emission.CountingPower(d.Limit).Value;
            var s = FarFieldExposure.PowerDensity(power, emission.Gain, d.DistanceM.Value, GroundReflection.Typical).Value;
            var e = Math.Sqrt(s * 376.730313668);
            Assert.Equal(1, Math.Max(e / d.Limit.ElectricVPerM.Value, e / 376.730313668 / d.Limit.MagneticAPerM.Value), 1e-3);
        }
    }

    [Fact]
    public void Instant_limits_ignore_the_duty_factor()
    {
        var quiet = new Emission(3.6e6, 1000, 1.5, 0.1, 0.1);
        var nerve = FarFieldExposure.Distances(quiet, Population.Public).Single(d => d.Limit.Rule == ExposureRule.IcnirpStimulation);
        var full = FarFieldExposure.Distances(quiet with { ModeDuty = 1, TransmitFraction = 1 }, Population.Public).Single(d => d.Limit.Rule == ExposureRule.IcnirpStimulation);
        Assert.Equal(full.DistanceM.Value, nerve.DistanceM.Value);
    }

    [Fact]
    public void Low_band_distances_carry_the_near_field_warning()
    {
        var all = FarFieldExposure.Distances(new Emission(1.85e6, 1500, 3), Population.Public);
        Assert.All(all, d => Assert.NotNull(d.DistanceM.OutOfRange));
    }
}
