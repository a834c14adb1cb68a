using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Tension;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Tune;

/// <summary>What is asked: the tensions just measured, and how close is close enough.</summary>
/// <param name="Station">The station.</param>
/// <param name="Mast">The mast.</param>
/// <param name="TemperatureK">Temperature of the guys now.</param>
/// <param name="MeasuredN">Tension at the anchor by what was written for the guy.</param>
/// <param name="ToleranceShare">Deviation from the target that is good enough, as a share of it.</param>
/// <param name="MetresPerTurn">What one turn takes up, for every guy; null to use the turnbuckles of the design.</param>
public sealed record TurnsRequest(Station Station, Mast Mast, double TemperatureK, IReadOnlyList<(string Guy, double TensionN)> MeasuredN, double ToleranceShare = 0.05, double? MetresPerTurn = null);

/// <summary>From measured tensions to the next turns of which turnbuckle.</summary>
public static class TurnsAdvice
{
    // Limits while others are turned: common practice, no source.
    private const double LeastShareOfTarget = 0.5;
    private const double MostShareOfTarget = 1.3;
    private const double MostShareOfBreaking = 0.15;
    // A turn must be worth nearly half a tolerance: common practice, no source.
    private const double TurnCost = 0.2;

    // Guys of one level that differ by more than this, each against its target, do not hold a plumb mast in still air.
    private const double UnlikeShare = 0.1;
    private const double UsualThreadM = 0.0127;
    private const double UsualTravelM = 0.1524;
    private const double UsualOpen = 0.7;

    /// <summary>The advice as a document; null with the findings that stand in its way.</summary>
    public static (Document? Document, ImmutableArray<Finding> Findings) Of(TurnsRequest request, CancellationToken cancellation)
    {
        var (standing, falls) = StandingMast.Of(request.Station, request.Mast, request.TemperatureK, cancellation);
        if (standing is null)
        {
            return (null, [falls!]);
        }

        var (measured, problems) = Measured(request, standing);
        if (problems.Length > 0)
        {
            return (null, problems);
        }

        var notes = new List<string>();
        var guys = standing.Guys.Select(g => Turnbuckle(g, measured.TryGetValue(g.Name, out var n) ? n : null, request, notes)).ToList();
        var plan = Turnbuckles.Plan(guys, standing.InfluenceNPerM, new TurnOptions(TurnCost: TurnCost));
        return plan.Value is null ? (null, plan.Findings) : (Write(request, standing, guys, measured, plan.Value, notes, plan.Findings), []);
    }

    private static (Dictionary<string, double> Measured, ImmutableArray<Finding> Problems) Measured(TurnsRequest request, StandingMast standing)
    {
        var problems = ImmutableArray.CreateBuilder<Finding>();
        var measured = new Dictionary<string, double>();
        foreach (var (guy, tension) in request.MeasuredN)
        {
            var (name, problem) = GuyNames.Find([.. standing.Guys.Select(g => g.Name)], guy, request.Mast.Name);
            if (problem is not null)
            {
                problems.Add(problem);
            }
            else if (!measured.TryAdd(name!, tension))
            {
                problems.Add(new Finding("guy-twice", Severity.Error, $"Guy {GuyNames.Short(name!)} is given twice.", Value: guy, WayOut: "Give one tension for each guy."));
            }
        }

        return (measured, problems.ToImmutable());
    }

    private static TurnbuckleGuy Turnbuckle(GuyAtRest guy, double? measuredN, TurnsRequest request, List<string> notes)
    {
        var target = guy.AnchorTensionN;
        var part = guy.Hardware is { } hardware ? Catalogue.Default.Turnbuckles[hardware.Turnbuckle] : null;
        var perTurn = request.MetresPerTurn ?? TurnbuckleThread.MetresPerTurn(part?.ThreadM ?? UsualThreadM);
        if (perTurn is null)
        {
            notes.Add($"Guy {GuyNames.Short(guy.Name)}: the thread of {part!.Name} is not in the coarse series; 13 threads to the inch were taken. Measure what one turn takes up and give it.");
            perTurn = TurnbuckleThread.MetresPerTurn(UsualThreadM);
        }

        if (part is null)
        {
            notes.Add($"Guys of the level at {guy.Level.HeightM.ToString("0.##", CultureInfo.InvariantCulture)} m: the design names no turnbuckle; one of 1/2 in thread and 6 in travel, open to {UsualOpen:P0}, was taken.");
        }

        var travel = part?.TakeUpM ?? UsualTravelM;
        var open = guy.Hardware?.TurnbuckleOpen ?? UsualOpen;
        var most = Math.Max(MostShareOfTarget * target, MostShareOfBreaking * guy.BreakingN);

        // A guy that was not measured is left alone: nobody knows what a turn would do to it.
        return new TurnbuckleGuy(
            guy.Name, measuredN ?? target, target, request.ToleranceShare * target, LeastShareOfTarget * target, most, perTurn!.Value,
            measuredN is null ? 0 : travel * open, measuredN is null ? 0 : travel * (1 - open));
    }

    private static Document Write(
        TurnsRequest request, StandingMast standing, List<TurnbuckleGuy> guys, Dictionary<string, double> measured, TurnPlan plan, List<string> notes, ImmutableArray<Finding> findings)
    {
        var document = new DocumentBuilder($"Next turns on mast {request.Mast.Name}", request.Station.Name, request.Station.UnitSystem);
        document.Caution(TurnPlan.Caution).Caution("Local codes, the makers' data and a licensed engineer come first.");
        string Force(double n) => document.Show(n, QuantityKind.Force, 3);
        document.Table($"Tension at the anchor at {document.Show(standing.TemperatureK, QuantityKind.Temperature, 3)}, still air",
            ["Guy", "#Measured", "#Target", "#Off", "#One turn adds", "#Turns in all", "#Expected after", "State"],
            guys.Select((g, i) => new Cell[]
            {
                GuyNames.Short(g.Name), measured.ContainsKey(g.Name) ? Force(g.MeasuredN) : "not measured", Force(g.TargetN), Percent((g.MeasuredN / g.TargetN) - 1),
                Force(standing.InfluenceNPerM[i, i] * g.MetresPerTurn), plan.Steps.Where(s => s.Guy == g.Name).Sum(s => s.Turns).ToString("+0.#;−0.#;0", CultureInfo.InvariantCulture), Force(plan.FinalN[i]),
                Math.Abs(plan.FinalN[i] - g.TargetN) <= g.ToleranceN ? new Cell("within tolerance", Verdict.Pass) : new Cell("still off", Verdict.Caution),
            }));
        if (plan.Steps.IsEmpty)
        {
            document.Text(plan.WithinTolerance ? "Every guy is within its tolerance. Leave the turnbuckles alone, and see that each is locked." : "No turn that can be made brings the guys nearer.");
        }
        else
        {
            document.Text($"Turn in this order; measure again after each round, and see that the mast is plumb. Within {request.ToleranceShare:P0} of the target is good enough.");
            document.Add(new Steps([.. plan.Steps.Select(s => $"Guy {GuyNames.Short(s.Guy)}: {Words(s.Turns)}; the guy should then show {Force(s.ExpectedN[guys.FindIndex(g => g.Name == s.Guy)])}.")]));
        }

        foreach (var level in standing.Guys.Where(g => measured.ContainsKey(g.Name)).GroupBy(g => g.Level.HeightM))
        {
            var shares = level.Select(g => measured[g.Name] / g.AnchorTensionN).ToList();
            if (shares.Max() - shares.Min() > UnlikeShare)
            {
                document.Add(new Note(NoteKind.Assumption, $"The guys at {document.Show(level.Key, QuantityKind.Length, 3)} differ by {shares.Max() - shares.Min():P0} of their target. A plumb mast in still air holds its guys in balance, so a gust, a bent mast or a reading is in this: plumb the mast first and measure again before you chase it with turns."));
            }
        }

        if (measured.Count < guys.Count)
        {
            document.Add(new Note(NoteKind.Assumption, $"{guys.Count - measured.Count} guy(s) were not measured: they are taken to be at their target and are not turned. Measure them all."));
        }

        foreach (var note in notes.Distinct())
        {
            document.Add(new Note(NoteKind.Assumption, note));
        }

        document.Add(new Note(NoteKind.Remark, "What each turn does comes from the stiffness of the mast as designed at this temperature; a first turn that does something else means that the mast or a reading is not what the design says."));
        return document.Findings(findings.Select(f => f with { Message = standing.Guys.Aggregate(f.Message, (m, g) => m.Replace(g.Name, GuyNames.Short(g.Name), StringComparison.Ordinal)) })).Build();
    }

    private static string Words(double turns)
    {
        var size = Math.Abs(turns).ToString("0.##", CultureInfo.InvariantCulture);
        return $"{size} turn{(Math.Abs(turns) > 1 ? "s" : "")} {(turns > 0 ? "tighter" : "looser")}";
    }

    private static string Percent(double share) => (100 * share).ToString("+0.#;−0.#;0", CultureInfo.InvariantCulture) + " %";
}
