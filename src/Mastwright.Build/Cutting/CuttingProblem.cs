using System.Collections.Immutable;

namespace Mastwright.Build.Cutting;

/// <summary>Counts of each kind cut from one reel.</summary>
internal sealed record Pattern(int Reel, int[] Counts);

/// <summary>
/// The problem in whole tenths of a millimetre: pieces rounded up, reels down, so that a plan always fits in truth. The
/// last piece of a reel needs no cut, so a reel counts one kerf longer and every piece one kerf longer.
/// </summary>
internal sealed class CuttingProblem
{
    private const double UnitsPerM = 10_000;

    private readonly ImmutableArray<PieceWanted> pieces;
    private readonly ImmutableArray<Reel> reels;
    private readonly ImmutableArray<ImmutableArray<PieceWanted>> kinds;
    private readonly double kerfM;

    private CuttingProblem(ImmutableArray<PieceWanted> pieces, ImmutableArray<Reel> reels, double kerfM)
    {
        this.pieces = pieces;
        this.reels = reels;
        this.kerfM = kerfM;
        var kerf = (long)Math.Ceiling((kerfM * UnitsPerM) - 1e-6);
        kinds = [.. pieces.GroupBy(p => Up(p.LengthM)).OrderByDescending(g => g.Key).Select(g => g.ToImmutableArray())];
        Sizes = [.. kinds.Select(k => Up(k[0].LengthM) + kerf)];
        Demand = [.. kinds.Select(k => k.Sum(p => p.Count + p.Spares))];
        Capacities = [.. reels.Select(r => Down(r.LengthM) + kerf)];
        Costs = [.. reels.Select(r => Down(r.LengthM))];
        Supply = [.. reels.Select(r => r.Available ?? int.MaxValue)];
    }

    /// <summary>Sizes of the kinds, falling.</summary>
    public ImmutableArray<long> Sizes { get; }

    /// <summary>How many of each kind.</summary>
    public ImmutableArray<int> Demand { get; }

    public ImmutableArray<long> Capacities { get; }

    public ImmutableArray<long> Costs { get; }

    /// <summary>How many of each reel; <see cref="int.MaxValue"/> for no limit.</summary>
    public ImmutableArray<int> Supply { get; }

    public int Kinds => Sizes.Length;

    public int Reels => Costs.Length;

    public double PiecesM => pieces.Sum(p => p.LengthM * (p.Count + p.Spares));

    public static CuttingProblem From(IReadOnlyList<PieceWanted> pieces, IReadOnlyList<Reel> reels, double kerfM) =>
        new([.. pieces.Where(p => p.Count + p.Spares > 0)], [.. reels.Where(r => r.Available is null or > 0)], kerfM);

    public string ReelName(int reel) => reels[reel].Name;

    public double ReelLengthM(int reel) => reels[reel].LengthM;

    public long Used(Pattern pattern) => pattern.Counts.Select((n, i) => n * Sizes[i]).Sum();

    public double CostM(IEnumerable<Pattern> plan) => plan.Sum(p => reels[p.Reel].LengthM);

    public double ToM(long units) => units / UnitsPerM;

    public double OffcutM(Pattern pattern)
    {
        var count = pattern.Counts.Sum();
        var used = pattern.Counts.Select((n, i) => n * kinds[i].Max(p => p.LengthM)).Sum() + (kerfM * count);
        return Math.Max(0, reels[pattern.Reel].LengthM - used);
    }

    /// <summary>The pieces of a pattern by name. Names that share a length are handed out in the order asked for.</summary>
    public ImmutableArray<(string Name, double LengthM, int Count)> Describe(Pattern pattern) =>
        [.. pattern.Counts.Select((n, i) => (string.Join(" / ", kinds[i].Select(p => p.Name).Distinct()), kinds[i].Max(p => p.LengthM), n)).Where(p => p.n > 0)];

    private static long Up(double m) => (long)Math.Ceiling((m * UnitsPerM) - 1e-6);

    private static long Down(double m) => (long)Math.Floor((m * UnitsPerM) + 1e-6);
}

/// <summary>First-fit-decreasing: the plan a careful person makes by hand, and the baseline.</summary>
internal static class FirstFit
{
    /// <summary>A plan, or null when the reels run out.</summary>
    public static List<Pattern>? Pack(CuttingProblem problem)
    {
        var supply = problem.Supply.ToArray();
        var byLength = Enumerable.Range(0, problem.Reels).OrderByDescending(r => problem.Capacities[r]).ToArray();
        var open = new List<(Pattern Pattern, long Left)>();
        for (var kind = 0; kind < problem.Kinds; kind++)
        {
            for (var n = 0; n < problem.Demand[kind]; n++)
            {
                var at = open.FindIndex(o => o.Left >= problem.Sizes[kind]);
                if (at < 0)
                {
                    var reel = Array.Find(byLength, r => supply[r] > 0 && problem.Capacities[r] >= problem.Sizes[kind]);
                    if (supply[reel] == 0 || problem.Capacities[reel] < problem.Sizes[kind]) return null;
                    if (supply[reel] != int.MaxValue) supply[reel]--;
                    open.Add((new(reel, new int[problem.Kinds]), problem.Capacities[reel]));
                    at = open.Count - 1;
                }
                open[at].Pattern.Counts[kind]++;
                open[at] = (open[at].Pattern, open[at].Left - problem.Sizes[kind]);
            }
        }
        return Shrink(problem, open.Select(o => o.Pattern), supply);
    }

    /// <summary>Moves each reel's content to the shortest reel there is that holds it.</summary>
    public static List<Pattern> Shrink(CuttingProblem problem, IEnumerable<Pattern> plan, int[] supply)
    {
        return [.. plan.Select(Shorter)];

        Pattern Shorter(Pattern pattern)
        {
            var used = problem.Used(pattern);
            var better = Enumerable.Range(0, problem.Reels).Where(r => supply[r] > 0 && problem.Capacities[r] >= used && problem.Costs[r] < problem.Costs[pattern.Reel]).OrderBy(r => problem.Costs[r]).Cast<int?>().FirstOrDefault();
            if (better is not { } reel) return pattern;
            if (supply[reel] != int.MaxValue) supply[reel]--;
            if (supply[pattern.Reel] != int.MaxValue) supply[pattern.Reel]++;
            return pattern with { Reel = reel };
        }
    }
}
