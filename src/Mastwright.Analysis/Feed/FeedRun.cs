using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Match.Topologies;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Switching;
using Mastwright.Circuits.Tolerance;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Feed;

/// <summary>One way to match a band, in real parts.</summary>
/// <param name="Real">The network with its parts.</param>
/// <param name="Over">The same network with the mast's own change over the band, for the bandwidth.</param>
/// <param name="Price">What it costs with the prices of the design; null when any is unknown.</param>
/// <param name="IsChosen">Whether it is the one used.</param>
public sealed record BandOffer(Realisation Real, MatchCandidate Over, double? Price, bool IsChosen);

/// <summary>How one band is fed.</summary>
public sealed record BandFeed
{
    /// <summary>The band.</summary>
    public required Band Band { get; init; }

    /// <summary>The mast's figures on it.</summary>
    public required BandResult Result { get; init; }

    /// <summary>The chosen network over the band; null when nothing matches.</summary>
    public MatchCandidate? Chosen { get; init; }

    /// <summary>One network of each kind that can be built, best first.</summary>
    public ImmutableArray<BandOffer> Offers { get; init; } = [];

    /// <summary>Kinds of which none can be built from what is at hand, with the reason.</summary>
    public ImmutableArray<Realisation> Unbuilt { get; init; } = [];

    /// <summary>Kinds that cannot match this load at all.</summary>
    public ImmutableArray<string> Impossible { get; init; } = [];

    /// <summary>What a small error of each part of the chosen network does to the SWR.</summary>
    public ImmutableArray<Detuning> Sensitivity { get; init; } = [];

    /// <summary>Share of days inside SWR 2; null when there is no network.</summary>
    public ToleranceResult? Tolerance { get; init; }

    /// <summary>The feed line; null when none is described.</summary>
    public BandLine? Line { get; init; }

    /// <summary>What to know.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];
}

/// <summary>How one mast is fed on all its bands.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Bands">Band by band.</param>
/// <param name="Switching">The relay plan; null for fewer than two bands with a network.</param>
/// <param name="Shared">Coils that one winding with taps can serve, with the taps.</param>
/// <param name="Neighbours">What the receivers of other masts' lines get while this one transmits.</param>
/// <param name="Choke">The choke on the cable.</param>
public sealed record MastFeed(string Mast, ImmutableArray<BandFeed> Bands, SwitchPlan? Switching, ImmutableArray<SharedCoil> Shared, ImmutableArray<NeighbourReceiver> Neighbours, CableChoke Choke);

/// <summary>Candidates, parts, line, tolerance and switching for every band of every mast.</summary>
public static class FeedRun
{
    // The mast is solved at least this far to either side of the band's frequency, for the bandwidth.
    private const double Reach = 0.03;
    private const int Trials = 1000;
    private const int TriesOfAKind = 4;

    /// <summary>Works the feed of a station out.</summary>
    public static ImmutableArray<MastFeed> Of(StationResult result, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var station = result.Station;
        if (result.Masts.All(m => m.Bands.IsEmpty))
        {
            return [];
        }

        progress?.Report(new AnalysisStep("Solving the currents to the edges of the bands", 0.1));
        var model = WireModels.Of(station);
        double[] at = [.. station.Bands.SelectMany(Frequencies)];
        var solved = new SolveResult[at.Length];
        Parallel.For(0, at.Length, new ParallelOptions { CancellationToken = cancellation }, i => solved[i] = WireSolver.Solve(model, at[i], null, cancellation));
        return [.. station.Masts.Select((mast, m) =>
        {
            progress?.Report(new AnalysisStep($"Feeding mast {mast.Name}", 0.4 + (0.6 * m / station.Masts.Length)));
            var bands = new BandFeed[station.Bands.Length];
            Parallel.For(0, bands.Length, new ParallelOptions { CancellationToken = cancellation }, b =>
                bands[b] = One(station, mast, m, station.Bands[b], result.Masts[m].Bands[b], solved.AsSpan(3 * b, 3).ToArray(), cancellation));
            var networks = bands.Where(b => b.Chosen is not null).Select(b => new BandNetwork(b.Band.Title, FeedProblem.Edges(b.Band).LowHz, FeedProblem.Edges(b.Band).HighHz, b.Chosen!) { PeakFactor = b.Band.ModulationPeak }).ToImmutableArray();
            var relay = new Relay("relay", new PeakVolts(station.Feed.RelayPeakV), new RmsAmps(station.Feed.RelayCurrentA), station.Feed.RelayOpenF);
            var plan = networks.Length < 2 ? null : SwitchPlan.Of(networks, relay, station.Feed.Receiver?.InputOhm, station.Feed.Receiver?.LimitW ?? new ReceiverSpec().LimitW);
            var centres = Enumerable.Range(0, station.Bands.Length).Select(b => solved[(3 * b) + 1].Solution).ToList();
            return new MastFeed(mast.Name, [.. bands], plan, plan is null ? [] : SharedCoil.Of(station, bands, plan), NeighbourReceiver.Of(result, m, centres), CableChoke.Of(station, bands));
        })];
    }

    private static double[] Frequencies(Band band)
    {
        var (low, high) = FeedProblem.Edges(band);
        return [Math.Min(low, band.FrequencyHz * (1 - Reach)), band.FrequencyHz, Math.Max(high, band.FrequencyHz * (1 + Reach))];
    }

    private static BandFeed One(Station station, Mast mast, int feed, Band band, BandResult result, SolveResult[] sweep, CancellationToken cancellation)
    {
        if (result.Network is not { } network)
        {
            return new BandFeed { Band = band, Result = result, Findings = result.Unmatched };
        }

        if (sweep.Any(s => s.Solution is null))
        {
            return new BandFeed { Band = band, Result = result, Findings = [.. network.Findings, .. sweep.SelectMany(s => s.Findings).DistinctBy(f => (f.Code, f.Message))] };
        }

        var solved = sweep.Select(s => s.Solution!).ToArray();

        // The verdict's impedance stands; the sweep over perfect ground gives how it changes over the band, the earth's loss how it changes with the soil.
        var tolerance = station.Feed.Tolerance;
        var earth = BandRun.EarthLosses(mast, solved[1], feed, Soils.Of(station.Site), 1, tolerance.WetSoil, tolerance.DrySoil);
        var shift = result.MastOhm - solved[1].FeedImpedance(feed);
        LoadImpedance Load(double moreOhm) => LoadImpedance.Table([.. solved.Select(s => (s.FrequencyHz, s.FeedImpedance(feed) + shift + moreOhm))]);
        var (load, shunt) = (Load(0), BandRun.BaseCapacitanceF(station, mast));
        MatchCandidate Over(MatchCandidate c) => new(c.TopologyId, c.Title, c.Ladder, c.Problem with { Load = load });

        var problem = FeedProblem.Of(station, band, LoadImpedance.Constant(result.MastOhm), shunt);
        var workshop = FeedProblem.Workshop(station, band);
        var kinds = MatchDesigner.Design(problem).Candidates.GroupBy(c => c.TopologyId).Select(g => BuiltNetworks.Of(g.Take(TriesOfAKind), workshop, enough: 1)).ToList();
        var chosen = network.Match;
        var offers = kinds.Select(k => k.Built.FirstOrDefault()).OfType<Realisation>().Where(r => r.Candidate.TopologyId != chosen.TopologyId)
            .OrderBy(r => MatchRanking.Points(r.Candidate)).Select(r => new BandOffer(r, Over(r.Candidate), FeedProblem.Price(station, r), false))
            .Prepend(new BandOffer(network.Built, Over(chosen), FeedProblem.Price(station, network.Built), true)).ToImmutableArray();
        var over = offers[0].Over;
        return new BandFeed
        {
            Band = band,
            Result = result,
            Chosen = over,
            Offers = offers,
            Unbuilt = [.. kinds.Where(k => k.Built.IsEmpty && k.First!.Candidate.TopologyId != chosen.TopologyId).Select(k => k.First!)],
            Impossible = [.. TopologyList.All.Where(t => kinds.All(k => (k.Built.FirstOrDefault() ?? k.First!).Candidate.TopologyId != t.Id)).Select(t => t.Title)],
            Sensitivity = Detuning.Of(over),
            Tolerance = ToleranceStudy.Run(over, Spec(station, load, Load(earth[1] - earth[0]), Load(earth[2] - earth[0])), Trials, cancel: cancellation),
            Line = BandLine.Of(station, band, result, over),
            Findings = [.. network.Findings, .. over.Findings.Where(f => f.Code is "match-no-drain" or "match-lossy" or "match-leftover")],
        };
    }

    private static ToleranceSpec Spec(Station station, LoadImpedance asStated, LoadImpedance wet, LoadImpedance dry)
    {
        var t = station.Feed.Tolerance;
        var site = station.Site;
        return new ToleranceSpec
        {
            Scenarios =
            [
                new LoadScenario("soil as stated", 1 - t.WetDays - t.DryDays, asStated),
                new LoadScenario("soil wet", t.WetDays, wet),
                new LoadScenario("soil dry or frozen", t.DryDays, dry),
            ],
            TunedOnSite = t.TunedOnSite,
            Coil = t.Coil,
            Capacitor = t.Capacitor,
            Length = t.Length,
            CoilPerK = t.CoilPerK,
            CapacitorPerK = t.CapacitorPerK,

            // Coldest and hottest of the site taken as two standard deviations to either side.
            TemperatureK = Math.Max(1, (site.HottestK - site.ColdestK) / 4),
        };
    }
}
