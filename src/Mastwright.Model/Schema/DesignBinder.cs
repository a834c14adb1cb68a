using System.Collections;
using System.Collections.Immutable;
using System.Reflection;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Schema;

/// <summary>A value the program filled in because the file is silent.</summary>
/// <param name="Path">Dotted path of the field.</param>
/// <param name="Meaning">What the field means.</param>
/// <param name="Value">The value as it would be written.</param>
/// <param name="Why">On what ground it is taken.</param>
public sealed record Assumption(string Path, string Meaning, string Value, string Why)
{
    /// <summary>What is measured; null where the value is words.</summary>
    public QuantityKind? Kind { get; init; }

    /// <summary>The value in the reader's units; as it would be written where it is words or no unit differs.</summary>
    /// <param name="units">The reader's units.</param>
    public string Shown(UnitSystem units) =>
        Kind is { } kind && units == UnitSystem.Us && QuantityText.Read(Value, kind) is { Ok: true } read
        && QuantityFormat.Show(read.ValueSi, kind, units, 3) is var shown && shown != QuantityFormat.Show(read.ValueSi, kind, UnitSystem.Metric, 3) ? shown : Value;
}

/// <summary>
/// Fills the model's records from a parsed text by their <see cref="RecordShape"/>, gathering every finding
/// instead of stopping at the first, noting each default it takes and the place of each field.
/// </summary>
internal sealed class DesignBinder(Func<string, IReadOnlyCollection<string>?> catalogueNames)
{
    private readonly ScalarReader scalars = new(catalogueNames);

    public List<Finding> Findings => scalars.Findings;

    public List<Assumption> Assumptions { get; } = [];

    public Dictionary<string, Place> Places { get; } = [];

    /// <summary>Binds a block. Returns the record even when findings were made, so that more can be found.</summary>
    public object Bind(RecordShape shape, MapText map)
    {
        RefuseUnknownKeys(shape, map);
        var record = Activator.CreateInstance(shape.Type)!;
        foreach (var field in shape.Fields)
        {
            BindField(record, field, map);
        }

        return record;
    }

    private void BindField(object record, FieldShape field, MapText map)
    {
        var path = Inner(map.Place.Path, field.Field.Key);
        var node = map[field.Field.Key];
        if (node is null || (field.Form != FieldForm.Text && node is ScalarText { Text: "" or "~" or "null" }))
        {
            Missing(field, map, path);
            return;
        }

        var value = field.IsList ? BindList(field, node) : BindOne(field, node);
        if (value is not null)
        {
            field.Property.SetValue(record, value);
        }
    }

    private void Missing(FieldShape field, MapText map, string path)
    {
        if (field.Field.Required)
        {
            Findings.Add(new Finding("missing-field", Severity.Error, $"“{field.Field.Key}” is missing here: {Lower(field.Field.Meaning)}",
                map.Place with { Path = path }, WayOut: "Add the line. " + FieldWords.HowToWrite(field)));
        }
        else if (field.Field.Why is { } why)
        {
            Assumptions.Add(Assumed(path, field, why));
        }

        // A block left out altogether still takes the defaults of its fields, and they are shown too.
        if (!field.Field.Required && field is { Form: FieldForm.Record, IsList: false } && HasOwnDefaults(field))
        {
            foreach (var inner in RecordShape.Of(field.ItemType).Fields.Where(f => f.Field.Why is not null))
            {
                Assumptions.Add(Assumed(Inner(path, inner.Field.Key), inner, inner.Field.Why!));
            }

            foreach (var inner in RecordShape.Of(field.ItemType).Fields.Where(f => f.Field.Required))
            {
                Findings.Add(new Finding("missing-field", Severity.Error,
                    $"“{field.Field.Key}: {inner.Field.Key}” is missing here: {Lower(inner.Field.Meaning)}", map.Place with { Path = path },
                    WayOut: $"Add the block “{field.Field.Key}:” with this field. " + FieldWords.HowToWrite(inner)));
            }
        }
    }

    private static Assumption Assumed(string path, FieldShape field, string why) => new(path, field.Field.Meaning, field.Field.Default!, why) { Kind = field.Quantity?.Kind };

    // A nullable block (none by default) has no fields to assume; any other is built with them.
    private static bool HasOwnDefaults(FieldShape field) =>
        field.Property.GetValue(Activator.CreateInstance(field.Property.DeclaringType!)) is not null;

    private object? BindOne(FieldShape field, TextNode node)
    {
        Places[node.Place.Path] = node.Place;
        if (field.Form == FieldForm.Record)
        {
            if (node is MapText map)
            {
                return Bind(RecordShape.Of(field.ItemType), map);
            }

            Findings.Add(new Finding("block-expected", Severity.Error, $"“{field.Field.Key}” takes a block of fields.", node.Place,
                (node as ScalarText)?.Text, "fields: " + string.Join(", ", RecordShape.Of(field.ItemType).Fields.Select(f => f.Field.Key)),
                "Put the fields on the following lines, indented, one “key: value” a line."));
            return null;
        }

        if (node is ScalarText scalar)
        {
            return scalars.Read(field, scalar);
        }

        Findings.Add(new Finding("value-expected", Severity.Error, $"“{field.Field.Key}” takes a single value.", node.Place,
            WayOut: FieldWords.HowToWrite(field)));
        return null;
    }

    private object? BindList(FieldShape field, TextNode node)
    {
        Places[node.Place.Path] = node.Place;
        if (node is ScalarText { Text: "none" } && !field.Field.Required)
        {
            return null;
        }

        if (node is not ListText list)
        {
            Findings.Add(new Finding("list-expected", Severity.Error, $"“{field.Field.Key}” takes a list.", node.Place, (node as ScalarText)?.Text,
                WayOut: field.Form == FieldForm.Record ? "Begin each item on its own line with “- ”." : "Write the items in square brackets, e.g. [a, b]."));
            return null;
        }

        if (list.Items.IsEmpty && field.Field.Required)
        {
            Findings.Add(new Finding("empty-list", Severity.Error, $"“{field.Field.Key}” must have at least one item.", node.Place,
                WayOut: FieldWords.HowToWrite(field)));
        }

        var items = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(field.ItemType))!;
        foreach (var item in list.Items.Select(n => BindOne(field, n)).Where(v => v is not null))
        {
            items.Add(item);
        }

        return ToImmutable.MakeGenericMethod(field.ItemType).Invoke(null, [items]);
    }

    private static readonly MethodInfo ToImmutable = typeof(ImmutableArray).GetMethods()
        .Single(m => m.Name == nameof(ImmutableArray.CreateRange) && m.GetParameters() is [{ ParameterType.Name: "IEnumerable`1" }]);

    private void RefuseUnknownKeys(RecordShape shape, MapText map)
    {
        var known = shape.Fields.Select(f => f.Field.Key).ToList();
        foreach (var entry in map.Entries.Where(e => !known.Contains(e.Key)))
        {
            var near = NearMiss.Of(entry.Key, known.Where(k => map[k] is null));
            Findings.Add(new Finding("unknown-key", Severity.Error, $"“{entry.Key}” is not a field here." + (near is null ? "" : $" Did you mean “{near}”?"),
                entry.KeyPlace, entry.Key, "one of: " + string.Join(", ", known),
                near is null ? "Remove it, or move it to the block it belongs to." : $"Write “{near}:”."));
        }
    }

    private static string Inner(string path, string key) => path.Length == 0 ? key : $"{path}.{key}";

    private static string Lower(string sentence) => char.ToLowerInvariant(sentence[0]) + sentence[1..];
}
