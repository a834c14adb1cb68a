using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Journal.Export;

/// <summary>
/// The journal as a set of CSV tables (RFC 4180), one for each kind of thing, and back without loss. Tables are tied by
/// the key of the entry. An empty field is a number that was not noted.
/// </summary>
public static class JournalCsv
{
    private static readonly string[] EntryHeading = ["id", "kind", "at", "mast", "author", "text", "temperatureK", "windMs", "weather"];
    private static readonly string[] TensionHeading = ["id", "guy", "tensionN", "uncertaintyN", "method", "raw"];
    private static readonly string[] SweepHeading = ["id", "plane", "referenceOhm", "sourceName", "sourceText"];
    private static readonly string[] PointHeading = ["id", "frequencyHz", "resistanceOhm", "reactanceOhm"];
    private static readonly string[] ItemHeading = ["id", "key", "label", "state", "remark"];
    private static readonly string[] PhotoHeading = ["id", "path", "sha256", "about"];
    private static readonly string[] StormHeading = ["id", "ended", "gustMs", "iceM", "lightning"];
    private static readonly string[] EarlierHeading = ["id", "changedAt", "reason", "content"];
    private static readonly string[] StationHeading = ["name", "version"];

    /// <summary>The tables by file name.</summary>
    public static ImmutableSortedDictionary<string, string> Write(JournalContent content)
    {
        var e = content.Entries;
        return ImmutableSortedDictionary<string, string>.Empty.AddRange(
        [
            Table("station.csv", StationHeading, [[content.Station, JournalStore.FormatVersion.ToString(CultureInfo.InvariantCulture)]]),
            Table("entries.csv", EntryHeading, e.Select(x => (string[])[Id(x), x.Kind, Time(x.At), x.Mast, x.Author, x.Text, CsvTables.Number(x.Weather.TemperatureK), CsvTables.Number(x.Weather.WindMs), x.Weather.Words])),
            Table("tensions.csv", TensionHeading, e.OfType<TensionEntry>().Select(x => (string[])[Id(x), x.Guy, CsvTables.Number(x.TensionN), CsvTables.Number(x.UncertaintyN), x.Method, x.Raw])),
            Table("sweeps.csv", SweepHeading, e.OfType<SweepEntry>().Select(x => (string[])[Id(x), x.Plane, CsvTables.Number(x.ReferenceOhm), x.SourceName, x.SourceText])),
            Table("sweep-points.csv", PointHeading, e.OfType<SweepEntry>().SelectMany(x => x.Samples.Select(p => (string[])[Id(x), CsvTables.Number(p.FrequencyHz), CsvTables.Number(p.ResistanceOhm), CsvTables.Number(p.ReactanceOhm)]))),
            Table("inspection-items.csv", ItemHeading, e.OfType<InspectionEntry>().SelectMany(x => x.Items.Select(i => (string[])[Id(x), i.Key, i.Label, i.State.ToString(), i.Remark]))),
            Table("photos.csv", PhotoHeading, e.OfType<PhotoEntry>().Select(x => (string[])[Id(x), x.Path, x.Sha256, x.About is { } about ? EntryRows.Key(about) : ""])),
            Table("storms.csv", StormHeading, e.OfType<StormEntry>().Select(x => (string[])[Id(x), x.Ended is { } t ? Time(t) : "", CsvTables.Number(x.GustMs), CsvTables.Number(x.IceM), x.Lightning ? "yes" : "no"])),
            Table("earlier.csv", EarlierHeading, content.Earlier.Select(x => (string[])[EntryRows.Key(x.EntryId), Time(x.ChangedAt), x.Reason, x.Content])),
        ]);

        static KeyValuePair<string, string> Table(string name, string[] heading, IEnumerable<string[]> rows) => new(name, CsvTables.Write(heading, rows));
        static string Id(JournalEntry x) => EntryRows.Key(x.Id);
        static string Time(OffsetDateTime t) => EntryRows.Time.Format(t);
    }

    /// <summary>A journal from its tables; a problem with file and line when they are none.</summary>
    public static Outcome<JournalContent> Read(IReadOnlyDictionary<string, string> tables)
    {
        try
        {
            var station = Rows(tables, "station.csv", StationHeading).Single("exactly one line", "station.csv");
            if (station.Whole("version") is var version && version > JournalStore.FormatVersion)
                return new Finding("export-newer", Severity.Error, $"This export was written by a newer program: its form is number {version}, this program knows up to {JournalStore.FormatVersion}.", station.Place("version"), null, $"up to {JournalStore.FormatVersion}", "Use the newer program.");
            var tensions = Rows(tables, "tensions.csv", TensionHeading).ToLookup(r => r["id"]);
            var sweeps = Rows(tables, "sweeps.csv", SweepHeading).ToLookup(r => r["id"]);
            var points = Rows(tables, "sweep-points.csv", PointHeading).ToLookup(r => r["id"], r => new SweepSample(r.Number("frequencyHz"), r.Number("resistanceOhm"), r.Number("reactanceOhm")));
            var items = Rows(tables, "inspection-items.csv", ItemHeading).ToLookup(r => r["id"], r => new InspectedItem(r["key"], r["label"], r.State("state"), r["remark"]));
            var photos = Rows(tables, "photos.csv", PhotoHeading).ToLookup(r => r["id"]);
            var storms = Rows(tables, "storms.csv", StormHeading).ToLookup(r => r["id"]);
            var entries = ImmutableArray.CreateBuilder<JournalEntry>();
            foreach (var r in Rows(tables, "entries.csv", EntryHeading))
            {
                var (id, at, mast, author, text) = (r.Id("id"), r.Time("at"), r["mast"], r["author"], r["text"]);
                var weather = new Weather(r.NumberOrNone("temperatureK"), r.NumberOrNone("windMs"), r["weather"]);
                CsvFields Own(ILookup<string, CsvFields> table, string name) => table[r["id"]].ToList().Single("exactly one line for every entry of its kind", name);
                JournalEntry entry = r["kind"] switch
                {
                    "tension" when Own(tensions, "tensions.csv") is var t => new TensionEntry(id, at, mast, author, text, weather, t["guy"], t.Number("tensionN"), t.NumberOrNone("uncertaintyN"), t["method"], t["raw"]),
                    "sweep" when Own(sweeps, "sweeps.csv") is var s => new SweepEntry(id, at, mast, author, text, weather, s["plane"], s.Number("referenceOhm"), [.. points[r["id"]]], s["sourceName"], s["sourceText"]),
                    "inspection" => new InspectionEntry(id, at, mast, author, text, weather, [.. items[r["id"]]]),
                    "photo" when Own(photos, "photos.csv") is var p => new PhotoEntry(id, at, mast, author, text, weather, p["path"], p["sha256"], p["about"].Length == 0 ? null : p.Id("about")),
                    "storm" when Own(storms, "storms.csv") is var s => new StormEntry(id, at, mast, author, text, weather, s["ended"].Length == 0 ? null : s.Time("ended"), s.NumberOrNone("gustMs"), s.NumberOrNone("iceM"), s.YesNo("lightning")),
                    "note" => new NoteEntry(id, at, mast, author, text, weather),
                    var other => throw r.Bad("kind", other, "tension, sweep, inspection, photo, storm or note"),
                };
                if (EntryChecks.Fault(entry) is { } fault) return fault with { Place = r.Place(fault.Place!.Path) };
                entries.Add(entry);
            }
            return new JournalContent(station["name"], entries.ToImmutable(), [.. Rows(tables, "earlier.csv", EarlierHeading).Select(r => new EarlierEntry(r.Id("id"), r.Time("changedAt"), r["reason"], r["content"]))]);
        }
        catch (CsvProblem problem)
        {
            return problem.Finding;
        }
    }

    private static List<CsvFields> Rows(IReadOnlyDictionary<string, string> tables, string name, string[] heading)
    {
        if (!tables.TryGetValue(name, out var text))
            throw new CsvProblem(new("export-table-missing", Severity.Error, $"The table {name} is missing from the export.", new(name, 0, 0, ""), null, null, "Take all tables of one export."));
        var rows = new List<CsvFields>();
        var first = true;
        foreach (var (line, fields) in CsvTables.Read(text))
        {
            if (first && !fields.SequenceEqual(heading))
                throw new CsvProblem(new("export-heading", Severity.Error, $"The first line of {name} is not the heading it should be.", new(name, line, 1, ""), string.Join(',', fields), string.Join(',', heading), "Take an unchanged export."));
            if (!first)
            {
                if (fields.Length != heading.Length)
                    throw new CsvProblem(new("export-row", Severity.Error, $"A line of {name} has {fields.Length} fields.", new(name, line, 1, ""), null, $"{heading.Length} fields", "Take an unchanged export; a file cut short cannot be used."));
                rows.Add(new(name, line, heading, fields));
            }
            first = false;
        }
        return rows;
    }
}
