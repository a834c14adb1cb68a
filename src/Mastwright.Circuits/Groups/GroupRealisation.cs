using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>A group's feed turned into things: every coil wound, every capacitor bought, trimmed and solved again.</summary>
/// <param name="Feed">The feed with the real parts.</param>
/// <param name="Coils">Coils to wind, by the name of the part.</param>
/// <param name="Capacitors">Capacitors to buy, by the name of the part.</param>
/// <param name="Findings">What cannot be had, with the nearest answer.</param>
public sealed record GroupRealisation(GroupFeed Feed, ImmutableArray<WoundCoil> Coils, ImmutableArray<BoughtCapacitor> Capacitors, ImmutableArray<Finding> Findings)
{
    /// <summary>Whether every part can be had.</summary>
    public bool IsComplete { get; private init; }

    /// <summary>Lengths of line against their working voltages.</summary>
    public ImmutableArray<Check> Lines { get; private init; } = [];

    /// <summary>Winds and buys the parts of a feed. The coupled coils of a hybrid stay as designed: they are a twisted pair on a ring.</summary>
    /// <param name="ideal">The feed as designed.</param>
    /// <param name="workshop">Room and stock.</param>
    public static GroupRealisation Of(GroupFeed ideal, Workshop workshop)
    {
        var problem = ideal.Problem;
        var findings = ideal.Findings.ToBuilder();
        var coupled = ideal.Network.Parts.OfType<Mutual>().SelectMany(m => new[] { m.Coil1, m.Coil2 }).ToHashSet();
        var (free, rest) = (new List<Part>(), new List<Part>());
        var banks = new Dictionary<string, CapacitorBank>();
        var missing = new HashSet<string>();
        foreach (var part in ideal.Network.Parts)
        {
            var state = ideal.Solution.Part(part.Name);
            switch (part)
            {
                case Inductor l when !coupled.Contains(l.Name):
                    var (coils, notes) = CoilDesigner.Design(workshop.Wish(l.InductanceH, problem.FrequencyHz, state.HighestCurrent, problem.Quality), 1);
                    findings.AddRange(notes.Select(f => f with { Message = $"{l.Name}: {f.Message}" }));
                    free.Add(coils.IsEmpty ? l : new Inductor(l.Name, l.A, l.B, l.InductanceH, coils[0].Report.Loss, coils[0].Report.SelfCapacitance.Value));
                    break;
                case Capacitor c:
                    var (choice, problems) = CapacitorChooser.Choose(workshop.Capacitors, workshop.Duty(c.CapacitanceF, problem.FrequencyHz, state), 0.2);
                    findings.AddRange(problems.Select(f => f with { Message = $"{c.Name}: {f.Message}" }));
                    if (choice.IsEmpty)
                    {
                        free.Add(c);
                        break;
                    }

                    banks[c.Name] = choice.FirstOrDefault(b => b.Item.IsVariable) ?? choice[0];
                    var bought = new Capacitor(c.Name, c.A, c.B, banks[c.Name].CapacitanceF, banks[c.Name].Item.Loss);
                    (banks[c.Name].Item.IsVariable ? free : rest).Add(bought);
                    break;
                default:
                    rest.Add(part);
                    break;
            }
        }

        // A hybrid's capacitors belong to the hybrid: turning them would spoil it without forcing any current.
        var tuned = coupled.Count > 0 ? free : [.. GroupTuner.Tune(free, rest, problem, matchToo: true)];
        var feed = new GroupFeed(ideal.Title, new Network(rest.Concat(tuned)), problem, ideal.Findings);
        var (wound, held) = (new List<WoundCoil>(), new List<BoughtCapacitor>());
        var lines = new List<Check>();
        foreach (var part in feed.Network.Parts)
        {
            var state = feed.Solution.Part(part.Name);
            if (part is Inductor l && !coupled.Contains(l.Name))
            {
                var (coils, notes) = CoilDesigner.Design(workshop.Wish(l.InductanceH, problem.FrequencyHz, state.HighestCurrent, problem.Quality), 1);
                if (coils.IsEmpty || notes.Any(n => n.Code == "coil-box"))
                    missing.Add(l.Name);
                if (!coils.IsEmpty)
                    wound.Add(new(l.Name, coils[0]));
            }
            else if (part is Capacitor c)
            {
                if (banks.TryGetValue(c.Name, out var bank))
                    held.Add(new(c.Name, CapacitorChooser.Try(bank.Item, workshop.Duty(c.CapacitanceF, problem.FrequencyHz, state), bank.InSeries, bank.InParallel)));
                else
                    missing.Add(c.Name);
            }
            else if (part is Line line && LineVoltage.Check(line.Name, line.Type, state, problem.FrequencyHz, workshop.PeakFactor) is { } stands)
            {
                lines.Add(stands);
                if (LineVoltage.Fault(line.Name, stands) is { } fault)
                {
                    missing.Add(line.Name);
                    findings.Add(fault);
                }
            }
        }

        return new(feed, [.. wound], [.. held], findings.ToImmutable()) { IsComplete = missing.Count == 0, Lines = [.. lines] };
    }

    /// <summary>The same hardware with the masts hung on its ports in another order.</summary>
    /// <param name="portOfMast">Port of each mast.</param>
    /// <param name="wanted">Currents wanted, one a mast.</param>
    /// <returns>The feed as it works then, its masts counted by port, and the currents of the masts in their own order.</returns>
    public (GroupFeed Feed, ImmutableArray<Complex> Currents) Hung(ImmutableArray<int> portOfMast, ImmutableArray<Complex> wanted)
    {
        var p = Feed.Problem;
        var mastOfPort = Enumerable.Range(0, p.Masts).Select(port => portOfMast.IndexOf(port)).ToArray();
        var z = p.Load.At(p.FrequencyHz);
        var turned = new Complex[p.Masts, p.Masts];
        for (var i = 0; i < p.Masts; i++)
            for (var j = 0; j < p.Masts; j++)
                turned[i, j] = z[mastOfPort[i], mastOfPort[j]];
        var problem = p with { Load = LoadImpedance.Constant(turned), Currents = [.. mastOfPort.Select(m => wanted[m])] };
        var feed = new GroupFeed(Feed.Title, Feed.Network.With(problem.Antenna()), problem, []);
        var currents = feed.Currents;
        return (feed, [.. portOfMast.Select(port => currents[port])]);
    }
}
