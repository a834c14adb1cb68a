using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;

namespace Mastwright.Workbench.Parts;

/// <summary>What the pages ask about the checks of a trade.</summary>
internal static class Trades
{
    /// <summary>The worst check of a trade; null when it has none.</summary>
    public static Check? Worst(Sheet sheet, Trade trade) => Sorted(sheet.Checks.Where(c => c.Trade == trade)).FirstOrDefault();

    /// <summary>The worst check of any trade, the upkeep of the station among them; null when it has none.</summary>
    public static Check? Worst(Sheet sheet, KeepWatch upkeep, Trade trade) => trade == Trade.Keep ? upkeep.Worst : Worst(sheet, trade);

    /// <summary>State of the figures of any trade, the upkeep of the station among them.</summary>
    public static Freshness StateOf(Sheet sheet, KeepWatch upkeep, Trade trade) => trade == Trade.Keep ? upkeep.State : sheet.StateOf(trade);

    /// <summary>The checks of a trade by kind: the worst of each kind with all of its kind behind it, worst first.</summary>
    public static ImmutableArray<(Check Worst, ImmutableArray<Check> All)> Kinds(Sheet sheet, params ReadOnlySpan<Trade> trades)
    {
        var wanted = trades.ToArray();
        return
        [
            .. sheet.Checks.Where(c => wanted.Contains(c.Trade)).GroupBy(c => StationResult.KindOf(c.Id))
                .Select(g => Sorted(g).ToImmutableArray()).Select(all => (all[0], all))
                .OrderByDescending(k => Rank(k.Item1.Verdict)).ThenByDescending(k => k.Item1.Ratio),
        ];
    }

    /// <summary>Worst first.</summary>
    public static IEnumerable<Check> Sorted(IEnumerable<Check> checks) => checks.OrderByDescending(c => Rank(c.Verdict)).ThenByDescending(c => c.Ratio);

    private static int Rank(Verdict verdict) => verdict switch
    {
        Verdict.Pass => 0,
        Verdict.Caution => 1,
        Verdict.Unknown => 2,
        _ => 3,
    };
}
