using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Circuits.Tolerance;

namespace Mastwright.Circuits.Tests.Tolerance;

public class ToleranceTests
{
    private static readonly MatchCandidate ShortMast = LMatch.Design(new(LoadImpedance.Constant(new Complex(15, -250)), 50, 1.85e6, 1000, PartQuality.HomeBuilt)).Candidates[0];

    [Fact]
    public void Nothing_varying_leaves_the_design_as_it_is()
    {
        var still = new ToleranceSpec { TemperatureK = 0, LoadResistance = 0, LoadReactanceOhm = 0 };
        var r = ToleranceStudy.Run(ShortMast, still, 50);
        Assert.Equal(1, r.ShareInside);
        Near.Relative(ShortMast.Swr, r.Median, 1e-12);
        Near.Relative(ShortMast.Swr, r.Sorted[^1], 1e-12);
    }

    [Fact]
    public void Same_seed_same_outcome_other_seed_nearly_so()
    {
        var spec = new ToleranceSpec { LoadReactanceOhm = 12 };
        var a = ToleranceStudy.Run(ShortMast, spec, 2000, 7);
        Assert.Equal(a.Sorted, ToleranceStudy.Run(ShortMast, spec, 2000, 7).Sorted);
        var b = ToleranceStudy.Run(ShortMast, spec, 2000, 8);
        Assert.NotEqual(a.Sorted, b.Sorted);
        Assert.InRange(b.ShareInside, a.Interval.Low - 0.03, a.Interval.High + 0.03);
    }

    [Fact]
    public void Share_inside_agrees_with_the_normal_distribution_where_it_can_be_worked_out()
    {
        // A 50 Ω load with nothing but normal reactance: SWR 2 at |X| = 50/√2 = 35.36 Ω; σ = 30 Ω gives 2Φ(1.1785) - 1 = 0.7614.
        var direct = LMatch.Design(new(LoadImpedance.Constant(50), 50, 7e6, 100, PartQuality.Lossless)).Candidates[0];
        var r = ToleranceStudy.Run(direct, new ToleranceSpec { TemperatureK = 0, LoadResistance = 0, LoadReactanceOhm = 30 }, 20000, 3);
        Near.Absolute(0.7614, r.ShareInside, 0.01);
        Assert.InRange(0.7614, r.Interval.Low - 0.005, r.Interval.High + 0.005);
        Assert.Equal("scatter of the load", r.Causes[0].Cause);
    }

    [Fact]
    public void Wet_and_dry_soil_are_counted_by_their_weights()
    {
        var spec = new ToleranceSpec
        {
            TemperatureK = 0,
            LoadResistance = 0,
            LoadReactanceOhm = 0,
            Scenarios = [new("normal", 3, LoadImpedance.Constant(new Complex(15, -250))), new("flood", 1, LoadImpedance.Constant(new Complex(15, -150)))],
        };
        var r = ToleranceStudy.Run(ShortMast, spec, 4000);
        Near.Absolute(0.75, r.ShareInside, 0.03);
        Assert.Equal([("normal", 1.0), ("flood", 0.0)], r.ByScenario);
        Assert.Equal("soil and weather", r.Causes[0].Cause);
    }

    [Fact]
    public void Untuned_parts_count_only_when_asked()
    {
        var tuned = ToleranceStudy.Run(ShortMast, new ToleranceSpec(), 500);
        var raw = ToleranceStudy.Run(ShortMast, new ToleranceSpec { TunedOnSite = false }, 500);
        Assert.True(raw.Ninety > tuned.Ninety);
        Assert.Equal("tolerance of the parts", raw.Causes[0].Cause);
    }

    [Fact]
    public void Study_can_be_cancelled() =>
        Assert.Throws<OperationCanceledException>(() => ToleranceStudy.Run(ShortMast, new ToleranceSpec(), 1000, cancel: new CancellationToken(true)));
}
