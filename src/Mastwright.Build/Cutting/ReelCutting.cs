using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Cutting;

/// <summary>Reels or bars to cut from.</summary>
/// <param name="Name">Name on the plan.</param>
/// <param name="LengthM">Length of one, metres.</param>
/// <param name="Available">How many there are; null for as many as are bought.</param>
public sealed record Reel(string Name, double LengthM, int? Available = null);

/// <summary>Pieces wanted.</summary>
/// <param name="Name">Name on the plan.</param>
/// <param name="LengthM">Length of one, metres.</param>
/// <param name="Count">How many are needed.</param>
/// <param name="Spares">How many more to cut for the shelf.</param>
public sealed record PieceWanted(string Name, double LengthM, int Count, int Spares = 0);

/// <summary>How to cut.</summary>
/// <param name="KerfM">Length lost at each cut, metres.</param>
/// <param name="UsefulOffcutM">From this length on an offcut is kept and is not waste.</param>
/// <param name="NodeLimit">Search nodes after which the best plan so far is given with its proven bound.</param>
public sealed record ReelCuttingOptions(double KerfM = 0, double UsefulOffcutM = 5, long NodeLimit = 300_000);

/// <summary>One reel on the plan.</summary>
/// <param name="Reel">Name of the reel.</param>
/// <param name="LengthM">Its length.</param>
/// <param name="Pieces">What is cut from it, longest first.</param>
/// <param name="OffcutM">What is left.</param>
public sealed record ReelCut(string Reel, double LengthM, ImmutableArray<(string Name, double LengthM, int Count)> Pieces, double OffcutM);

/// <summary>A cutting plan.</summary>
/// <param name="Reels">Reels opened.</param>
/// <param name="ReelLength">Total length of the reels opened: what is made small.</param>
/// <param name="Bound">No plan whatever can do with less than this.</param>
/// <param name="IsProvenOptimal">Whether the plan reaches the bound or the search was exhausted.</param>
/// <param name="FirstFitM">What cutting the longest pieces first from the first reel they fit would open; null when it does not manage with the reels there are.</param>
/// <param name="Waste">Offcuts too short to keep, and kerf.</param>
/// <param name="KeptM">Offcuts long enough to keep.</param>
public sealed record CuttingPlan(ImmutableArray<ReelCut> Reels, Trail ReelLength, Trail Bound, bool IsProvenOptimal, double? FirstFitM, Trail Waste, double KeptM);

/// <summary>
/// Plans how to cut pieces from reels so that the least length of reel is opened. Branch and bound over maximal reel
/// patterns; the bound is Gilmore and Gomory's linear program by column generation (Operations Research 9 (1961)
/// 849-859, from memory), made safe against rounding. First-fit-decreasing is the baseline.
/// </summary>
public static class ReelCutting
{
    private const int MostKinds = 60;
    private const int MostPieces = 5000;

    /// <summary>Plans the cutting.</summary>
    /// <param name="pieces">Pieces wanted.</param>
    /// <param name="reels">Reels to cut from.</param>
    /// <param name="options">Kerf, what offcut is kept, how long to search.</param>
    /// <param name="cancellation">Stops the search; the best plan so far is not returned.</param>
    public static Reading<CuttingPlan> Plan(IReadOnlyList<PieceWanted> pieces, IReadOnlyList<Reel> reels, ReelCuttingOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new();
        var findings = Faults(pieces, reels, options);
        if (findings.Count > 0) return new(null, [.. findings]);
        var problem = CuttingProblem.From(pieces, reels, options.KerfM);
        var first = FirstFit.Pack(problem);
        var bound = CuttingBound.For(problem, cancellation);
        var start = new[] { first, PricedFilling.Pack(problem, bound) }.Where(p => p is not null).MinBy(p => problem.CostM(p!));
        var search = new CuttingSearch(problem, bound, start, options.NodeLimit, cancellation);
        var best = search.Run();
        if (best is null)
        {
            return new(null, [new("reels-too-few", Severity.Error,
                search.Exhausted ? "The reels there are cannot hold all the pieces, however they are cut." : "No way was found to cut all the pieces from the reels there are.",
                null, null, null, "Add a reel, or make some pieces from two joined at a fitting.")]);
        }
        return new(Describe(problem, best, first, search, options), []);
    }

    private static CuttingPlan Describe(CuttingProblem problem, IReadOnlyList<Pattern> best, IReadOnlyList<Pattern>? first, CuttingSearch search, ReelCuttingOptions options)
    {
        var cuts = best
            .OrderByDescending(p => problem.ReelLengthM(p.Reel)).ThenByDescending(p => problem.Used(p))
            .Select(p => new ReelCut(problem.ReelName(p.Reel), problem.ReelLengthM(p.Reel), problem.Describe(p), problem.OffcutM(p)))
            .ToImmutableArray();
        var opened = cuts.Sum(c => c.LengthM);
        var wanted = problem.PiecesM;
        var kept = cuts.Where(c => c.OffcutM >= options.UsefulOffcutM).Sum(c => c.OffcutM);
        var source = Source.Derived("reel-cutting.md");
        var need = Trail.Given("length of all pieces with spares", "ΣL", wanted, QuantityKind.Length, Source.DesignFile);
        var length = Trail.Computed("reel length opened", "R", opened, QuantityKind.Length, "R = sum of the reels opened", source, need);
        return new(
            cuts,
            length,
            Trail.Computed("least reel length any plan needs", "Rmin", search.ProvenBoundM, QuantityKind.Length, "linear program over all reel patterns, rounded up to what reels add up to", source, need),
            search.IsProvenOptimal,
            first is null ? null : problem.CostM(first),
            Trail.Computed("waste", "W", Math.Max(0, opened - wanted - kept), QuantityKind.Length, "W = R − ΣL − offcuts kept", source, length, need),
            kept);
    }

    private static List<Finding> Faults(IReadOnlyList<PieceWanted> pieces, IReadOnlyList<Reel> reels, ReelCuttingOptions options)
    {
        var findings = new List<Finding>();
        void Error(string code, string message, string? value, string? allowed, string wayOut) => findings.Add(new(code, Severity.Error, message, null, value, allowed, wayOut));
        foreach (var p in pieces.Where(p => !(p.LengthM > 0) || !double.IsFinite(p.LengthM) || p.Count < 0 || p.Spares < 0))
            Error("piece-bad", $"Piece {p.Name} has a length or count that cannot be.", string.Create(CultureInfo.InvariantCulture, $"{p.LengthM} m, {p.Count} + {p.Spares}"), "a length above 0 m and counts of 0 and above", "Correct the piece.");
        foreach (var r in reels.Where(r => !(r.LengthM > 0) || !double.IsFinite(r.LengthM) || r.Available is < 0))
            Error("reel-bad", $"Reel {r.Name} has a length or number that cannot be.", string.Create(CultureInfo.InvariantCulture, $"{r.LengthM} m"), "a length above 0 m", "Correct the reel.");
        if (!(options.KerfM >= 0)) Error("kerf-bad", "The length lost at a cut is below zero.", options.KerfM.ToString(CultureInfo.InvariantCulture), "0 and above", "Correct it.");
        if (findings.Count > 0) return findings;
        if (pieces.Sum(p => p.Count + p.Spares) == 0) Error("pieces-none", "There is nothing to cut.", null, null, "Ask for at least one piece.");
        if (pieces.Sum(p => (long)p.Count + p.Spares) > MostPieces || pieces.Select(p => p.LengthM).Distinct().Count() > MostKinds)
            Error("pieces-many", "There are more pieces than are planned together.", null, $"up to {MostPieces} pieces of up to {MostKinds} lengths", "Plan groups of them one after the other.");
        var longest = reels.Where(r => r.Available is null or > 0).Select(r => r.LengthM).DefaultIfEmpty(0).Max();
        foreach (var p in pieces.Where(p => p.Count + p.Spares > 0 && p.LengthM > longest))
            Error("piece-too-long", string.Create(CultureInfo.InvariantCulture, $"Piece {p.Name} of {p.LengthM:0.###} m is longer than the longest reel of {longest:0.###} m."), p.LengthM.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"up to {longest:0.###} m"), "Buy a longer reel, or make the piece from two joined at a fitting.");
        return findings;
    }
}
