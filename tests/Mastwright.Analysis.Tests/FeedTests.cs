using System.Collections.Immutable;
using Mastwright.Analysis.Feed;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Switching;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Lightning;
using Mastwright.Tests.Shared;
using Direction = Mastwright.Model.Design.Direction;

namespace Mastwright.Analysis.Tests;

/// <summary>The feed of a station through its design file.</summary>
public sealed class FeedTests
{
    private const string Bands = "  - { frequency: 7.1 MHz, power: 1500 W }\n  - { frequency: 28.5 MHz, power: 1500 W }";

    private static readonly Lazy<StationResult> Plain = new(() => Run(""));

    [Fact]
    public void First_network_of_the_feed_is_the_one_the_verdict_uses()
    {
        var result = Plain.Value;
        var fed = Assert.Single(FeedRun.Of(result, null, TestContext.Current.CancellationToken));
        foreach (var (band, verdict) in fed.Bands.Zip(result.Masts[0].Bands))
        {
            Assert.Equal(verdict.Match!.Ladder.Sections.Select(s => s.Value), band.Chosen!.Ladder.Sections.Select(s => s.Value));
            Assert.Equal(verdict.Match.Swr, band.Chosen.Swr, 1e-9);
            Assert.True(band.Offers[0].IsChosen && band.Offers.Length >= 4);
            Assert.All(band.Offers, o => Assert.True(o.Real.IsComplete));
            Assert.Equal(band.Offers.Length, band.Offers.Select(o => o.Real.Candidate.TopologyId).Distinct().Count());
            Assert.InRange(band.Tolerance!.ShareInside, 0.5, 1);

            // The budget adds up: what the line, the network, the earth take and what is radiated is the transmitter's power.
            var budget = band.Line!.Budget;
            Assert.Equal(band.Band.PowerW, budget.Stages.Sum(s => s.Value) + budget.Radiated.Value, 1e-6);
        }

        Assert.NotNull(fed.Switching);
        Assert.NotNull(fed.Choke.Choke);
    }

    [Fact]
    public void Network_named_in_the_file_is_used_all_over()
    {
        var result = Run("  networks:\n    - { band: 40 m, network: l-shunt-at-mast, form: low-pass }");
        var match = result.Masts[0].Bands[0].Match!;
        Assert.Equal("l-shunt-at-load", match.TopologyId);
        Assert.All(match.Ladder.Sections.OfType<ReactiveSection>(), s => Assert.Equal(s.IsSeries, s.IsCoil));
        Assert.NotEqual("l-shunt-at-load", Plain.Value.Masts[0].Bands[0].Match!.TopologyId);
        var fed = FeedRun.Of(result, null, TestContext.Current.CancellationToken)[0].Bands[0];
        Assert.Equal(match.Ladder.Sections.Select(s => s.Value), fed.Chosen!.Ladder.Sections.Select(s => s.Value));
    }

    [Fact]
    public void A_network_that_holds_a_line_is_followed_in_a_strike()
    {
        var result = Run("  networks:\n    - { band: 40 m, network: stub }");
        var (station, mast, at) = (result.Station, result.Station.Masts[0], result.Masts[0]);
        Assert.Equal("stub", at.Bands[0].Match!.TopologyId);
        Assert.Empty(StrikeNetworks.LeftOut(at));
        var network = StrikeNetworks.Of(station, at).Single(n => n.Band == "40 m");
        var stub = network.Parts.Single(p => p.Element is FeedElement.OpenStub or FeedElement.ShortedStub);

        // A stub's delay is its length at the speed on the line, and its strength that of the cable it is cut from.
        var section = at.Bands[0].Match!.Ladder.Sections.OfType<StubSection>().Single();
        Assert.Equal(section.LengthM / (299792458.0 * section.Type.VelocityFactor), stub.Value, 1e-15);
        Assert.True(stub.StrengthPeakV > 0);

        var scenario = StrikeRun.Scenario(station, mast, at, StrikeRun.Strokes(station)[^1], network) with { EndS = 5e-6 };
        Assert.Empty(scenario.Faults());
        var struck = StrikeSimulation.Run(scenario)!;
        Assert.True(struck.Parts.Single(p => p.Name == stub.Name).PeakV.Value > 0);
        Assert.Contains(struck.Checks, c => c.Id == $"survive.strike.voltage[{stub.Name}]");
    }

    [Fact]
    public void Values_as_built_stay_and_the_mismatch_shows()
    {
        var result = Run("  networks:\n    - { band: 40 m, network: l-shunt-at-mast, form: low-pass, coils: [5 µH], capacitors: [30 pF] }");
        var network = result.Masts[0].Bands[0].Network!;
        Assert.Equal(5e-6, network.Match.Ladder.Sections[0].Value, 1e-12);
        Assert.Equal(30e-12, network.Match.Ladder.Sections[1].Value, 1e-15);
        Assert.True(network.Match.Swr > 1.5);
        Assert.Contains(result.Checks, c => c.Id.StartsWith("feed.parts", StringComparison.Ordinal) && c.Verdict == Verdict.Fail);
    }

    [Fact]
    public void Capacitor_over_its_rating_fails_with_a_cure()
    {
        var result = Run("  networks:\n    - { band: 40 m, network: l-shunt-at-mast, form: low-pass, capacitor-parts: [air variable 15-150 pF 4.5 kV] }", power: "15 kW");
        var check = Assert.Single(result.Checks, c => c.Id.StartsWith("feed.capacitor.voltage[A, 40 m", StringComparison.Ordinal));
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Contains("series", check.Cure);
    }

    [Fact]
    public void Coil_beyond_its_self_resonance_is_refused_with_a_value_that_can_be_wound()
    {
        var result = Run("  networks:\n    - { band: 10 m, network: tapped-coil, coils: [300 µH] }");
        var network = result.Masts[0].Bands[1].Network!;
        var finding = Assert.Single(network.Findings, f => f.Code is "coil-none" or "network-cannot");
        Assert.NotNull(finding.WayOut);
        Assert.Contains(result.Checks, c => c.Id.StartsWith("feed.parts", StringComparison.Ordinal) && c.Verdict == Verdict.Fail);
    }

    [Fact]
    public void Network_that_cannot_match_is_told_with_those_that_can()
    {
        var result = Run("  networks:\n    - { band: 40 m, network: series-capacitor }");
        var network = result.Masts[0].Bands[0].Network!;
        Assert.False(network.AsAsked);
        var finding = Assert.Single(network.Findings);
        Assert.Equal("network-cannot", finding.Code);
        Assert.Contains("tapped-coil", finding.Allowed);
    }

    [Fact]
    public void Bands_that_overlap_are_told()
    {
        var result = Run("", bands: "  - { frequency: 7.1 MHz, power: 1500 W, low: 7 MHz, high: 7.2 MHz }\n  - { frequency: 7.15 MHz, power: 1500 W, low: 7.1 MHz, high: 7.3 MHz, name: upper forty }");
        var plan = FeedRun.Of(result, null, TestContext.Current.CancellationToken)[0].Switching!;
        Assert.Contains(plan.Findings, f => f.Code == "switch-overlap" && f.WayOut is not null);
    }

    /// <summary>The crest of 100 % amplitude modulation is twice the carrier's (any text): what insulates sees twice the voltage, what carries current the same.</summary>
    [Fact]
    public void Modulation_of_the_file_reaches_every_part_that_insulates()
    {
        static (StationResult Result, MastFeed Feed) With(string crest)
        {
            var result = Run("  networks:\n    - { band: 40 m, network: l-shunt-at-mast, form: low-pass, coils: [4.5 µH], capacitor-parts: [vacuum variable 10-500 pF 7.5 kV] }",
                bands: Bands.Replace("power: 1500 W }", $"power: 1500 W, modulation-peak: {crest} }}"));
            return (result, FeedRun.Of(result, null, TestContext.Current.CancellationToken).Single());
        }

        var (carrier, modulated) = (With("1"), With("2"));
        double Demand(StationResult result, string id) => result.Checks.Single(c => c.Id.StartsWith(id, StringComparison.Ordinal)).Demand.Value;

        // Wider windings for twice the crest have another Q, which moves the currents a little.
        Assert.Equal(2, Demand(modulated.Result, "feed.capacitor.voltage[A, 40 m") / Demand(carrier.Result, "feed.capacitor.voltage[A, 40 m"), 0.02);
        Assert.Equal(1, Demand(modulated.Result, "feed.capacitor.current[A, 40 m") / Demand(carrier.Result, "feed.capacitor.current[A, 40 m"), 0.01);
        Assert.Equal(2, Demand(modulated.Result, "survive.crossing.voltage[A, top lamp, 40 m]") / Demand(carrier.Result, "survive.crossing.voltage[A, top lamp, 40 m]"), 1e-9);
        Assert.Equal(2, modulated.Feed.Bands[0].Line!.Check.Demand.Value / carrier.Feed.Bands[0].Line!.Check.Demand.Value, 0.02);
        static double Ground(MastFeed feed) => feed.Switching!.Contacts.Single(c => c.Name == "ground").Voltage.Demand.Value;
        Assert.Equal(2, Ground(modulated.Feed) / Ground(carrier.Feed), 0.02);
    }

    /// <summary>The same for lengths of line inside the network, which are held against the working voltage of their kind; one that does not stand it fails, and the network asked for cannot be built.</summary>
    [Fact]
    public void Lines_in_the_network_are_held_against_the_crest()
    {
        static ImmutableArray<Check> With(string crest, string power) =>
            [.. Run("  networks:\n    - { band: 40 m, network: stub }", bands: Bands.Replace("power: 1500 W }", $"power: {power}, modulation-peak: {crest} }}")).Checks.Where(c => c.Id.StartsWith("feed.", StringComparison.Ordinal) && c.Id.Contains("[A, 40 m", StringComparison.Ordinal))];
        static Check[] Lines(IEnumerable<Check> checks) => [.. checks.Where(c => c.Id.StartsWith("feed.line.voltage", StringComparison.Ordinal)).OrderBy(c => c.Id)];

        var (carrier, modulated, strong) = (Lines(With("1", "1500 W")), Lines(With("2", "1500 W")), With("2", "30 kW"));

        Assert.Equal(2, carrier.Length);
        Assert.All(carrier.Zip(modulated), p => Assert.Equal(2, p.Second.Demand.Value / p.First.Demand.Value, 1e-6));
        Assert.Contains(Lines(strong), c => c.Verdict == Verdict.Fail);
        Assert.Contains(strong, c => c.Id.StartsWith("feed.parts", StringComparison.Ordinal) && c.Verdict == Verdict.Fail);
    }

    [Fact]
    public void A_coil_that_nobody_can_wind_for_all_bands_is_told()
    {
        var fed = FeedRun.Of(Plain.Value, null, TestContext.Current.CancellationToken).Single();
        var plan = fed.Switching! with { Shared = [new SharedPart(fed.Bands[0].Chosen!.Ladder.Sections.First(s => s.ValueKind == QuantityKind.Inductance).Title, [("40 m", 1)], ByTaps: true)] };
        var coil = Assert.Single(SharedCoil.Of(Plain.Value.Station, fed.Bands, plan));
        Assert.Null(coil.Winding);
        Assert.Equal("coil-none", Assert.Single(coil.Findings).Code);
    }

    /// <summary>The file gives one length for each mast that any position feeds; a position that leaves one out keeps the lengths of the others.</summary>
    [Fact]
    public void Lines_that_are_laid_keep_their_lengths_in_every_position()
    {
        var station = Examples.Result("pair-80m").Station;
        var basis = new GroupBasis(WireSolver.Solve(WireModels.Of(station), 3.65e6, null, TestContext.Current.CancellationToken).Require());
        var group = station.Groups[0] with { Feed = new GroupFeedSpec { FeederLengthsM = [15, 25] } };
        var east = group.Directions[0] with { Name = "east alone", Currents = [.. group.Directions[0].Currents.Where(c => c.Mast == "East")] };
        group = group with { Directions = [.. group.Directions, east] };
        double[] Lengths(Direction direction) => [.. GroupTerminals.Of(station, group, direction, basis).Problem.FeederLengthsM!.Value];
        Assert.Equal([15, 25], Lengths(group.Directions[0]));
        Assert.Equal([25], Lengths(east));

        // What does not fit is refused, not forgotten.
        var wrong = group with { Feed = new GroupFeedSpec { FeederLengthsM = [15, 25, 35] } };
        var (feeds, findings) = GroupDesigner.Design(GroupTerminals.Of(station, wrong, group.Directions[0], basis).Problem);
        Assert.Empty(feeds);
        Assert.Equal("group-feeders", Assert.Single(findings).Code);
    }

    [Fact]
    public void A_band_whose_edge_cannot_be_solved_says_so_and_the_others_are_fed()
    {
        var result = Plain.Value;
        var station = result.Station;
        var wide = result with { Station = station with { Bands = [station.Bands[0] with { HighHz = 60e9 }, station.Bands[1]] } };
        var fed = FeedRun.Of(wide, null, TestContext.Current.CancellationToken).Single();
        Assert.Null(fed.Bands[0].Chosen);
        Assert.Contains(fed.Bands[0].Findings, f => f.Severity == Severity.Error && f.WayOut is not null);
        Assert.NotNull(fed.Bands[1].Chosen);

        var pair = Examples.Result("pair-80m").Station;
        var (groups, findings) = GroupFeedRun.Of(Sparse(pair with { Bands = [pair.Bands[0] with { HighHz = 60e9 }] }), null, TestContext.Current.CancellationToken);
        Assert.NotEmpty(groups.Single().Offers);
        Assert.Contains(findings, f => f.Severity == Severity.Error && f.WayOut is not null);
    }

    private static Station Sparse(Station station) => station with { Masts = [.. station.Masts.Select(m => m with { Radials = m.Radials with { Count = 4, LengthM = 8 } })] };

    [Fact]
    public void Unknown_band_of_a_network_is_refused_with_its_line()
    {
        var reading = Read("  networks:\n    - { band: 41 m, network: pi }", Bands, "1500 W");
        var finding = Assert.Single(reading.Findings, f => f.Severity == Severity.Error);
        Assert.Equal("missing-band", finding.Code);
        Assert.Contains("40 m", finding.Message + finding.Allowed);
        Assert.True(finding.Place!.Line > 0);
    }

    [Fact]
    public void Group_is_fed_in_real_parts_in_every_position()
    {
        var text = File.ReadAllText(Repository.File("examples", "pair-80m.yaml")).Replace("count: 60, length: 20 m", "count: 4, length: 8 m");
        var station = DesignReader.Read(text, "pair.yaml", CatalogueNames.Of).Station!;
        var group = Assert.Single(GroupFeedRun.Of(station, null, TestContext.Current.CancellationToken).Groups);
        Assert.True(group.Offers.Length >= 4);
        Assert.NotNull(group.Table);
        Assert.Equal(2, group.Directions.Length);
        foreach (var direction in group.Directions)
        {
            Assert.All(direction.Errors, e => Assert.True((e.Asked - e.Achieved).Magnitude < 0.05, $"{direction.Direction.Name} {e}"));
            Assert.True(Math.Abs(direction.Wanted.GainDbi - direction.Given.GainDbi) < 0.3);
        }

        var forced = station with { Groups = [station.Groups[0] with { Feed = new GroupFeedSpec { Way = GroupWay.CurrentForcing } }] };
        Assert.Equal("current forcing", GroupFeedRun.Of(forced, null, TestContext.Current.CancellationToken).Groups[0].Offers[0].Real.Feed.Title);
    }

    private static StationResult Run(string feed, string bands = Bands, string power = "1500 W")
    {
        var reading = Read(feed, bands, power);
        Assert.True(reading.Ok, string.Join("\n", reading.Findings.Select(f => f.Message)));
        return StationAnalysis.Run(reading, null, TestContext.Current.CancellationToken);
    }

    private static DesignReading Read(string feed, string bands, string power)
    {
        var text = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));
        var (from, to) = (text.IndexOf("bands:", StringComparison.Ordinal), text.IndexOf("feed:", StringComparison.Ordinal));
        text = text[..from] + "bands:\n" + bands.Replace("1500 W", power) + "\n\nfeed:\n" + (feed.Length > 0 ? feed + "\n" : "") + text[(to + "feed:\n".Length)..];
        return DesignReader.Read(text, "station.yaml", CatalogueNames.Of);
    }
}
