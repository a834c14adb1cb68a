using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Members;
using Mastwright.Structure.Raising;

namespace Mastwright.Analysis.Stand;

/// <summary>Whether mast, pole, line and lug carry the lift.</summary>
public static class LiftChecks
{
    private const int AngleSteps = 12;

    private static readonly Source Statics = Source.Derived("docs/theory/structure-raising.md");

    /// <summary>The checks of the plan of the design.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ImmutableArray<Check> Of(Station station, Mast mast, CancellationToken cancellation = default) =>
        mast.Raising.Method == RaisingMethod.Stacking ? StackingRun.Of(station, mast, cancellation).Checks : Of(station, mast, RaisingRun.LiftOf(station, mast));

    /// <summary>The checks of a lift on the hinge.</summary>
    public static ImmutableArray<Check> Of(Station station, Mast mast, Lift lift)
    {
        var plan = mast.Raising;
        var checks = ImmutableArray.CreateBuilder<Check>();
        var bent = MastCheck(station, mast, lift);

        // A plan nobody made is no reason to refuse a mast.
        checks.Add(plan.LiftAtM is null && bent.Verdict == Verdict.Fail ? bent with { Verdict = Verdict.Caution } : bent);
        var worstLine = lift.Forces.WorstHaul.HaulLineN >= lift.Forces.WorstLift.LiftLineN ? lift.Forces.WorstHaul : lift.Forces.WorstLift;
        var pull = Trail.Computed("largest line tension of the lift", "T", Math.Max(worstLine.HaulLineN, worstLine.LiftLineN), QuantityKind.Force, "moments about the hinge", Statics);
        if (plan.LineStrengthN is { } strength)
        {
            var factor = Trail.Given("factor on lifting gear", "γ", plan.LineFactor, QuantityKind.Ratio, Source.DesignFile, "changeable (raising: line-factor)");
            checks.Add(Check.AtMost($"stand.raise.line[{mast.Name}]", Trade.Stand, "Lifting line", pull,
                Trail.Computed("line tension allowed", "Ta", strength / plan.LineFactor, QuantityKind.Force, "Ta = Tb/γ", Source.DesignFile, Trail.Given("breaking strength", "Tb", strength, QuantityKind.Force, Source.DesignFile), factor),
                At(worstLine), "Use a stronger line, a longer pole, or more parts of line.", RaisingCaution.Text));
        }

        if (plan.Pole is { } tube)
        {
            var worst = lift.Forces.WorstPole;
            var metal = MastSections.Metal(tube.Metal);
            var member = new RoundMember(new RoundSection(tube.DiameterM, tube.WallM), metal, lift.PoleM);
            var check = MemberChecks.Tube(mast.Name, StandRules.Lifting(station, metal.Family), member, new MemberForces(worst.PoleCompressionN, 0), At(worst));
            checks.Add(check with { Id = $"stand.raise.pole[{mast.Name}]", Title = "Pole of the lift against buckling", Cure = "Use a stouter or shorter pole.", Caution = RaisingCaution.Text });
        }

        if (plan.Lug is { } lug)
        {
            var plate = GuyChains.PlateOf(lug);
            checks.Add(plate.Examine(mast.Name, plan.LiftSpreadM > 0 ? lift.Forces.WorstLift.LiftLineN / 2 : lift.Forces.WorstLift.LiftLineN, StandRules.Lifting(station, MetalFamily.Steel).Factors, At(lift.Forces.WorstLift))
                with
            { Id = $"stand.raise.lug[{mast.Name}]", Title = "Lifting lug on the mast" });
        }

        return checks.ToImmutable();
    }

    /// <summary>The strength of the mast where its own weight bends it most, at the worst angle.</summary>
    private static Check MastCheck(Station station, Mast mast, Lift lift)
    {
        Check? worst = null;
        var steps = lift.Forces.Steps;
        foreach (var step in Enumerable.Range(0, AngleSteps).Select(i => steps[i * (steps.Count - 1) / (AngleSteps - 1)]))
        {
            foreach (var run in MastSections.Of(mast).Where(r => r.Metal.YieldPa > 0))
            {
                var check = At(station, mast, lift, run, step);
                worst = worst is null || check.Ratio > worst.Ratio ? check : worst;
            }
        }

        return worst ?? new Check($"stand.raise.mast[{mast.Name}]", Trade.Stand, "The mast bears its own lift", Trail.Given("use", "u", 0, QuantityKind.Ratio, Source.DesignFile),
            Trail.Given("limit of use", "1", 1, QuantityKind.Ratio, Source.DesignFile), 0, Verdict.Unknown, "no metal of the mast has a listed yield strength", "Choose a metal with a listed strength.", RaisingCaution.Text);
    }

    private static Check At(Station station, Mast mast, Lift lift, MastRun run, RaisingStep step)
    {
        var cos = Math.Max(0, Math.Cos(step.AngleRad));
        var places = Enumerable.Range(0, 9).Select(i => run.BottomM + ((run.TopM - run.BottomM) * i / 8)).Append(lift.Bending.LiftM).Where(x => x >= run.BottomM && x <= run.TopM);
        var at = places.MaxBy(x => Math.Abs(lift.Bending.MomentNm(x)));
        var moment = cos * Math.Abs(lift.Bending.MomentNm(at));
        var across = lift.Bending.LiftN * cos;
        var along = Math.Sqrt(Math.Max(0, (step.LiftLineN * step.LiftLineN) - (across * across)));
        var weight = lift.Bending.DynamicFactor * Math.Sin(step.AngleRad) * (lift.Bending.Runs.Sum(r => r.WeightNPerM * Math.Max(0, r.TopM - Math.Max(r.BottomM, at))) + lift.Bending.Lumps.Where(w => w.AtM > at).Sum(w => w.WeightN));
        var line = at <= lift.Bending.LiftM - (lift.Bending.SpreadM / 2) + 1e-6 ? along : 0;
        var words = $"{At(step)}, at {StandRules.Length(station, at)} from the foot";
        return Use(station, run, lift.Bending.LiftM, line + weight, moment, words) with { Id = $"stand.raise.mast[{mast.Name}]" };
    }

    /// <summary>The use of one run of mast while it is raised, under allowable strength.</summary>
    internal static Check Use(Station station, MastRun run, double columnM, double compressionN, double momentNm, string words)
    {
        var rules = StandRules.Lifting(station, run.Metal.Family);
        var check = run.Tube is { } tube
            ? MemberChecks.Tube(run.Name, rules, new RoundMember(tube, run.Metal, columnM) { WeldedShare = run.Welded ? 1 : 0, WeldAwayFromEnds = run.Welded }, new MemberForces(compressionN, momentNm), words)
            : MemberChecks.Leg(run.Name, rules, run.Lattice!, new SectionForces(compressionN, momentNm, 0, 0), words);
        return check with
        {
            Title = "The mast bears its own lift",
            Cure = "Move the lifting point to where the study “raise” finds the least bending, lift at two points with a bridle, or raise the mast in parts.",
            Caution = RaisingCaution.Text,
        };
    }

    private static string At(RaisingStep step) => FormattableString.Invariant($"mast at {step.AngleRad * 180 / Math.PI:0}° above the ground");
}
