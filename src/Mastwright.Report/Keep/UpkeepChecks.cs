using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Journal.Drift;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Report.Keep;

/// <summary>How a station is kept, as checks like those of the other trades: what is overdue, what was found bad, what has drifted.</summary>
public static class UpkeepChecks
{
    private static readonly Source Journal = new("journal", SourceKind.Design);

    /// <summary>Whether every part of every mast is looked at in time, and nothing found bad was left.</summary>
    /// <param name="due">What is due when.</param>
    /// <param name="builtOn">Day the station was built or last gone through.</param>
    /// <param name="today">Today.</param>
    public static ImmutableArray<Check> Looks(IReadOnlyList<DueItem> due, LocalDate builtOn, LocalDate today) =>
        [.. due.GroupBy(d => d.Item.Mast).SelectMany(mast => Mast(mast.Key, [.. mast], builtOn, today))];

    private static IEnumerable<Check> Mast(string mast, ImmutableArray<DueItem> items, LocalDate builtOn, LocalDate today)
    {
        var bad = items.Where(i => i.LastState == ItemState.Bad).ToList();
        yield return Check.AtMost($"keep.found-bad[{mast}]", Trade.Keep, "Nothing found bad is left as it was",
            Trail.Given("items found bad and not seen good since", "n", bad.Count, QuantityKind.Count, Journal), Trail.Given("such items allowed", "n0", 0, QuantityKind.Count, Source.CommonPractice),
            bad.Count == 0 ? $"mast {mast}" : $"mast {mast}: {string.Join("; ", bad.Take(3).Select(b => b.Item.Label))}", "Mend it, look again and note it as good.", Caution(bad));

        // What was found bad is due at once, and is counted above.
        if (items.Where(i => i.LastState != ItemState.Bad).MaxBy(i => Share(i, builtOn, today)) is { } last)
        {
            var from = last.LastSeen ?? builtOn;
            yield return Check.AtMost($"keep.overdue[{mast}]", Trade.Keep, "Every part is looked at in time",
                Trail.Given("days since it was last looked at", "t", Days(from, today), QuantityKind.Count, Journal),
                Trail.Given("days from one look to the next", "T", Days(from, last.DueOn), QuantityKind.Count, new Source(last.Item.Source, SourceKind.CommonPractice)).Remark(last.Reason),
                $"mast {mast}: {last.Item.Label}; due on {last.DueOn.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)}", "Look at it and note what was seen.", Caution([last]));
        }
    }

    /// <summary>Whether a reading stays where the design has it.</summary>
    /// <param name="report">A series with at least one measurement.</param>
    /// <exception cref="ArgumentException">Nothing was measured.</exception>
    public static Check Drift(DriftReport report)
    {
        var deviation = report.Deviation ?? throw new ArgumentException("Nothing was measured.", nameof(report));
        var check = Check.AtMost($"keep.drift[{report.What}]", Trade.Keep, "Readings stay where the design has them", deviation,
            Trail.Given("allowed deviation", "d0", report.Limit, deviation.Kind, Source.CommonPractice), report.Words, "Find the cause before anything is trimmed.",
            report.State == DriftState.Alarm ? "A mast or guy that has changed may be about to fail: keep away from under it until the cause is known." : null);
        return report.State == DriftState.Drifting && check.Verdict == Verdict.Pass ? check with { Verdict = Verdict.Caution, Cure = "Take readings more often, and find out why." } : check;
    }

    /// <summary>The guys that were measured and yet cannot be judged; null when there is none.</summary>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="drift">What the readings say.</param>
    public static Check? Unjudged(IReadOnlyList<JournalEntry> entries, IReadOnlyList<DriftReport> drift)
    {
        var judged = drift.Where(d => d.Deviation is not null).Select(d => d.What).ToHashSet();
        var open = entries.OfType<TensionEntry>().Select(t => (t.Mast, t.Guy)).Distinct().Where(g => !judged.Contains(DriftWatch.NameOfTension(g.Mast, g.Guy))).ToList();
        return open.Count == 0 ? null : new Check("keep.unjudged", Trade.Keep, "Readings can be held against the design",
            Trail.Given("measured guys that cannot be judged", "n", open.Count, QuantityKind.Count, Journal), Trail.Given("such guys allowed", "n0", 0, QuantityKind.Count, Source.CommonPractice),
            double.PositiveInfinity, Verdict.Unknown, string.Join("; ", open.Take(3).Select(g => $"mast {g.Mast}, guy {g.Guy}")) + ": no reading has a temperature within the table, the mast does not stand, or the design has no such guy",
            "Read again and note the temperature.");
    }

    // More than 1 is overdue. An item due on the very day it counts from has no interval to be a share of.
    private static double Share(DueItem item, LocalDate builtOn, LocalDate today)
    {
        var from = item.LastSeen ?? builtOn;
        return Days(from, item.DueOn) is > 0 and var whole ? Days(from, today) / whole : item.IsOverdue(today) ? double.PositiveInfinity : 0;
    }

    private static double Days(LocalDate from, LocalDate to) => Period.DaysBetween(from, to);

    private static string? Caution(IReadOnlyList<DueItem> items) => items.Select(i => i.Item.Caution).FirstOrDefault(c => c.Length > 0);
}
