using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Schema;

/// <summary>Says in words what a field takes.</summary>
public static class FieldWords
{
    /// <summary>A sentence on how the field is written.</summary>
    public static string HowToWrite(FieldShape field) => field.Form switch
    {
        FieldForm.Quantity => $"Write {KindWords.Of(field.Quantity?.Kind ?? QuantityKind.Count)}, e.g. “{field.Field.Key}: {KindWords.Example(field.Quantity?.Kind ?? QuantityKind.Count).Split(" or ")[0].Split(", ")[0]}”.",
        FieldForm.Word => "Write one of: " + string.Join(", ", field.Words.Select(w => w.Word)) + ".",
        FieldForm.YesNo => "Write yes or no.",
        FieldForm.Tension => "Write a share of breaking strength, e.g. 10 %, or a force, e.g. 3 kN or 665 lbf.",
        FieldForm.Text when field.CatalogueList is { } list => $"Write a name from `mastwright list {list}`.",
        FieldForm.Text => "Write a text.",
        _ => field.IsList ? "Write a list of blocks, each begun with “- ”." : "Write the fields of the block on the following lines, indented.",
    };

    /// <summary>The allowed range of a quantity in metric and US units, e.g. <c>"0.5 m to 200 m (1.64 ft to 656.2 ft)"</c>.</summary>
    public static string AllowedRange(QuantityAttribute quantity)
    {
        var metric = Range(quantity, UnitSystem.Metric);
        var us = Range(quantity, UnitSystem.Us);
        return metric == us ? metric : $"{metric} ({us})";
    }

    private static string Range(QuantityAttribute q, UnitSystem system) => q.Kind == QuantityKind.Count
        ? string.Create(CultureInfo.InvariantCulture, $"{q.Min:F0} to {q.Max:F0}")
        : $"{QuantityFormat.Show(q.Min, q.Kind, system)} to {QuantityFormat.Show(q.Max, q.Kind, system)}";
}
