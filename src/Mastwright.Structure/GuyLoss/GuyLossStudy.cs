using Mastwright.Model.Trails;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.GuyLoss;

/// <summary>Tension of a guy that remains when another is lost.</summary>
/// <param name="Name">The guy that remains.</param>
/// <param name="BeforeN">Larger end tension before.</param>
/// <param name="AfterN">Larger end tension once all is at rest again.</param>
/// <param name="PeakN">Largest tension on the way, with the dynamic allowance.</param>
public sealed record RemainingGuy(string Name, double BeforeN, double AfterN, double PeakN);

/// <summary>What follows when one guy is lost.</summary>
/// <param name="LostGuy">The guy lost.</param>
/// <param name="Before">The mast before.</param>
/// <param name="After">The mast at rest afterwards; not stable means that it comes down.</param>
/// <param name="DynamicFactor">Overshoot of the change, 2 for a sudden loss without damping.</param>
/// <param name="Guys">The guys that remain; empty when the mast comes down.</param>
/// <param name="PeakCompressionN">Largest compression in the mast on the way, 0 when the mast comes down.</param>
/// <param name="PeakBendingNm">Largest bending moment on the way, 0 when the mast comes down.</param>
/// <param name="PeakFootPressureN">Largest vertical force on the foot on the way, 0 when the mast comes down.</param>
/// <param name="LeastFootPressureN">Smallest vertical force on the foot on the way; below zero the mast jumps off its seat.</param>
public sealed record GuyLossResult(
    string LostGuy,
    MastSolution Before,
    MastSolution After,
    double DynamicFactor,
    IReadOnlyList<RemainingGuy> Guys,
    double PeakCompressionN,
    double PeakBendingNm,
    double PeakFootPressureN,
    double LeastFootPressureN)
{
    /// <summary>Whether the mast stands without the guy.</summary>
    public bool Stands => After.IsStable;

    /// <summary>The peak tension of a remaining guy with its formula, or null when the mast comes down.</summary>
    public Trail? Explain(string guyName) => Guys.FirstOrDefault(g => g.Name == guyName) is { } g
        ? Trail.Computed(
            $"tension of guy {guyName} when guy {LostGuy} is lost", "T", g.PeakN, QuantityKind.Force, "T = max(T₀, T₁, T₀ + φ(T₁ - T₀))",
            new Source("a force taken suddenly off an undamped linear structure overshoots the static change by as much again", SourceKind.Derived),
            Trail.Computed("before", "T₀", g.BeforeN, QuantityKind.Force, "equilibrium with all guys", new Source("equilibrium of the model", SourceKind.Derived)),
            Trail.Computed("after, at rest", "T₁", g.AfterN, QuantityKind.Force, "equilibrium without the guy", new Source("equilibrium of the model", SourceKind.Derived)),
            Trail.Given("dynamic factor on the change", "φ", DynamicFactor, QuantityKind.Ratio, new Source("given", SourceKind.Design)))
            .Within("an allowance, not a motion analysis: guys going slack on the way are not followed")
        : null;
}

/// <summary>Loss of each guy in turn: rest after the loss, and an allowance for the swing on the way there.</summary>
public static class GuyLossStudy
{
    /// <summary>Takes the guys out one after the other.</summary>
    /// <param name="prepared">The mast.</param>
    /// <param name="loadCase">What acts meanwhile: still air, or a moderate wind.</param>
    /// <param name="dynamicFactor">Overshoot of the change, from 1 (slow loss) to 2 (sudden, undamped).</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <returns>A result a guy, in the order of the mast; empty when the mast does not even stand with all guys.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The dynamic factor is below 1.</exception>
    public static IReadOnlyList<GuyLossResult> Run(PreparedMast prepared, LoadCase loadCase, double dynamicFactor = 2, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dynamicFactor, 1);
        var before = prepared.Solve(loadCase, null, cancellation);
        if (!before.IsStable)
        {
            return [];
        }

        var lost = prepared.Mast.Guys.Select(g => g.Name).Where(n => !loadCase.AbsentGuys.Contains(n)).ToList();
        var results = new GuyLossResult[lost.Count];
        Parallel.For(0, lost.Count, new ParallelOptions { CancellationToken = cancellation }, i => results[i] = One(prepared, loadCase, before, lost[i], dynamicFactor, cancellation));
        return results;
    }

    /// <summary>The case with one guy taken out.</summary>
    public static LoadCase Without(LoadCase loadCase, string guyName) =>
        loadCase with { Name = $"{loadCase.Name}, guy {guyName} lost", AbsentGuys = [.. loadCase.AbsentGuys, guyName] };

    private static GuyLossResult One(PreparedMast prepared, LoadCase loadCase, MastSolution before, string lost, double factor, CancellationToken cancellation)
    {
        var after = prepared.Solve(Without(loadCase, lost), null, cancellation);
        if (!after.IsStable)
        {
            return new(lost, before, after, factor, [], 0, 0, 0, 0);
        }

        double Peak(double a, double b) => Math.Max(Math.Max(a, b), a + (factor * (b - a)));
        double Least(double a, double b) => Math.Min(Math.Min(a, b), a + (factor * (b - a)));
        var guys = after.Guys.Select(g => new RemainingGuy(g.Name, before.Guy(g.Name).LargestTensionN, g.LargestTensionN, Peak(before.Guy(g.Name).LargestTensionN, g.LargestTensionN)));
        var pairs = before.Sections.Zip(after.Sections).ToList();
        return new(
            lost,
            before,
            after,
            factor,
            [.. guys],
            pairs.Max(p => Peak(-p.First.AxialN, -p.Second.AxialN)),
            pairs.Max(p => Math.Max(Math.Max(p.First.BendingMomentNm, p.Second.BendingMomentNm), (p.First.BendingVectorNm + (factor * (p.Second.BendingVectorNm - p.First.BendingVectorNm))).Length)),
            Peak(before.Foot.ReactionN.Z, after.Foot.ReactionN.Z),
            Least(before.Foot.ReactionN.Z, after.Foot.ReactionN.Z));
    }
}
