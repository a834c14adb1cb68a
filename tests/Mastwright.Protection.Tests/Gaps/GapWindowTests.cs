using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Tests.Gaps;

/// <summary>The window: its ends do what they say, and when none fits the answer says what to change.</summary>
public class GapWindowTests
{
    private static Trail Volts(string name, double v) => Trail.Given(name, "U", v, QuantityKind.PeakVoltage, Source.DesignFile);

    private static GapRequest Request(double workingV, double strengthV) => new(
        new(GapShape.BallToBall, 0.05),
        new AirState(300, 308.15),
        new AirState(300, 253.15),
        [new("160 m", 1.85e6, Volts("base voltage", 0.3 * workingV)), new("80 m", 3.65e6, Volts("base voltage", workingV))],
        [new("base insulator", Volts("wet flashover", 60e3), StrengthKind.AlternatingCrest, true), new("series capacitor", Volts("rating", strengthV), StrengthKind.Direct)]);

    [Fact]
    public void A_setting_leaves_both_margins()
    {
        var request = Request(2000, 30e3);
        var set = Assert.IsType<GapSetting>(GapWindow.Set(request));
        Assert.InRange(set.SpacingM.Value, set.WindowLowM.Value, set.WindowHighM.Value);
        Assert.True(set.HoldOffV.Value >= request.HoldOffMargin * set.WorkingPeakV.Value);
        Assert.True(set.FiringV.Value * request.ProtectionMargin <= set.WeakestStrengthV.Value);
        Assert.Equal(2000 * 1.2, set.WorkingPeakV.Value, 1e-9);
        Assert.All(set.Checks, c => Assert.NotEqual(Verdict.Fail, c.Verdict));
        Assert.All(set.Checks, c => Assert.Equal(GapAnswer.Caution, c.Caution));
    }

    [Fact]
    public void Window_ends_are_where_the_margins_are_just_used_up()
    {
        var request = Request(2000, 30e3);
        var set = Assert.IsType<GapSetting>(GapWindow.Set(request));
        Assert.Equal(1, GapWindow.HoldOffAt(request, set.WindowLowM.Value).Value / (1.3 * set.WorkingPeakV.Value), 1e-3);
        Assert.Equal(1, GapWindow.FiringAt(request, set.WindowHighM.Value).Value * 1.2 / set.WeakestStrengthV.Value, 1e-3);
    }

    [Fact]
    public void Feelers_in_inch_and_millimetre_both_lie_in_the_window()
    {
        var set = Assert.IsType<GapSetting>(GapWindow.Set(Request(2000, 30e3)));
        Assert.True(set.Feeler.HasInch);
        Assert.InRange(set.Feeler.InchSizeM, set.WindowLowM.Value, set.WindowHighM.Value);
        Assert.InRange(set.Feeler.Millimetres / 1000, set.WindowLowM.Value, set.WindowHighM.Value);
        Assert.Equal(set.SpacingM.Value, set.Feeler.Millimetres / 1000, 0.3e-3);
    }

    [Fact]
    public void No_gap_fits_says_what_to_change_and_the_change_works()
    {
        var request = Request(9000, 15e3);
        var none = Assert.IsType<NoGapFits>(GapWindow.Set(request));
        Assert.Equal("80 m", none.GoverningBand);
        Assert.Equal("series capacitor", none.WeakestPart);
        Assert.Contains(none.Findings, f => f.Code == "gap-none-fits");
        Assert.NotEmpty(none.Changes);
        Assert.Contains(none.Checks, c => c.Verdict == Verdict.Fail);
        Assert.IsType<GapSetting>(GapWindow.Set(Request(9000, 1.01 * none.StrengthNeededV.Value)));
        Assert.IsType<GapSetting>(GapWindow.Set(Request(0.99 * none.WorkingPeakAllowedV.Value / 1.2, 15e3)));
    }

    // Equal area on a straight front: with (r − 1)²/r = 1/6 the ratio is 1.5, worked by hand.
    [Fact]
    public void Impulse_ratio_follows_the_equal_area_rule()
    {
        Assert.Equal(1.5, GapWindow.ImpulseRatio(Request(2000, 30e3)).Value, 1e-12);
        Assert.Equal(1.2, GapWindow.ImpulseRatio(Request(2000, 30e3) with { ImpulseRatio = 1.2 }).Value);
        Assert.Equal(1, GapWindow.ImpulseRatio(Request(2000, 30e3) with { FormativeLagS = 0 }).Value);
    }

    [Fact]
    public void The_lag_says_what_it_is_made_of_and_whether_it_was_assumed()
    {
        var usual = GapWindow.ImpulseRatio(Request(2000, 30e3)).Inputs.Single(i => i.Symbol == "lag");
        Assert.Equal("lag = tf + ts", usual.Formula);
        Assert.Equal(["tf", "ts"], usual.Inputs.Select(i => i.Symbol));
        Assert.All(usual.Inputs, i => Assert.Equal(SourceKind.Assumed, i.Source.Kind));

        var stated = GapWindow.ImpulseRatio(Request(2000, 30e3) with { FormativeLagS = 150e-9, StatisticalLagS = 50e-9 }).Inputs.Single(i => i.Symbol == "lag");
        Assert.Equal(200e-9, stated.Value, 1e-15);
        Assert.False(stated.RestsOnAssumption);
    }

    // The highest crest is not that of the strongest carrier where a weaker one is modulated: 1500 V · 2 · 1.2 = 3600 V, worked by hand.
    [Fact]
    public void The_working_peak_counts_modulation_and_mismatch()
    {
        static GapBand Band(string name, double volts, double crest) => new(name, 3.65e6, Trail.Given("base peak", "U", volts, QuantityKind.PeakVoltage, Source.DesignFile), crest);
        var (peak, band) = GapWindow.WorkingPeak(Request(2000, 30e3) with { Bands = [Band("speech", 2000, 1), Band("modulated", 1500, 2)], MismatchFactor = 1.2 });
        Assert.Equal(3600, peak.Value, 1e-9);
        Assert.Equal("modulated", band.Name);
    }

    [Fact]
    public void A_steep_front_narrows_the_window_and_the_volt_time_curve_sets_its_end()
    {
        var request = Request(2000, 60e3);
        var front = Protection.Lightning.StrikeFront.Straight("steep stroke", 5e10, 1e-4);
        var usual = Assert.IsType<GapSetting>(GapWindow.Set(request));
        var steep = Assert.IsType<GapSetting>(GapWindow.Set(request with { Fronts = [front] }));
        Assert.True(steep.WindowHighM.Value < usual.WindowHighM.Value);
        Assert.Equal(usual.WindowLowM.Value, steep.WindowLowM.Value, 1e-9);

        // At the upper end Uf = Us + √(2·S·Us·lag), worked by hand, is just the strength less its margin.
        var us = GapBreakdown.PeakVolts(request.Electrodes, steep.WindowHighM.Value + request.SettingToleranceM, request.DenseAir).Value;
        Assert.Equal(1, (us + Math.Sqrt(2 * 5e10 * us * 100e-9)) * 1.2 / steep.WeakestStrengthV.Value, 1e-3);
    }

    [Fact]
    public void A_gap_that_waits_for_an_electron_fires_later()
    {
        var front = Protection.Lightning.StrikeFront.Straight("stroke", 5e10, 1e-4);
        var request = Request(2000, 60e3);
        Assert.True(GapWindow.FiringOn(request with { StatisticalLagS = 200e-9 }, front, 3e-3).Value > GapWindow.FiringOn(request, front, 3e-3).Value);
        Assert.True(GapWindow.ImpulseRatio(request with { StatisticalLagS = 200e-9 }).Value > 1.5);
    }

    [Fact]
    public void What_to_change_never_speaks_of_no_power_at_all()
    {
        foreach (var (working, strength) in new[] { (9000.0, 15e3), (9000, 3e3), (20e3, 3e3), (3000, 1.2e3) })
        {
            var none = Assert.IsType<NoGapFits>(GapWindow.Set(Request(working, strength)));
            Assert.DoesNotContain(none.Changes, c => c.Contains(" 0 % of the power", StringComparison.Ordinal));
            Assert.All(none.Changes, c => Assert.False(string.IsNullOrWhiteSpace(c)));
        }
    }

    // Thin air has nothing to do with the size of the balls.
    [Fact]
    public void Air_outside_the_table_is_answered_with_the_air()
    {
        var set = Assert.IsType<GapSetting>(GapWindow.Set(Request(2000, 40e3) with { DenseAir = new AirState(0, 233.15) }));
        var finding = set.Findings.Single(f => f.Message.Contains("density", StringComparison.Ordinal));
        Assert.DoesNotContain("diameter", finding.WayOut);
        Assert.Contains("elevation", finding.WayOut);
    }

    [Fact]
    public void More_working_voltage_raises_the_lower_end_and_more_strength_the_upper()
    {
        var last = (Low: 0.0, High: 0.0);
        for (var share = 1.0; share < 2; share += 0.2)
        {
            var set = Assert.IsType<GapSetting>(GapWindow.Set(Request(1500 * share, 30e3 * share)));
            Assert.True(set.WindowLowM.Value > last.Low && set.WindowHighM.Value > last.High);
            last = (set.WindowLowM.Value, set.WindowHighM.Value);
        }
    }

    [Fact]
    public void Thin_air_raises_the_lower_end()
    {
        var low = Assert.IsType<GapSetting>(GapWindow.Set(Request(3000, 40e3)));
        var high = Assert.IsType<GapSetting>(GapWindow.Set(Request(3000, 40e3) with { ThinAir = new AirState(2500, 308.15) }));
        Assert.True(high.WindowLowM.Value > 1.1 * low.WindowLowM.Value);
    }

    [Fact]
    public void Voltage_beyond_any_gap_is_told()
    {
        var none = Assert.IsType<NoGapFits>(GapWindow.Set(Request(900e3, 950e3)));
        Assert.NotEmpty(none.Findings);
    }

    [Fact]
    public void Bad_input_is_named_with_its_range()
    {
        var bad = Request(2000, 30e3) with { HoldOffMargin = 0.5, Bands = [], WetFactor = double.NaN };
        var answer = Assert.IsType<GapInputUnusable>(GapWindow.Set(bad));
        Assert.Equal(["gap-hold-off-margin", "gap-wet-factor", "gap-no-bands"], answer.Findings.Select(f => f.Code));
        Assert.All(answer.Findings, f => Assert.NotNull(f.WayOut));
    }

    [Theory]
    [InlineData(4.76, 4.0, 5.5, "3/16 in")]
    [InlineData(3.3, 2.5, 4.0, "1/8 in")]
    [InlineData(2.0, 1.9, 2.1, "5/64 in")]
    [InlineData(25.4, 24, 27, "1 in")]
    [InlineData(31.5, 30.5, 32.5, "1 1/4 in")]
    public void Feeler_fraction_is_the_handy_one(double targetMm, double lowMm, double highMm, string text) =>
        Assert.Equal(text, FeelerSize.Nearest(targetMm / 1000, lowMm / 1000, highMm / 1000).InchText);

    [Fact]
    public void A_window_without_a_sixty_fourth_has_only_millimetres()
    {
        var f = FeelerSize.Nearest(2.15e-3, 2.12e-3, 2.18e-3);
        Assert.False(f.HasInch);
        Assert.Equal(2.15, f.Millimetres, 1e-9);
        Assert.Equal("2.15 mm", f.Text);
        Assert.Equal("3/16 in or 4.8 mm", FeelerSize.Nearest(4.7625e-3, 4e-3, 5.5e-3).Text);
    }
}
