using System.Text.Json.Nodes;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Model.Schema;

/// <summary>Makes the JSON Schema (draft 2020-12) of the design file from the model, so that editors complete and check it.</summary>
public static class DesignJsonSchema
{
    /// <summary>The schema document.</summary>
    /// <param name="catalogueNames">The names in a catalogue list, or null for a list that is not checked.</param>
    public static JsonObject Create(Func<string, IReadOnlyCollection<string>?> catalogueNames)
    {
        var definitions = new JsonObject();
        var root = Block(RecordShape.Root, definitions, catalogueNames);
        root["$schema"] = "https://json-schema.org/draft/2020-12/schema";
        root["title"] = "Mastwright design file";
        root["$defs"] = definitions;
        return root;
    }

    private static JsonObject Block(RecordShape shape, JsonObject definitions, Func<string, IReadOnlyCollection<string>?> catalogueNames)
    {
        var properties = new JsonObject();
        foreach (var field in shape.Fields)
        {
            properties[field.Field.Key] = Field(field, definitions, catalogueNames);
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["required"] = new JsonArray([.. shape.Fields.Where(f => f.Field.Required).Select(f => (JsonNode)f.Field.Key)]),
            ["properties"] = properties,
        };
    }

    private static JsonObject Field(FieldShape field, JsonObject definitions, Func<string, IReadOnlyCollection<string>?> catalogueNames)
    {
        var one = One(field, definitions, catalogueNames);
        var schema = field.IsList ? new JsonObject { ["type"] = "array", ["items"] = one } : one;
        if (field.IsList && field.Field.Required)
        {
            schema["minItems"] = 1;
        }

        schema["description"] = Description(field);
        return schema;
    }

    private static JsonObject One(FieldShape field, JsonObject definitions, Func<string, IReadOnlyCollection<string>?> catalogueNames)
    {
        switch (field.Form)
        {
            case FieldForm.Record:
                var name = field.ItemType.Name;
                if (!definitions.ContainsKey(name))
                {
                    definitions[name] = new JsonObject();
                    definitions[name] = Block(RecordShape.Of(field.ItemType), definitions, catalogueNames);
                }

                return new JsonObject { ["$ref"] = "#/$defs/" + name };
            case FieldForm.Word:
                return new JsonObject { ["enum"] = new JsonArray([.. field.Words.Select(w => (JsonNode)w.Word)]) };
            case FieldForm.YesNo:
                return new JsonObject { ["enum"] = new JsonArray("yes", "no", true, false) };
            case FieldForm.Quantity when field.Quantity?.Kind is null or QuantityKind.Count:
                return new JsonObject
                {
                    ["type"] = "integer",
                    ["minimum"] = field.Quantity?.Min ?? 1,
                    ["maximum"] = field.Quantity?.Max ?? int.MaxValue,
                };
            case FieldForm.Quantity when field.Quantity!.Kind == QuantityKind.Ratio:
                return new JsonObject { ["type"] = new JsonArray("number", "string") };
            case FieldForm.Quantity or FieldForm.Tension:
                // A bare 0 needs no unit; everything else is a text with one.
                return new JsonObject { ["type"] = new JsonArray("string", "number") };
            default:
                // YAML reads a name such as 54-3 as text and 12 as a number; both are names here.
                return field.CatalogueList is { } list && catalogueNames(list) is { } names
                    ? new JsonObject { ["enum"] = new JsonArray([.. names.Select(n => (JsonNode)n)]) }
                    : new JsonObject { ["type"] = new JsonArray("string", "number") };
        }
    }

    private static string Description(FieldShape field)
    {
        var text = field.Field.Meaning;
        if (field.Quantity is { } quantity)
        {
            text += $" {Capital(KindWords.Of(quantity.Kind))}, {FieldWords.AllowedRange(quantity)}; e.g. {KindWords.Example(quantity.Kind)}.";
        }

        if (field.Field.Default is { Length: > 0 } assumed)
        {
            text += $" Left out: {assumed}" + (field.Field.Why is { } why ? $" ({why})." : ".");
        }

        return text;
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
