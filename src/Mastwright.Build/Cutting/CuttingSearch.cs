namespace Mastwright.Build.Cutting;

/// <summary>
/// Branch and bound: the longest piece left must come from some reel, so every maximal pattern that holds it is tried,
/// fullest first. Adding a piece to a reel with room for it never harms, so patterns that are not maximal are skipped.
/// </summary>
internal sealed class CuttingSearch(CuttingProblem problem, CuttingBound bound, IReadOnlyList<Pattern>? first, long nodeLimit, CancellationToken cancellation)
{
    private const int MemoryLimit = 400_000;

    private readonly Dictionary<string, long> seen = [];
    private readonly List<Pattern> path = [];
    private List<Pattern>? best = first?.ToList();
    private long bestCost = first?.Sum(p => problem.Costs[p.Reel]) ?? long.MaxValue;
    private long rootBound;
    private long nodes;

    /// <summary>Whether every branch was followed or shut by its bound.</summary>
    public bool Exhausted { get; private set; }

    public bool IsProvenOptimal => best is not null && (Exhausted || bestCost <= rootBound);

    /// <summary>The proven bound: the plan's own length once it is proven.</summary>
    public double ProvenBoundM => problem.ToM(IsProvenOptimal ? bestCost : rootBound);

    public IReadOnlyList<Pattern>? Run()
    {
        int[] demand = [.. problem.Demand];
        int[] supply = [.. problem.Supply];
        rootBound = bound.Of(demand, supply);
        if (bestCost > rootBound) Go(demand, supply, 0);
        Exhausted = nodes <= nodeLimit;
        return best;
    }

    private void Go(int[] demand, int[] supply, long cost)
    {
        if (++nodes > nodeLimit || bestCost <= rootBound) return;
        if ((nodes & 1023) == 0) cancellation.ThrowIfCancellationRequested();
        var longest = Array.FindIndex(demand, d => d > 0);
        if (longest < 0)
        {
            if (cost >= bestCost) return;
            bestCost = cost;
            best = [.. path];
            return;
        }
        if (cost + bound.Of(demand, supply) >= bestCost) return;
        var key = string.Join(',', demand) + "|" + string.Join(',', supply);
        if (seen.TryGetValue(key, out var cheaper) && cheaper <= cost) return;
        if (seen.Count < MemoryLimit) seen[key] = cost;

        var patterns = new List<(Pattern Pattern, long Left)>();
        for (var reel = 0; reel < problem.Reels; reel++)
            if (supply[reel] > 0 && problem.Capacities[reel] >= problem.Sizes[longest]) Collect(reel, longest, demand, patterns);
        foreach (var (pattern, _) in patterns.OrderBy(p => (double)p.Left / problem.Capacities[p.Pattern.Reel]))
        {
            if (cost + problem.Costs[pattern.Reel] >= bestCost) continue;
            for (var i = 0; i < demand.Length; i++) demand[i] -= pattern.Counts[i];
            if (supply[pattern.Reel] != int.MaxValue) supply[pattern.Reel]--;
            path.Add(pattern);
            Go(demand, supply, cost + problem.Costs[pattern.Reel]);
            path.RemoveAt(path.Count - 1);
            if (problem.Supply[pattern.Reel] != int.MaxValue) supply[pattern.Reel]++;
            for (var i = 0; i < demand.Length; i++) demand[i] += pattern.Counts[i];
            if (nodes > nodeLimit || bestCost <= rootBound) return;
        }
    }

    private void Collect(int reel, int longest, int[] demand, List<(Pattern, long)> patterns)
    {
        var counts = new int[demand.Length];
        counts[longest] = 1;
        Extend(longest, problem.Capacities[reel] - problem.Sizes[longest]);

        void Extend(int kind, long left)
        {
            if (++nodes > nodeLimit) return;
            if (kind == demand.Length)
            {
                for (var i = longest; i < demand.Length; i++)
                    if (counts[i] < demand[i] && problem.Sizes[i] <= left) return;
                patterns.Add((new(reel, (int[])counts.Clone()), left));
                return;
            }
            var floor = kind == longest ? 1 : 0;
            var most = (int)Math.Min(demand[kind] - floor, left / problem.Sizes[kind]);
            for (var n = most; n >= 0; n--)
            {
                counts[kind] = floor + n;
                Extend(kind + 1, left - (n * problem.Sizes[kind]));
            }
            counts[kind] = floor;
            if (floor == 0) counts[kind] = 0;
        }
    }
}
