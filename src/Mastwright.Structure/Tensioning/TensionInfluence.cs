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

        var takeUp = new TakeUp(loaded);
        return new(takeUp.Names, takeUp.TensionNPerM);
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
}
