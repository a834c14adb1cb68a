using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Text;

/// <summary>A piece of a parsed text that remembers where it stood.</summary>
/// <param name="Place">Where the piece begins.</param>
public abstract record TextNode(Place Place);

/// <summary>A single written value.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Text">The value as written, quotes removed.</param>
public sealed record ScalarText(Place Place, string Text) : TextNode(Place);

/// <summary>A list of pieces.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Items">The pieces, in order.</param>
public sealed record ListText(Place Place, ImmutableArray<TextNode> Items) : TextNode(Place);

/// <summary>One key with its value.</summary>
/// <param name="KeyPlace">Where the key stands.</param>
/// <param name="Key">The key as written.</param>
/// <param name="Value">What it holds.</param>
public sealed record TextEntry(Place KeyPlace, string Key, TextNode Value);

/// <summary>Keys with values, in the order written.</summary>
/// <param name="Place">Where it begins.</param>
/// <param name="Entries">The entries; no key stands twice.</param>
public sealed record MapText(Place Place, ImmutableArray<TextEntry> Entries) : TextNode(Place)
{
    /// <summary>The value under <paramref name="key"/>, or null.</summary>
    public TextNode? this[string key] => Entries.FirstOrDefault(e => e.Key == key)?.Value;
}
