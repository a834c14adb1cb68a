using System.Numerics;
using Mastwright.Model.Trails;
using Mastwright.Protection.Crossing;

namespace Mastwright.Protection.Tests.Crossing;

/// <summary>Cables across the base against circuit theory worked by hand.</summary>
public class BaseCrossingTests
{
    private static CrossingBand Band(double mhz, Complex z) => new($"{mhz} MHz", mhz * 1e6, z, 1000);

    // 20 µH, Q 300 at 3.5 MHz: X 439.8 Ω; across 50 Ω the share lost is (1/(Q X))/(1/50) = 3.79e-4.
    [Fact]
    public void Loss_of_a_coil_by_hand()
    {
        var answer = BaseCrossing.Judge(new CoilCrossing("coil", 20e-6, 300, 1e-15, 25), [Band(3.5, 50)], null);
        Assert.Equal(0.379, answer.Effects[0].LossW.Value, 0.001);
        Assert.Equal(439.82, answer.Effects[0].CrossingX.Value, 0.01);
        Assert.Equal(Math.Sqrt(2 * 1000 * 50), answer.Effects[0].VoltagePeakV.Value, 0.2);
    }

    // Self-resonance: the reactance changes sign there.
    [Fact]
    public void A_coil_turns_capacitive_above_its_resonance()
    {
        var coil = new CoilCrossing("coil", 50e-6, 250, 5e-12, 30);
        var f = coil.SelfResonanceHz;
        Assert.Equal(1 / (2 * Math.PI * Math.Sqrt(50e-6 * 5e-12)), f, 1.0);
        Assert.True(coil.ImpedanceOhm(0.98 * f).Imaginary > 0);
        Assert.True(coil.ImpedanceOhm(1.02 * f).Imaginary < 0);
    }

    // A quarter-wave stub: Z0/(α l) at resonance, j Z0 at an eighth wave (line theory).
    [Fact]
    public void Quarter_wave_stub()
    {
        const double f = 3.65e6;
        var quarter = 299792458.0 * 0.9 / f / 4;
        var stub = new StubCrossing("stub", 150, quarter, 0.9);
        var alpha = 0.0005 * Math.Sqrt(3.65) * Math.Log(10) / 20;
        Assert.Equal(1, stub.ImpedanceOhm(f).Real / (150 / (alpha * quarter)), 0.001);
        Assert.Equal(150, stub.ImpedanceOhm(f / 2).Imaginary, 0.1);
        var answer = BaseCrossing.Judge(stub, [Band(3.65, 36), Band(7.3, 300)], null);
        Assert.Equal(Verdict.Pass, answer.Checks.Single(c => c.Id == "survive.crossing.detuning[stub, 3.65 MHz]").Verdict);
        Assert.Equal(Verdict.Fail, answer.Checks.Single(c => c.Id == "survive.crossing.detuning[stub, 7.3 MHz]").Verdict);
    }

    [Fact]
    public void Power_into_base_and_crossing_adds_up()
    {
        var z = new Complex(20, -180);
        var device = new TransformerCrossing("lamp transformer", 40e-12, 0.01);
        var effect = BaseCrossing.Judge(device, [Band(1.85, z)], null).Effects[0];
        var volts2 = effect.VoltagePeakV.Value * effect.VoltagePeakV.Value / 2;
        Assert.Equal(1000, effect.LossW.Value + (volts2 * (1 / z).Real), 1e-6);
    }

    // Amplitude modulation of 100 %: twice the carrier's crest, which is that of four times the power (any text on modulation); the loss stays the carrier's.
    [Fact]
    public void A_crossing_stands_the_envelope()
    {
        var device = new TransformerCrossing("lamp transformer", 40e-12, 0.01, 3e3);
        CrossingAnswer Judge(double powerW, double crest) => BaseCrossing.Judge(device, [new("160 m", 1.85e6, new Complex(20, -180), powerW, crest)], null);
        static double Demand(CrossingAnswer answer) => answer.Checks.Single(c => c.Id == "survive.crossing.voltage[lamp transformer, 160 m]").Demand.Value;
        Assert.Equal(1, Demand(Judge(1000, 2)) / Demand(Judge(4000, 1)), 1e-12);
        Assert.Equal(Judge(1000, 1).Effects[0].LossW.Value, Judge(1000, 2).Effects[0].LossW.Value, 1e-12);
    }

    [Fact]
    public void A_strike_is_held_against_the_strength_and_spread_over_the_turns()
    {
        var strike = Trail.Given("strike", "U", 50e3, QuantityKind.PeakVoltage, Source.DesignFile);
        var answer = BaseCrossing.Judge(new CoilCrossing("coil", 20e-6, 300, 5e-12, 25, 30e3), [Band(3.5, 50)], strike);
        Assert.Equal(2000, answer.StrikeVoltPerTurn!.Value);
        Assert.Equal(Verdict.Fail, answer.Checks.Single(c => c.Id == "survive.crossing.strike[coil]").Verdict);
        Assert.NotEmpty(answer.StrikePath);
    }
}
