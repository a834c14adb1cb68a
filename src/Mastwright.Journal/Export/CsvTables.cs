using CsvHelper;
using Mastwright.Model.Text;

namespace Mastwright.Journal.Export;

/// <summary>Tables of text, written and read without loss.</summary>
internal static class CsvTables
{
    /// <summary>A table as it is: what an export says is read back word for word.</summary>
    public static string Write(IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<string>> rows) => CsvText.Write(rows.Prepend(heading));

    public static IEnumerable<(int Line, string[] Fields)> Read(string text)
    {
        using var reader = CsvReader.FromText(text, new CsvReaderOptions { Separator = ',', HasHeader = false, TrackLineNumbers = true });
        while (reader.Read())
        {
            var fields = new string[reader.FieldCount];
            for (var i = 0; i < fields.Length; i++) fields[i] = reader.GetString(i);
            yield return ((int)reader.LineNumber, fields);
        }
    }

    public static string Number(double value) => CsvText.Number(value);

    public static string Number(double? value) => value is { } v ? Number(v) : "";
}
