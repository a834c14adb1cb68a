using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;

namespace Mastwright.Report.Documents;

/// <summary>A table of numbers or words as comma-separated text.</summary>
/// <param name="Name">A name for its file, without ending.</param>
/// <param name="Text">The text, heads first.</param>
public sealed record CsvTable(string Name, string Text);

/// <summary>The tables of a document, and the numbers behind its curves, as comma-separated text (RFC 4180) for a spreadsheet.</summary>
public static class CsvTables
{
    /// <summary>Every table and every figure with numbers, in the order of the document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="stem">What the names begin with.</param>
    public static ImmutableArray<CsvTable> Of(Document document, string stem)
    {
        var tables = ImmutableArray.CreateBuilder<CsvTable>();
        foreach (var block in document.Blocks)
        {
            var text = block switch
            {
                DataTable table => Table(table),
                Figure { Data: { } data } => data.ToCsv(),
                _ => null,
            };
            if (text is not null)
            {
                var kind = block is Figure ? "curves" : "table";
                tables.Add(new($"{stem}-{tables.Count + 1:00}-{kind}", text));
            }
        }

        return tables.ToImmutable();
    }

    private static string Table(DataTable table) => Write([[.. table.Columns.Select(c => c.Header)], .. table.Rows.Select(r => r.Select(c => c.Text).ToArray())]);

    private static string Write(IEnumerable<string[]> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var csv = CsvWriter.Create(text, new CsvWriterOptions(), leaveOpen: true))
        {
            foreach (var row in rows)
            {
                csv.WriteRecord(row);
            }

            csv.Flush();
        }

        return text.ToString();
    }
}
