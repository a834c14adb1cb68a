using System.Collections.Immutable;
using System.Text;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tension;

/// <summary>One guy to read.</summary>
/// <param name="Mast">Its mast.</param>
/// <param name="Guy">Its name, e.g. <c>1/north</c>.</param>
/// <param name="Should">What it should have, in words with unit.</param>
public sealed record GuyToRead(string Mast, string Guy, string Should);

/// <summary>One reading as written on a filled-in sheet.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Guy">The guy.</param>
/// <param name="Way">How it was read: the head of its column.</param>
/// <param name="Reading">What was written.</param>
/// <param name="Date">When, as written; empty when not.</param>
/// <param name="Temperature">As written; empty when not.</param>
/// <param name="Wind">As written; empty when not.</param>
/// <param name="By">Who read it; empty when not written.</param>
/// <param name="Remark">Free words.</param>
/// <param name="Place">Where the reading stands.</param>
public sealed record SheetReading(string Mast, string Guy, string Way, string Reading, string Date, string Temperature, string Wind, string By, string Remark, Place Place);

/// <summary>
/// The sheet of tension readings as a table that any spreadsheet opens: a row for each guy, a column for each way to
/// read. Day, temperature, wind and name hold for the rows below too, so they need be written only once.
/// </summary>
public static class ReadingSheet
{
    private static readonly string[] Once = ["date", "temperature", "wind", "by"];

    /// <summary>An empty sheet to fill in.</summary>
    /// <param name="guys">The guys, in the order they are walked.</param>
    /// <param name="ways">Ways to read with an example of how each is written.</param>
    public static string Write(IReadOnlyList<GuyToRead> guys, IReadOnlyDictionary<string, string> ways)
    {
        var text = new StringBuilder();
        text.Append("# One row for each guy. Write day, temperature, wind and name once, in the first row; leave empty what was not read.\n");
        text.Append("# How to write readings: ").AppendJoin("; ", ways.Select(w => $"{w.Key} {w.Value}")).Append('\n');
        text.Append(CsvText.Row(["mast", "guy", "should", .. Once, .. ways.Keys, "remark"])).Append('\n');
        foreach (var guy in guys)
        {
            text.Append(CsvText.Row([guy.Mast, guy.Guy, guy.Should, .. Enumerable.Repeat("", Once.Length + ways.Count + 1)])).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Reads a filled-in sheet. A row without a reading is passed over; a column that is not known is named.</summary>
    /// <param name="text">The sheet.</param>
    /// <param name="fileName">Its name, for places.</param>
    /// <param name="ways">Ways to read.</param>
    public static Reading<IReadOnlyList<SheetReading>> Read(string text, string fileName, IReadOnlyCollection<string> ways)
    {
        var heading = text.TrimStart('\uFEFF').Split('\n').FirstOrDefault(l => l.Trim().Length > 0 && !l.TrimStart('"').StartsWith('#')) ?? "";
        var separator = new[] { ';', '\t', ',' }.MaxBy(c => heading.Count(h => h == c));
        Dictionary<string, int>? columns = null;
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var readings = new List<SheetReading>();
        var above = Once.ToDictionary(o => o, _ => "");
        foreach (var row in CsvRows.Read(text, separator))
        {
            // Below the heading a mast may well be called #1: a remark is then a row that names no guy.
            if (row.IsBlank || (row.Fields[0].StartsWith('#') && (columns is null || columns["guy"] >= row.Fields.Length || row.Fields[columns["guy"]].Length == 0)))
            {
                continue;
            }

            if (columns is null)
            {
                columns = row.Fields.Select((f, i) => (Name: f.ToLowerInvariant(), i)).Where(c => c.Name.Length > 0).GroupBy(c => c.Name).ToDictionary(g => g.Key, g => g.First().i);
                string[] known = ["mast", "guy", "should", .. Once, .. ways, "remark"];
                if (!columns.ContainsKey("guy") || !columns.Keys.Any(ways.Contains))
                {
                    return new(null, [new Finding("sheet-columns", Severity.Error, "This is not a sheet of readings: it needs a column guy and at least one way to read.", new(fileName, row.Line, 1, ""), row.Raw.Trim(), string.Join(", ", known), "Start from the sheet that `journal readings --sheet` writes.")]);
                }

                findings.AddRange(columns.Keys.Except(known).Select(c => new Finding("sheet-column", Severity.Warning, $"The column “{c}” is not known and is passed over.", new(fileName, row.Line, row.ColumnOf(columns[c], separator), c), c, string.Join(", ", known), "Rename or delete it.")));
                continue;
            }

            string Field(string name) => columns.TryGetValue(name, out var i) && i < row.Fields.Length ? row.Fields[i] : "";
            foreach (var once in Once.Where(o => Field(o).Length > 0))
            {
                above[once] = Field(once);
            }

            readings.AddRange(ways.Where(w => Field(w).Length > 0).Select(way => new SheetReading(
                CsvText.Unmarked(Field("mast")), CsvText.Unmarked(Field("guy")), way, CsvText.Unmarked(Field(way)), above["date"], above["temperature"], above["wind"], above["by"], Field("remark"), new Place(fileName, row.Line, row.ColumnOf(columns[way], separator), way))));
        }

        if (readings.Count == 0 && findings.All(f => f.Severity != Severity.Error))
        {
            findings.Add(new Finding("sheet-empty", Severity.Error, "No reading is filled in on this sheet.", new(fileName, 0, 0, ""), null, string.Join(", ", ways), "Write the readings into the columns of the ways you used."));
        }

        return findings.Any(f => f.Severity == Severity.Error) ? new(null, findings.ToImmutable()) : new(readings, findings.ToImmutable());
    }
}
