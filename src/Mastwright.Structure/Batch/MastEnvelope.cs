using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Batch;

/// <summary>An extreme and the case it came from.</summary>
/// <param name="Value">The extreme.</param>
/// <param name="CaseName">The case.</param>
public readonly record struct Governed(double Value, string CaseName)
{
    internal static Governed Max(IEnumerable<MastSolution> solutions, Func<MastSolution, double> value) =>
        solutions.Select(s => new Governed(value(s), s.CaseName)).MaxBy(g => g.Value);

    internal static Governed Min(IEnumerable<MastSolution> solutions, Func<MastSolution, double> value) =>
        solutions.Select(s => new Governed(value(s), s.CaseName)).MinBy(g => g.Value);
}

/// <summary>Extremes of one guy.</summary>
/// <param name="Name">Which guy.</param>
/// <param name="LargestTensionN">Largest tension at either end.</param>
/// <param name="SmallestTensionN">Smallest tension at the anchor.</param>
/// <param name="LargestAnchorUpliftN">Largest upward pull on the anchor.</param>
/// <param name="LargestAnchorSidePullN">Largest horizontal pull on the anchor.</param>
public sealed record GuyEnvelope(string Name, Governed LargestTensionN, Governed SmallestTensionN, Governed LargestAnchorUpliftN, Governed LargestAnchorSidePullN);

/// <summary>Extremes in one cross-section.</summary>
/// <param name="HeightM">Height above the foot.</param>
/// <param name="LargestCompressionN">Largest compression, positive; negative when the section is always in tension.</param>
/// <param name="LargestBendingNm">Largest bending moment.</param>
/// <param name="LargestShearN">Largest shear.</param>
/// <param name="LargestTorsionNm">Largest torsion of either sense.</param>
public sealed record SectionEnvelope(double HeightM, Governed LargestCompressionN, Governed LargestBendingNm, Governed LargestShearN, Governed LargestTorsionNm);

/// <summary>The extremes of many solutions of one mast, each with the case that governs.</summary>
/// <param name="Cases">How many stable solutions went in.</param>
/// <param name="NotCarried">Cases that were not carried; they are in no extreme.</param>
/// <param name="Guys">A line a guy; of a guy missing in some cases, those with it.</param>
/// <param name="Sections">A line a cross-section, from the foot up.</param>
/// <param name="LargestFootPressureN">Largest vertical force on the foot.</param>
/// <param name="SmallestFootPressureN">Smallest vertical force on the foot; below zero the mast wants to lift off.</param>
/// <param name="LargestFootShearN">Largest horizontal force on the foot.</param>
/// <param name="LargestFootTiltRad">Largest rotation the pivot must take.</param>
/// <param name="LargestTopSwayM">Largest horizontal movement of the top.</param>
/// <param name="LargestTwistRad">Largest twist anywhere.</param>
public sealed record MastEnvelope(
    int Cases,
    IReadOnlyList<MastSolution> NotCarried,
    IReadOnlyList<GuyEnvelope> Guys,
    IReadOnlyList<SectionEnvelope> Sections,
    Governed LargestFootPressureN,
    Governed SmallestFootPressureN,
    Governed LargestFootShearN,
    Governed LargestFootTiltRad,
    Governed LargestTopSwayM,
    Governed LargestTwistRad)
{
    /// <summary>Gathers the extremes; null when no solution is stable.</summary>
    /// <param name="solutions">Solutions of one prepared mast, so that their sections correspond.</param>
    public static MastEnvelope? Of(IReadOnlyList<MastSolution> solutions)
    {
        var stable = solutions.Where(s => s.IsStable).ToList();
        if (stable.Count == 0)
        {
            return null;
        }

        var names = stable.SelectMany(s => s.Guys).Select(g => g.Name).Distinct();
        var guys = names.Select(name =>
        {
            var with = stable.Where(s => s.Guys.Any(g => g.Name == name)).ToList();
            return new GuyEnvelope(
                name,
                Governed.Max(with, s => s.Guy(name).LargestTensionN),
                Governed.Min(with, s => s.Guy(name).AnchorTensionN),
                Governed.Max(with, s => s.Guy(name).ForceOnAnchorN.Z),
                Governed.Max(with, s => Level(s.Guy(name).ForceOnAnchorN)));
        });
        var sections = stable[0].Sections.Select((first, i) => new SectionEnvelope(
            first.HeightM,
            Governed.Max(stable, s => -s.Sections[i].AxialN),
            Governed.Max(stable, s => s.Sections[i].BendingMomentNm),
            Governed.Max(stable, s => s.Sections[i].ShearN),
            Governed.Max(stable, s => Math.Abs(s.Sections[i].TorsionNm))));
        return new(
            stable.Count,
            [.. solutions.Where(s => !s.IsStable)],
            [.. guys],
            [.. sections],
            Governed.Max(stable, s => s.Foot.ReactionN.Z),
            Governed.Min(stable, s => s.Foot.ReactionN.Z),
            Governed.Max(stable, s => Level(s.Foot.ReactionN)),
            Governed.Max(stable, s => s.Foot.TiltRad),
            Governed.Max(stable, s => Level(s.Nodes[^1].DisplacementM)),
            Governed.Max(stable, s => s.Nodes.Max(n => Math.Abs(n.RotationRad.Z))));
    }

    private static double Level(Numerics.Vec3 v) => Math.Sqrt((v.X * v.X) + (v.Y * v.Y));
}
