using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using Mastwright.Model.Trails;

namespace Mastwright.Catalog;

/// <summary>
/// Reads an embedded data file. The heading of a column names its unit after the last underscore
/// (<c>breaking_kN</c>), so a table keeps the units it was published in and every factor stands once, here.
/// </summary>
internal static class DataFile
{
    private static readonly ImmutableDictionary<string, double> SiPerUnit = new Dictionary<string, double>
    {
        ["mm"] = 1e-3,
        ["m"] = 1,
        ["in"] = 0.0254,
        ["kg"] = 1,
        ["kg/m"] = 1,
        ["lb/kft"] = 0.45359237 / 304.8,
        ["kg/m3"] = 1,
        ["kN"] = 1e3,
        ["lbf"] = 4.4482216152605,
        ["ton"] = 2000 * 4.4482216152605,
        ["lbf-ft"] = 4.4482216152605 * 0.3048,
        ["MPa"] = 1e6,
        ["GPa"] = 1e9,
        ["kPa"] = 1e3,
        ["psf"] = 4.4482216152605 / (0.3048 * 0.3048),
        ["psf/ft"] = 4.4482216152605 / (0.3048 * 0.3048 * 0.3048),
        ["kN/m3"] = 1e3,
        ["1/K"] = 1,
        ["1/m"] = 1,
        ["deg"] = Math.PI / 180,
        ["V"] = 1,
        ["kV"] = 1e3,
        ["A"] = 1,
        ["pF"] = 1e-12,
        ["MHz"] = 1e6,
        ["ohm"] = 1,
        ["S/m"] = 1,
        ["MS/m"] = 1e6,
    }.ToImmutableDictionary();

    /// <summary>Reads every row of the named embedded file.</summary>
    public static ImmutableArray<T> Read<T>(string file, Func<Row, T> make)
    {
        using var stream = typeof(DataFile).Assembly.GetManifestResourceStream(file)
            ?? throw new InvalidOperationException($"The data file {file} is not embedded.");
        using var text = new StreamReader(stream);
        return Parse(file, text.ReadToEnd(), make);
    }

    /// <summary>Reads every row of a table in text.</summary>
    public static ImmutableArray<T> Parse<T>(string file, string text, Func<Row, T> make)
    {
        using var csv = CsvReader.FromText(text, new() { TrackLineNumbers = true });
        var rows = ImmutableArray.CreateBuilder<T>();
        while (csv.Read())
        {
            var fields = ImmutableDictionary.CreateBuilder<string, (string Text, double Si)>();
            foreach (var heading in csv.Headers)
            {
                var cut = heading.LastIndexOf('_');
                var name = cut < 0 ? heading : heading[..cut];
                var si = cut < 0 ? 1 : SiPerUnit.GetValueOrDefault(heading[(cut + 1)..], double.NaN);
                if (double.IsNaN(si))
                {
                    throw new FormatException($"{file}: the column '{heading}' ends in a unit that is not known.");
                }

                fields.Add(name, (csv.GetString(heading), si));
            }

            rows.Add(make(new Row(file, csv.LineNumber, fields.ToImmutable())));
        }

        return rows.ToImmutable();
    }

    /// <summary>One row of a data file.</summary>
    internal sealed class Row(string file, long line, ImmutableDictionary<string, (string Text, double Si)> fields)
    {
        /// <summary>The text of a column.</summary>
        public string Text(string column) => Field(column).Text;

        /// <summary>A yes or no column.</summary>
        public bool Flag(string column) => Text(column) switch
        {
            "yes" => true,
            "no" => false,
            _ => throw Fault(column, "must be yes or no"),
        };

        /// <summary>A whole number.</summary>
        public int Count(string column) => (int)Number(column);

        /// <summary>A number in SI units.</summary>
        public double Number(string column) => NumberOrNull(column) ?? throw Fault(column, "is empty");

        /// <summary>A number in SI units, or null when the cell is empty because the quantity does not apply.</summary>
        public double? NumberOrNull(string column)
        {
            var (text, si) = Field(column);
            return text.Length == 0 ? null
                : double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) ? value * si
                : throw Fault(column, "is not a number");
        }

        /// <summary>Name, source, standing and note, which every row must have.</summary>
        public RowInfo Info()
        {
            var mark = Text("mark") switch
            {
                "looked-up" => RowMark.LookedUp,
                "from-memory" => RowMark.FromMemory,
                "computed" => RowMark.Computed,
                "generic" => RowMark.Generic,
                "invented-sample" => RowMark.InventedSample,
                _ => throw Fault("mark", "is not a known mark"),
            };
            var title = Text("source");
            if (title.Length == 0 || Text("name").Length == 0)
            {
                throw Fault("source", "and name must not be empty");
            }

            var edition = Text("edition").Length > 0 ? Text("edition") : null;
            var source = mark switch
            {
                RowMark.LookedUp or RowMark.Computed => Source.Standard(title, edition),
                RowMark.FromMemory => Source.FromMemory(title, edition),
                RowMark.Generic => new Source("generic value, to be replaced by the maker's data", SourceKind.Assumed),
                _ => new Source("invented sample, to be replaced by the maker's data", SourceKind.Assumed),
            };
            return new RowInfo(Text("name"), source, mark, Text("note"));
        }

        private (string Text, double Si) Field(string column) =>
            fields.TryGetValue(column, out var field) ? field : throw Fault(column, "is missing");

        private FormatException Fault(string column, string what) => new($"{file}, line {line}: {column} {what}.");
    }
}
