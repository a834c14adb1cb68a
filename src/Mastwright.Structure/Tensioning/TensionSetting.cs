using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Tensioning;

/// <summary>Guy tensions at one temperature in still air.</summary>
/// <param name="TemperatureK">Temperature of mast and guys.</param>
/// <param name="AnchorTensionN">Tension at the anchor by guy name.</param>
public sealed record TensionRow(double TemperatureK, IReadOnlyDictionary<string, double> AnchorTensionN);

/// <summary>
/// Setting the guys: lengths that give the wanted tensions in the finished mast, the tensions to aim for at other
/// temperatures, and what each adjustment does to the guys already set.
/// </summary>
public static class TensionSetting
{
    /// <summary>
    /// Finds the unstressed lengths with which the finished mast, standing free in still air at the installation
    /// temperature, has the wanted tensions at the anchors. This is what a tension meter will show, other than
    /// <see cref="GuySetting.OfAnchorTension"/>, which holds the mast at its full height.
    /// </summary>
    /// <param name="mast">The mast; guys set by length keep it, guys set by tension are to have that tension.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <returns>The mast with all guys set by length, or null when it does not stand or cannot be tensioned so.</returns>
    public static GuyedMast? SetWhenStanding(GuyedMast mast, SolverOptions? options = null, CancellationToken cancellation = default)
    {
        var still = new LoadCase("still air", mast.InstallationTemperatureK);
        var wanted = mast.Guys.Where(g => g.Setting.IsTension).ToDictionary(g => g.Name, g => g.Setting.Value);
        var current = mast with { Guys = [.. mast.Guys.Select(g => MastSolver.UnstressedLength(mast, g) is { } l ? g with { Setting = GuySetting.OfLength(l) } : g)] };
        for (var round = 0; round < 20; round++)
        {
            var prepared = MastSolver.Prepare(current, [still], options);
            var solution = prepared.Solve(still, null, cancellation);
            if (TensionInfluence.Of(prepared, solution) is not { } influence)
            {
                return null;
            }

            var set = influence.GuyNames.Select((n, i) => (Name: n, Index: i)).Where(x => wanted.ContainsKey(x.Name)).ToArray();
            var miss = set.Select(x => wanted[x.Name] - solution.Guy(x.Name).AnchorTensionN).ToArray();
            if (miss.All(m => Math.Abs(m) <= 1e-6 * wanted.Values.Max()))
            {
                return current;
            }

            var matrix = new double[set.Length, set.Length];
            for (var r = 0; r < set.Length; r++)
            {
                for (var c = 0; c < set.Length; c++)
                {
                    matrix[r, c] = influence.NPerM[set[r].Index, set[c].Index];
                }
            }

            if (Solve(matrix, miss) is not { } takeUp)
            {
                return null;
            }

            var by = set.Select((x, i) => (x.Name, TakeUp: takeUp[i])).ToDictionary(x => x.Name, x => x.TakeUp);
            current = current with
            {
                Guys = [.. current.Guys.Select(g => by.TryGetValue(g.Name, out var t) ? g with { Setting = GuySetting.OfLength(g.Setting.Value - t) } : g)],
            };
        }

        return null;
    }

    /// <summary>Still-air tensions at a list of temperatures, for the table a rigger takes along. Rows at which the mast does not stand are left out.</summary>
    public static IReadOnlyList<TensionRow> Table(PreparedMast prepared, IReadOnlyList<double> temperaturesK, CancellationToken cancellation = default) =>
        [.. temperaturesK
            .Select(t => prepared.Solve(new LoadCase($"still air at {t - 273.15:F0} °C", t), null, cancellation))
            .Where(s => s.IsStable)
            .Select(s => new TensionRow(s.Case!.TemperatureK, s.Guys.ToDictionary(g => g.Name, g => g.AnchorTensionN)))];

    // Gaussian elimination with row exchange; the matrix has as many rows as the mast has guys.
    private static double[]? Solve(double[,] a, double[] b)
    {
        var n = b.Length;
        for (var k = 0; k < n; k++)
        {
            var p = Enumerable.Range(k, n - k).MaxBy(i => Math.Abs(a[i, k]));
            if (!(Math.Abs(a[p, k]) > 1e-9))
            {
                return null;
            }

            for (var j = 0; j < n; j++)
            {
                (a[k, j], a[p, j]) = (a[p, j], a[k, j]);
            }

            (b[k], b[p]) = (b[p], b[k]);
            for (var i = k + 1; i < n; i++)
            {
                var f = a[i, k] / a[k, k];
                for (var j = k; j < n; j++)
                {
                    a[i, j] -= f * a[k, j];
                }

                b[i] -= f * b[k];
            }
        }

        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++)
            {
                b[i] -= a[i, j] * b[j];
            }

            b[i] /= a[i, i];
        }

        return b;
    }
}
