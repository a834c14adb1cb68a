using System.Collections.Immutable;
using Mastwright.Model.Text;

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

    private static string Table(DataTable table) => CsvText.ForSpreadsheet(table.Rows.Select(r => r.Select(c => c.Text)).Prepend(table.Columns.Select(c => c.Header)));
}
