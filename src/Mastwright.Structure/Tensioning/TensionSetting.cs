using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Structure.Tensioning;

/// <summary>Guy tensions at one temperature in still air.</summary>
/// <param name="TemperatureK">Temperature of mast and guys.</param>
/// <param name="AnchorTensionN">Tension at the anchor by guy name.</param>
public sealed record TensionRow(double TemperatureK, IReadOnlyDictionary<string, double> AnchorTensionN);

/// <summary>A mast whose guys have been set.</summary>
/// <param name="Mast">The mast with its guys set by length.</param>
/// <param name="Solution">The mast in still air with these lengths.</param>
/// <param name="LargestLeanM">Largest sideways movement of a guy level.</param>
/// <param name="LargestMissShare">Largest difference of a guy from its wanted tension, as a share of that.</param>
public sealed record SetMast(GuyedMast Mast, MastSolution Solution, double LargestLeanM, double LargestMissShare);

/// <summary>
/// Setting the guys so that the finished mast stands free and plumb in still air with the wanted tensions, and the
/// tensions to aim for at other temperatures.
/// </summary>
public static class TensionSetting
{
    private const double LeanWeightPerM = 1e4;
    private const double LevelWeight = 1e2;
    private const double GuyWeight = 1;

    /// <summary>
    /// Finds the guy lengths with which the standing mast is plumb at every guy level and each level has, on average,
    /// the wanted tension at its anchors. That is how a mast is set: plumb by instrument, tension by gauge. Single guys
    /// come as near to their wanted tension as balance allows: with anchors at unlike distances, heights or bearings
    /// they cannot all pull alike.
    /// </summary>
    /// <param name="mast">The mast; guys set by length keep it, guys set by tension are to have that tension at the anchor.</param>
    /// <param name="options">How finely; null for the defaults.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <returns>The mast as set, or null when it does not stand or cannot be set so.</returns>
    public static SetMast? SetPlumb(GuyedMast mast, SolverOptions? options = null, CancellationToken cancellation = default)
    {
        var still = new LoadCase("still air", mast.InstallationTemperatureK);
        var wanted = mast.Guys.Where(g => g.Setting.IsTension).ToDictionary(g => g.Name, g => g.Setting.Value);
        if (wanted.Count == 0)
        {
            return null;
        }

        var current = mast with { Guys = [.. mast.Guys.Select(g => MastSolver.UnstressedLength(mast, g) is { } l ? g with { Setting = GuySetting.OfLength(l) } : g)] };
        var last = double.PositiveInfinity;
        for (var round = 0; round < 30; round++)
        {
            var prepared = MastSolver.Prepare(current, [still], options);
            var solution = prepared.Solve(still, null, cancellation);
            if (LoadedState.Of(prepared, solution) is not { } loaded)
            {
                return null;
            }

            var problem = new Problem(loaded, solution, wanted);
            var takeUp = problem.TakeUpM();
            var move = takeUp.Values.Max(Math.Abs);

            // Done when nothing moves any more, or when only rounding is left to move.
            if (move < 1e-8 * mast.HeightM || (move < 1e-6 * mast.HeightM && move >= 0.9 * last))
            {
                return new(current, solution, problem.LargestLeanM, wanted.Max(w => Math.Abs(solution.Guy(w.Key).AnchorTensionN / w.Value - 1)));
            }

            last = move;
            current = current with
            {
                Guys = [.. current.Guys.Select(g => takeUp.TryGetValue(g.Name, out var t) ? g with { Setting = GuySetting.OfLength(g.Setting.Value - Math.Clamp(t, -0.01 * g.Setting.Value, 0.01 * g.Setting.Value)) } : g)],
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

    // One Gauss-Newton step: least squares over lean (firmly), level averages (firmly) and single guys (softly).
    private sealed class Problem
    {
        private readonly List<(double Miss, Func<int, double> Rate)> _rows = [];
        private readonly string[] _names;
        private readonly int[] _columns;

        public Problem(LoadedState loaded, MastSolution solution, Dictionary<string, double> wanted)
        {
            var takeUp = new TakeUp(loaded);
            var all = takeUp.Names;
            _columns = [.. Enumerable.Range(0, all.Count).Where(i => wanted.ContainsKey(all[i]))];
            _names = [.. _columns.Select(i => all[i])];
            foreach (var level in loaded.Mesh.Guys.GroupBy(g => g.Node))
            {
                var u = loaded.State.U[level.Key];
                LargestLeanM = Math.Max(LargestLeanM, Math.Sqrt((u.X * u.X) + (u.Y * u.Y)));
                _rows.Add((-LeanWeightPerM * u.X, j => LeanWeightPerM * takeUp.Sideways(level.Key, j).X));
                _rows.Add((-LeanWeightPerM * u.Y, j => LeanWeightPerM * takeUp.Sideways(level.Key, j).Y));
                var members = level.Where(g => wanted.ContainsKey(g.Guy.Name)).Select(g => (Index: IndexOf(all, g.Guy.Name), g.Guy.Name)).ToArray();
                if (members.Length > 0)
                {
                    _rows.Add((LevelWeight * members.Average(m => 1 - (solution.Guy(m.Name).AnchorTensionN / wanted[m.Name])), j => LevelWeight * members.Average(m => takeUp.TensionNPerM[m.Index, j] / wanted[m.Name])));
                }

                foreach (var (index, name) in members)
                {
                    _rows.Add((GuyWeight * (1 - (solution.Guy(name).AnchorTensionN / wanted[name])), j => GuyWeight * takeUp.TensionNPerM[index, j] / wanted[name]));
                }
            }
        }

        public double LargestLeanM { get; }

        public IReadOnlyDictionary<string, double> TakeUpM()
        {
            var matrix = Matrix<double>.Build.Dense(_rows.Count, _columns.Length, (r, c) => _rows[r].Rate(_columns[c]));
            var step = matrix.Svd().Solve(Vector<double>.Build.Dense(_rows.Count, r => _rows[r].Miss));
            return _names.Select((n, i) => (n, step[i])).ToDictionary(x => x.n, x => x.Item2);
        }

        private static int IndexOf(IReadOnlyList<string> names, string name)
        {
            for (var i = 0; i < names.Count; i++)
            {
                if (names[i] == name)
                {
                    return i;
                }
            }

            return -1;
        }
    }
}
