using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Mast;

namespace Mastwright.Structure.Solver;

/// <summary>How a solve ended.</summary>
public enum Outcome
{
    /// <summary>A stable equilibrium under the whole load.</summary>
    Stable,

    /// <summary>The mast gives way before the whole load is on; the state reported is the last stable one.</summary>
    Unstable,

    /// <summary>Nothing holds the mast even before its own weight is on.</summary>
    Mechanism,

    /// <summary>The input cannot be solved; the findings say why.</summary>
    InvalidInput,
}

/// <summary>The answer to one load case.</summary>
/// <param name="CaseName">The load case.</param>
/// <param name="Outcome">How it ended. Only <see cref="Outcome.Stable"/> is the whole load.</param>
/// <param name="LoadShare">Share of the case in the state reported, 1 when all of it is on. The case grows from still air at the installation temperature.</param>
/// <param name="OwnWeightShare">Share of the mast's own weight in the state reported; below 1 the mast does not even carry itself.</param>
/// <param name="RelativeResidual">Largest out-of-balance force over the whole load.</param>
/// <param name="Iterations">Newton steps spent.</param>
/// <param name="Nodes">From the foot up.</param>
/// <param name="Sections">Section forces from the foot up, at the ends and the middle of every element; two at one height where they jump.</param>
/// <param name="Foot">Reaction and rotation at the foot.</param>
/// <param name="Guys">In the order of the input; guys absent from the case are left out.</param>
/// <param name="Findings">What the user should know; never empty unless stable.</param>
public sealed record MastSolution(
    string CaseName,
    Outcome Outcome,
    double LoadShare,
    double OwnWeightShare,
    double RelativeResidual,
    int Iterations,
    IReadOnlyList<NodeResult> Nodes,
    IReadOnlyList<SectionResult> Sections,
    FootResult Foot,
    IReadOnlyList<GuyResult> Guys,
    IReadOnlyList<Finding> Findings)
{
    /// <summary>Whether the whole load is carried.</summary>
    public bool IsStable => Outcome == Outcome.Stable;

    /// <summary>The case itself; null when the input was refused.</summary>
    public LoadCase? Case { get; init; }

    /// <summary>The state from which a neighbouring case can be started.</summary>
    internal MastState? State { get; init; }

    /// <summary>The guy of a name.</summary>
    /// <exception cref="KeyNotFoundException">No such guy in this case.</exception>
    public GuyResult Guy(string name) => Guys.FirstOrDefault(g => g.Name == name) ?? throw new KeyNotFoundException($"No guy named '{name}' in case '{CaseName}'.");

    /// <summary>The node nearest to a height.</summary>
    public NodeResult NodeAt(double heightM) => Nodes.MinBy(n => Math.Abs(n.HeightM - heightM))!;

    /// <summary>The section with the largest bending moment.</summary>
    public SectionResult? LargestMoment => Sections.MaxBy(s => s.BendingMomentNm);

    /// <summary>The section with the largest compression.</summary>
    public SectionResult? LargestCompression => Sections.MinBy(s => s.AxialN);
}

/// <summary>Movement of a point of the axis.</summary>
/// <param name="HeightM">Height above the foot before loading.</param>
/// <param name="DisplacementM">Movement.</param>
/// <param name="RotationRad">Rotation vector; its z part is the twist.</param>
/// <param name="AlongAxis">Unit vector along the deformed mast.</param>
public sealed record NodeResult(double HeightM, Vec3 DisplacementM, Vec3 RotationRad, Vec3 AlongAxis)
{
    /// <summary>Angle between the deformed mast and the plumb line.</summary>
    public double TiltRad => Math.Atan2(Math.Sqrt((AlongAxis.X * AlongAxis.X) + (AlongAxis.Y * AlongAxis.Y)), AlongAxis.Z);
}

/// <summary>Forces in a cross-section: what the part above does to the part below.</summary>
/// <param name="HeightM">Height above the foot before loading.</param>
/// <param name="AxialN">Tension positive, compression negative.</param>
/// <param name="ShearVectorN">Shear, in space.</param>
/// <param name="BendingVectorNm">Bending moment, in space.</param>
/// <param name="TorsionNm">Torsion about the mast axis.</param>
public sealed record SectionResult(double HeightM, double AxialN, Vec3 ShearVectorN, Vec3 BendingVectorNm, double TorsionNm)
{
    /// <summary>Size of the shear.</summary>
    public double ShearN => ShearVectorN.Length;

    /// <summary>Size of the bending moment.</summary>
    public double BendingMomentNm => BendingVectorNm.Length;
}

/// <summary>What happens at the foot.</summary>
/// <param name="ReactionN">Force of the foot on the mast; z positive presses on the insulator.</param>
/// <param name="MomentNm">Moment of the foot on the mast; nothing for a ball.</param>
/// <param name="TiltRad">Rotation the pivot must take.</param>
/// <param name="TwistRad">Rotation about the axis.</param>
public sealed record FootResult(Vec3 ReactionN, Vec3 MomentNm, double TiltRad, double TwistRad);

/// <summary>One guy under the case.</summary>
/// <param name="Name">Its name.</param>
/// <param name="UnstressedLengthM">Length without tension at the installation temperature.</param>
/// <param name="AnchorTensionN">Tension at the anchor.</param>
/// <param name="MastTensionN">Tension at the mast.</param>
/// <param name="ForceOnAnchorN">Pull of the guy on its anchor.</param>
/// <param name="ForceOnMastN">Pull of the guy on the mast.</param>
/// <param name="ChordM">From the anchor to the attachment, deformed.</param>
/// <param name="SagM">Largest distance of the guy from its chord.</param>
/// <param name="Cable">The cable's full state.</param>
public sealed record GuyResult(
    string Name,
    double UnstressedLengthM,
    double AnchorTensionN,
    double MastTensionN,
    Vec3 ForceOnAnchorN,
    Vec3 ForceOnMastN,
    Vec3 ChordM,
    double SagM,
    CableState Cable)
{
    /// <summary>Larger of the two end tensions.</summary>
    public double LargestTensionN => Math.Max(AnchorTensionN, MastTensionN);

    /// <summary>Whether the unstressed guy is longer than its chord: it only hangs.</summary>
    public bool IsSlack => Cable.UnstressedLengthM >= ChordM.Length;

    /// <summary>Angle of the pull on the anchor above the horizontal.</summary>
    public double AnchorAngleRad => Math.Atan2(ForceOnAnchorN.Z, Math.Sqrt((ForceOnAnchorN.X * ForceOnAnchorN.X) + (ForceOnAnchorN.Y * ForceOnAnchorN.Y)));
}
