using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Match;

public class MatchDesignerTests
{
    // A short mast whose reactance falls with frequency as a series R-L-C does.
    private static MatchProblem ShortMast() => new(
        LoadImpedance.Table([.. Enumerable.Range(0, 11).Select(i => 1.7e6 + (i * 30e3)).Select(f => (f, new Complex(18 * Math.Pow(f / 1.85e6, 2), (-250 * 1.85e6 / f) + (60 * f / 1.85e6))))]),
        50,
        1.85e6,
        1000,
        PartQuality.FromQ(250, 2000))
    {
        Band = (1.81e6, 1.89e6),
        BaseShuntF = 30e-12,
    };

    [Fact]
    public void Candidates_are_tuned_with_their_losses_and_power_balances()
    {
        var result = MatchDesigner.Design(ShortMast());
        Assert.True(result.Candidates.Length >= 8, $"{result.Candidates.Length} candidates");
        Assert.All(result.Candidates.Where(c => c.TopologyId is not ("shunt-coil" or "tapped-coil" or "series-capacitor")), c => Assert.True(c.Swr < 1.001, $"{c.TopologyId}: {c.Swr}"));
        Assert.All(result.Candidates, c => Near.Relative(1000, c.Solution.LoadPowerW + c.LossW, 1e-9));
    }

    [Theory]
    [InlineData(MatchCriterion.Loss)]
    [InlineData(MatchCriterion.PeakVoltage)]
    [InlineData(MatchCriterion.Current)]
    [InlineData(MatchCriterion.PartCount)]
    [InlineData(MatchCriterion.Bandwidth)]
    public void Ranking_puts_the_best_of_its_kind_first(MatchCriterion criterion)
    {
        var c = MatchDesigner.Design(ShortMast(), criterion).Candidates;
        double Key(MatchCandidate m) => criterion switch
        {
            MatchCriterion.Loss => m.LossW,
            MatchCriterion.PeakVoltage => m.HighestVoltage.Value,
            MatchCriterion.Current => m.HighestCurrent.Value,
            MatchCriterion.PartCount => m.PartCount,
            _ => -m.Bandwidth.WidthHz,
        };
        Assert.Equal(c.Select(Key).Order(), c.Select(Key));
    }

    [Fact]
    public void Bandwidth_edges_have_a_standing_wave_ratio_of_two()
    {
        foreach (var c in MatchDesigner.Design(ShortMast()).Candidates.Where(c => c is { Swr: < 1.5, Bandwidth.IsAtLeast: false }))
        {
            Assert.True(c.Bandwidth.LoadVaries);
            Near.Relative(2, c.SwrAt(c.Bandwidth.LowHz), 2e-3);
            Near.Relative(2, c.SwrAt(c.Bandwidth.HighHz), 2e-3);
        }
    }

    [Fact]
    public void Series_resonant_load_matched_by_nothing_has_its_textbook_bandwidth()
    {
        // R in series with L and C in resonance: SWR 2 at X = ±R/√2, so the width is f0/(√2·Q) (derived; QL of a series circuit).
        const double F = 3.65e6, R = 50, Q = 12;
        var load = LoadImpedance.Table([.. Enumerable.Range(-50, 101).Select(i => F * (1 + (i * 0.002))).Select(f => (f, new Complex(R, R * Q * ((f / F) - (F / f)))))]);
        var direct = MatchDesigner.Design(new(load, 50, F, 100, PartQuality.Lossless)).Candidates.Single(c => c.Ladder.Sections.IsEmpty);
        Near.Relative(F / (Math.Sqrt(2) * Q), direct.Bandwidth.WidthHz, 1e-3);
    }

    [Fact]
    public void Static_drain_is_seen_and_can_be_added()
    {
        var c = MatchDesigner.Design(ShortMast()).Candidates;
        var tapped = c.First(m => m.TopologyId == "tapped-coil");
        Assert.True(tapped.DrainsStatic);
        var dry = c.First(m => !m.DrainsStatic);
        Assert.Contains(dry.Findings, f => f.Code == "match-no-drain");
        var wet = Rounding.WithDrain(dry);
        Assert.True(wet.DrainsStatic);
        Assert.DoesNotContain(wet.Findings, f => f.Code == "match-no-drain");
        Near.Relative(dry.LossW, wet.LossW, 0.05);
    }

    [Fact]
    public void Preferred_capacitors_are_put_in_and_the_coil_takes_up_the_slack()
    {
        var ideal = MatchDesigner.Design(ShortMast()).Candidates.First(m => m.TopologyId == "l-shunt-at-line" && m.Ladder.Sections[0].Title == "shunt capacitor");
        var rounded = Rounding.Preferred(ideal, PreferredValues.E24);
        var farad = rounded.Ladder.Sections[0].Value;
        Near.Relative(farad, PreferredValues.Nearest(PreferredValues.E24, farad), 1e-12);
        Assert.NotEqual(ideal.Ladder.Sections[0].Value, farad);
        Assert.InRange(rounded.Swr, 1, 1.1);
    }

    [Fact]
    public void Detuning_one_percent_hurts_the_reactances_of_a_short_mast_most()
    {
        var best = MatchDesigner.Design(ShortMast()).Candidates.First(m => m.TopologyId == "l-shunt-at-line");
        var rows = Detuning.Of(best);
        Assert.Equal(best.Ladder.Sections.Length + 2, rows.Length);
        Assert.True(rows[0].Worst > 1.05);
        Assert.Contains(rows[0].What, new[] { "L1", "load reactance" });
    }

    [Fact]
    public void Prices_add_up_and_rank()
    {
        var priced = MatchDesigner.Design(ShortMast() with { PriceOf = s => s.Letter == "C" ? 30 : s.Letter == "L" ? 10 : null }, MatchCriterion.Price).Candidates;
        Assert.Equal(40, priced.First(c => c.TopologyId == "l-shunt-at-line" && c.Ladder.Sections[0].Title == "shunt capacitor").Price);
        Assert.Null(priced[^1].Price);
    }

    [Fact]
    public void Load_that_gives_power_back_is_refused() =>
        Assert.Equal("match-negative-resistance", Assert.Single(MatchDesigner.Design(ShortMast() with { Load = LoadImpedance.Constant(new Complex(-3, 20)) }).Findings).Code);
}
