using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Switching;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Tests.Switching;

public class SwitchPlanTests
{
    private static readonly Relay Vacuum = new("vacuum relay", new PeakVolts(10000), new RmsAmps(15), 1e-12);

    private static BandNetwork Band(string name, double low, double high, Complex load) =>
        new(name, low, high, LMatch.Design(new(LoadImpedance.Constant(load), 50, (low + high) / 2, 1000, PartQuality.FromQ(250, 2000))).Candidates[0]);

    private static readonly BandNetwork[] Two = [Band("160 m", 1.81e6, 1.89e6, new(12, -300)), Band("80 m", 3.5e6, 3.8e6, new(45, 40))];

    [Fact]
    public void Grounding_contact_sees_the_full_base_voltage_of_the_worst_band()
    {
        var plan = SwitchPlan.Of([.. Two], Vacuum);
        var ground = plan.Contacts.Single(c => c.Name == "ground");
        Assert.True(ground.MadeAtDropOff);
        Assert.Equal("160 m", ground.Voltage.GoverningCase);
        var expected = BasePoint.Of(new Complex(12, -300), Two[0].Match.Solution.LoadPowerW, 1.85e6).PeakVoltage.Value;
        Near.Relative(expected, ground.Voltage.Demand.Value, 0.02);
    }

    [Fact]
    public void Every_band_keeps_its_match_beside_the_others()
    {
        var plan = SwitchPlan.Of([.. Two], Vacuum, 50);
        Assert.Equal(2, plan.Bands.Length);
        Assert.All(plan.Bands, b =>
        {
            Assert.InRange(b.Swr, 1, 1.5);
            Assert.True(b.IsolationDb > 20);
            Assert.True(b.ReceiverW < 0.1);
            Assert.Contains("ground", b.Relays);
        });

        // 1 pF at 3.65 MHz into 50 Ω beside 224 V RMS: (224·ωC)²·50 = 1.3 mW.
        Near.Relative(Math.Pow(Math.Sqrt(1000 * 50.0) * 2 * Math.PI * 3.65e6 * 1e-12, 2) * 50, plan.Bands[1].ReceiverW!.Value, 0.1);
    }

    [Fact]
    public void Weak_relay_is_told_from_a_strong_one()
    {
        var weak = SwitchPlan.Of([.. Two], new Relay("small relay", new PeakVolts(1000), new RmsAmps(3)));
        Assert.Contains(weak.Findings, f => f.Code == "switch-rating" && f.Severity == Severity.Error);
        Assert.DoesNotContain(SwitchPlan.Of([.. Two], Vacuum).Findings, f => f.Code == "switch-rating");
    }

    [Fact]
    public void Overlapping_bands_are_a_finding()
    {
        var plan = SwitchPlan.Of([Two[1], Band("75 m", 3.75e6, 4.0e6, new(55, 60))], Vacuum);
        Assert.Contains(plan.Findings, f => f.Code == "switch-overlap" && f.Value == "3.75 to 3.8 MHz");
    }

    [Fact]
    public void Coils_of_two_bands_can_be_one_with_taps()
    {
        var plan = SwitchPlan.Of([Band("160 m", 1.81e6, 1.89e6, new(12, -300)), Band("80 m", 3.5e6, 3.8e6, new(20, -100))], Vacuum);
        var coil = plan.Shared.Single(s => s.ByTaps && s.Title == "series coil");
        Assert.True(coil.Uses[0].Value > coil.Uses[1].Value);
        var winding = new Mastwright.Circuits.Coils.AirCoil(0.15, 40, 10e-3, 5e-3);
        var taps = coil.TapsOn(winding);
        Near.Relative(coil.Uses[1].Value, winding.InductanceOfTurnsH(taps[1].Turns!.Value), 1e-9);
        Assert.True(taps[0].Turns > taps[1].Turns);
    }
}
