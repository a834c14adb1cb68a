using System.Numerics;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Lines;

public class FeedLineTests
{
    // Total loss for 1 dB matched loss (closed form, reference page 2.4).
    [Theory]
    [InlineData(1, 1)]
    [InlineData(1.5, 1.06627226)]
    [InlineData(2, 1.19585794)]
    [InlineData(3, 1.50385255)]
    [InlineData(5, 2.12348278)]
    [InlineData(10, 3.42370305)]
    public void Loss_with_standing_waves(double swr, double totalDb)
    {
        var line = LineType.FromSpotLoss("t", 50, 0.66, 1 / 0.4, 7e6);
        var f = FeedLine.Of(line, 40, 50 * swr, 7e6, 1000);
        Near.Relative(1, f.MatchedLoss.Value, 1e-12);
        Near.Relative(totalDb, f.TotalLoss.Value, 1e-8);
        Near.Relative(1000 * Math.Pow(10, -totalDb / 10), f.LoadPower.Value, 1e-8);
        Near.Relative(swr, f.SwrAtLoad.Value, 1e-12);
    }

    [Fact]
    public void Flat_line_at_1000_W_has_316_V_peak_everywhere()
    {
        var f = FeedLine.Of(new LineType("t", 50, 0.66), 25, 50, 7e6, 1000);
        Assert.All(f.Profile, p => Near.Relative(Math.Sqrt(2 * 1000 * 50.0), p.Voltage.Value, 1e-9));
        Near.Relative(316.227766, f.HighestVoltage.Value, 1e-8);
    }

    [Fact]
    public void Standing_wave_raises_the_crest_by_the_root_of_the_ratio()
    {
        // On a lossless line Vmax = √(2·P·Z0·SWR) (any line textbook).
        var f = FeedLine.Of(new LineType("t", 50, 0.66), 25, new Complex(200, 0), 7e6, 1000);
        Near.Relative(Math.Sqrt(2 * 1000 * 50 * 4.0), f.HighestVoltage.Value, 1e-7);
        Near.Relative(Math.Sqrt(1000 * 4 / 50.0), f.HighestCurrent.Value, 1e-7);
    }

    [Fact]
    public void Line_is_held_against_its_ratings()
    {
        var f = FeedLine.Of(new LineType("t", 50, 0.66), 25, new Complex(200, 0), 7e6, 1000);
        var checks = f.Checks("main", new(600), new(10), 0.25);
        Assert.Equal(Mastwright.Model.Trails.Verdict.Fail, checks[0].Verdict);
        Near.Relative(Math.Sqrt(1000 * 4 / 50.0) / 2 / 10, checks[1].Ratio, 1e-7);
    }

    [Fact]
    public void Choke_by_hand()
    {
        // 5 A through 8 Ω is 40 V; 50 Ω of path lets 0.8 A flow; for 0.04 A the path must be 1000 Ω in all.
        var c = CommonModeChoke.Of(5, 8, 50, 0.04);
        Near.Relative(0.8, c.BareCurrent.Value, 1e-12);
        Near.Relative(950, c.NeededOhm.Value, 1e-12);
        Near.Relative(0.04 * 0.04 * 950, c.Heat.Value, 1e-12);
        Assert.Equal(0, CommonModeChoke.Of(1, 1, 100, 0.1).NeededOhm.Value);
    }

    [Fact]
    public void Budget_adds_up_to_the_transmitter()
    {
        var b = PowerBudget.Of(1000, [("feed line", 0.5), ("network", 0.3)], 0.7);
        Near.Relative(1000, b.Stages.Sum(s => s.Value) + b.Radiated.Value, 1e-12);
        Near.Relative(Math.Pow(10, -0.08) * 0.7, b.Efficiency.Value, 1e-12);
    }
}
