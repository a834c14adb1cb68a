using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Numerics.Banded;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Stability;

/// <summary>How far a loaded mast is from buckling.</summary>
/// <param name="CaseName">The load case.</param>
/// <param name="LoadFactor">Factor on the compression in the mast at which it buckles; infinite when no part of it is compressed.</param>
/// <param name="Mode">The shape it takes, largest movement 1; empty when the factor is infinite.</param>
public sealed record BucklingResult(string CaseName, double LoadFactor, IReadOnlyList<ModePoint> Mode)
{
    /// <summary>Height of the largest movement of the mode.</summary>
    public double WorstHeightM => Mode.Count == 0 ? 0 : Mode.MaxBy(m => m.Movement.Length)!.HeightM;

    /// <summary>The factor with its formula and source; null when it is infinite.</summary>
    public Trail? Explain() => double.IsInfinity(LoadFactor) ? null : Trail.Computed(
        "buckling load factor", "μ", LoadFactor, QuantityKind.Ratio, "[K + (μ - 1) Kσ] φ = 0, smallest μ above 1",
        new Source("Timoshenko and Gere, Theory of Elastic Stability, 2nd ed. 1961, by the energy method with finite elements", SourceKind.Literature))
        .Within("small further movement about the loaded state; guys keep the stiffness they have there; elastic material");
}

/// <summary>One point of a mode shape.</summary>
/// <param name="HeightM">Height above the foot.</param>
/// <param name="Movement">Movement, scaled so that the largest is 1.</param>
/// <param name="TurnRad">Rotation in the same scale, per metre of largest movement.</param>
public sealed record ModePoint(double HeightM, Vec3 Movement, Vec3 TurnRad);

/// <summary>
/// The buckling load factor linearised about the loaded state. The tangent K of that state holds everything: bending,
/// guys as taut or slack as the case leaves them, and the normal forces. Letting only the normal forces of the mast
/// grow by a factor μ changes it to K + (μ - 1) Kσ; the mast buckles when that is singular.
/// </summary>
public static class Buckling
{
    /// <summary>Finds the lowest factor.</summary>
    /// <param name="prepared">The mast.</param>
    /// <param name="solution">A stable solution of this mast.</param>
    /// <param name="cancellation">Honoured between sweeps.</param>
    /// <returns>The factor, or null when the solution is not stable: it has then already given way.</returns>
    public static BucklingResult? Of(PreparedMast prepared, MastSolution solution, CancellationToken cancellation = default)
    {
        if (LoadedState.Of(prepared, solution) is not { } loaded)
        {
            return null;
        }

        var none = new SymmetricBand(loaded.Assembly.Size, Assembly.HalfBandwidth);
        var softening = none.Plus(-1, loaded.Assembly.GeometricStiffness(loaded.State, loaded.Load.WarmingK));
        var pairs = SubspaceIteration.Largest(softening, loaded.Factored, 1, loaded.Assembly.Held, cancellation);
        return pairs.Count == 0
            ? new(solution.CaseName, double.PositiveInfinity, [])
            : new(solution.CaseName, 1 + (1 / pairs[0].Value), loaded.Shape(pairs[0].Vector));
    }
}
