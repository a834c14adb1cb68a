using Mastwright.Model.Trails;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>Point discharge by its published laws worked by hand, and the drain that carries it.</summary>
public class StaticDrainTests
{
    private static Trail Field(double v) => Trail.Given("field", "E", v, QuantityKind.ElectricField, Source.DesignFile);

    private static DrainRequest Request(double rmsV) => new(
        [new("160 m", 1.85e6, Trail.Given("base voltage", "U", rmsV, QuantityKind.RmsVoltage, Source.DesignFile), 1000)],
        Trail.Given("current", "I", 10e-6, QuantityKind.PeakCurrent, Source.DesignFile),
        Trail.Given("allowed", "Udc", 500, QuantityKind.PeakVoltage, Source.DesignFile),
        Trail.Given("capacitance", "C", 200e-12, QuantityKind.Capacitance, Source.DesignFile));

    // Chapman 1970 (from memory): 2 pi eps0 V W; 4 kV/m above onset, 10 m, 5 m/s: 2 pi · 8.854e-12 · 40 000 · 5 = 11.13 µA.
    [Fact]
    public void Current_in_wind() => Assert.Equal(11.13e-6, PointDischarge.InWind(Field(5000), Field(1000), 10, 5).Value, 0.01e-6);

    // Whipple and Scrase 1936 (from memory): at 50 V/cm, 8e-4 (2500 − 73.96) = 1.941 µA.
    [Fact]
    public void Current_at_kew() => Assert.Equal(1.941e-6, PointDischarge.AtKew(Field(5000)).Value, 0.001e-6);

    [Fact]
    public void Below_onset_nothing_flows() => Assert.Equal(0, PointDischarge.InWind(Field(500), Field(1000), 10, 5).Value);

    // 300 V rms, 1 kW, half a per cent: 300²/5 = 18 kΩ at least; 500 V/10 µA = 50 MΩ at most.
    [Fact]
    public void Window_of_the_resistor()
    {
        var answer = StaticDrain.Size(Request(300));
        Assert.Equal(18e3, answer.LowestOhm.Value, 1);
        Assert.Equal(50e6, answer.HighestOhm.Value, 1);
        Assert.InRange(answer.ResistorOhm!.Value, 18e3, 50e6);
        Assert.Equal(answer.Losses[0].LossW.Value * 2, answer.RatingW!.Value, 1e-12);
        Assert.All(answer.Checks, c => Assert.Equal(Verdict.Pass, c.Verdict));
    }

    [Fact]
    public void A_very_high_base_voltage_asks_for_a_choke()
    {
        var answer = StaticDrain.Size(Request(30e3));
        Assert.Null(answer.ResistorOhm);
        Assert.Contains(answer.Findings, f => f.Code == "no-drain-resistor");
        Assert.True(answer.ChokeH.Value > 0);
    }
}
