using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Structure.GuyLoss;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Stability;
using Mastwright.Structure.Tensioning;
using Mastwright.Structure.Vibration;

namespace Mastwright.Analysis.Stand;

/// <summary>What goes beyond strength in the load cases: buckling, a lost guy, vibration, and the tensions to set.</summary>
internal sealed class StandStudies(Station station, StandModel model, PreparedMast prepared, IReadOnlyList<SolvedCase> solved)
{
    private const int BucklingCases = 10;
    private const string Climbing = "Stored tension, falls and a falling mast kill. Never slacken or take off a guy of a standing mast without temporary guys in its place.";

    private string mast => model.Mast.Name;

    /// <summary>Whether the mast stands in still air.</summary>
    public bool Stands => Still.IsStable;

    private MastSolution Still => solved[0].Solution;

    /// <summary>Lowest buckling factor over the cases that press hardest and lean farthest; null when nothing is stable.</summary>
    public (Check Check, Trail Factor)? Buckling(CancellationToken cancellation)
    {
        var stable = solved.Where(s => s.Solution.IsStable).ToList();
        var cases = stable.OrderByDescending(s => s.Solution.Foot.ReactionN.Z).Take(BucklingCases / 2)
            .Concat(stable.OrderByDescending(s => s.Solution.Nodes.Max(n => n.DisplacementM.Length)).Take(BucklingCases / 2)).Distinct().ToList();
        var results = new BucklingResult?[cases.Count];
        Parallel.For(0, cases.Count, new ParallelOptions { CancellationToken = cancellation }, i =>
            results[i] = Structure.Stability.Buckling.Of(prepared, cases[i].Solution, cancellation));
        var worst = results.OfType<BucklingResult>().MinBy(r => r.LoadFactor);
        if (worst?.Explain() is not { } factor)
        {
            return null;
        }

        var limit = Trail.Given("buckling factor asked", "μmin", station.Limits.StabilityFactor, QuantityKind.Ratio, Source.DesignFile);
        factor = factor.Remark($"the mode moves most at {StandRules.Length(station, worst.WorstHeightM + model.Mast.Base.HeightM)}; lowest of the {cases.Count} cases that press hardest or lean farthest");
        return (Check.AtLeast($"stand.buckling[{mast}]", Trade.Stand, "The mast is far from buckling", factor, limit, worst.CaseName,
            "Add a guy level, take a stiffer section, or lower the initial tension.", Climbing), factor);
    }

    /// <summary>One guy lost after the other, in still air on the tensioning day.</summary>
    public (ImmutableArray<Check> Checks, ImmutableArray<GuyLossOutcome> Outcomes) LostGuys(CancellationToken cancellation)
    {
        if (!Still.IsStable)
        {
            return ([], []);
        }

        var results = GuyLossStudy.Run(prepared, solved[0].Case.Case, 2, cancellation);
        return ([.. results.Select(LostGuy)], [.. results.Select(r => new GuyLossOutcome(r.LostGuy, r.Stands,
            r.Guys.Select(g => g.PeakN).DefaultIfEmpty().Max(), r.PeakFootPressureN, r.LeastFootPressureN))]);
    }

    private Check LostGuy(GuyLossResult lost)
    {
        var id = $"stand.guy-lost[{mast}, {lost.LostGuy}]";
        const string title = "The mast stands with this guy lost, in still air";
        const string cure = "Tie off the mast before any work on this guy; keep the fall circle clear; a guy level more, or guys in pairs, would hold it.";
        var worst = lost.Guys.MaxBy(g => g.PeakN / StrengthOf(g.Name));
        if (!lost.Stands || worst is null)
        {
            // Not a failure of the design, which is never to lose a guy, but a thing its owner must know.
            return new Check(id, Trade.Stand, title,
                Trail.Computed("share of the case carried without the guy", "s", lost.After.LoadShare, QuantityKind.Ratio, "equilibrium without the guy", Source.Derived("docs/theory/structure-mast.md")),
                Trail.Given("whole case", "1", 1, QuantityKind.Ratio, Source.CommonPractice), 1, Verdict.Caution, $"{lost.LostGuy} lost in still air: the mast comes down", cure, Climbing);
        }

        var strand = model.Guys.First(g => g.Guy.Name == worst.Name).Strand;
        return Check.AtMost(id, Trade.Stand, title, lost.Explain(worst.Name)!, strand.Part.Given("breaking strength", "Tb", strand.BreakingN, QuantityKind.Force),
            $"{lost.LostGuy} lost in still air, {worst.Name} takes most", cure, Climbing);
    }

    /// <summary>Natural frequencies, vortices on tubes, and the guys' two vibrations.</summary>
    public (ImmutableArray<Check> Checks, ImmutableArray<Trail> Frequencies) Vibration(CancellationToken cancellation)
    {
        if (!Still.IsStable)
        {
            return ([], []);
        }

        var modes = MastVibration.Of(prepared, Still, 4, cancellation: cancellation);
        var checks = ImmutableArray.CreateBuilder<Check>();
        if (modes.Count > 0 && model.Runs.Where(r => r.Tube is not null).ToList() is { Count: > 0 } tubes)
        {
            var run = tubes.FirstOrDefault(r => modes[0].WorstHeightM <= r.TopM + 1e-9) ?? tubes[^1];
            var diameter = run.Tube!.OuterDiameterM;
            var check = WindExcitation.MastVortexCheck(modes[0], diameter, 0.012, 0.1 * diameter, MeanSpeedMPerS());
            checks.Add(StandRules.Screen(check) with
            {
                Id = $"{StationResult.KindOf(check.Id)}[{mast}]",
                GoverningCase = string.Create(CultureInfo.InvariantCulture,
                    $"wind of {Shown(WindExcitation.CriticalSpeed(modes[0].FrequencyHz, diameter).Value, QuantityKind.Speed)} across the mode at {modes[0].FrequencyHz:F2} Hz, largest at {StandRules.Length(station, modes[0].WorstHeightM + model.Mast.Base.HeightM)}"),
            });
        }

        foreach (var level in model.Guys.DistinctBy(g => g.Level))
        {
            checks.AddRange(GuyWindScreen.InitialTension($"{mast}, level {level.Level}", Still.Guy(level.Guy.Name).AnchorTensionN, level.Strand.BreakingN));
            if (Galloping(level) is { } galloping)
            {
                checks.Add(galloping);
            }
        }

        return (checks.ToImmutable(), [.. modes.Select(m => m.Explain())]);
    }

    /// <summary>Tensions to find at the anchors in still air, by temperature; empty when the mast does not stand.</summary>
    public ImmutableArray<TensionRow> Tensions(CancellationToken cancellation)
    {
        var (cold, hot) = (station.Site.ColdestK, station.Site.HottestK);
        var steps = Math.Max(1, (int)Math.Round((hot - cold) / 5));
        return Still.IsStable ? [.. TensionSetting.Table(prepared, [.. Enumerable.Range(0, steps + 1).Select(i => cold + ((hot - cold) * i / steps))], cancellation)] : [];
    }

    // The ice keeps the guys' speed of waves down and their width up; the wind with it is the stated one.
    private Check? Galloping(ModelGuy guy)
    {
        var iced = solved.FirstOrDefault(s => s.Name == "ice, still air");
        if (iced is not { Solution.IsStable: true })
        {
            return null;
        }

        var layer = new StatedIce().At(new IceSite { NominalThicknessM = station.Site.Ice.ThicknessM, DensityKgPerM3 = station.Site.Ice.DensityKgPerM3 }, guy.Guy.AttachmentHeightM);
        var weight = guy.Guy.Cable.WeightNPerM + layer.WeightNPerM(guy.Strand.DiameterM);
        var check = GuyWindScreen.Galloping(GuyVibration.Of(iced.Solution.Guy(guy.Guy.Name), weight), guy.Strand.DiameterM + (2 * station.Site.Ice.ThicknessM), station.Site.Ice.WindSpeedMPerS);
        return StandRules.Screen(check) with { Id = $"stand.guy.galloping[{mast}, level {guy.Level}]" };
    }

    private string Shown(double valueSi, QuantityKind kind) => QuantityFormat.Show(valueSi, kind, station.UnitSystem, 2);

    private double StrengthOf(string guy) => model.Guys.First(g => g.Guy.Name == guy).Strand.BreakingN;

    // Vortices need a steady wind: the mean speed that goes with a three-second gust is about 1/1.43 of it (ASCE 7 commentary, Durst curve, from memory).
    private double MeanSpeedMPerS()
    {
        var wind = station.Site.Wind;
        var speed = wind.SpeedMPerS ?? Math.Sqrt((wind.PressurePa ?? 0) / 0.613);
        return wind.Method == WindMethod.En1991 ? speed : speed / 1.43;
    }
}
