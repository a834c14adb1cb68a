using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;
using BandSweep = Mastwright.Analysis.Radiate.BandSweep;

namespace Mastwright.Analysis.Tests;

/// <summary>Verdict, sweep and study speak of one earth and one network.</summary>
public class ExactEarthTests
{
    private const double CentreHz = 7.1e6;

    private static readonly string Text = File.ReadAllText(Repository.File("examples", "tube-12m.yaml")).ReplaceLineEndings("\n");

    // One band, wide enough that another impedance would show, its own frequency the middle of the rows.
    private static readonly string OneBand = Text[..Text.IndexOf("bands:", StringComparison.Ordinal)] + "bands:\n  - { frequency: 7.1 MHz, power: 400 W, low: 7.0 MHz, high: 7.2 MHz }\n" + Text[Text.IndexOf("\nprotection:", StringComparison.Ordinal)..];

    private static readonly Lazy<StationResult> Elevated = new(() => StationAnalysis.Run(Examples.Read(OneBand
        .Replace("radials: { count: 32, length: 33 ft, wire: 14 AWG }", "radials: { count: 3, length: 33 ft, wire: 14 AWG, lay: elevated, height: 1 ft }")
        + "\nfeed: { networks: [ { band: 40 m, network: t } ] }\n")));

    /// <summary>At the band's own frequency the sweep is the verdict: its impedance, and the match it found.</summary>
    [Fact]
    public void The_sweep_passes_through_the_impedance_of_the_verdict_over_the_real_soil() => SweepIsVerdict(Elevated.Value, 0.005);

    /// <summary>The same over the estimate, whose rows pass through the solved frequency itself.</summary>
    [Fact]
    public void The_sweep_passes_through_the_impedance_of_the_verdict_by_the_estimate() => SweepIsVerdict(StationAnalysis.Run(Examples.Read(OneBand)), 1e-9);

    private static void SweepIsVerdict(StationResult result, double tolerance)
    {
        var band = result.Masts[0].Bands[0];
        var sweep = BandSweep.Of(result, 0, 0, TestContext.Current.CancellationToken);

        var own = sweep.Points.MinBy(p => Math.Abs(p.FrequencyHz - CentreHz))!;
        Assert.Equal(CentreHz, own.FrequencyHz, 1);
        Assert.InRange((own.FeedOhm - band.FeedOhm).Magnitude, 0, tolerance * band.FeedOhm.Magnitude);
        Assert.Equal(band.Match!.SwrAt(CentreHz), own.Swr!.Value, 2 * tolerance);
        Assert.True(sweep.Points[0].Swr > own.Swr && sweep.Points[^1].Swr > own.Swr);
    }

    /// <summary>A sweep that cannot be had says why instead of standing empty.</summary>
    [Fact]
    public void A_sweep_without_points_says_why()
    {
        var station = Elevated.Value.Station;
        var mast = station.Masts[0];
        var crossed = station with { NearbyMetal = [new NearbyMetal { Name = "rail", EastM = mast.EastM - 3, NorthM = mast.NorthM, HeightM = 4.321, EndEastM = mast.EastM + 3, EndNorthM = mast.NorthM, EndHeightM = 4.321 }] };

        var sweep = BandSweep.Of(Elevated.Value with { Station = crossed }, 0, 0, TestContext.Current.CancellationToken);

        Assert.Empty(sweep.Points);
        Assert.Contains(sweep.Findings, f => f.Severity == Severity.Error);
    }

    /// <summary>A curve that did not settle is told with its estimated error beside what was asked; one that did is not.</summary>
    [Fact]
    public void A_curve_that_did_not_settle_is_told()
    {
        var told = BandSweep.Unsettled(hasValues: true, converged: false, error: 0.034)!;
        Assert.Equal((Severity.Warning, "3.4 %", "0.5 %"), (told.Severity, told.Value, told.Allowed));
        Assert.Null(BandSweep.Unsettled(hasValues: true, converged: true, error: 0.001));
        Assert.Null(BandSweep.Unsettled(hasValues: false, converged: false, error: double.PositiveInfinity));
        Assert.Empty(BandSweep.Of(Elevated.Value, 0, 0, TestContext.Current.CancellationToken).Findings.Where(f => f.Code == told.Code));
    }

    /// <summary>Heat in the network of the soil study is that of the network the design names, as the verdict built it for the same impedance.</summary>
    [Fact]
    public void The_soil_study_counts_the_heat_of_the_network_chosen()
    {
        var verdict = Elevated.Value.Masts[0].Bands[0];
        Assert.Equal("t", verdict.Match!.TopologyId);

        var share = SoilRun.Of(Elevated.Value.Station, cancellation: TestContext.Current.CancellationToken).Bands.Single().Shares.Network;

        Assert.Equal(verdict.Match.LossW / 400, share!.Value, 1e-6);
    }

    /// <summary>How high a mast is says how its own field along the ground may be read; a neighbour's height says nothing about it.</summary>
    [Fact]
    public void A_tall_neighbour_does_not_take_a_short_mast_its_judgement()
    {
        var station = Examples.Read(OneBand).Station!;
        var own = station.Masts[0] with { Guys = [], Radials = station.Masts[0].Radials with { Count = 3, LengthM = 3 } };

        // Thirty metres are 0.71 of a wavelength; eight wavelengths away its wires hardly answer.
        var tall = own with { Name = "tall", EastM = 340, Sections = [own.Sections[0] with { LengthM = 30 }] };
        bool Judged(int feed, params Mast[] masts)
        {
            var with = station with { Masts = [.. masts] };
            var over = WireSolver.Solve(WireModels.Of(with), CentreHz).Require();
            return EarthJudgement.Of(with.Masts[feed], over, over, feed) is not null;
        }

        Assert.True(Judged(0, own));
        Assert.True(Judged(0, own, tall));
        Assert.False(Judged(1, own, tall));
    }
}
