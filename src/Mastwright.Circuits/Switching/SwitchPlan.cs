using System.Collections.Immutable;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Switching;

/// <summary>One band's network on a mast that serves many bands.</summary>
/// <param name="Name">Name of the band, unique, e.g. <c>"80 m"</c>.</param>
/// <param name="LowHz">Lower edge, hertz.</param>
/// <param name="HighHz">Upper edge, hertz.</param>
/// <param name="Match">The match chosen for it, at its own frequency and power.</param>
public sealed record BandNetwork(string Name, double LowHz, double HighHz, MatchCandidate Match)
{
    /// <summary>Crest with modulation over the crest at the match's power; open contacts see it.</summary>
    public double PeakFactor { get; init; } = 1;
}

/// <summary>The relay used at every place.</summary>
/// <param name="Name">What the builder calls it.</param>
/// <param name="OpenRating">Peak radio-frequency voltage its open contact stands.</param>
/// <param name="ClosedRating">RMS radio-frequency current its closed contact carries.</param>
/// <param name="OpenF">Capacitance across the open contact, farads.</param>
/// <param name="ClosedOhm">Resistance of the closed contact, ohms.</param>
public sealed record Relay(string Name, PeakVolts OpenRating, RmsAmps ClosedRating, double OpenF = 1e-12, double ClosedOhm = 0.01);

/// <summary>A contact of the plan and the worst it sees over all bands.</summary>
/// <param name="Name">Name of the contact.</param>
/// <param name="What">What it joins.</param>
/// <param name="MadeIn">The bands in which it is made.</param>
/// <param name="MadeAtDropOff">Whether it is made with every relay released.</param>
/// <param name="Voltage">Open voltage against rating, at the band that is worst.</param>
/// <param name="Current">Closed current against rating; null for a contact that never carries power.</param>
public sealed record PlannedContact(string Name, string What, ImmutableArray<string> MadeIn, bool MadeAtDropOff, Check Voltage, Check? Current);

/// <summary>What is left of one band when all other networks hang beside it.</summary>
/// <param name="Name">The band.</param>
/// <param name="Swr">Standing wave ratio with the idle networks and contacts in place.</param>
/// <param name="SwrAlone">Standing wave ratio of the network alone.</param>
/// <param name="IdleLossW">Heat in idle networks, watts.</param>
/// <param name="IsolationDb">Transmitter power over the most that any idle network takes, dB.</param>
/// <param name="ReceiverW">Power reaching a receiver behind its open contact, watts; null without one.</param>
/// <param name="Relays">Contacts driven in this band.</param>
public sealed record PlannedBand(string Name, double Swr, double SwrAlone, double IdleLossW, double IsolationDb, double? ReceiverW, ImmutableArray<string> Relays);

/// <summary>
/// A relay plan: every band's network between a contact at the line and a contact at the mast, and a contact that grounds
/// the mast when all relays are released. Every state is solved with all networks in place.
/// </summary>
/// <param name="Contacts">All contacts with the worst each sees.</param>
/// <param name="Bands">What each band is like in the company of the others.</param>
/// <param name="Shared">Parts that bands could share.</param>
/// <param name="Findings">Overlapping bands, contacts over rating, a receiver in danger.</param>
public sealed record SwitchPlan(ImmutableArray<PlannedContact> Contacts, ImmutableArray<PlannedBand> Bands, ImmutableArray<SharedPart> Shared, ImmutableArray<Finding> Findings)
{
    private const string Mast = "mast";

    /// <summary>Makes the plan.</summary>
    /// <param name="bands">Two or more bands with their networks, all for one line impedance.</param>
    /// <param name="relay">The relay used.</param>
    /// <param name="receiverOhm">Input resistance of a receiver behind a contact on the line; null when there is none.</param>
    /// <param name="receiverLimitW">The most the receiver stands, watts (a tenth of a watt: common practice, no source).</param>
    /// <exception cref="ArgumentException">No bands, or two of one name.</exception>
    public static SwitchPlan Of(ImmutableArray<BandNetwork> bands, Relay relay, double? receiverOhm = null, double receiverLimitW = 0.1)
    {
        if (bands.IsDefaultOrEmpty || bands.Select(b => b.Name).Distinct().Count() != bands.Length)
            throw new ArgumentException("Bands must be given and have names of their own.", nameof(bands));
        var states = bands.Select(b => (Band: b, Solution: StateOf(b, bands, relay, receiverOhm).Solve(b.Match.Problem.FrequencyHz).AtInputPower(b.Match.Problem.PowerW))).ToList();
        var contacts = new List<PlannedContact>();
        foreach (var b in bands)
        {
            contacts.Add(Contact($"{b.Name} line", $"line to the {b.Name} network", [b.Name], false, states, relay));
            contacts.Add(Contact($"{b.Name} mast", $"{b.Name} network to the mast", [b.Name], false, states, relay));
        }

        contacts.Add(Contact("ground", "mast to ground, made at drop-off", [], true, states, relay));
        if (receiverOhm is not null)
            contacts.Add(Contact("receiver", "line to the receiver, made only while receiving", [], true, states, relay));
        var planned = states.Select(s => Planned(s.Band, s.Solution, bands, receiverOhm)).ToImmutableArray();
        return new([.. contacts], planned, SharedPart.Among(bands), [.. FindingsOf(bands, contacts, planned, receiverLimitW)]);
    }

    private static Network StateOf(BandNetwork active, ImmutableArray<BandNetwork> bands, Relay relay, double? receiverOhm)
    {
        var problem = active.Match.Problem;
        var parts = new List<Part>
        {
            AcSource.Transmitter("TX", "line", Network.Ground, problem.PowerW, problem.LineOhm),
            new MultiportLoad("ANT", [(Mast, Network.Ground)], problem.Load),
            new Switch("ground", Mast, Network.Ground, closed: false, relay.ClosedOhm, relay.OpenF),
        };
        if (problem.BaseShuntF > 0)
            parts.Add(new Capacitor("CB", Mast, Network.Ground, problem.BaseShuntF, problem.BaseShuntLoss));
        if (receiverOhm is { } ohm)
        {
            parts.Add(new Switch("receiver", "line", "rx", closed: false, relay.ClosedOhm, relay.OpenF));
            parts.Add(new Resistor("RX", "rx", Network.Ground, ohm));
        }

        foreach (var b in bands)
        {
            var on = b == active;
            var ladder = b.Match.Ladder;
            string Node(int k) => $"{b.Name}:{k}";
            parts.Add(new Switch($"{b.Name} line", "line", Node(0), on, relay.ClosedOhm, relay.OpenF));
            parts.Add(new Switch($"{b.Name} mast", Node(ladder.Sections.Length), Mast, on, relay.ClosedOhm, relay.OpenF));
            for (var i = 0; i < ladder.Sections.Length; i++)
            {
                if (!ladder.Sections[i].IsSeries)
                    parts.Add(new Resistor($"{b.Name}:wire{i}", Node(i), Node(i + 1), 0));
                parts.AddRange(ladder.Sections[i].Build($"{b.Name}:{ladder.NameOf(i)}", Node(i), Node(i + 1), b.Match.Problem.Quality));
            }
        }

        return new Network(parts);
    }

    private static PlannedContact Contact(string name, string what, ImmutableArray<string> madeIn, bool atDropOff, List<(BandNetwork Band, AcSolution Solution)> states, Relay relay)
    {
        var rating = new Source(relay.Name, SourceKind.MakerData);
        var solved = new Source("the network's solution with all networks in place", SourceKind.Derived);
        double Crest((BandNetwork Band, AcSolution Solution) s) => s.Band.PeakFactor * s.Solution.Part(name).PeakVoltage.Value;
        var open = states.Where(s => !madeIn.Contains(s.Band.Name)).DefaultIfEmpty(states[0]).MaxBy(Crest);
        var carrier = Trail.Given("peak voltage on the open contact at the stated power", "Vp", madeIn.Contains(open.Band.Name) ? 0 : open.Solution.Part(name).PeakVoltage.Value, QuantityKind.PeakVoltage, solved);
        var voltage = Check.AtMost(
            $"feed.switch.voltage[{name}]",
            Trade.Feed,
            $"Open contact, {what}",
            Trail.Computed("peak voltage on the open contact", "Vm", open.Band.PeakFactor * carrier.Value, QuantityKind.PeakVoltage, "Vm = m·Vp", solved, carrier, CrestFactor.Of(open.Band.PeakFactor)),
            Trail.Given("open contact rating", "Vr", relay.OpenRating.Value, QuantityKind.PeakVoltage, rating),
            open.Band.Name,
            "Use a vacuum relay, put two contacts in series, or choose a network with less voltage at the mast.",
            "High voltage at radio frequency: burns. Switch off before opening the cabinet.");
        if (madeIn.IsEmpty)
            return new(name, what, madeIn, atDropOff, voltage, null);
        var (band, solution) = states.Where(s => madeIn.Contains(s.Band.Name)).MaxBy(s => s.Solution.Part(name).HighestCurrent);
        return new(name, what, madeIn, atDropOff, voltage, Check.AtMost(
            $"feed.switch.current[{name}]",
            Trade.Feed,
            $"Closed contact, {what}",
            Trail.Given("current in the closed contact", "I", solution.Part(name).HighestCurrent.Value, QuantityKind.RmsCurrent, solved),
            Trail.Given("closed contact rating", "Ir", relay.ClosedRating.Value, QuantityKind.RmsCurrent, rating),
            band.Name,
            "Use a relay with heavier contacts, or two in parallel."));
    }

    private static PlannedBand Planned(BandNetwork band, AcSolution s, ImmutableArray<BandNetwork> bands, double? receiverOhm)
    {
        var idle = bands.Where(b => b != band).Select(b => s.Parts.Where(p => p.Name.StartsWith(b.Name + ":", StringComparison.Ordinal)).Sum(p => p.DissipationW)).ToList();
        var most = idle.DefaultIfEmpty(0).Max();
        return new(
            band.Name,
            s.Swr("TX", band.Match.Problem.LineOhm),
            band.Match.Swr,
            idle.Sum(),
            most > 0 ? 10 * Math.Log10(band.Match.Problem.PowerW / most) : double.PositiveInfinity,
            receiverOhm is null ? null : s.Part("RX").DissipationW,
            [$"{band.Name} line", $"{band.Name} mast", "ground", .. receiverOhm is null ? Array.Empty<string>() : ["receiver"]]);
    }

    private static IEnumerable<Finding> FindingsOf(ImmutableArray<BandNetwork> bands, List<PlannedContact> contacts, ImmutableArray<PlannedBand> planned, double receiverLimitW)
    {
        foreach (var (a, b) in bands.SelectMany((a, i) => bands.Skip(i + 1).Select(b => (a, b))))
            if (a.LowHz < b.HighHz && b.LowHz < a.HighHz)
                yield return new("switch-overlap", Severity.Error, $"The bands {a.Name} and {b.Name} overlap: it is not clear which network serves the frequencies they share.", Value: FormattableString.Invariant($"{Math.Max(a.LowHz, b.LowHz) / 1e6:0.###} to {Math.Min(a.HighHz, b.HighHz) / 1e6:0.###} MHz"), WayOut: "Move an edge so that the bands only touch.");
        foreach (var c in contacts.SelectMany(c => new[] { c.Voltage, c.Current }).OfType<Check>().Where(c => c.Verdict == Verdict.Fail))
            yield return new("switch-rating", Severity.Error, $"{c.Title}: over its rating on {c.GoverningCase}.", Value: FormattableString.Invariant($"{c.Ratio:P0} of rating"), Allowed: "100 %", WayOut: c.Cure);
        foreach (var b in planned)
        {
            if (b.Swr > Math.Max(1.2, b.SwrAlone * 1.1))
                yield return new("switch-upset", Severity.Warning, $"On {b.Name} the idle networks upset the match.", Value: FormattableString.Invariant($"{b.Swr:0.00} instead of {b.SwrAlone:0.00}"), WayOut: "Use relays of less open capacitance, or tune the network with the others in place.");
            if (b.IsolationDb < 30)
                yield return new("switch-isolation", Severity.Warning, $"On {b.Name} an idle network takes more than a thousandth of the power.", Value: FormattableString.Invariant($"{b.IsolationDb:0} dB"), Allowed: "30 dB", WayOut: "Ground the idle network's ends, or use relays of less open capacitance.");
            if (b.ReceiverW > receiverLimitW)
                yield return new("switch-receiver", Severity.Error, $"On {b.Name} too much power leaks into the receiver.", Value: FormattableString.Invariant($"{b.ReceiverW:0.000} W"), Allowed: FormattableString.Invariant($"{receiverLimitW} W"), WayOut: "Add a second contact that grounds the receiver's side, and a limiter.");
        }
    }
}
