using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Mastwright.Model.Text;

/// <summary>Writes tables as comma-separated text (RFC 4180): the one place where cells are quoted.</summary>
public static partial class CsvText
{
    private const string LineEnd = "\r\n";

    /// <summary>Rows as they are, to be read back without loss.</summary>
    public static string Write(IEnumerable<IEnumerable<string>> rows)
    {
        var text = new StringBuilder();
        foreach (var row in rows)
        {
            text.AppendJoin(',', row.Select(Quoted)).Append(LineEnd);
        }

        return text.ToString();
    }

    /// <summary>Rows for a spreadsheet: names and words come from files that may be another person's, so a cell that would be taken for a formula is marked as text.</summary>
    public static string ForSpreadsheet(IEnumerable<IEnumerable<string>> rows) => Write(rows.Select(r => r.Select(AsText)));

    /// <summary>A row without its end, for a spreadsheet.</summary>
    public static string Row(IEnumerable<string> cells) => string.Join(',', cells.Select(AsText).Select(Quoted));

    /// <summary>A number so that it is read back as the same one.</summary>
    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>A cell marked as text with an apostrophe where a spreadsheet would take it for a formula; numbers, with or without a unit, stay numbers.</summary>
    public static string AsText(string cell) => IsRisky(cell) ? "'" + cell : cell;

    /// <summary>A cell without the mark that <see cref="AsText"/> gave it.</summary>
    public static string Unmarked(string cell) => cell.Length > 1 && cell[0] == '\'' && IsRisky(cell[1..]) ? cell[1..] : cell;

    // The first characters that start a formula, and those that some spreadsheets drop before they look for one.
    private static bool IsRisky(string cell) => cell.Length > 0 && cell[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' && !Measured().IsMatch(cell);

    private static string Quoted(string cell) =>
        cell.AsSpan().ContainsAny("\",;\r\n\t") || cell.StartsWith(' ') || cell.EndsWith(' ') ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;

    // A signed number, perhaps with a unit: letters and signs of units, none that calculates or calls.
    [GeneratedRegex(@"^[+-]\d+(\.\d+)?([eE][+-]?\d+)?( ?[\p{L}°%·²³⁴Ω/]+)?\z", RegexOptions.CultureInvariant)]
    private static partial Regex Measured();
}
