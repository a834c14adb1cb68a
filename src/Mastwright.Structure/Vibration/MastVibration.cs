using Mastwright.Model.Trails;
using Mastwright.Numerics.Banded;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Stability;

namespace Mastwright.Structure.Vibration;

/// <summary>One natural vibration of the mast on its guys.</summary>
/// <param name="FrequencyHz">Natural frequency.</param>
/// <param name="Shape">Mode shape, largest movement 1.</param>
/// <param name="EquivalentMassKgPerM">Mass per metre averaged over the mode, ∫m φ² / ∫φ², as used with the Scruton number.</param>
public sealed record MastMode(double FrequencyHz, IReadOnlyList<ModePoint> Shape, double EquivalentMassKgPerM)
{
    /// <summary>Height of the largest movement.</summary>
    public double WorstHeightM => Shape.MaxBy(p => p.Movement.Length)!.HeightM;

    /// <summary>The frequency with its formula and source.</summary>
    public Trail Explain() => Trail.Computed(
        "natural frequency of the mast", "f", FrequencyHz, QuantityKind.VibrationFrequency, "[K - (2πf)² M] φ = 0",
        new Source("Bathe, Finite Element Procedures, chs. 9 and 11", SourceKind.Literature))
        .Within("small vibration about the loaded state, no damping; each guy acts as a spring of its tangent stiffness carrying a third of its mass, so vibration of the guys themselves is not in it");
}

/// <summary>Natural vibrations of a mast about a loaded state.</summary>
public static class MastVibration
{
    /// <summary>Standard gravity, by which weights are turned into masses.</summary>
    public const double GravityMPerS2 = 9.80665;

    /// <summary>The lowest sideways modes; a three-way mast has them in pairs of equal frequency.</summary>
    /// <param name="prepared">The mast.</param>
    /// <param name="solution">A stable solution of this mast.</param>
    /// <param name="count">How many modes.</param>
    /// <param name="downwardLoadsHaveMass">Whether downward loads of the case are things with mass (ice) rather than pushes.</param>
    /// <param name="cancellation">Honoured between sweeps.</param>
    /// <returns>From the lowest frequency up; empty when the solution is not stable or the mast has no mass.</returns>
    public static IReadOnlyList<MastMode> Of(PreparedMast prepared, MastSolution solution, int count = 6, bool downwardLoadsHaveMass = true, CancellationToken cancellation = default)
    {
        if (LoadedState.Of(prepared, solution) is not { } loaded)
        {
            return [];
        }

        var masses = NodeMasses(loaded, downwardLoadsHaveMass);
        var m = new SymmetricBand(loaded.Assembly.Size, 0);
        for (var i = 0; i < masses.Length; i++)
        {
            for (var k = 0; k < 3; k++)
            {
                m[(6 * i) + k, (6 * i) + k] = masses[i];
            }
        }

        return [.. SubspaceIteration.Largest(m, loaded.Factored, count, loaded.Assembly.Held, cancellation)
            .Select(p => Mode(loaded, masses, p.Value, p.Vector))];
    }

    private static MastMode Mode(LoadedState loaded, double[] masses, double value, double[] vector)
    {
        var shape = loaded.Shape(vector);
        double weighted = 0, length = 0;
        for (var i = 0; i < masses.Length; i++)
        {
            var below = i > 0 ? loaded.Mesh.Heights[i] - loaded.Mesh.Heights[i - 1] : 0;
            var above = i < masses.Length - 1 ? loaded.Mesh.Heights[i + 1] - loaded.Mesh.Heights[i] : 0;
            var square = shape[i].Movement.Dot(shape[i].Movement);
            weighted += masses[i] * square;
            length += 0.5 * (below + above) * square;
        }

        return new(1 / (2 * Math.PI * Math.Sqrt(value)), shape, weighted / Math.Max(length, 1e-300));
    }

    private static double[] NodeMasses(LoadedState loaded, bool loadsToo)
    {
        var mesh = loaded.Mesh;
        var masses = new double[mesh.NodeCount];
        for (var e = 0; e < mesh.Elements.Length; e++)
        {
            var half = 0.5 * mesh.Elements[e].LengthM * mesh.Segments[e].WeightNPerM / GravityMPerS2;
            masses[e] += half;
            masses[e + 1] += half;
            if (loadsToo)
            {
                var load = loaded.Loads.CaseLoad(e);
                masses[e] += Math.Max(0, -load.F1.Z) / GravityMPerS2;
                masses[e + 1] += Math.Max(0, -load.F2.Z) / GravityMPerS2;
            }
        }

        foreach (var w in mesh.Mast.Weights)
        {
            masses[mesh.NearestNode(w.HeightM)] += w.WeightN / GravityMPerS2;
        }

        for (var g = 0; g < mesh.Guys.Length; g++)
        {
            if (loaded.Load.Present[g])
            {
                var length = mesh.Guys[g].UnstressedLengthM;
                var weight = GuyLine.Weight(mesh.Guys[g].Guy, length) + (loadsToo ? Math.Max(0, -loaded.Loads.GuyLoad(g).Z) * length : 0);
                masses[mesh.Guys[g].Node] += weight / (3 * GravityMPerS2);
            }
        }

        return masses;
    }
}
