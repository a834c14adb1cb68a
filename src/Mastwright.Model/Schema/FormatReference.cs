using System.Globalization;
using System.Text;
using Mastwright.Model.Units;

namespace Mastwright.Model.Schema;

/// <summary>Writes the reference of the design file, block by block, from the same description that reads it.</summary>
public static class FormatReference
{
    /// <summary>The reference as Markdown.</summary>
    public static string Markdown()
    {
        var text = new StringBuilder();
        var done = new HashSet<Type>();
        Block(text, RecordShape.Root, "The station", done);
        return text.ToString();
    }

    private static void Block(StringBuilder text, RecordShape shape, string title, HashSet<Type> done)
    {
        if (!done.Add(shape.Type))
        {
            return;
        }

        text.Append(CultureInfo.InvariantCulture, $"## {title}\n\n| field | meaning | written as | left out |\n| --- | --- | --- | --- |\n");
        foreach (var field in shape.Fields)
        {
            text.Append(CultureInfo.InvariantCulture, $"| `{field.Field.Key}` | {Cell(field.Field.Meaning)} | {Cell(Written(field))} | {Cell(LeftOut(field))} |\n");
        }

        text.Append('\n');
        foreach (var field in shape.Fields.Where(f => f.Form == FieldForm.Word))
        {
            text.Append(CultureInfo.InvariantCulture, $"Words for `{field.Field.Key}`: {string.Join("; ", field.Words.Select(w => $"`{w.Word}` {w.Meaning}"))}.\n\n");
        }

        foreach (var field in shape.Fields.Where(f => f.Form == FieldForm.Record))
        {
            Block(text, RecordShape.Of(field.ItemType), $"`{field.Field.Key}`" + (field.IsList ? ", each item" : ""), done);
        }
    }

    private static string Written(FieldShape field)
    {
        var one = field.Form switch
        {
            FieldForm.Quantity when field.Quantity is { } q => $"{KindWords.Of(q.Kind)}, {FieldWords.AllowedRange(q)}",
            FieldForm.Quantity => "a whole number",
            FieldForm.Word => string.Join(", ", field.Words.Select(w => $"`{w.Word}`")),
            FieldForm.YesNo => "`yes` or `no`",
            FieldForm.Tension => "a share of breaking strength (`10 %`) or a force (`3 kN`)",
            FieldForm.Record => "a block, see below",
            _ when field.CatalogueList is { } list => $"a name from `mastwright list {list}`",
            _ => "text",
        };
        return field.IsList ? $"list: {one}" : one;
    }

    private static string LeftOut(FieldShape field) =>
        field.Field.Required ? "must be there" : field.Field.Default is { Length: > 0 } d ? d + (field.Field.Why is { } why ? $" ({why})" : "") : "empty";

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
