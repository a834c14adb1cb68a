using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Reflection;
using Mastwright.Model.Design;

namespace Mastwright.Model.Schema;

/// <summary>What the value of a field looks like in the file.</summary>
public enum FieldForm
{
    /// <summary>A quantity or number.</summary>
    Quantity,

    /// <summary>Free text or a catalogue name.</summary>
    Text,

    /// <summary>Yes or no.</summary>
    YesNo,

    /// <summary>One of a few words.</summary>
    Word,

    /// <summary>A share of breaking strength or a force.</summary>
    Tension,

    /// <summary>A block of fields.</summary>
    Record,
}

/// <summary>One field of a block, as reflected from the model.</summary>
/// <param name="Property">The property it fills.</param>
/// <param name="Field">Key, meaning, default.</param>
/// <param name="Form">How it is written.</param>
/// <param name="IsList">Whether it is a list of such values.</param>
/// <param name="ItemType">The type of the value, or of one item.</param>
public sealed record FieldShape(PropertyInfo Property, FieldAttribute Field, FieldForm Form, bool IsList, Type ItemType)
{
    /// <summary>Kind and limits when it is a quantity.</summary>
    public QuantityAttribute? Quantity { get; } = Property.GetCustomAttribute<QuantityAttribute>();

    /// <summary>The catalogue list when it is a catalogue name.</summary>
    public string? CatalogueList { get; } = Property.GetCustomAttribute<CatalogueNameAttribute>()?.List;

    /// <summary>The words allowed, with their meanings and values, when it is a word.</summary>
    public ImmutableArray<(string Word, string Meaning, object Value)> Words { get; } = ItemType.IsEnum ? WordsOf(ItemType) : [];

    private static ImmutableArray<(string, string, object)> WordsOf(Type type) =>
    [
        .. type.GetFields(BindingFlags.Public | BindingFlags.Static).Select(f =>
            (f.GetCustomAttribute<WordAttribute>()!.Word, f.GetCustomAttribute<WordAttribute>()!.Meaning, f.GetValue(null)!)),
    ];
}

/// <summary>
/// The fields of one block of the design file. The single description from which reading, defaults, messages,
/// the JSON Schema and the format's documentation are made.
/// </summary>
/// <param name="Type">The record the block becomes.</param>
/// <param name="Fields">Its fields, in the order of the model.</param>
public sealed record RecordShape(Type Type, ImmutableArray<FieldShape> Fields)
{
    private static readonly ConcurrentDictionary<Type, RecordShape> Known = new();

    /// <summary>The shape of the whole design file.</summary>
    public static RecordShape Root => Of(typeof(Station));

    /// <summary>The shape of a record of the model.</summary>
    public static RecordShape Of(Type type) => Known.GetOrAdd(type, Reflect);

    private static RecordShape Reflect(Type type) => new(type,
    [
        .. type.GetProperties()
            .Select(p => (Property: p, Field: p.GetCustomAttribute<FieldAttribute>()))
            .Where(p => p.Field is not null)
            .OrderBy(p => p.Property.MetadataToken)
            .Select(p => ShapeOf(p.Property, p.Field!)),
    ]);

    private static FieldShape ShapeOf(PropertyInfo property, FieldAttribute field)
    {
        var type = property.PropertyType;
        var isList = type.IsGenericType && type.GetGenericTypeDefinition() == typeof(ImmutableArray<>);
        var item = isList ? type.GetGenericArguments()[0] : Nullable.GetUnderlyingType(type) ?? type;
        var form =
            item == typeof(double) || item == typeof(int) ? FieldForm.Quantity
            : item == typeof(string) ? FieldForm.Text
            : item == typeof(bool) ? FieldForm.YesNo
            : item == typeof(InitialTension) ? FieldForm.Tension
            : item.IsEnum ? FieldForm.Word
            : FieldForm.Record;
        return new FieldShape(property, field, form, isList, item);
    }
}
