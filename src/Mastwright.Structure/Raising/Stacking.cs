using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Raising;

/// <summary>A pole clamped to the top of a standing mast to lift the next section.</summary>
/// <param name="WeightN">Weight of the pole.</param>
/// <param name="AboveTopM">How far its sheave stands above the top of the mast.</param>
/// <param name="ClampSpacingM">Distance between its two clamps.</param>
/// <param name="OffsetM">Distance of its axis, and of the hanging load, from the mast axis.</param>
public sealed record ClampedPole(double WeightN, double AboveTopM, double ClampSpacingM, double OffsetM)
{
    /// <summary>Weight of whoever works at the top, hanging beside the mast on the pole's side, N.</summary>
    public double ClimberN { get; init; }

    /// <summary>The reader's units, for words.</summary>
    public UnitSystem Units { get; init; }
}

/// <summary>One step of stacking: the mast as it stands, and the load that hangs on it.</summary>
/// <param name="HeightM">Height reached before the lift.</param>
/// <param name="Mast">The part-built mast with the guys that are rigged.</param>
/// <param name="Case">Weight and pull of the lift on its top.</param>
/// <param name="Solution">Its equilibrium; not stable means the step must not be taken so.</param>
/// <param name="RopeN">Tension in the rope.</param>
/// <param name="PoleCompressionN">Force on the pole: load and hauling part together.</param>
/// <param name="ClampN">Sideways force on each clamp.</param>
/// <param name="FreeTopM">Length of mast above the highest guys rigged.</param>
/// <param name="Findings">What the builder must know.</param>
public sealed record StackingStep(
    double HeightM,
    GuyedMast Mast,
    LoadCase Case,
    MastSolution Solution,
    double RopeN,
    double PoleCompressionN,
    double ClampN,
    double FreeTopM,
    IReadOnlyList<Finding> Findings);

/// <summary>
/// Building a mast upwards section by section: at every step the part-built mast is solved by the same solver as the
/// finished one, with the gin pole, the hanging section and the side pull of the tag line on its top.
/// </summary>
public static class Stacking
{
    /// <summary>The caution that goes with it.</summary>
    public static string Caution => RaisingCaution.StackingText;

    /// <summary>All steps from the first joint to the top.</summary>
    /// <param name="mast">The finished mast, each segment one lift.</param>
    /// <param name="pole">The pole.</param>
    /// <param name="temporaryGuys">Guys used during the work; each is rigged from the step at which the mast reaches its height until a permanent guy at or above it is.</param>
    /// <param name="tagAngleRad">Angle of the tag line that keeps the section clear, from the vertical load: its pull is the load times the tangent.</param>
    /// <param name="dynamicFactor">Factor on the hanging weight.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    public static IReadOnlyList<StackingStep> Steps(
        GuyedMast mast, ClampedPole pole, IReadOnlyList<Guy> temporaryGuys, double tagAngleRad = 0.1, double dynamicFactor = 1.3, CancellationToken cancellation = default)
    {
        var steps = new List<StackingStep>();
        for (var i = 0; i + 1 < mast.Segments.Count; i++)
        {
            var height = mast.Segments[i].TopM;
            var next = mast.Segments[i + 1];
            var load = dynamicFactor * next.WeightNPerM * (next.TopM - next.BottomM);
            steps.Add(Step(PartBuilt(mast, height, temporaryGuys), height, pole, load, tagAngleRad, cancellation));
        }

        return steps;
    }

    /// <summary>The mast up to a height, with the permanent guys up to it and the temporary guys above the last permanent level.</summary>
    public static GuyedMast PartBuilt(GuyedMast mast, double heightM, IReadOnlyList<Guy> temporaryGuys)
    {
        var guys = mast.Guys.Where(g => g.AttachmentHeightM <= heightM + 1e-9).ToList();
        var highest = guys.Count > 0 ? guys.Max(g => g.AttachmentHeightM) : 0;
        var reachable = temporaryGuys.Where(g => g.AttachmentHeightM <= heightM + 1e-9 && g.AttachmentHeightM > highest + 1e-9).ToList();
        var top = reachable.Count > 0 ? reachable.Max(g => g.AttachmentHeightM) : 0;
        return mast with
        {
            Segments = [.. mast.Segments.Where(s => s.BottomM < heightM - 1e-9).Select(s => s.TopM > heightM ? s with { TopM = heightM } : s)],
            Guys = [.. guys, .. reachable.Where(g => Math.Abs(g.AttachmentHeightM - top) < 1e-6)],
            Weights = [.. mast.Weights.Where(w => w.HeightM <= heightM + 1e-9)],
        };
    }

    private static StackingStep Step(GuyedMast part, double height, ClampedPole pole, double load, double tagAngle, CancellationToken cancellation)
    {
        var pull = load * Math.Tan(tagAngle);

        // Load and hauling part both press on the sheave; the hauling part comes down inside or beside the mast.
        var vertical = (2 * load) + pole.WeightN + pole.ClimberN;
        var moment = (load * pole.OffsetM) + (pull * pole.AboveTopM) + (pole.ClimberN * pole.OffsetM);
        var shown = QuantityFormat.Show(height, QuantityKind.Length, pole.Units, 3);
        var loadCase = new LoadCase($"lifting onto {shown}", part.InstallationTemperatureK)
        {
            PointLoads = [new(height, new(pull, 0, -vertical), new(0, moment, 0))],
        };
        var solution = MastSolver.Solve(part, loadCase, null, cancellation);
        var highest = part.Guys.Count > 0 ? part.Guys.Max(g => g.AttachmentHeightM) : 0;
        var findings = solution.Findings.ToList();
        if (part.Guys.Count == 0)
        {
            findings.Add(new("no-guys-yet", Severity.Error, $"At {shown} no guy is rigged: the mast stands on its pivot alone.", WayOut: "Rig temporary guys at the top of the first section, or lift the first sections together."));
        }

        return new(height, part, loadCase, solution, load, (2 * load) + pole.WeightN, ((load * pole.OffsetM) + (pull * pole.AboveTopM)) / Math.Max(pole.ClampSpacingM, 1e-3), height - highest, findings);
    }
}
