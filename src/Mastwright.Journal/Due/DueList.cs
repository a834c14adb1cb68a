using System.Collections.Immutable;
using Mastwright.Journal.Entries;
using NodaTime;

namespace Mastwright.Journal.Due;

/// <summary>One item with the day it is due.</summary>
/// <param name="Item">The item.</param>
/// <param name="LastSeen">Day it was last seen; null for never.</param>
/// <param name="LastState">How it was then.</param>
/// <param name="DueOn">Day it is due.</param>
/// <param name="Reason">Why on that day.</param>
public sealed record DueItem(ChecklistItem Item, LocalDate? LastSeen, ItemState? LastState, LocalDate DueOn, string Reason)
{
    /// <summary>Whether it should have been looked at before a day.</summary>
    public bool IsOverdue(LocalDate today) => DueOn < today;
}

/// <summary>Works out what is due when.</summary>
public static class DueList
{
    /// <summary>
    /// The items with their days, the earliest first. An item is due one interval after it was last seen (or after the
    /// station was built); the day after a storm that concerns it; and at once while its last state is bad, after a
    /// quarter of its interval while it is to be watched. A look that could not be taken counts for nothing.
    /// </summary>
    /// <param name="items">The checklist.</param>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="builtOn">Day the station was built or last gone through.</param>
    public static ImmutableArray<DueItem> For(IReadOnlyList<ChecklistItem> items, IEnumerable<JournalEntry> entries, LocalDate builtOn)
    {
        var all = entries.OrderBy(e => e.At.ToInstant()).ToList();
        var storms = all.OfType<StormEntry>().ToList();
        var looks = all.OfType<InspectionEntry>()
            .SelectMany(e => e.Items.Where(i => i.State != ItemState.NotSeen).Select(i => (i.Key, e.At, i.State)))
            .ToLookup(x => x.Key);
        return [.. items.Select(Due).OrderBy(d => d.DueOn).ThenBy(d => d.Item.Key, StringComparer.Ordinal)];

        DueItem Due(ChecklistItem item)
        {
            var seen = looks[item.Key].ToList();
            var last = seen.Count > 0 ? seen[^1] : default;
            LocalDate? lastDay = seen.Count > 0 ? last.At.Date : null;
            ItemState? state = seen.Count > 0 ? last.State : null;
            var from = lastDay ?? builtOn;
            var (due, reason) = state switch
            {
                ItemState.Bad => (from, "found bad and not seen good since"),
                ItemState.Watch => (from.PlusDays(Math.Max(1, Period.DaysBetween(from, from + item.Every) / 4)), "to be watched: a quarter of the usual interval"),
                _ => (from + item.Every, lastDay is null ? "never inspected: one interval after building" : "one interval after the last look"),
            };
            foreach (var storm in storms)
            {
                var end = storm.Ended ?? storm.At;
                if (seen.Count > 0 ? last.At.ToInstant() > end.ToInstant() : end.Date < builtOn) continue;
                if (Why(item.After, storm) is not { } why) continue;
                var day = end.Date.PlusDays(1);
                if (day < due) (due, reason) = (day, why + " on " + storm.At.Date.ToString("uuuu-MM-dd", null));
            }
            return new(item, lastDay, state, due, reason);
        }
    }

    /// <summary>The items that a storm makes due, whatever else was seen since: for the note that reports it.</summary>
    public static ImmutableArray<ChecklistItem> ConcernedBy(StormEntry storm, IReadOnlyList<ChecklistItem> items) =>
        [.. items.Where(i => Why(i.After, storm) is not null)];

    private static string? Why(StormTrigger trigger, StormEntry storm) =>
        trigger.Lightning && storm.Lightning ? "lightning"
        : trigger.GustMs is { } gust && storm.GustMs >= gust ? "storm"
        : trigger.IceM is { } ice && storm.IceM >= ice ? "ice"
        : null;
}
