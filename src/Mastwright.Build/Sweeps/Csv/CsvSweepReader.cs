using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using System.Text.RegularExpressions;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps.Csv;

/// <summary>What the reader should know besides the text.</summary>
/// <param name="FileName">Name shown in messages.</param>
/// <param name="FrequencyUnitHz">Hertz in one unit of the frequency column, when its heading does not say.</param>
/// <param name="ReferenceOhm">Port impedance of the analyser, when the text does not say.</param>
public sealed record CsvSweepOptions(string FileName, double? FrequencyUnitHz = null, double? ReferenceOhm = null);

/// <summary>A sweep read from a table.</summary>
/// <param name="Impedance">The impedances; null when the table gives no phase.</param>
/// <param name="Swr">The standing-wave ratio, always there.</param>
public sealed record CsvSweep(ImpedanceSweep? Impedance, SwrSweep Swr);

/// <summary>
/// Reads a sweep from comma, semicolon or tab separated text. The heading row is found by its words: a frequency with
/// R and X, or |Z| and phase, or S11 in any form, or the standing-wave ratio or return loss alone.
/// </summary>
public static partial class CsvSweepReader
{
    private const double DefaultReferenceOhm = 50;
    private const int HeadingSearchLines = 40;
    private const int MostRowFindings = 20;

    /// <summary>Reads a text.</summary>
    public static Reading<CsvSweep> Read(string text, CsvSweepOptions options)
    {
        var findings = new List<Finding>();
        var table = FindHeading(text, options, findings);
        if (table is null) return new(null, [.. findings]);
        var rows = ReadRows(text, table, options, findings);
        var sweep = Build(rows, table, options, findings);
        return new(findings.Any(f => f.Severity == Severity.Error) ? null : sweep, [.. findings]);
    }

    private sealed record Table(int HeadingLine, char Delimiter, ImmutableArray<CsvColumn> Columns, CsvSweepShape Shape, double FrequencyUnit, double ReferenceOhm)
    {
        public int FrequencyColumn { get; } = Columns.ToList().FindIndex(c => c.Role == ColumnRole.Frequency);
    }

    private readonly record struct Row(int Line, double FrequencyHz, double A, double B);

    private static Table? FindHeading(string text, CsvSweepOptions options, List<Finding> findings)
    {
        double? reference = options.ReferenceOhm;
        var number = 0;
        (int Line, string Text)? onlyFrequency = null;
        foreach (var line in text.TrimStart('\uFEFF').EnumerateLines())
        {
            if (++number > HeadingSearchLines) break;
            var content = line.ToString();
            foreach (var delimiter in (char[])[';', '\t', ','])
            {
                var columns = content.TrimStart('#', '!', ' ').Split(delimiter).Select(h => CsvColumn.Parse(h.Trim().Trim('"'))).ToImmutableArray();
                if (columns.Length < 2 || !columns.Any(c => c.Role == ColumnRole.Frequency)) continue;
                var shape = CsvSweepShape.Of(columns);
                if (shape is null)
                {
                    onlyFrequency ??= (number, content);
                    continue;
                }
                var frequency = columns.First(c => c.Role == ColumnRole.Frequency);
                var unit = frequency.Unit ?? options.FrequencyUnitHz;
                if (unit is null)
                {
                    findings.Add(new("unit-missing", Severity.Error, $"The heading \"{frequency.Heading.Trim()}\" does not say in which unit the frequency is.", new(options.FileName, number, content.IndexOf(frequency.Heading, StringComparison.Ordinal) + 1, frequency.Heading.Trim()), frequency.Heading.Trim(), "Hz, kHz, MHz or GHz", "Write the unit into the heading, for example Frequency (MHz), or name it when importing."));
                    return null;
                }
                if (shape.NeedsReference && reference is null)
                    findings.Add(new("reference-assumed", Severity.Note, "The table does not name the analyser's port impedance; 50 Ω was taken.", new(options.FileName, number, 1, ""), null, null, "Name it when importing if the analyser is not a 50 Ω one."));
                if (shape.UnsignedReactance)
                    findings.Add(new("reactance-unsigned", Severity.Warning, "The table gives the size of the reactance without its sign; the phase is unknown, so only the standing-wave ratio is used.", new(options.FileName, number, 1, ""), null, null, "Export R and signed X, or S11, if the analyser can."));
                return new(number, delimiter, columns, shape, unit.Value, reference ?? DefaultReferenceOhm);
            }
            if (ReferencePattern().Match(content) is { Success: true } m && double.TryParse(m.Groups[1].Value, CultureInfo.InvariantCulture, out var r) && r > 0)
                reference = CheckReference(r, number, options, findings);
        }
        findings.Add(onlyFrequency is { } found
            ? new("columns-missing", Severity.Error, "The heading row has a frequency but nothing to go with it.", new(options.FileName, found.Line, 1, ""), found.Text.Trim(), "R and X; or |Z| and phase; or S11 real and imaginary, magnitude or dB with phase; or SWR", "Export one of these pairs.")
            : new("heading-missing", Severity.Error, $"None of the first {HeadingSearchLines} lines is a heading row with a frequency column.", new(options.FileName, 1, 1, ""), null, "a row such as Frequency (MHz), R, X", "Put such a row above the numbers."));
        return null;
    }

    private static double CheckReference(double written, int line, CsvSweepOptions options, List<Finding> findings)
    {
        if (options.ReferenceOhm is { } expected && Math.Abs(expected - written) > 1e-6 * expected)
            findings.Add(new("reference-differs", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"The file is referred to {written} Ω, the analyser is entered with {expected} Ω; the file is followed."), new(options.FileName, line, 1, ""), written.ToString(CultureInfo.InvariantCulture), null, "Correct whichever is wrong."));
        return written;
    }

    private static List<Row> ReadRows(string text, Table table, CsvSweepOptions options, List<Finding> findings)
    {
        var rows = new List<Row>();
        var bad = new List<Finding>();
        var open = text.Length > 0 && text[^1] is not ('\n' or '\r');
        var lastLine = 0;
        foreach (var row in CsvRows.Read(text, table.Delimiter))
        {
            lastLine = row.Line;
            if (row.Line <= table.HeadingLine || row.IsBlank || row.Fields[0].StartsWith('#') || row.Fields[0].StartsWith('!')) continue;
            if (Problem(row, table, options) is { } problem) bad.Add(problem);
            else rows.Add(Values(row, table));
        }
        var good = rows.Count;
        if (open && bad.Count > 0 && bad[^1].Place!.Line == lastLine)
            bad[^1] = bad[^1] with { Code = "half-written", Message = "The file stops in the middle of this line; everything before it is used.", WayOut = "Compare the last frequency with what was swept; export again if the end is missing." };
        findings.AddRange(bad.Take(MostRowFindings));
        if (bad.Count > MostRowFindings)
            findings.Add(new("rows-bad", Severity.Warning, $"{bad.Count - MostRowFindings} more rows could not be read.", new(options.FileName, table.HeadingLine, 1, ""), null, null, "Export the sweep again."));
        if (good == 0 || bad.Count > good)
            findings.Add(new("rows-unusable", Severity.Error, $"Of {good + bad.Count} rows only {good} could be read.", new(options.FileName, table.HeadingLine, 1, ""), null, null, "Export the sweep again."));
        return rows;
    }

    private static Finding? Problem(CsvRow row, Table table, CsvSweepOptions options)
    {
        var record = row.Fields;
        foreach (var column in (int[])[table.FrequencyColumn, table.Shape.ColumnA, table.Shape.ColumnB])
        {
            if (column < 0) continue;
            var heading = table.Columns[column].Heading.Trim();
            var place = new Place(options.FileName, row.Line, row.ColumnOf(column, table.Delimiter), heading);
            if (column >= record.Length || record[column].Length == 0)
                return new("value-missing", Severity.Warning, $"The row has no value for {heading}; it is left out.", place, null, "a number", "Fill it in or delete the row.");
            if (!Number(record[column], table.Delimiter, out var value))
                return new("number-bad", Severity.Warning, $"\"{record[column]}\" is not a number; the row is left out.", place, record[column], "a finite number such as -12.5", "Correct it or delete the row.");
            if (column == table.FrequencyColumn && value < 0)
                return new("frequency-negative", Severity.Warning, "The frequency is below zero; the row is left out.", place, record[column], "0 and above", "Correct it or delete the row.");
            if (table.Columns[column].Role == ColumnRole.Swr && value < 1)
                return new("swr-below-one", Severity.Warning, "A standing-wave ratio cannot be below 1; the row is left out.", place, record[column], "1 and above", "Check that the column is the standing-wave ratio.");
        }
        return null;
    }

    private static Row Values(CsvRow row, Table table)
    {
        return new(row.Line, At(table.FrequencyColumn) * table.FrequencyUnit, At(table.Shape.ColumnA) * Unit(table.Shape.ColumnA), table.Shape.ColumnB < 0 ? 0 : At(table.Shape.ColumnB) * Unit(table.Shape.ColumnB));
        double At(int column) => Number(row.Fields[column], table.Delimiter, out var v) ? v : throw new InvalidOperationException("The row was checked before.");
        double Unit(int column) => table.Columns[column].Unit ?? 1;
    }

    private static bool Number(string text, char delimiter, out double value)
    {
        var plain = delimiter != ',' && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text;
        return double.TryParse(plain, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);
    }

    private static CsvSweep? Build(List<Row> rows, Table table, CsvSweepOptions options, List<Finding> findings)
    {
        if (rows.Count == 0) return null;
        var sorted = rows.OrderBy(r => r.FrequencyHz).ToList();
        if (!sorted.SequenceEqual(rows))
        {
            var fall = rows.Zip(rows.Skip(1)).First(p => p.Second.FrequencyHz < p.First.FrequencyHz).Second;
            findings.Add(new("frequency-unsorted", Severity.Warning, "The frequencies do not rise; they were put in order.", new(options.FileName, fall.Line, 1, "frequency"), null, null, "Check that the file is one sweep and not several joined."));
        }
        var unique = sorted.DistinctBy(r => r.FrequencyHz).ToList();
        if (unique.Count < sorted.Count)
            findings.Add(new("frequency-repeated", Severity.Warning, $"{sorted.Count - unique.Count} frequencies come twice; their first values are used.", new(options.FileName, table.HeadingLine, 1, "frequency"), null, null, "Keep one sweep in the file."));

        var reference = table.ReferenceOhm;
        var reflections = unique.Select(r => (r.FrequencyHz, Size: table.Shape.ReflectionSize(r.A, r.B, reference))).ToList();
        var worst = reflections.MaxBy(r => r.Size);
        if (worst.Size > 1.02)
            findings.Add(new("reflection-above-one", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"At {worst.FrequencyHz / 1e6:0.####} MHz more comes back than was sent (magnitude {worst.Size:0.###}), which an antenna cannot do."), new(options.FileName, 0, 0, ""), null, "a magnitude of at most 1", "Calibrate again at the plane measured from."));
        var swr = new SwrSweep(options.FileName, reference, [.. reflections.Select(r => (r.FrequencyHz, StandingWave.Ratio(r.Size)))]);
        if (!table.Shape.HasPhase) return new(null, swr);
        var points = unique.Select(r => new SweepPoint(r.FrequencyHz, table.Shape.Impedance(r.A, r.B, reference))).Where(p => Complex.IsFinite(p.ImpedanceOhm)).ToImmutableArray();
        if (points.Length < unique.Count)
            findings.Add(new("impedance-infinite", Severity.Warning, $"{unique.Count - points.Length} points are exact open circuits; they are left out.", new(options.FileName, 0, 0, ""), null, null, "Check the plug at the measuring plane."));
        return new(points.Length == 0 ? null : new(options.FileName, reference, points), swr);
    }

    [GeneratedRegex(@"\b(?:z0|r0|zref|reference|port impedance|system impedance)\b[^0-9]*([0-9]+(?:\.[0-9]+)?)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex ReferencePattern();
}
