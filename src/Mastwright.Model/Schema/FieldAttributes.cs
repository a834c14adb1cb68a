using Mastwright.Model.Trails;

namespace Mastwright.Model.Schema;

/// <summary>Describes one field of the design file: its key, its meaning and, when it may be left out, what is assumed and why.</summary>
/// <param name="key">The key in the file.</param>
/// <param name="meaning">What it means, one sentence for the person who writes the file.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FieldAttribute(string key, string meaning) : Attribute
{
    /// <summary>The key in the file.</summary>
    public string Key { get; } = key;

    /// <summary>What it means.</summary>
    public string Meaning { get; } = meaning;

    /// <summary>What is taken when the field is left out, written as in the file; null when nothing is.</summary>
    public string? Default { get; init; }

    /// <summary>On what ground the default is taken; shown beside it as an assumption. Null when the default is plainly "none".</summary>
    public string? Why { get; init; }

    /// <summary>Whether the file must have the field.</summary>
    public bool Required { get; init; }
}

/// <summary>Says that a number in the file is a quantity, and between which limits (in SI) it makes sense.</summary>
/// <param name="kind">What it measures.</param>
/// <param name="min">Smallest value allowed, SI.</param>
/// <param name="max">Largest value allowed, SI.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class QuantityAttribute(QuantityKind kind, double min, double max) : Attribute
{
    /// <summary>What it measures.</summary>
    public QuantityKind Kind { get; } = kind;

    /// <summary>Smallest value allowed, SI.</summary>
    public double Min { get; } = min;

    /// <summary>Largest value allowed, SI.</summary>
    public double Max { get; } = max;
}

/// <summary>Says that a text in the file names a row of a catalogue list.</summary>
/// <param name="list">The list, as <c>mastwright list</c> names it.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class CatalogueNameAttribute(string list) : Attribute
{
    /// <summary>The list.</summary>
    public string List { get; } = list;
}

/// <summary>The word for an enumeration value in the file and its meaning.</summary>
/// <param name="word">The word in the file.</param>
/// <param name="meaning">What it means.</param>
[AttributeUsage(AttributeTargets.Field)]
public sealed class WordAttribute(string word, string meaning) : Attribute
{
    /// <summary>The word in the file.</summary>
    public string Word { get; } = word;

    /// <summary>What it means.</summary>
    public string Meaning { get; } = meaning;
}
