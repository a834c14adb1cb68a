using System.Collections.Immutable;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Loss;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>The room and the stock a network is built from.</summary>
/// <param name="Capacitors">Capacitors that can be had.</param>
/// <param name="CoilDiameterM">Width of the room for each coil, metres.</param>
/// <param name="CoilLengthM">Length of the room for each coil, metres.</param>
public sealed record Workshop(ImmutableArray<CapacitorItem> Capacitors, double CoilDiameterM = 0.25, double CoilLengthM = 0.4)
{
    /// <summary>Average over peak power of the mode.</summary>
    public double DutyRatio { get; init; } = 1;

    /// <summary>Share of its free-air Q that a coil keeps when installed (common practice, no source: half).</summary>
    public double InstalledQShare { get; init; } = 0.5;

    /// <summary>Wires and tubes to wind from, metres; the usual ones when null.</summary>
    public ImmutableArray<double>? WiresM { get; init; }
}

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
/// <param name="Checks">Capacitors against their ratings, at the voltages and currents of the tuned network.</param>
/// <param name="Findings">What could not be found or is out of range, with the nearest answer.</param>
public sealed record Realisation(
    MatchCandidate Candidate,
    ImmutableArray<WoundCoil> Coils,
    ImmutableArray<BoughtCapacitor> Capacitors,
    ImmutableArray<Check> Checks,
    ImmutableArray<Finding> Findings)
{
    /// <summary>Winds every coil and buys every capacitor of a network, then tunes what can be turned.</summary>
    /// <param name="ideal">The network as designed.</param>
    /// <param name="workshop">Room and stock.</param>
    public static Realisation Of(MatchCandidate ideal, Workshop workshop)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (ideal.Ladder.Sections is [TappedCoilSection tapped])
            return Tapped(ideal, tapped, workshop, findings);
        var sections = ideal.Ladder.Sections.ToBuilder();
        var free = new List<int>();
        var banks = new Dictionary<int, CapacitorBank>();
        for (var i = 0; i < sections.Count; i++)
        {
            var name = ideal.Ladder.NameOf(i);
            if (sections[i] is not ReactiveSection section)
            {
                if (sections[i] is LineSection or StubSection or TransformerSection)
                    free.Add(i);
                continue;
            }

            var state = ideal.Solution.Part(name);
            if (section.IsCoil)
            {
                var (coils, notes) = CoilDesigner.Design(Wish(section.Value, state, ideal, workshop), 1);
                findings.AddRange(notes.Select(f => f with { Message = $"{name}: {f.Message}" }));
                if (!coils.IsEmpty)
                    sections[i] = section with { CoilLoss = coils[0].Report.Loss, SelfCapacitanceF = coils[0].Report.SelfCapacitance.Value };
                free.Add(i);
                continue;
            }

            var (choice, problems) = CapacitorChooser.Choose(workshop.Capacitors, Duty(section.Value, state, ideal, workshop), 0.2);
            findings.AddRange(problems.Select(f => f with { Message = $"{name}: {f.Message}" }));
            if (choice.IsEmpty)
                continue;
            banks[i] = choice[0];
            sections[i] = ((ReactiveSection)section.WithValue(choice[0].CapacitanceF)) with { CapacitorLoss = choice[0].Item.Loss };
            if (choice[0].Item.IsVariable)
                free.Add(i);
        }

        var tuned = ideal.With(LadderTuner.Best(new(sections.ToImmutable()), ideal.Problem, [.. free]));
        return Finish(tuned, banks, workshop, findings);
    }

    // Wound, its shape settles how its parts couple, so coil and tap are set again and it is wound again; twice is enough.
    private static Realisation Tapped(MatchCandidate ideal, TappedCoilSection section, Workshop workshop, ImmutableArray<Finding>.Builder findings)
    {
        var candidate = ideal;
        CoilProposal? wound = null;
        for (var round = 0; round < 2; round++)
        {
            var hardest = candidate.NetworkParts.MaxBy(p => p.HighestCurrent)!;
            var (proposals, notes) = CoilDesigner.Design(Wish(section.InductanceH, hardest, candidate, workshop), 1);
            findings.Clear();
            findings.AddRange(notes);
            if (proposals.IsEmpty)
                return new(candidate, [], [], [], findings.ToImmutable());
            wound = proposals[0];
            var coil = wound.Report.Coil;
            var start = section with { Shape = coil.DiameterM / coil.LengthM, CoilLoss = CoilLoss.ConstantQ(wound.Report.Quality.Value) };
            var (ladder, _) = Topologies.TappedCoil.Search(candidate.Problem, start);
            section = (TappedCoilSection)ladder.Sections[0];
            candidate = candidate.With(ladder);
        }

        return new(candidate, [new(candidate.Ladder.NameOf(0), wound!, section.TapShare * wound!.Report.Coil.Turns)], [], [], findings.ToImmutable());
    }

    // Tuning moves the currents a little: coils are wound, and capacitors checked, for what the tuned network asks.
    private static Realisation Finish(MatchCandidate tuned, Dictionary<int, CapacitorBank> banks, Workshop workshop, ImmutableArray<Finding>.Builder findings)
    {
        var coils = ImmutableArray.CreateBuilder<WoundCoil>();
        var bought = ImmutableArray.CreateBuilder<BoughtCapacitor>();
        for (var i = 0; i < tuned.Ladder.Sections.Length; i++)
        {
            var name = tuned.Ladder.NameOf(i);
            if (tuned.Ladder.Sections[i] is ReactiveSection { IsCoil: true } coil)
            {
                var (proposals, _) = CoilDesigner.Design(Wish(coil.Value, tuned.Solution.Part(name), tuned, workshop), 1);
                if (!proposals.IsEmpty)
                    coils.Add(new(name, proposals[0]));
            }
            else if (banks.TryGetValue(i, out var bank))
            {
                bought.Add(new(name, CapacitorChooser.Try(bank.Item, Duty(tuned.Ladder.Sections[i].Value, tuned.Solution.Part(name), tuned, workshop), bank.InSeries, bank.InParallel)));
            }
        }

        if (tuned.Swr > 1.1)
            findings.Add(new("realise-mismatch", Severity.Warning, "With the parts at hand the network does not tune to the line.", Value: FormattableString.Invariant($"{tuned.Swr:0.00}"), Allowed: "1.1", WayOut: "Add a variable capacitor to the stock."));
        return new(tuned, coils.ToImmutable(), bought.ToImmutable(), [.. bought.SelectMany(b => b.Bank.Checks.Select(c => c with { Id = $"{c.Id}[{b.Section}]" }))], findings.ToImmutable());
    }

    private static CoilWish Wish(double henry, Ac.PartState state, MatchCandidate c, Workshop w)
    {
        // The coil should be as good as the design counted on, and no bigger than that takes.
        var counted = 2 * Math.PI * c.Problem.FrequencyHz * henry / c.Problem.Quality.Coil.ResistanceOhm(henry, c.Problem.FrequencyHz);
        var wish = new CoilWish(henry, c.Problem.FrequencyHz, state.HighestCurrent, w.CoilDiameterM, w.CoilLengthM)
        {
            DutyRatio = w.DutyRatio,
            InstalledQShare = w.InstalledQShare,
            LeastQ = double.IsFinite(counted) ? counted : null,
        };
        return w.WiresM is { } wires ? wish with { WiresM = wires } : wish;
    }

    private static CapacitorDuty Duty(double farad, Ac.PartState state, MatchCandidate c, Workshop w) =>
        new(farad, c.Problem.FrequencyHz, state.PeakVoltage, state.HighestCurrent, w.DutyRatio);
}
