namespace Mastwright.Build.Cutting;

/// <summary>
/// A good plan to start the search from: reel after reel is filled with the dearest pieces by the bound's own prices, the
/// reel that gives most for its length first; the last ones move to shorter reels where they fit.
/// </summary>
internal static class PricedFilling
{
    /// <summary>A plan, or null when the reels run out.</summary>
    public static List<Pattern>? Pack(CuttingProblem problem, CuttingBound bound)
    {
        int[] demand = [.. problem.Demand];
        int[] supply = [.. problem.Supply];
        // A piece without a price still has to go somewhere: its length breaks ties.
        var values = bound.Prices.Select((price, i) => price + (1e-6 * problem.Sizes[i])).ToArray();
        var plan = new List<Pattern>();
        while (demand.Any(d => d > 0))
        {
            var knapsack = new Knapsack(problem.Sizes, [.. demand]);
            (Pattern? Pattern, double Worth) best = (null, 0);
            for (var reel = 0; reel < problem.Reels; reel++)
            {
                if (supply[reel] == 0) continue;
                var (counts, value, _) = knapsack.Fill(problem.Capacities[reel], values);
                if (value / problem.Costs[reel] > best.Worth) best = (new(reel, counts), value / problem.Costs[reel]);
            }
            if (best.Pattern is not { } pattern) return null;
            plan.Add(pattern);
            if (supply[pattern.Reel] != int.MaxValue) supply[pattern.Reel]--;
            for (var i = 0; i < demand.Length; i++) demand[i] -= pattern.Counts[i];
        }
        return FirstFit.Shrink(problem, plan, supply);
    }
}
