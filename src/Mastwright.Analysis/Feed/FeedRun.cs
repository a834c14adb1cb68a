using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Catalog;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Switching;
using Mastwright.Circuits.Tolerance;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Feed;

/// <summary>A part of a network that a builder can wind or buy.</summary>
/// <param name="Section">The part as the network wants it.</param>
/// <param name="Offer">What would serve, in words; empty when nothing does.</param>
/// <param name="Checks">Its checks at the stated power.</param>
/// <param name="Findings">Why nothing serves, or what to know.</param>
public sealed record BuyablePart(LadderSection Section, string Offer, ImmutableArray<Check> Checks, ImmutableArray<Finding> Findings);

/// <summary>How one band is fed.</summary>
/// <param name="Band">The band.</param>
/// <param name="Candidates">Networks that match it, best first.</param>
/// <param name="Parts">Parts for the best of them.</param>
/// <param name="Sensitivity">What a small error of each part of the best does to the SWR.</param>
/// <param name="Tolerance">Share of days inside SWR 2, soil and parts varying; null when there is no network.</param>
/// <param name="Line">The feed line at full power; null when none is described.</param>
/// <param name="Findings">What to know.</param>
public sealed record BandFeed(
    Band Band, ImmutableArray<MatchCandidate> Candidates, ImmutableArray<BuyablePart> Parts, ImmutableArray<Detuning> Sensitivity, ToleranceResult? Tolerance, FeedLine? Line, ImmutableArray<Finding> Findings);

/// <summary>How one mast is fed on all its bands.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Bands">Band by band.</param>
/// <param name="Switching">The relay plan; null for fewer than two bands with a network.</param>
public sealed record MastFeed(string Mast, ImmutableArray<BandFeed> Bands, SwitchPlan? Switching);

/// <summary>Candidates, parts, line, tolerance and switching for every band of every mast.</summary>
public static class FeedRun
{
    private const int PointsPerBand = 5;
    private const double EdgeShare = 0.005;

    /// <summary>Works the feed of a station out.</summary>
    public static ImmutableArray<MastFeed> Of(Station station, IProgress<AnalysisStep>? progress, CancellationToken cancellation)
    {
        var model = WireModels.Of(station);
        return [.. station.Masts.Select((mast, i) => Of(station, mast, i, model, progress, cancellation))];
    }

    /// <summary>The edges of a band: as stated, else half a per cent to either side.</summary>
    public static (double LowHz, double HighHz) Edges(Band band) =>
        (band.LowHz ?? band.FrequencyHz * (1 - EdgeShare), band.HighHz ?? band.FrequencyHz * (1 + EdgeShare));

    private static MastFeed Of(Station station, Mast mast, int feed, WireModel model, IProgress<AnalysisStep>? progress, CancellationToken cancellation)
    {
        var bands = new List<BandFeed>();
        foreach (var band in station.Bands)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Report(new AnalysisStep($"Feeding mast {mast.Name} on {band.Title}", (double)bands.Count / station.Bands.Length));
            bands.Add(Of(station, mast, feed, model, band, cancellation));
        }

        var networks = bands.Where(b => !b.Candidates.IsEmpty).Select(b => new BandNetwork(b.Band.Title, Edges(b.Band).LowHz, Edges(b.Band).HighHz, b.Candidates[0])).ToImmutableArray();
        var relay = new Relay("relay", new PeakVolts(station.Feed.RelayPeakV), new RmsAmps(station.Feed.RelayCurrentA));
        return new MastFeed(mast.Name, [.. bands], networks.Length < 2 ? null : SwitchPlan.Of(networks, relay));
    }

    private static BandFeed Of(Station station, Mast mast, int feed, WireModel model, Band band, CancellationToken cancellation)
    {
        var (low, high) = Edges(band);
        var frequencies = Enumerable.Range(0, PointsPerBand).Select(i => low + ((high - low) * i / (PointsPerBand - 1))).ToList();
        var sweep = WireSolver.Sweep(model, frequencies, null, cancellation);
        if (sweep.Solutions.IsEmpty)
        {
            return new BandFeed(band, [], [], [], null, null, sweep.Findings);
        }

        var centre = sweep.Solutions[PointsPerBand / 2];
        var exact = EarthChoice.IsExact(station);
        LoadImpedance Load(double soilFactor)
        {
            var soil = Soils.Of(station.Site);
            if (exact && SoilSolver.Solve(SoilModels.Of(station, soil with { ConductivitySPerM = soil.ConductivitySPerM * soilFactor }).Model, centre.FrequencyHz, cancellation).Solution is { } real)
            {
                // What the soil changes at the middle of the band is carried over it: within a per cent of frequency it moves little.
                var change = real.FeedImpedance(feed) - centre.FeedImpedance(feed);
                return LoadImpedance.Table([.. frequencies.Zip(sweep.Solutions, (f, s) => (f, s.FeedImpedance(feed) + change))]);
            }

            var earth = BandRun.EarthLoss(mast, centre, feed, soil with { ConductivitySPerM = soil.ConductivitySPerM * soilFactor });
            return LoadImpedance.Table([.. frequencies.Zip(sweep.Solutions, (f, s) => (f, s.FeedImpedance(feed) + earth))]);
        }

        var problem = new MatchProblem(Load(1), station.Feed.LineOhm, band.FrequencyHz, band.PowerW, PartQuality.FromQ(station.Feed.CoilQ, station.Feed.CapacitorQ))
        {
            Band = (low, high),
            BaseShuntF = BandRun.BaseCapacitanceF(station, mast),
        };
        var designed = MatchDesigner.Design(problem);
        if (designed.Candidates.IsEmpty)
        {
            return new BandFeed(band, [], [], [], null, null, designed.Findings);
        }

        var best = designed.Candidates[0];
        var spec = new ToleranceSpec { Scenarios = [new LoadScenario("soil half as conducting", 1, Load(0.5)), new LoadScenario("soil as stated", 2, problem.Load), new LoadScenario("soil twice as conducting", 1, Load(2))] };
        return new BandFeed(
            band, designed.Candidates, [.. best.Ladder.Sections.Zip(best.NetworkParts, (section, part) => Part(station, band, section, part))], Detuning.Of(best),
            ToleranceStudy.Run(best, spec, 500, cancel: cancellation), LineOf(station, band, best.InputImpedanceOhm), designed.Findings.AddRange(best.Findings));
    }

    private static BuyablePart Part(Station station, Band band, LadderSection section, PartState part)
    {
        if (section is not ReactiveSection reactive)
        {
            return new BuyablePart(section, section.Title, [], []);
        }

        if (reactive.IsCoil)
        {
            var (coils, why) = CoilDesigner.Design(new CoilWish(reactive.Value, band.FrequencyHz, part.HighestCurrent, station.Feed.BoxDiameterM, station.Feed.BoxLengthM) { DutyRatio = band.Duty }, 1);
            return coils.IsEmpty
                ? new BuyablePart(section, "", [], why)
                : new BuyablePart(section, $"{coils[0].Report.Coil.Turns:0.0} turns, {coils[0].Report.Coil.DiameterM * 1e3:0} mm across, {coils[0].Report.Coil.LengthM * 1e3:0} mm long, wire {coils[0].Report.Coil.WireM * 1e3:0.0} mm, Q {coils[0].Report.Quality.Value:0}", [], why);
        }

        var stock = Catalogue.Default.Capacitors.All.Select(c => new CapacitorItem(
            c.Name, Kind(c.Kind), c.MinimumF, c.MaximumF, new PeakVolts(c.PeakVoltageV), new RmsAmps(c.CurrentA), 10e6, CapacitorLoss.ConstantQ(c.Quality)));
        var (banks, findings) = CapacitorChooser.Choose(stock, new CapacitorDuty(reactive.Value, band.FrequencyHz, part.PeakVoltage, part.HighestCurrent, band.Duty));
        return banks.IsEmpty
            ? new BuyablePart(section, "", [], findings)
            : new BuyablePart(section, banks[0].Count == 1 ? banks[0].Item.Name : $"{banks[0].InParallel} × {banks[0].InSeries} of {banks[0].Item.Name} (parallel × series)", banks[0].Checks, findings);
    }

    private static FeedLine? LineOf(Station station, Band band, Complex loadOhm)
    {
        if (station.Feed.Cable is not { } name)
        {
            return null;
        }

        var row = Catalogue.Default.Lines[name];
        var type = new LineType(row.Name, row.ImpedanceOhm, row.VelocityFactor, row.LossRoot / 100 / Math.Sqrt(1e6), row.LossLinear / 100 / 1e6);
        return FeedLine.Of(type, station.Feed.CableLengthM, loadOhm, band.FrequencyHz, band.PowerW);
    }

    private static CapacitorKind Kind(string word) =>
        Enum.TryParse<CapacitorKind>(word.Split(' ')[0], ignoreCase: true, out var kind) ? kind : CapacitorKind.Ceramic;
}
