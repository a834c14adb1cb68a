using System.Collections.Immutable;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>A coil to be wound for a section.</summary>
/// <param name="Section">Reference name of the section.</param>
/// <param name="Proposal">The winding. Wind a turn or two more and set the last bit with a tap.</param>
/// <param name="TapTurns">Turns from the grounded end to the tap; null for a coil without one.</param>
public sealed record WoundCoil(string Section, CoilProposal Proposal, double? TapTurns = null);

/// <summary>Capacitors to be bought for a section.</summary>
/// <param name="Section">Reference name of the section.</param>
/// <param name="Bank">The bank.</param>
public sealed record BoughtCapacitor(string Section, CapacitorBank Bank);

/// <summary>A network turned into things: wound coils with their own Q and self-capacitance, bought capacitors with theirs, tuned and solved again.</summary>
/// <param name="Candidate">The network with the real parts.</param>
/// <param name="Coils">Coils to wind.</param>
/// <param name="Capacitors">Capacitors to buy.</param>
/// <param name="Checks">Capacitors and lengths of line against their ratings, at the voltages and currents of the tuned network.</param>
/// <param name="Findings">What could not be found or is out of range, with the nearest answer.</param>
public sealed record Realisation(
    MatchCandidate Candidate,
    ImmutableArray<WoundCoil> Coils,
    ImmutableArray<BoughtCapacitor> Capacitors,
    ImmutableArray<Check> Checks,
    ImmutableArray<Finding> Findings)
{
    private const double WorstSwr = 1.5;
    private const double GoodSwr = 1.1;

    /// <summary>Sections for which nothing can be wound, bought or cut.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];

    /// <summary>Whether it can be built: every part can be had and the line is matched to within 1.5.</summary>
    public bool IsComplete => Missing.IsEmpty && Candidate.Swr <= WorstSwr;

    /// <summary>Winds every coil and buys every capacitor of a network, then tunes what can be turned.</summary>
    /// <param name="ideal">The network as designed.</param>
    /// <param name="workshop">Room and stock.</param>
    /// <param name="kept">Sections whose values stand as built and are not tuned.</param>
    public static Realisation Of(MatchCandidate ideal, Workshop workshop, params ImmutableArray<int> kept)
    {
        if (ideal.Ladder.Sections is [TappedCoilSection tapped])
            return Tapped(ideal, tapped, workshop, kept.Contains(0));
        var first = Fitted(ideal, workshop, kept, variable: false);
        if (first.Candidate.Swr <= GoodSwr || !workshop.Own.IsEmpty || first.Capacitors.All(c => c.Bank.Item.IsVariable))
            return first;
        var second = Fitted(ideal, workshop, kept, variable: true);
        return second.Candidate.Swr < first.Candidate.Swr && second.Missing.Length <= first.Missing.Length ? second : first;
    }

    // Bought as it comes, or with capacitors that can be turned where fixed ones leave a mismatch.
    private static Realisation Fitted(MatchCandidate ideal, Workshop workshop, ImmutableArray<int> kept, bool variable)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var sections = ideal.Ladder.Sections.ToBuilder();
        var free = new List<int>();
        var banks = new Dictionary<int, CapacitorBank>();
        var windings = new Dictionary<int, CoilProposal>();
        var capacitor = 0;
        for (var i = 0; i < sections.Count; i++)
        {
            var name = ideal.Ladder.NameOf(i);
            var turns = !kept.Contains(i);
            if (sections[i] is not ReactiveSection section)
            {
                if (turns && sections[i] is LineSection or StubSection or TransformerSection)
                    free.Add(i);
                continue;
            }

            var state = ideal.Solution.Part(name);
            if (section.IsCoil)
            {
                var (coils, notes) = CoilDesigner.Design(Wish(section.Value, state, ideal, workshop), 1);
                findings.AddRange(notes.Select(f => f with { Message = $"{name}: {f.Message}" }));
                if (!coils.IsEmpty && notes.All(n => n.Code != "coil-box"))
                    windings[i] = coils[0];
                if (!coils.IsEmpty)
                    sections[i] = section with { CoilLoss = coils[0].Report.Loss, SelfCapacitanceF = coils[0].Report.SelfCapacitance.Value };
                if (turns)
                    free.Add(i);
                continue;
            }

            var duty = Duty(section.Value, state, ideal, workshop);
            var own = workshop.Own.ElementAtOrDefault(capacitor++);
            var (choice, problems) = own is null ? CapacitorChooser.Choose(workshop.Capacitors, duty, turns ? 0.2 : 0.03) : ([CapacitorChooser.Try(own, duty)], []);
            findings.AddRange(problems.Select(f => f with { Message = $"{name}: {f.Message}" }));
            if (choice.IsEmpty)
                continue;
            banks[i] = (variable ? choice.FirstOrDefault(c => c.Item.IsVariable) : null) ?? choice[0];
            sections[i] = ((ReactiveSection)section.WithValue(banks[i].CapacitanceF)) with { CapacitorLoss = banks[i].Item.Loss };
            if (turns && banks[i].Item.IsVariable)
                free.Add(i);
        }

        var tuned = ideal.With(LadderTuner.Best(new(sections.ToImmutable()), ideal.Problem, [.. free]));
        return Finish(tuned, windings, banks, workshop, findings);
    }

    // Wound, its shape settles how its parts couple, so coil and tap are set again and it is wound again; twice is enough.
    private static Realisation Tapped(MatchCandidate ideal, TappedCoilSection section, Workshop workshop, bool kept)
    {
        var candidate = ideal;
        CoilProposal? wound = null;
        ImmutableArray<Finding> findings = [];
        for (var round = 0; round < 2; round++)
        {
            var hardest = candidate.NetworkParts.MaxBy(p => p.HighestCurrent)!;
            var (proposals, notes) = CoilDesigner.Design(Wish(section.InductanceH, hardest, candidate, workshop), 1);
            findings = notes;
            if (proposals.IsEmpty || notes.Any(n => n.Code == "coil-box"))
                return new(candidate, [], [], [], findings) { Missing = [candidate.Ladder.NameOf(0)] };
            wound = proposals[0];
            var coil = wound.Report.Coil;
            var start = section with { Shape = coil.DiameterM / coil.LengthM, CoilLoss = CoilLoss.ConstantQ(wound.Report.Quality.Value) };
            section = kept ? start : (TappedCoilSection)Topologies.TappedCoil.Search(candidate.Problem, start).Ladder.Sections[0];
            candidate = candidate.With(new([section]));
        }

        return new(candidate, [new(candidate.Ladder.NameOf(0), wound!, section.TapShare * wound!.Report.Coil.Turns)], [], [], findings);
    }

    // Tuning moves the currents a little: coils are wound, and capacitors checked, for what the tuned network asks.
    private static Realisation Finish(MatchCandidate tuned, Dictionary<int, CoilProposal> windings, Dictionary<int, CapacitorBank> banks, Workshop workshop, ImmutableArray<Finding>.Builder findings)
    {
        var coils = ImmutableArray.CreateBuilder<WoundCoil>();
        var bought = ImmutableArray.CreateBuilder<BoughtCapacitor>();
        var missing = new List<string>();
        var lines = new List<Check>();
        for (var i = 0; i < tuned.Ladder.Sections.Length; i++)
        {
            var name = tuned.Ladder.NameOf(i);
            if (TypeOf(tuned.Ladder.Sections[i]) is { } type && LineVoltage.Check(name, type, tuned.Solution.Part(name), tuned.Problem.FrequencyHz, workshop.PeakFactor) is { } stands)
            {
                lines.Add(stands);
                if (LineVoltage.Fault(name, stands) is { } fault)
                {
                    missing.Add(name);
                    findings.Add(fault);
                    continue;
                }
            }

            if (MatchRemarks.Unwieldy(tuned.Ladder.Sections[i], tuned.Problem) is { } what)
            {
                missing.Add(name);
                findings.Add(new("realise-value", Severity.Warning, $"{name} is hard to make: {what}.", WayOut: "Take another network, or add strays or lead length until the value can be made."));
            }
            else if (tuned.Ladder.Sections[i] is ReactiveSection { IsCoil: true } coil)
            {
                var wish = Wish(coil.Value, tuned.Solution.Part(name), tuned, workshop);
                var (proposals, notes) = windings.TryGetValue(i, out var before) && CoilDesigner.Rewound(before, wish) is { } again ? ([again], []) : CoilDesigner.Design(wish, 1);
                if (proposals.IsEmpty || notes.Any(n => n.Code == "coil-box"))
                    missing.Add(name);
                if (!proposals.IsEmpty)
                    coils.Add(new(name, proposals[0]));
            }
            else if (banks.TryGetValue(i, out var bank))
            {
                bought.Add(new(name, CapacitorChooser.Try(bank.Item, Duty(tuned.Ladder.Sections[i].Value, tuned.Solution.Part(name), tuned, workshop), bank.InSeries, bank.InParallel)));
            }
            else if (tuned.Ladder.Sections[i] is ReactiveSection)
            {
                missing.Add(name);
            }
        }

        if (tuned.Swr > GoodSwr)
            findings.Add(new("realise-mismatch", Severity.Warning, "With the parts at hand the network does not tune to the line.", Value: FormattableString.Invariant($"{tuned.Swr:0.00}"), Allowed: "1.1", WayOut: "Add a variable capacitor to the stock."));
        return new(tuned, coils.ToImmutable(), bought.ToImmutable(), [.. bought.SelectMany(b => b.Bank.Checks.Select(c => c with { Id = $"{c.Id}[{b.Section}]" })), .. lines], findings.ToImmutable()) { Missing = [.. missing] };
    }

    private static LineType? TypeOf(LadderSection section) => section switch
    {
        LineSection line => line.Type,
        StubSection stub => stub.Type,
        _ => null,
    };

    private static CoilWish Wish(double henry, Ac.PartState state, MatchCandidate c, Workshop w) =>
        w.Wish(henry, c.Problem.FrequencyHz, state.HighestCurrent, c.Problem.Quality);

    private static CapacitorDuty Duty(double farad, Ac.PartState state, MatchCandidate c, Workshop w) =>
        w.Duty(farad, c.Problem.FrequencyHz, state);
}
