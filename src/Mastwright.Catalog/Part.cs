using Mastwright.Model.Trails;

namespace Mastwright.Catalog;

/// <summary>How firmly a catalogue row stands.</summary>
public enum RowMark
{
    /// <summary>Read in the named source, or in a faithful reproduction of it.</summary>
    LookedUp,

    /// <summary>Recalled from the named source: check before relying on the last digit.</summary>
    FromMemory,

    /// <summary>Computed from the formula the note gives.</summary>
    Computed,

    /// <summary>A careful generic value for a kind of part; the data of the maker must take its place.</summary>
    Generic,

    /// <summary>An invented sample that shows what a row needs; the data of the real part must take its place.</summary>
    InventedSample,
}

/// <summary>What every catalogue row carries besides its numbers.</summary>
/// <param name="Name">The name the design file uses; case, spaces, hyphens and underscores do not matter in look-up.</param>
/// <param name="Source">Where the numbers come from.</param>
/// <param name="Mark">How firmly they stand.</param>
/// <param name="Note">A remark for the reader; may be empty.</param>
public sealed record RowInfo(string Name, Source Source, RowMark Mark, string Note)
{
    /// <summary>Whether the maker's data must replace this row before anything is built from it.</summary>
    public bool NeedsMakerData => Mark is RowMark.Generic or RowMark.InventedSample;
}

/// <summary>A named thing with numbers: a part or a material.</summary>
/// <param name="Info">Name, source, standing and note of the row.</param>
public abstract record Part(RowInfo Info)
{
    /// <summary>The name the design file uses.</summary>
    public string Name => Info.Name;

    /// <summary>Where the numbers come from.</summary>
    public Source Source => Info.Source;

    /// <summary>A number of this part as the leaf of a trail, with the row's source and its standing in the note.</summary>
    /// <param name="quantity">The quantity in trade words; the part's name is put in front.</param>
    /// <param name="symbol">Symbol in the formula it will go into.</param>
    /// <param name="value">The number in SI units.</param>
    /// <param name="kind">What it measures.</param>
    public Trail Given(string quantity, string symbol, double value, QuantityKind kind) =>
        Trail.Given($"{Name}: {quantity}", symbol, value, kind, Source, Info.Note.Length > 0 ? Info.Note : null);
}
