using System.Reflection;
using System.Text.RegularExpressions;
using Mastwright.Catalog;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Spectre.Console;

namespace Mastwright.Report.Terminal;

/// <summary>Shows a list of catalogue parts: every property of the part with its unit, its source and its mark.</summary>
public static partial class PartsView
{
    // The unit suffix of a property name says what it measures: the same convention the whole house follows.
    private static readonly (string Suffix, QuantityKind Kind)[] Suffixes =
    [
        ("KgPerM3", QuantityKind.Density), ("KgPerM", QuantityKind.LinearMass), ("NPerM3", QuantityKind.UnitWeight), ("SPerM", QuantityKind.Conductivity),
        ("PaPerM", QuantityKind.UnitWeight), ("PerK", QuantityKind.ThermalExpansion), ("M2", QuantityKind.SectionArea), ("Nm", QuantityKind.Moment),
        ("Ohm", QuantityKind.Resistance), ("Hz", QuantityKind.Frequency), ("Rad", QuantityKind.Angle), ("Kg", QuantityKind.Mass), ("Pa", QuantityKind.Stress),
        ("M", QuantityKind.FineLength), ("N", QuantityKind.Force), ("F", QuantityKind.Capacitance), ("V", QuantityKind.PeakVoltage), ("A", QuantityKind.RmsCurrent),
    ];

    /// <summary>Writes the list.</summary>
    public static void Write(IAnsiConsole console, string list, IReadOnlyList<Part> parts, UnitSystem units)
    {
        foreach (var group in parts.GroupBy(p => p.GetType()))
        {
            var columns = group.Key.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                .Where(p => p.PropertyType == typeof(double) || p.PropertyType == typeof(double?) || p.PropertyType == typeof(int) || p.PropertyType == typeof(string) || p.PropertyType.IsEnum || p.PropertyType == typeof(bool))
                .ToList();
            var table = new Table { Border = TableBorder.Simple, Title = new TableTitle($"[bold]{Markup.Escape(list)}[/]") };
            table.AddColumn("name");
            columns.ForEach(c => table.AddColumn(Markup.Escape(Words(c.Name))));
            table.AddColumn("source");
            foreach (var part in group)
            {
                table.AddRow([Markup.Escape(part.Name), .. columns.Select(c => Markup.Escape(Show(c, part, units))), Markup.Escape(SourceOf(part))]);
            }

            console.Write(table);
            foreach (var note in group.Select(p => p.Info.Note).Where(n => n.Length > 0).Distinct())
            {
                console.MarkupLineInterpolated($"[grey]{note}[/]");
            }
        }
    }

    private static string SourceOf(Part part) => part.Info.Mark switch
    {
        RowMark.InventedSample => "invented sample",
        RowMark.Generic => "generic: use the maker's data",
        _ => part.Source.ToString(),
    };

    private static string Show(PropertyInfo property, Part part, UnitSystem units) => property.GetValue(part) switch
    {
        null => "",
        double value when KindOf(property.Name) is { } kind => QuantityFormat.Show(value, kind, units),
        double value => QuantityFormat.Digits(value),
        bool yes => yes ? "yes" : "no",
        var other => other.ToString()!,
    };

    private static QuantityKind? KindOf(string name) =>
        Suffixes.Where(s => name.EndsWith(s.Suffix, StringComparison.Ordinal)).Select(s => (QuantityKind?)s.Kind).FirstOrDefault();

    private static string Words(string name)
    {
        var suffix = Suffixes.Where(s => name.EndsWith(s.Suffix, StringComparison.Ordinal)).Select(s => s.Suffix).FirstOrDefault();
        var bare = suffix is null ? name : name[..^suffix.Length];
        return WordStart().Replace(bare, " $0").Trim().ToLowerInvariant();
    }

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex WordStart();
}
