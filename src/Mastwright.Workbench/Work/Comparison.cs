using System.Collections.Immutable;
using DiffPlex;
using DiffPlex.Chunkers;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;

namespace Mastwright.Workbench.Work;

/// <summary>A check in two designs; null where one of them has no such check.</summary>
/// <param name="Kept">In the variant kept.</param>
/// <param name="Now">In the present design.</param>
public sealed record CheckPair(Check? Kept, Check? Now)
{
    /// <summary>The one there is.</summary>
    public Check Any => Now ?? Kept!;

    /// <summary>Whether the verdict differs, or only one has it.</summary>
    public bool VerdictChanged => Kept?.Verdict != Now?.Verdict;

    /// <summary>By how much the use has grown; 0 when only one has it.</summary>
    public double Growth => Kept is { } k && Now is { } n && double.IsFinite(k.Ratio) && double.IsFinite(n.Ratio) ? n.Ratio - k.Ratio : 0;
}

/// <summary>A number in two designs; null where one of them has no such number.</summary>
/// <param name="Id">Its stable name.</param>
/// <param name="Kept">In the variant kept.</param>
/// <param name="Now">In the present design.</param>
public sealed record NumberPair(string Id, Trail? Kept, Trail? Now)
{
    /// <summary>The change as a share of what was; null where that says nothing.</summary>
    public double? Share => Kept is { Value: not 0 } k && Now is { } n && k.Kind != QuantityKind.Decibel ? (n.Value - k.Value) / Math.Abs(k.Value) : null;
}

/// <summary>A line of the text that only one of the two has.</summary>
/// <param name="Line">The line.</param>
/// <param name="Added">Whether the present design has it.</param>
public sealed record LineChange(string Line, bool Added);

/// <summary>What differs between a variant that was kept and the present design.</summary>
/// <param name="Checks">Checks whose verdict changed first, then those whose use changed by a hundredth or more.</param>
/// <param name="Numbers">Numbers that differ by a thousandth or more.</param>
/// <param name="Alike">How many numbers do not differ.</param>
public sealed record Comparison(ImmutableArray<CheckPair> Checks, ImmutableArray<NumberPair> Numbers, int Alike)
{
    private static readonly CustomFunctionChunker WholeLines = new(t => t.Split('\n'));
    private const double LeastUse = 0.01;
    private const double LeastShare = 0.001;

    /// <summary>Compares two results.</summary>
    public static Comparison Of(StationResult kept, StationResult now)
    {
        var checks = Join(kept.Checks, now.Checks, c => c.Id).Select(p => new CheckPair(p.Kept, p.Now)).Where(p => p.VerdictChanged || Math.Abs(p.Growth) >= LeastUse)
            .OrderByDescending(p => p.VerdictChanged).ThenByDescending(p => Math.Abs(p.Growth));
        var numbers = Join(kept.Quantities, now.Quantities, q => q.Id).Select(p => new NumberPair((p.Kept ?? p.Now)!.Id, p.Kept?.Trail, p.Now?.Trail)).ToList();
        var differing = numbers.Where(p => p.Kept is null || p.Now is null || AreApart(p.Kept.Value, p.Now.Value)).ToImmutableArray();
        return new([.. checks], differing, numbers.Count - differing.Length);
    }

    /// <summary>The lines of two texts that differ, in order.</summary>
    public static ImmutableArray<LineChange> Lines(string kept, string now)
    {
        var diff = Differ.Instance.CreateDiffs(kept, now, ignoreWhiteSpace: false, ignoreCase: false, WholeLines);
        return [.. diff.DiffBlocks.SelectMany(b => Enumerable.Range(b.DeleteStartA, b.DeleteCountA).Select(i => new LineChange(diff.PiecesOld[i], false))
            .Concat(Enumerable.Range(b.InsertStartB, b.InsertCountB).Select(i => new LineChange(diff.PiecesNew[i], true))))];
    }

    private static bool AreApart(double a, double b) => Math.Abs(a - b) > LeastShare * Math.Max(Math.Abs(a), Math.Abs(b)) && Math.Abs(a - b) > 1e-12;

    private static IEnumerable<(T? Kept, T? Now)> Join<T>(IEnumerable<T> kept, IEnumerable<T> now, Func<T, string> id)
        where T : class
    {
        var before = kept.GroupBy(id).ToDictionary(g => g.Key, g => g.First());
        foreach (var n in now.GroupBy(id).Select(g => g.First()))
        {
            yield return (before.Remove(id(n), out var k) ? k : null, n);
        }

        foreach (var k in before.Values)
        {
            yield return (k, null);
        }
    }
}
