using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>Waveforms against IEC 62305-1's parameters (within 1 %) and an adaptive quadrature done outside.</summary>
public class LightningCurrentsTests
{
    // Level I, adaptive quadrature (SciPy): crest, time of crest, charge, specific energy, greatest steepness, 30 to 90 % steepness.
    [Theory]
    [InlineData(StrokeKind.FirstPositive, 200.254e3, 31.4278e-6, 100.231, 1.02753e7, 27.3144e9, 20.7162e9)]
    [InlineData(StrokeKind.FirstNegative, 100.039e3, 3.55186e-6, 28.7176, 1.44497e6, 139.679e9, 102.749e9)]
    [InlineData(StrokeKind.Subsequent, 49.9881e3, .944181e-6, 7.17720, 1.79996e5, 279.035e9, 204.234e9)]
    public void Level_one_waveforms(StrokeKind kind, double crest, double at, double charge, double energy, double steepest, double mean)
    {
        var s = LightningCurrents.Of(LightningLevel.I, kind);
        Assert.Equal(1, s.CrestFoundA() / crest, 2e-5);
        Assert.Equal(1, s.CrestTimeS() / at, 2e-5);
        Assert.Equal(1, s.ChargeC() / charge, 2e-5);
        Assert.Equal(1, s.SpecificEnergyJPerOhm() / energy, 2e-5);
        Assert.Equal(1, s.GreatestSteepnessAPerS() / steepest, 2e-4);
        Assert.Equal(1, s.MeanSteepnessAPerS() / mean, 2e-4);
    }

    // IEC 62305-1 table 3: crest and charge of the first positive stroke, within 1 % of what the standard's own constants (19 µs, 485 µs, 0.93) integrate to.
    [Theory]
    [InlineData(LightningLevel.I, 200, 100)]
    [InlineData(LightningLevel.II, 150, 75)]
    [InlineData(LightningLevel.III, 100, 50)]
    [InlineData(LightningLevel.IV, 100, 50)]
    public void Standard_crest_and_charge_of_the_first_positive_stroke(LightningLevel level, double kiloamp, double coulomb)
    {
        var s = LightningCurrents.Of(level, StrokeKind.FirstPositive);
        Assert.Equal(1, s.CrestFoundA() / (kiloamp * 1e3), 0.01);
        Assert.Equal(1, s.ChargeC() / coulomb, 0.01);
    }

    // SciPy 1.10.1: quad in pieces (epsrel 1e-13) and Simpson over two million points in the logarithm of time, which agree to 14 digits.
    [Theory]
    [InlineData(StrokeKind.FirstPositive, 100.23140986409223, 10275326.573711982)]
    [InlineData(StrokeKind.FirstNegative, 28.717638076853503, 1444971.1716210665)]
    [InlineData(StrokeKind.Subsequent, 7.17720113798233, 179996.46549982489)]
    public void Charge_and_specific_energy_agree_with_two_quadratures_outside(StrokeKind kind, double coulomb, double joulePerOhm)
    {
        var s = LightningCurrents.Of(LightningLevel.I, kind);
        Assert.Equal(1, s.ChargeC() / coulomb, 1e-6);
        Assert.Equal(1, s.SpecificEnergyJPerOhm() / joulePerOhm, 1e-6);
    }

    // The standard does not agree with itself: its constants integrate to 10.275 MJ/Ω at level I (10.249 with k = 0.93118, which makes the crest exact) where its table 3 prints 10. No
    // implementation of its waveform comes within 1 % of that figure. The discrepancy is held here as it is, and conductors are heated with the printed figure.
    [Theory]
    [InlineData(LightningLevel.I, 10, 1.02753)]
    [InlineData(LightningLevel.II, 5.6, 1.03211)]
    [InlineData(LightningLevel.III, 2.5, 1.02753)]
    public void Printed_specific_energy_is_a_rounding_of_the_waveforms(LightningLevel level, double megajoule, double over)
    {
        Assert.Equal(over, LightningCurrents.Of(level, StrokeKind.FirstPositive).SpecificEnergyJPerOhm() / (megajoule * 1e6), 1e-4);
        Assert.Equal(megajoule * 1e6, LightningCurrents.SpecificEnergy(level).Value);
    }

    // Table 3: front times of the standard: 10, 1 and 0.25 µs (crest over mean steepness is near them).
    [Theory]
    [InlineData(StrokeKind.FirstNegative, 100)]
    [InlineData(StrokeKind.Subsequent, 200)]
    public void Mean_steepness_of_the_standard(StrokeKind kind, double kaPerUs) =>
        Assert.Equal(1, LightningCurrents.Of(LightningLevel.I, kind).MeanSteepnessAPerS() / (kaPerUs * 1e9), 0.03);

    [Fact]
    public void Rolling_sphere_radii() =>
        Assert.Equal([20.0, 30, 45, 60], Enum.GetValues<LightningLevel>().Select(l => LightningCurrents.RollingSphereM(l).Value));
}
