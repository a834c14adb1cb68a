using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Raising;

/// <summary>Forces at one angle of the mast. x points along the ground from the hinge towards where the top lay, z up.</summary>
/// <param name="AngleRad">Angle of the mast above the ground.</param>
/// <param name="HaulLineN">Tension in the line to the winch or the crew.</param>
/// <param name="LiftLineN">Tension in the line to the mast; the same as the haul line where one rope runs over a sheave.</param>
/// <param name="PoleCompressionN">Force in the pole, compression positive.</param>
/// <param name="HingeOnMastN">Force of the hinge on the mast.</param>
/// <param name="PivotN">Force of the ground on the pivot shared by mast and pole, or on the foot of a separate pole.</param>
/// <param name="BackStayN">Tension in the stay behind a standing pole; 0 where there is none.</param>
/// <param name="MastBendingNm">Largest bending moment in the mast.</param>
public sealed record RaisingStep(
    double AngleRad,
    double HaulLineN,
    double LiftLineN,
    double PoleCompressionN,
    Vec3 HingeOnMastN,
    Vec3 PivotN,
    double BackStayN,
    double MastBendingNm);

/// <summary>The forces through a whole lift.</summary>
/// <param name="Method">How it is lifted, in words.</param>
/// <param name="Steps">From the ground up.</param>
/// <param name="BackLineFromRad">From this angle on the lifting line no longer controls the mast and a back line must hold it.</param>
/// <param name="PoleTensionFromRad">From this angle on the pole is pulled rather than pressed, so its foot must be held down; null when that does not happen.</param>
/// <param name="Findings">What the builder must know.</param>
public sealed record RaisingResult(
    string Method,
    IReadOnlyList<RaisingStep> Steps,
    double BackLineFromRad,
    double? PoleTensionFromRad,
    IReadOnlyList<Finding> Findings)
{
    private static readonly Source Statics = new("statics of a mast hinged at its foot: moments about the hinge, forces at the pole tip", SourceKind.Derived);

    /// <summary>The step with the largest haul line tension.</summary>
    public RaisingStep WorstHaul => Held.MaxBy(s => s.HaulLineN)!;

    // A line cannot push: where it would have to, the back line holds the mast and these forces do not arise.
    private IEnumerable<RaisingStep> Held => Steps.Any(s => s.HaulLineN > 0) ? Steps.Where(s => s.HaulLineN >= 0) : Steps;

    /// <summary>The step with the largest lift line tension.</summary>
    public RaisingStep WorstLift => Steps.MaxBy(s => s.LiftLineN)!;

    /// <summary>The step with the largest force in the pole, either way.</summary>
    public RaisingStep WorstPole => Held.MaxBy(s => Math.Abs(s.PoleCompressionN))!;

    /// <summary>The step with the largest force of the hinge on the mast.</summary>
    public RaisingStep WorstHinge => Steps.MaxBy(s => s.HingeOnMastN.Length)!;

    /// <summary>The step with the largest bending moment in the mast.</summary>
    public RaisingStep WorstBending => Steps.MaxBy(s => s.MastBendingNm)!;

    /// <summary>The caution that goes with it.</summary>
    public string Caution => RaisingCaution.Text;

    /// <summary>The worst forces as trails, each with the angle at which it occurs.</summary>
    public IReadOnlyList<Trail> Explain() =>
    [
        At("haul line tension", "T_h", WorstHaul, s => s.HaulLineN, QuantityKind.Force, "moments of mast and pole about the pivot"),
        At("lift line tension", "T_l", WorstLift, s => s.LiftLineN, QuantityKind.Force, "T_l = W·x_g·cos ψ/(arm of the lift line about the hinge)"),
        At("pole force, compression positive", "N_p", WorstPole, s => s.PoleCompressionN, QuantityKind.Force, "sum of the line tensions along the pole"),
        At("hinge force on the mast", "R", WorstHinge, s => s.HingeOnMastN.Length, QuantityKind.Force, "forces on the mast"),
        At("bending moment in the mast", "M", WorstBending, s => s.MastBendingNm, QuantityKind.Moment, "even weight on hinge and lifting point, the rest beyond"),
    ];

    private static Trail At(string name, string symbol, RaisingStep step, Func<RaisingStep, double> value, QuantityKind kind, string formula) => Trail.Computed(
        $"largest {name}", symbol, value(step), kind, formula, Statics,
        Trail.Computed("angle of the mast above the ground", "ψ", step.AngleRad, QuantityKind.Angle, "the worst of the angles looked at", Statics))
        .Within("slow lift in still air, weightless ropes, rigid mast and pole");
}
