using System.Collections.Immutable;
using Mastwright.Journal.Entries;
using NodaTime;

namespace Mastwright.Journal;

/// <summary>A guy's tension on two dates.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Guy">The guy.</param>
/// <param name="Before">Last reading at or before the first date; null when there was none.</param>
/// <param name="After">Last reading at or before the second date.</param>
public sealed record TensionChange(string Mast, string Guy, TensionEntry? Before, TensionEntry After)
{
    /// <summary>Difference, newtons; null without an earlier reading. Temperatures may differ: see the entries.</summary>
    public double? DifferenceN => Before is null ? null : After.TensionN - Before.TensionN;
}

/// <summary>An inspected item whose state changed.</summary>
/// <param name="Key">Key of the item.</param>
/// <param name="Label">Its latest words.</param>
/// <param name="Before">State on the first date; null when not seen before.</param>
/// <param name="After">State on the second date.</param>
public sealed record StateChange(string Key, string Label, ItemState? Before, ItemState After);

/// <summary>A mast's sweep on two dates.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Plane">The measuring plane.</param>
/// <param name="Before">Last sweep at or before the first date; null when there was none.</param>
/// <param name="After">Last sweep at or before the second date.</param>
public sealed record SweepChange(string Mast, string Plane, SweepEntry? Before, SweepEntry After);

/// <summary>What changed between two dates.</summary>
/// <param name="From">First date: what was known at its moment.</param>
/// <param name="To">Second date.</param>
/// <param name="New">Entries after the first and up to the second, in order of time.</param>
/// <param name="Tensions">Guys measured in between.</param>
/// <param name="States">Items whose state is another than before.</param>
/// <param name="Sweeps">Sweeps taken in between.</param>
/// <param name="Storms">Storms that began in between.</param>
public sealed record JournalChanges(
    Instant From,
    Instant To,
    ImmutableArray<JournalEntry> New,
    ImmutableArray<TensionChange> Tensions,
    ImmutableArray<StateChange> States,
    ImmutableArray<SweepChange> Sweeps,
    ImmutableArray<StormEntry> Storms)
{
    /// <summary>Compares.</summary>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="from">First date.</param>
    /// <param name="to">Second date, not before the first.</param>
    public static JournalChanges Between(IEnumerable<JournalEntry> entries, Instant from, Instant to)
    {
        if (to < from) throw new ArgumentOutOfRangeException(nameof(to), to, "Not before the first date.");
        var sorted = entries.OrderBy(e => e.At.ToInstant()).ThenBy(e => e.Id).Where(e => e.At.ToInstant() <= to).ToList();
        var before = sorted.Where(e => e.At.ToInstant() <= from).ToList();
        var fresh = sorted.Skip(before.Count).ToImmutableArray();
        var items = Latest(before);
        return new(
            from,
            to,
            fresh,
            [.. fresh.OfType<TensionEntry>().GroupBy(t => (t.Mast, t.Guy)).OrderBy(g => g.Key)
                .Select(g => new TensionChange(g.Key.Mast, g.Key.Guy, before.OfType<TensionEntry>().LastOrDefault(t => (t.Mast, t.Guy) == g.Key), g.Last()))],
            [.. Latest(fresh).OrderBy(i => i.Key, StringComparer.Ordinal)
                .Select(i => new StateChange(i.Key, i.Value.Label, items.GetValueOrDefault(i.Key)?.State, i.Value.State))
                .Where(c => c.Before != c.After)],
            [.. fresh.OfType<SweepEntry>().GroupBy(s => (s.Mast, s.Plane)).OrderBy(g => g.Key)
                .Select(g => new SweepChange(g.Key.Mast, g.Key.Plane, before.OfType<SweepEntry>().LastOrDefault(s => (s.Mast, s.Plane) == g.Key), g.Last()))],
            [.. fresh.OfType<StormEntry>()]);
    }

    private static Dictionary<string, InspectedItem> Latest(IEnumerable<JournalEntry> entries)
    {
        var latest = new Dictionary<string, InspectedItem>();
        foreach (var item in entries.OfType<InspectionEntry>().SelectMany(e => e.Items)) latest[item.Key] = item;
        return latest;
    }
}
