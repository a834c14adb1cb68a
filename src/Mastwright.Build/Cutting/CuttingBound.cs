namespace Mastwright.Build.Cutting;

/// <summary>
/// A lower bound on the reel length that any plan opens: prices for the kinds such that no reel can be filled with more
/// than its own cost (or, for reels in short supply, with a rent on each). The prices come from the linear program over
/// all patterns, solved by column generation; the bound they give holds whatever rounding did to them.
/// </summary>
internal sealed class CuttingBound
{
    private const int MostSums = 2_000_000;

    private readonly CuttingProblem problem;
    private readonly double[] prices;
    private readonly double[] rents;
    private readonly long step;
    private readonly bool[] sums;

    private CuttingBound(CuttingProblem problem, double[] prices, double[] rents)
    {
        this.problem = problem;
        this.prices = prices;
        this.rents = rents;
        step = problem.Costs.Aggregate(0L, Gcd);
        sums = Sums();
    }

    /// <summary>Price of each kind.</summary>
    public IReadOnlyList<double> Prices => prices;

    /// <summary>Bound for what is left to cut, rounded up to a length that reels can add up to.</summary>
    public long Of(ReadOnlySpan<int> demand, ReadOnlySpan<int> supply)
    {
        var sum = 0.0;
        long material = 0;
        for (var i = 0; i < demand.Length; i++)
        {
            sum += demand[i] * prices[i];
            material += demand[i] * problem.Sizes[i];
        }
        for (var r = 0; r < supply.Length; r++)
            if (rents[r] > 0) sum -= rents[r] * supply[r];
        // Without rounding prices could be a hair too high: a thousandth of a unit is taken off.
        var priced = RoundUp((long)Math.Ceiling((sum * (1 - 1e-10)) - 1e-3));
        return Math.Max(Math.Max(priced, 0), MaterialBound(material));
    }

    // Whatever the pieces, a reel of cost c holds at most its capacity.
    private long MaterialBound(long material)
    {
        if (material == 0) return 0;
        var share = 0.0;
        for (var r = 0; r < problem.Reels; r++) share = Math.Max(share, (double)problem.Capacities[r] / problem.Costs[r]);
        return RoundUp((long)Math.Ceiling((material / share) - 1e-3));
    }

    private long RoundUp(long value)
    {
        var steps = (value + step - 1) / step;
        while (steps < sums.Length && !sums[steps]) steps++;
        return steps * step;
    }

    // Which multiples of the common step reels can add up to, as far as it pays to know.
    private bool[] Sums()
    {
        var material = problem.Sizes.Select((s, i) => s * problem.Demand[i]).Sum();
        var reach = new bool[Math.Min(MostSums, ((2 * material) + (2 * problem.Costs.Max())) / step)];
        if (reach.Length > 0) reach[0] = true;
        for (var r = 0; r < problem.Reels; r++)
        {
            var cost = problem.Costs[r] / step;
            // How many of this reel the sum at hand has used; sums reached without it have used none.
            var used = new int[reach.Length];
            for (var at = cost; at < reach.Length; at++)
            {
                if (reach[at] || !reach[at - cost] || used[at - cost] >= problem.Supply[r]) continue;
                reach[at] = true;
                used[at] = used[at - cost] + 1;
            }
        }
        return reach;
    }

    public static CuttingBound For(CuttingProblem problem, CancellationToken cancellation)
    {
        var knapsack = new Knapsack(problem.Sizes, problem.Demand);
        var program = new PatternProgram(problem);
        for (var round = 0; round < 1000; round++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (price, rent) = program.Prices();
            var found = false;
            for (var r = 0; r < problem.Reels; r++)
            {
                var (counts, value, _) = knapsack.Fill(problem.Capacities[r], price);
                if (value <= (problem.Costs[r] + rent[r]) * (1 + 1e-9)) continue;
                program.Add(r, counts);
                found = true;
            }
            if (!found || !program.Improve()) break;
        }
        return Safe(problem, knapsack, program.Prices().Price);
    }

    // Any prices whatever give a bound once no unlimited reel can be overfilled and limited ones pay rent for it (Farley,
    // Operations Research 38 (1990) 922-923, from memory).
    private static CuttingBound Safe(CuttingProblem problem, Knapsack knapsack, double[] prices)
    {
        for (var i = 0; i < prices.Length; i++) prices[i] = Math.Max(0, prices[i]);
        var over = 1.0;
        for (var r = 0; r < problem.Reels; r++)
            if (problem.Supply[r] == int.MaxValue) over = Math.Max(over, knapsack.Fill(problem.Capacities[r], prices).Ceiling / problem.Costs[r]);
        for (var i = 0; i < prices.Length; i++) prices[i] /= over;
        var rents = new double[problem.Reels];
        for (var r = 0; r < problem.Reels; r++)
            if (problem.Supply[r] != int.MaxValue) rents[r] = Math.Max(0, knapsack.Fill(problem.Capacities[r], prices).Ceiling - problem.Costs[r]);
        return new(problem, prices, rents);
    }

    private static long Gcd(long a, long b) => b == 0 ? a : Gcd(b, a % b);
}
