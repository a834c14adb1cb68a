using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;
using Mastwright.Protection.Tests.Support;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>The volt-time curve of a gap: closed forms, and the whole simulation it stands in for.</summary>
public class StrikeFrontTests
{
    // Equal area on a straight front, integrated by hand: (Uf − Us)²/(2S) = Us·lag.
    [Theory]
    [InlineData(1e10)]
    [InlineData(1e11)]
    [InlineData(1e13)]
    public void A_straight_front_follows_the_closed_form(double steepness)
    {
        const double us = 15e3, lag = 100e-9;
        var firing = StrikeFront.Straight("straight", steepness, 1e-4).Fires(us, lag)!.Value;
        Assert.Equal(1, firing.Volts / (us + Math.Sqrt(2 * steepness * us * lag)), 1e-12);
        Assert.Equal(1, firing.TimeS / (firing.Volts / steepness), 1e-12);
    }

    // A wave that stands at twice the static voltage for good fires after one lag, by the rule's own words.
    [Fact]
    public void A_standing_overvoltage_fires_after_its_share_of_the_lag()
    {
        var step = new StrikeFront("step", [0, 1e-12, 1e-3], [0, 30e3, 30e3]);
        Assert.Equal(100e-9, step.Fires(15e3, 100e-9)!.Value.TimeS, 1e-11);
        Assert.Equal(500e-9, new StrikeFront("fifth over", [0, 1e-12, 1e-3], [0, 18e3, 18e3]).Fires(15e3, 100e-9)!.Value.TimeS, 1e-11);
    }

    [Fact]
    public void A_falling_wave_counts_only_what_stands_above_the_static_voltage()
    {
        // A triangle of 10 kV over the static voltage and 2 µs at its foot there: 10 mV·s, the whole of it for a lag of 1 µs at 10 kV, none left beyond.
        var triangle = new StrikeFront("triangle", [0, 2e-6, 4e-6], [0, 20e3, 0]);
        Assert.NotNull(triangle.Fires(10e3, 0.99e-6));
        Assert.Null(triangle.Fires(10e3, 1.01e-6));
        Assert.Null(triangle.Fires(21e3, 0));
        Assert.Equal(10e3, triangle.Fires(10e3, 0)!.Value.Volts, 1e-6);
    }

    [Theory]
    [InlineData(StrokeKind.FirstPositive)]
    [InlineData(StrokeKind.FirstNegative)]
    [InlineData(StrokeKind.Subsequent)]
    public void The_curve_gives_what_the_whole_simulation_finds(StrokeKind kind)
    {
        var scenario = StrikeDeck.Usual with { Stroke = LightningCurrents.Of(LightningLevel.II, kind), Feed = [], Cable = null, House = null, EndS = 30e-6 };
        var gap = scenario.Gap!;
        var spark = GapBreakdown.PeakVolts(gap.Electrodes, gap.SpacingM, gap.Air).Value;
        var run = StrikeSimulation.Run(scenario)!;
        var firing = StrikeSimulation.FrontAtGap(scenario)!.Fires(spark, gap.FormativeLagS)!.Value;
        Assert.Equal(1, firing.Volts / run.GapPeakV!.Value, 0.03);
        Assert.Equal(1, firing.TimeS / run.FiredAtS!.Value, 0.03);
    }
}
