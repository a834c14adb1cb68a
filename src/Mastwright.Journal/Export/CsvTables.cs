using System.Globalization;
using CsvHelper;

namespace Mastwright.Journal.Export;

/// <summary>Tables of text, written and read without loss.</summary>
internal static class CsvTables
{
    public static string Write(IReadOnlyList<string> heading, IEnumerable<IReadOnlyList<string>> rows)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        using (var writer = CsvWriter.Create(text, new CsvWriterOptions(), leaveOpen: true))
        {
            writer.WriteRecord([.. heading]);
            foreach (var row in rows) writer.WriteRecord([.. row]);
            writer.Flush();
        }
        return text.ToString();
    }

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

    public static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    public static string Number(double? value) => value is { } v ? Number(v) : "";
}
