using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Lines;

public class FerriteChokeTests
{
    private static readonly FerriteRing Ring = new("ring", 61e-3, 35.6e-3, 12.7e-3, 850, 4.5e6);

    // Far below the relaxation a toroid of rectangular section is L = μ0·μ·N²·h·ln(D/d)/(2π) (any field textbook), in parallel with the strays.
    [Fact]
    public void Low_frequency_choke_is_the_toroid_of_the_textbooks()
    {
        const double f = 1e3;
        var henry = 4e-7 * Math.PI * 850 * 100 * 12.7e-3 * Math.Log(61 / 35.6) / (2 * Math.PI);
        var z = FerriteChoke.ImpedanceOhm(Ring, 1, 10, f);
        Near.Relative(2 * Math.PI * f * henry, z.Imaginary, 1e-5);
        Near.Relative(2 * Math.PI * f * henry * f / 4.5e6, z.Real, 2e-3);
    }

    // Debye 1929: at the relaxation frequency the loss part is half of what there is to lose, and equals the rest of the real part.
    [Fact]
    public void Relaxation_peaks_at_half_of_the_permeability()
    {
        var at = Ring.At(4.5e6);
        Near.Relative(849.0 / 2, -at.Imaginary, 1e-12);
        Near.Relative(849.0 / 2, at.Real - 1, 1e-12);
        Assert.True(-Ring.At(4e6).Imaginary < 849.0 / 2 && -Ring.At(5e6).Imaginary < 849.0 / 2);
    }

    [Fact]
    public void Choke_found_keeps_the_current_and_the_heat_by_its_own_solution()
    {
        ChokeDuty[] duties = [new("160 m", 1.85e6, CommonModeChoke.Of(12, 9, 50, 0.12), 0.4), new("20 m", 14.15e6, CommonModeChoke.Of(5, 6, 50, 0.05), 0.4)];
        var (choke, findings) = FerriteChoke.Design([Ring], [.. duties], 5e-3);
        Assert.Empty(findings);
        Assert.NotNull(choke);
        Assert.True(choke.Turns <= Ring.MostTurns(5e-3));
        foreach (var band in choke.Bands)
        {
            var z = FerriteChoke.ImpedanceOhm(Ring, choke.Rings, choke.Turns, band.Duty.FrequencyHz);
            var amps = band.Duty.Need.DriveVoltage.Value / (z + 50).Magnitude;
            Assert.True(amps <= band.Duty.Need.AllowedA);
            Near.Relative(amps * amps * z.Real * 0.4, band.Heat.Value, 1e-12);
            Assert.True(band.TemperatureRise.Value <= FerriteChoke.MostRiseK);
        }
    }

    [Fact]
    public void Choke_out_of_reach_is_told_with_the_nearest()
    {
        var (choke, findings) = FerriteChoke.Design([Ring], [new("160 m", 1.85e6, CommonModeChoke.Of(30, 40, 50, 0.001), 1)], 5e-3);
        Assert.NotNull(choke);
        Assert.Equal("choke-none", Assert.Single(findings).Code);
        var (none, why) = FerriteChoke.Design([Ring], [new("160 m", 1.85e6, CommonModeChoke.Of(10, 10, 50, 0.1), 1)], 0.05);
        Assert.Null(none);
        Assert.Contains("thinner cable", Assert.Single(why).WayOut);
    }
}
