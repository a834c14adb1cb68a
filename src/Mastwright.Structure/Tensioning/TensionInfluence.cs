using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Tensioning;

/// <summary>
/// How much taking up one turnbuckle changes the tension of every guy.
/// </summary>
/// <param name="GuyNames">Order of rows and columns.</param>
/// <param name="NPerM">Element [i, j]: change of the anchor tension of guy i per metre taken up on guy j, in N/m.</param>
public sealed record TensionInfluence(IReadOnlyList<string> GuyNames, double[,] NPerM)
{
    /// <summary>Change of the tension of one guy for a small take-up of another.</summary>
    /// <exception cref="ArgumentException">A name is not in <see cref="GuyNames"/>.</exception>
    public double ChangeN(string ofGuy, string takenUp, double takeUpM) => NPerM[Index(ofGuy), Index(takenUp)] * takeUpM;

    /// <summary>The matrix about a stable state, from the tangent of that state; null when the solution is not stable.</summary>
    public static TensionInfluence? Of(PreparedMast prepared, MastSolution solution)
    {
        if (LoadedState.Of(prepared, solution) is not { } loaded)
        {
            return null;
        }

        var present = Enumerable.Range(0, loaded.Mesh.Guys.Length).Where(g => loaded.Load.Present[g]).ToArray();
        var n = present.Length;
        var matrix = new double[n, n];
        var rates = present.Select(g => Rates(loaded, g)).ToArray();
        for (var j = 0; j < n; j++)
        {
            // Taking up guy j pulls harder on its node; the mast gives way by K⁻¹ of that pull.
            var guy = loaded.Mesh.Guys[present[j]];
            var arm = loaded.State.T[guy.Node].Carry(guy.Arm);
            var move = new double[loaded.Assembly.Size];
            Put(move, 6 * guy.Node, rates[j].EndPull);
            Put(move, (6 * guy.Node) + 3, arm.Cross(rates[j].EndPull));
            foreach (var h in loaded.Assembly.Held)
            {
                move[h] = 0;
            }

            move = loaded.Factored.Solve(move);
            for (var i = 0; i < n; i++)
            {
                var other = loaded.Mesh.Guys[present[i]];
                var v = move.AsSpan(6 * other.Node, 6);
                var turn = new Vec3(v[3], v[4], v[5]);
                var end = new Vec3(v[0], v[1], v[2]) + turn.Cross(loaded.State.T[other.Node].Carry(other.Arm));
                matrix[i, j] = rates[i].Tension.Dot(end) + (i == j ? rates[i].PerTakeUp : 0);
            }
        }

        return new([.. present.Select(g => loaded.Mesh.Guys[g].Guy.Name)], matrix);
    }

    private int Index(string name)
    {
        for (var i = 0; i < GuyNames.Count; i++)
        {
            if (GuyNames[i] == name)
            {
                return i;
            }
        }

        throw new ArgumentException($"No guy named '{name}'.", nameof(name));
    }

    private static void Put(double[] vector, int at, Vec3 v)
    {
        vector[at] = v.X;
        vector[at + 1] = v.Y;
        vector[at + 2] = v.Z;
    }

    // Derivatives of one cable by its length, ends held, by central differences of the closed form; by its end, from the tangent:
    // the pull on the anchor changes by K·du, its size by the part of that along the pull.
    private static (Vec3 EndPull, Vec3 Tension, double PerTakeUp) Rates(LoadedState loaded, int g)
    {
        var c = loaded.Assembly.Cables[g];
        var chord = loaded.Assembly.ChordOf(loaded.State, g);
        var guy = loaded.Mesh.Guys[g];
        var step = 1e-6 * guy.UnstressedLengthM;
        CableState At(double length) => GuyLine.Solve(guy.Guy, chord, length, loaded.Load.Gravity, loaded.Load.GuyLoadNPerM[g], loaded.Load.WarmingK);
        var shorter = At(guy.UnstressedLengthM - step);
        var longer = At(guy.UnstressedLengthM + step);
        var along = c.Stiffness * (c.StartPullN / c.StartTensionN);
        return ((shorter.EndPullN - longer.EndPullN) / (2 * step), along, (shorter.StartTensionN - longer.StartTensionN) / (2 * step));
    }
}
