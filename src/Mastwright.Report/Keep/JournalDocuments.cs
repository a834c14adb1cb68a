using System.Globalization;
using Mastwright.Journal;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using NodaTime;

namespace Mastwright.Report.Keep;

/// <summary>The journal as documents: its entries, what is due, what changed.</summary>
public static class JournalDocuments
{
    private const int SweepRowsShown = 41;

    /// <summary>The entries, one line each.</summary>
    public static Document List(Station station, IReadOnlyList<JournalEntry> entries)
    {
        var document = new DocumentBuilder("Journal", station.Name, station.UnitSystem);
        return entries.Count == 0
            ? document.Text("Nothing is in the journal for this.").Build()
            : document.Table("", ["Key", "When", "Kind", "Mast", "What", "Weather"], entries.Select(e => new Cell[]
            {
                EntryWords.Key(e), EntryWords.When(e.At), e.Kind, e.Mast, EntryWords.Summary(e, station.UnitSystem), EntryWords.Weather(e, station.UnitSystem),
            })).Build();
    }

    /// <summary>One entry in full.</summary>
    public static Document Show(Station station, JournalEntry entry)
    {
        var document = new DocumentBuilder($"{char.ToUpperInvariant(entry.Kind[0])}{entry.Kind[1..]} {EntryWords.Key(entry)}", station.Name, station.UnitSystem);
        var rows = new List<Cell[]> { new Cell[] { "When", EntryWords.When(entry.At) }, new Cell[] { "Key", entry.Id.ToString() } };
        void Row(string name, string text)
        {
            if (text.Length > 0)
            {
                rows.Add([name, text]);
            }
        }

        Row("Mast", entry.Mast);
        Row("By", entry.Author);
        Row("Weather", EntryWords.Weather(entry, station.UnitSystem));
        Row("What", EntryWords.Summary(entry, station.UnitSystem));
        if (entry is PhotoEntry photo)
        {
            Row("SHA-256", photo.Sha256);
        }

        document.Table("", ["", ""], rows);
        if (entry is InspectionEntry inspection)
        {
            document.Table("", ["Item", "Found", "Remark"], inspection.Items.Select(i => new Cell[] { i.Label, new Cell(EntryWords.Word(i.State), EntryWords.Of(i.State)), i.Remark }));
        }
        else if (entry is SweepEntry sweep)
        {
            var step = Math.Max(1, sweep.Samples.Length / SweepRowsShown);
            document.Table("", ["#Frequency", "#R", "#X"], sweep.Samples.Where((_, i) => i % step == 0).Select(s => new Cell[]
            {
                document.Show(s.FrequencyHz, QuantityKind.Frequency, 5), document.Show(s.ResistanceOhm, QuantityKind.Resistance), document.Show(s.ReactanceOhm, QuantityKind.Resistance),
            }));
        }

        return document.Build();
    }

    /// <summary>The checklist of the station, for taking along.</summary>
    public static Document Sheet(Station station, IReadOnlyList<ChecklistItem> items)
    {
        var document = new DocumentBuilder("Inspection sheet", station.Name, station.UnitSystem);
        document.Caution("Transmitter off and locked out, the mast earthed, before anything is touched. Do not climb without training, a second person and fall protection.");
        return document.Table("", ["Key", "What to look at", "Every", "Also after", "Found"], items.Select(i => new Cell[] { i.Key, i.Label, Every(i.Every), After(document, i.After), "" })).Build();
    }

    /// <summary>What is due.</summary>
    /// <param name="station">The station.</param>
    /// <param name="items">The items, earliest first.</param>
    /// <param name="today">Today.</param>
    /// <param name="withinDays">How far to look ahead.</param>
    public static Document Due(Station station, IReadOnlyList<DueItem> items, LocalDate today, int withinDays)
    {
        var document = new DocumentBuilder("What is due", station.Name, station.UnitSystem);
        var near = items.Where(i => i.DueOn <= today.PlusDays(withinDays)).ToList();
        if (near.Count > 0)
        {
            document.Table("", ["Due", "State", "Key", "What to look at", "Why then"], near.Select(i => new Cell[]
            {
                Day(i.DueOn), i.IsOverdue(today) ? new Cell("overdue", Verdict.Fail) : i.DueOn <= today ? new Cell("today", Verdict.Caution) : "coming", i.Item.Key, i.Item.Label, i.Reason,
            }));
            foreach (var caution in near.Select(i => i.Item.Caution).Where(c => c.Length > 0).Distinct())
            {
                document.Caution(caution);
            }
        }
        else
        {
            document.Text($"Nothing is due within {withinDays} days.");
        }

        if (items.Count > near.Count)
        {
            var next = items[near.Count];
            document.Text($"{items.Count - near.Count} further items; the next on {Day(next.DueOn)}: {next.Item.Label}.");
        }

        var overdue = near.Count(i => i.IsOverdue(today));
        return document.Build() with { Verdict = overdue > 0 ? Verdict.Fail : Verdict.Pass };
    }

    /// <summary>What changed between two moments.</summary>
    public static Document Changes(Station station, JournalChanges changes)
    {
        var document = new DocumentBuilder("What changed", $"{station.Name}, {Day(changes.From.InUtc().Date)} to {Day(changes.To.InUtc().Date)}", station.UnitSystem);
        document.Text($"{changes.New.Length} new entries.");
        string Force(double n) => document.Show(n, QuantityKind.Force, 3);
        if (!changes.Tensions.IsEmpty)
        {
            document.Table("Tensions measured", ["Mast", "Guy", "#Before", "#After", "#Difference", "Temperatures"], changes.Tensions.Select(t => new Cell[]
            {
                t.Mast, t.Guy, t.Before is { } b ? Force(b.TensionN) : "none", Force(t.After.TensionN), t.DifferenceN is { } d ? Force(d) : "", $"{Temperature(document, t.Before)} → {Temperature(document, t.After)}",
            }));
        }

        if (!changes.States.IsEmpty)
        {
            document.Table("States that changed", ["Item", "Before", "After"], changes.States.Select(s => new Cell[]
            {
                s.Label, s.Before is { } b ? EntryWords.Word(b) : "never seen", new Cell(EntryWords.Word(s.After), EntryWords.Of(s.After)),
            }));
        }

        if (!changes.Sweeps.IsEmpty)
        {
            document.Table("Sweeps", ["Mast", "Plane", "Before", "After"], changes.Sweeps.Select(s => new Cell[]
            {
                s.Mast, s.Plane, s.Before is { } b ? $"{EntryWords.When(b.At)} ({EntryWords.Key(b)})" : "none", $"{EntryWords.When(s.After.At)} ({EntryWords.Key(s.After)})",
            }));
        }

        return changes.Storms.IsEmpty ? document.Build() : document.Table("Storms", ["When", "What"], changes.Storms.Select(s => new Cell[] { EntryWords.When(s.At), EntryWords.Summary(s, station.UnitSystem) })).Build();
    }

    /// <summary>A day as written everywhere.</summary>
    public static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture);

    private static string Temperature(DocumentBuilder document, TensionEntry? entry) =>
        entry?.Weather.TemperatureK is { } k ? document.Show(k, QuantityKind.Temperature, 3) : "not noted";

    private static string Every(Period period) => period.Years > 0 ? period.Years == 1 ? "year" : $"{period.Years} years" : $"{period.Months} months";

    private static string After(DocumentBuilder document, StormTrigger after) => string.Join(", ", new[]
    {
        after.GustMs is { } g ? $"gusts of {document.Show(g, QuantityKind.Speed, 2)}" : null, after.IceM is { } i ? $"ice of {document.Show(i, QuantityKind.FineLength, 1)}" : null, after.Lightning ? "lightning" : null,
    }.OfType<string>());
}
