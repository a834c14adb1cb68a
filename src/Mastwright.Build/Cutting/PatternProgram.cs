namespace Mastwright.Build.Cutting;

/// <summary>
/// The linear program min Σ c x over reel patterns, demand met, supply kept: revised simplex with an explicit inverse
/// (Dantzig, Linear Programming and Extensions, 1963, from memory). Small: one row a kind and one a limited reel.
/// </summary>
internal sealed class PatternProgram
{
    private const double Tolerance = 1e-9;

    private readonly CuttingProblem problem;
    private readonly int[] supplyRow;
    private readonly int rows;
    private readonly List<(double Cost, double[] Column)> columns = [];
    private readonly int[] basis;
    private readonly double[,] inverse;
    private readonly double[] solution;

    public PatternProgram(CuttingProblem problem)
    {
        this.problem = problem;
        supplyRow = new int[problem.Reels];
        rows = problem.Kinds;
        for (var r = 0; r < problem.Reels; r++) supplyRow[r] = problem.Supply[r] == int.MaxValue ? -1 : rows++;
        basis = new int[rows];
        inverse = new double[rows, rows];
        solution = new double[rows];
        // Start: one dear piece at a time, bought outside; and all supply idle.
        var dear = 1000.0 * problem.Costs.Max();
        for (var i = 0; i < rows; i++)
        {
            var column = new double[rows];
            column[i] = 1;
            columns.Add((i < problem.Kinds ? dear : 0, column));
            basis[i] = i;
            inverse[i, i] = 1;
            solution[i] = i < problem.Kinds ? problem.Demand[i] : problem.Supply[Array.IndexOf(supplyRow, i)];
        }
        // More cut than wanted is allowed.
        for (var i = 0; i < problem.Kinds; i++)
        {
            var column = new double[rows];
            column[i] = -1;
            columns.Add((0, column));
        }
    }

    public void Add(int reel, int[] counts)
    {
        var column = new double[rows];
        for (var i = 0; i < counts.Length; i++) column[i] = counts[i];
        if (supplyRow[reel] >= 0) column[supplyRow[reel]] = 1;
        columns.Add((problem.Costs[reel], column));
    }

    /// <summary>Price of each kind, and rent of each limited reel (0 for others).</summary>
    public (double[] Price, double[] Rent) Prices()
    {
        var dual = Dual();
        return (dual[..problem.Kinds], [.. supplyRow.Select(r => r < 0 ? 0 : Math.Max(0, -dual[r]))]);
    }

    /// <summary>Pivots until no column improves; false when none did.</summary>
    public bool Improve()
    {
        var improved = false;
        for (var pivots = 0; pivots < 500; pivots++)
        {
            var dual = Dual();
            var enter = -1;
            var worst = -Tolerance;
            for (var j = 0; j < columns.Count; j++)
            {
                var reduced = columns[j].Cost;
                for (var i = 0; i < rows; i++) reduced -= dual[i] * columns[j].Column[i];
                reduced /= Math.Max(1, columns[j].Cost);
                if (reduced >= worst || Array.IndexOf(basis, j) >= 0) continue;
                (worst, enter) = (reduced, j);
            }
            if (enter < 0) return improved;
            if (!Pivot(enter)) return improved;
            improved = true;
        }
        return improved;
    }

    private bool Pivot(int enter)
    {
        var direction = new double[rows];
        for (var i = 0; i < rows; i++)
            for (var k = 0; k < rows; k++)
                direction[i] += inverse[i, k] * columns[enter].Column[k];
        var leave = -1;
        var least = double.PositiveInfinity;
        for (var i = 0; i < rows; i++)
        {
            if (direction[i] <= Tolerance) continue;
            var ratio = solution[i] / direction[i];
            if (ratio >= least && !(ratio == least && basis[i] < basis[leave])) continue;
            (least, leave) = (ratio, i);
        }
        if (leave < 0) return false;
        for (var k = 0; k < rows; k++) inverse[leave, k] /= direction[leave];
        solution[leave] /= direction[leave];
        for (var i = 0; i < rows; i++)
        {
            if (i == leave || direction[i] == 0) continue;
            for (var k = 0; k < rows; k++) inverse[i, k] -= direction[i] * inverse[leave, k];
            solution[i] = Math.Max(0, solution[i] - (direction[i] * solution[leave]));
        }
        basis[leave] = enter;
        return true;
    }

    private double[] Dual()
    {
        var dual = new double[rows];
        for (var i = 0; i < rows; i++)
        {
            var cost = columns[basis[i]].Cost;
            if (cost == 0) continue;
            for (var k = 0; k < rows; k++) dual[k] += cost * inverse[i, k];
        }
        return dual;
    }
}
