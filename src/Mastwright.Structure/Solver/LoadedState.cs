using Mastwright.Numerics;
using Mastwright.Numerics.Banded;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Stability;

namespace Mastwright.Structure.Solver;

/// <summary>A stable equilibrium taken up again, its tangent assembled and factored, for questions about small changes around it.</summary>
internal sealed class LoadedState
{
    private readonly MastMesh _mesh;

    private LoadedState(MastMesh mesh, Assembly assembly, BandLdl factored, MastState state, PlacedLoad load, LoadSet loads)
    {
        _mesh = mesh;
        Assembly = assembly;
        Factored = factored;
        State = state;
        Load = load;
        Loads = loads;
    }

    public Assembly Assembly { get; }

    /// <summary>The factored tangent.</summary>
    public BandLdl Factored { get; }

    public MastState State { get; }

    public PlacedLoad Load { get; }

    public LoadSet Loads { get; }

    public static LoadedState? Of(PreparedMast prepared, MastSolution solution)
    {
        if (prepared.Mesh is not { } mesh || !solution.IsStable || solution.State is not { } state || solution.Case is not { } loadCase)
        {
            return null;
        }

        var loads = new LoadSet(mesh, loadCase);
        var load = loads.At(1, 1);
        var assembly = new Assembly(mesh, prepared.TwistIsLoose(loads));
        assembly.Evaluate(state, load, withTangent: true);
        assembly.HoldAndFactor();
        return assembly.Factored is not { } factored ? null : new(mesh, assembly, factored, state, load, loads);
    }

    /// <summary>A vector of all unknowns as a shape with largest movement 1.</summary>
    public IReadOnlyList<ModePoint> Shape(double[] vector)
    {
        var points = new (Vec3 Move, Vec3 Turn)[_mesh.NodeCount];
        var largest = 0.0;
        var sign = 1.0;
        for (var i = 0; i < points.Length; i++)
        {
            var v = vector.AsSpan(6 * i, 6);
            points[i] = (new(v[0], v[1], v[2]), new(v[3], v[4], v[5]));
            if (points[i].Move.Length > largest)
            {
                largest = points[i].Move.Length;
                sign = points[i].Move.X + (1e-3 * points[i].Move.Y) < 0 ? -1 : 1;
            }
        }

        var scale = sign / Math.Max(largest, 1e-300);
        return [.. points.Select((p, i) => new ModePoint(_mesh.Heights[i], scale * p.Move, scale * p.Turn))];
    }

    public MastMesh Mesh => _mesh;

    public GuyedMast Mast => _mesh.Mast;
}
