using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Tensioning;

/// <summary>What taking up each guy by a metre does around a loaded state, to first order.</summary>
internal sealed class TakeUp
{
    private readonly LoadedState _loaded;
    private readonly int[] _present;

    public TakeUp(LoadedState loaded)
    {
        _loaded = loaded;
        _present = [.. Enumerable.Range(0, loaded.Mesh.Guys.Length).Where(g => loaded.Load.Present[g])];
        var rates = _present.Select(Rates).ToArray();
        Moves = [.. rates.Select((r, j) => Move(_present[j], r.EndPull))];
        TensionNPerM = new double[_present.Length, _present.Length];
        for (var i = 0; i < _present.Length; i++)
        {
            for (var j = 0; j < _present.Length; j++)
            {
                TensionNPerM[i, j] = rates[i].Tension.Dot(EndMove(_present[i], Moves[j])) + (i == j ? rates[i].PerTakeUp : 0);
            }
        }
    }

    /// <summary>Names of the guys in the order of rows and columns.</summary>
    public IReadOnlyList<string> Names => [.. _present.Select(g => _loaded.Mesh.Guys[g].Guy.Name)];

    /// <summary>Movement of all unknowns per metre taken up, a vector a guy.</summary>
    public double[][] Moves { get; }

    /// <summary>[i, j]: change of the anchor tension of guy i per metre taken up on guy j.</summary>
    public double[,] TensionNPerM { get; }

    /// <summary>Sideways movement of a node per metre taken up on guy j.</summary>
    public (double X, double Y) Sideways(int node, int j) => (Moves[j][6 * node], Moves[j][(6 * node) + 1]);

    // Taking up a guy pulls harder on its node; the mast gives way by K⁻¹ of that pull.
    private double[] Move(int g, Vec3 pull)
    {
        var guy = _loaded.Mesh.Guys[g];
        var arm = _loaded.State.T[guy.Node].Carry(guy.Arm);
        var push = new double[_loaded.Assembly.Size];
        Put(push, 6 * guy.Node, pull);
        Put(push, (6 * guy.Node) + 3, arm.Cross(pull));
        foreach (var h in _loaded.Assembly.Held)
        {
            push[h] = 0;
        }

        return _loaded.Factored.Solve(push);
    }

    private Vec3 EndMove(int g, double[] move)
    {
        var guy = _loaded.Mesh.Guys[g];
        var v = move.AsSpan(6 * guy.Node, 6);
        return new Vec3(v[0], v[1], v[2]) + new Vec3(v[3], v[4], v[5]).Cross(_loaded.State.T[guy.Node].Carry(guy.Arm));
    }

    private static void Put(double[] vector, int at, Vec3 v)
    {
        vector[at] = v.X;
        vector[at + 1] = v.Y;
        vector[at + 2] = v.Z;
    }

    // Derivatives of one cable by its length, ends held, by central differences of the closed form; by its end, from the tangent:
    // the pull on the anchor changes by K·du, its size by the part of that along the pull.
    private (Vec3 EndPull, Vec3 Tension, double PerTakeUp) Rates(int g)
    {
        var c = _loaded.Assembly.Cables[g];
        var chord = _loaded.Assembly.ChordOf(_loaded.State, g);
        var guy = _loaded.Mesh.Guys[g];
        var step = 1e-6 * guy.UnstressedLengthM;
        CableState At(double length) => GuyLine.Solve(guy.Guy, chord, length, _loaded.Load.Gravity, _loaded.Load.GuyLoadNPerM[g], _loaded.Load.WarmingK);
        var shorter = At(guy.UnstressedLengthM - step);
        var longer = At(guy.UnstressedLengthM + step);
        var along = c.Stiffness * (c.StartPullN / c.StartTensionN);
        return ((shorter.EndPullN - longer.EndPullN) / (2 * step), along, (shorter.StartTensionN - longer.StartTensionN) / (2 * step));
    }
}
