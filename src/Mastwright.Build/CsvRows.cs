using CsvHelper;

namespace Mastwright.Build;

/// <summary>One row of a table.</summary>
/// <param name="Line">One-based line where it starts.</param>
/// <param name="Fields">Its fields, blanks around them removed.</param>
/// <param name="Raw">The row as written.</param>
internal sealed record CsvRow(int Line, string[] Fields, string Raw)
{
    /// <summary>One-based column where a field starts; past the end of the row when it has no such field.</summary>
    public int ColumnOf(int field, char separator)
    {
        var quoted = false;
        for (var at = 0; at < Raw.Length; at++)
        {
            if (field == 0) return at + 1;
            if (Raw[at] == '"') quoted = !quoted;
            else if (Raw[at] == separator && !quoted) field--;
        }
        return field == 0 ? Raw.Length + 1 : Raw.TrimEnd().Length + 1;
    }

    public bool IsBlank => Fields.All(string.IsNullOrWhiteSpace);
}

/// <summary>Cuts separated text into rows. A line is always a row: an unclosed quote cannot swallow what follows it.</summary>
internal static class CsvRows
{
    public static IEnumerable<CsvRow> Read(string text, char separator)
    {
        var options = new CsvReaderOptions { Separator = separator, HasHeader = false, TrackLineNumbers = true, TrimWhitespace = true, AllowLineBreaksInQuotes = false };
        using var reader = CsvReader.FromText(text.TrimStart('\uFEFF'), options);
        while (reader.Read())
        {
            var fields = new string[reader.FieldCount];
            for (var i = 0; i < fields.Length; i++) fields[i] = reader.GetString(i);
            yield return new((int)reader.LineNumber, fields, System.Text.Encoding.UTF8.GetString(reader.RawRecord));
        }
    }
}
