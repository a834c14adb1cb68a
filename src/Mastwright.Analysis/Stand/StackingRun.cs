using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Raising;

namespace Mastwright.Analysis.Stand;

/// <summary>One step of building a mast upwards, judged.</summary>
/// <param name="Step">Forces and equilibrium.</param>
/// <param name="Guys">The guys rigged, in words.</param>
/// <param name="Temporary">Whether temporary guys are among them.</param>
/// <param name="Use">The mast where it is used most; null when the step does not stand.</param>
public sealed record StackingRow(StackingStep Step, string Guys, bool Temporary, Check? Use)
{
    /// <summary>Whether the step may be taken.</summary>
    public bool Stands => Step.Solution.IsStable && Step.Mast.Guys.Count > 0;
}

/// <summary>The whole work.</summary>
/// <param name="Rows">Every step from the first joint to the last.</param>
/// <param name="Checks">What must hold over all of them.</param>
public sealed record StackingAnswer(ImmutableArray<StackingRow> Rows, ImmutableArray<Check> Checks);

/// <summary>Building a mast of a design upwards piece by piece, with a pole clamped to its top.</summary>
public static class StackingRun
{
    private const double GravityMPerS2 = 9.80665;

    /// <summary>All steps and checks.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static StackingAnswer Of(Station station, Mast mast, CancellationToken cancellation = default)
    {
        var plan = mast.Raising.Stacking ?? new StackingPlan();
        var model = StandModel.Of(station, mast);
        var pieces = InPieces(mast, model.Structure);
        var longest = pieces.Segments.Max(s => s.TopM - s.BottomM);
        var pole = new ClampedPole(plan.PoleMassKg * GravityMPerS2, plan.PoleAboveM ?? (longest + 0.5), plan.ClampSpacingM, plan.OffsetM)
        {
            ClimberN = plan.ClimberKg * GravityMPerS2,
            Units = station.UnitSystem,
        };
        var temporary = Temporary(mast, model, pieces, plan);
        var steps = Stacking.Steps(pieces, pole, temporary, plan.TagAngleRad, mast.Raising.DynamicFactor, cancellation);
        var rows = steps.Select(s => Row(station, model, s)).ToImmutableArray();
        return new StackingAnswer(rows, [.. Checks(mast, plan, rows), .. Joints(station, model, rows)]);
    }

    // One segment a piece: what goes up in one lift.
    private static GuyedMast InPieces(Mast mast, GuyedMast whole)
    {
        var cuts = new List<double> { 0 };
        var bottom = 0.0;
        for (var i = 0; i < mast.Sections.Length; i++)
        {
            cuts.AddRange(JointRun.JointsOf(mast.Sections[i], bottom, last: false));
            bottom += mast.Sections[i].LengthM;
        }

        return whole with
        {
            // The slices of a tapered tube go up together; the stiffness of the piece is that of its middle slice.
            Segments = [.. cuts.Order().Zip(cuts.Order().Skip(1), (a, b) => whole.Segments.First(s => s.TopM > ((a + b) / 2) - 1e-9) with
            {
                BottomM = a,
                TopM = b,
                WeightNPerM = whole.Segments.Sum(s => s.WeightNPerM * Math.Max(0, Math.Min(b, s.TopM) - Math.Max(a, s.BottomM))) / (b - a),
            })],
        };
    }

    private static List<Guy> Temporary(Mast mast, StandModel model, GuyedMast pieces, StackingPlan plan)
    {
        var strand = StandModel.StrandOf(plan.Strand);
        var cable = new GuyCable(strand.AreaM2, strand.ModulusPa, strand.DiameterM, strand.MassKgPerM * GravityMPerS2, strand.ExpansionPerK);
        var list = new List<Guy>();
        var held = 0.0;
        foreach (var joint in pieces.Segments.SkipLast(1).Select(s => s.TopM))
        {
            held = model.Guys.Select(g => g.Guy.AttachmentHeightM).Where(h => h <= joint + 1e-9).Append(held).Max();
            if ((held == 0 || joint - held > plan.FreeTopM) && joint > mast.Anchors.Max(a => a.RiseM) - mast.Base.HeightM + 0.5)
            {
                list.AddRange(mast.Anchors.Select(a => new Guy(
                    FormattableString.Invariant($"temporary guy at joint {joint:0.##} to {a.Name}"), StandModel.EyeOf(mast, a), joint, cable, GuySetting.OfAnchorTension(plan.TensionN))));
                held = joint;
            }
        }

        return list;
    }

    private static StackingRow Row(Station station, StandModel model, StackingStep step)
    {
        var heights = step.Mast.Guys.Select(g => g.AttachmentHeightM).Distinct().Order().ToList();
        var temporary = step.Mast.Guys.Any(g => g.Name.StartsWith("temporary", StringComparison.Ordinal));
        var words = heights.Count == 0 ? "none" : string.Join(", ", heights.Select(h =>
            StandRules.Length(station, h + model.Mast.Base.HeightM) + (step.Mast.Guys.Any(g => g.AttachmentHeightM == h && g.Name.StartsWith("temporary", StringComparison.Ordinal)) ? " (temporary)" : "")));
        if (!step.Solution.IsStable)
        {
            return new StackingRow(step, words, temporary, null);
        }

        var span = heights.Prepend(0).Append(step.HeightM).Order().ToList();
        var column = span.Zip(span.Skip(1), (a, b) => b - a).Max();
        var uses = step.Solution.Sections.Select(s => (Run: model.Runs.First(r => r.TopM >= s.HeightM - 1e-9), Section: s)).Where(x => x.Run.Metal.YieldPa > 0)
            .Select(x => LiftChecks.Use(station, x.Run, column, -x.Section.AxialN, x.Section.BendingMomentNm, step.Case.Name));
        return new StackingRow(step, words, temporary, uses.MaxBy(u => u.Ratio));
    }

    // The joints below the pole of every step, where the design describes them.
    private static IEnumerable<Check> Joints(Station station, StandModel model, ImmutableArray<StackingRow> rows) =>
        new JointRun(station, model, [.. rows.Where(r => r.Stands).Select(r => (r.Step.Case.Name, r.Step.Solution))], f => StandRules.Lifting(station, f)).Checks().Select(c => c with
        {
            Id = c.Id.Replace("stand.mast.", "stand.raise.", StringComparison.Ordinal),
            Title = c.Title + ", while stacking",
            Cure = "Rig temporary guys nearer to the top, lift lighter pieces, or make the joint stronger.",
            Caution = RaisingCaution.StackingText,
        });

    private static IEnumerable<Check> Checks(Mast mast, StackingPlan plan, ImmutableArray<StackingRow> rows)
    {
        var source = Source.Derived("docs/theory/structure-raising.md");
        var fallen = rows.Count(r => !r.Stands);
        var first = rows.FirstOrDefault(r => !r.Stands);
        yield return Check.AtMost($"stand.raise.steps[{mast.Name}]", Trade.Stand, "Every step of stacking stands",
            Trail.Computed("steps without a stable equilibrium", "n", fallen, QuantityKind.Count, "part-built mast under pole, climber, hanging piece and tag line", source), Trail.Given("allowed", "0", 0, QuantityKind.Count, source),
            first?.Step.Case.Name ?? "all steps", "Rig temporary guys nearer to the top, or tighten them.", RaisingCaution.StackingText);
        if (rows.Select(r => r.Use).OfType<Check>().MaxBy(u => u.Ratio) is { } use)
        {
            yield return use with { Id = $"stand.raise.mast[{mast.Name}]", Title = "The part-built mast bears the work at its top", Cure = "Rig temporary guys nearer to the top, or lift lighter pieces.", Caution = RaisingCaution.StackingText };
        }

        var clamp = rows.MaxBy(r => r.Step.ClampN);
        if (plan.ClampRatingN is { } rating && clamp is not null)
        {
            yield return Check.AtMost($"stand.raise.clamp[{mast.Name}]", Trade.Stand, "Clamps of the pole", Trail.Computed("sideways force on a clamp", "Fc", clamp.Step.ClampN, QuantityKind.Force, "Fc = (load·offset + tag pull·height)/spacing", source),
                Trail.Given("rated force", "Fr", rating, QuantityKind.Force, Source.DesignFile), clamp.Step.Case.Name, "Set the clamps farther apart, or draw the piece less far out.", RaisingCaution.StackingText);
        }

        var rope = rows.MaxBy(r => r.Step.RopeN);
        if (mast.Raising.LineStrengthN is { } strength && rope is not null)
        {
            yield return Check.AtMost($"stand.raise.line[{mast.Name}]", Trade.Stand, "Lifting line", Trail.Computed("tension in the rope", "T", rope.Step.RopeN, QuantityKind.Force, "weight of the piece with the dynamic factor", source),
                Trail.Computed("line tension allowed", "Ta", strength / mast.Raising.LineFactor, QuantityKind.Force, "Ta = Tb/γ", Source.DesignFile, Trail.Given("factor on lifting gear", "γ", mast.Raising.LineFactor, QuantityKind.Ratio, Source.DesignFile)),
                rope.Step.Case.Name, "Use a stronger line.", RaisingCaution.StackingText);
        }
    }
}
