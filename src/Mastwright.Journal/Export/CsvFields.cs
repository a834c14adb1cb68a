using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Journal.Export;

/// <summary>A fault in an export, on its way to becoming the finding it carries; never leaves this folder.</summary>
internal sealed class CsvProblem(Finding finding) : Exception(finding.Message)
{
    public Finding Finding { get; } = finding;
}

/// <summary>One line of a table, its fields by name.</summary>
internal sealed class CsvFields(string file, int line, string[] heading, string[] fields)
{
    public string this[string name] => fields[Array.IndexOf(heading, name)];

    public Place Place(string field) => new(file, line, 1, field);

    public double Number(string name) =>
        double.TryParse(this[name], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : throw Bad(name, this[name], "a number");

    public double? NumberOrNone(string name) => this[name].Length == 0 ? null : Number(name);

    public int Whole(string name) =>
        int.TryParse(this[name], NumberStyles.None, CultureInfo.InvariantCulture, out var value) ? value : throw Bad(name, this[name], "a whole number");

    public Guid Id(string name) => Guid.TryParseExact(this[name], "D", out var id) ? id : throw Bad(name, this[name], "a key such as 01234567-89ab-cdef-0123-456789abcdef");

    public OffsetDateTime Time(string name) =>
        EntryRows.Time.Parse(this[name]) is { Success: true } parsed ? parsed.Value : throw Bad(name, this[name], "a time such as 2026-05-01T14:30:00+02:00");

    public ItemState State(string name) =>
        Enum.TryParse<ItemState>(this[name], out var state) && Enum.IsDefined(state) && !char.IsDigit(this[name][0]) ? state : throw Bad(name, this[name], "Good, Watch, Bad or NotSeen");

    public bool YesNo(string name) => this[name] switch { "yes" => true, "no" => false, var other => throw Bad(name, other, "yes or no") };

    public CsvProblem Bad(string field, string value, string allowed) =>
        new(new("export-field", Severity.Error, $"The field {field} of {file} cannot be read.", Place(field), value, allowed, "Correct it, or take an unchanged export."));
}

/// <summary>Picking the one line that must be there.</summary>
internal static class CsvFieldsExtensions
{
    public static CsvFields Single(this List<CsvFields> rows, string allowed, string file) => rows.Count == 1
        ? rows[0]
        : throw new CsvProblem(new("export-lines", Severity.Error, $"{file} has {rows.Count} lines where one belongs.", new(file, 0, 0, ""), null, allowed, "Take all tables of one export."));
}
