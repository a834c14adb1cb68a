using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Mastwright.Workbench.Edits;

/// <summary>What a piece of the text is.</summary>
internal enum PieceKind
{
    Scalar,
    Block,
    List,
}

/// <summary>One key of a block with its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="Start">Where the key begins.</param>
/// <param name="Value">Its value.</param>
internal sealed record OutlineEntry(string Key, int Start, OutlinePiece Value);

/// <summary>A piece of the text with the exact characters it covers, so that one value can be changed and all else kept.</summary>
internal sealed class OutlinePiece
{
    public required PieceKind Kind { get; init; }

    /// <summary>Whether it is written in braces or brackets.</summary>
    public bool Flow { get; init; }

    /// <summary>First character.</summary>
    public int Start { get; init; }

    /// <summary>One past the last character.</summary>
    public int End { get; set; }

    /// <summary>Column of its keys or dashes, from 0.</summary>
    public int Column { get; init; }

    public List<OutlineEntry> Entries { get; } = [];

    public List<OutlinePiece> Items { get; } = [];

    public OutlinePiece? this[string key] => Entries.FirstOrDefault(e => e.Key == key)?.Value;
}

/// <summary>The text of a design file as pieces that know their characters.</summary>
internal static class TextOutline
{
    /// <summary>The outermost piece; null when the text cannot be read.</summary>
    public static OutlinePiece? Of(string text)
    {
        try
        {
            var parser = new Parser(new StringReader(text));
            while (parser.MoveNext())
            {
                if (parser.Current is NodeEvent)
                {
                    return Read(parser, text);
                }
            }
        }
        catch (YamlException)
        {
            // The reader of the design gives the message; here there is just nothing to change.
        }

        return null;
    }

    // Stands on the first event of a node, leaves on its last.
    private static OutlinePiece Read(Parser parser, string text)
    {
        switch (parser.Current)
        {
            case MappingStart map:
                return ReadBlock(parser, map, text);
            case SequenceStart list:
                return ReadList(parser, list, text);
            default:
                var e = parser.Current!;
                return new OutlinePiece { Kind = PieceKind.Scalar, Start = (int)e.Start.Index, End = (int)e.End.Index, Column = (int)e.Start.Column - 1 };
        }
    }

    private static OutlinePiece ReadBlock(Parser parser, MappingStart map, string text)
    {
        var flow = map.Style == YamlDotNet.Core.Events.MappingStyle.Flow;
        var piece = new OutlinePiece { Kind = PieceKind.Block, Flow = flow, Start = (int)map.Start.Index, End = (int)map.End.Index, Column = (int)map.Start.Column - 1 };
        while (parser.MoveNext() && parser.Current is not MappingEnd)
        {
            var key = (parser.Current as Scalar)?.Value ?? "";
            var start = (int)parser.Current!.Start.Index;
            parser.MoveNext();
            piece.Entries.Add(new OutlineEntry(key, start, Read(parser, text)));
        }

        var last = piece.Entries.Count == 0 ? piece.Start + (flow ? 1 : 0) : piece.Entries[^1].Value.End;
        piece.End = flow ? Closed(text, last, '}') : last;
        return piece;
    }

    private static OutlinePiece ReadList(Parser parser, SequenceStart list, string text)
    {
        var flow = list.Style == SequenceStyle.Flow;
        var piece = new OutlinePiece { Kind = PieceKind.List, Flow = flow, Start = (int)list.Start.Index, End = (int)list.End.Index, Column = (int)list.Start.Column - 1 };
        while (parser.MoveNext() && parser.Current is not SequenceEnd)
        {
            piece.Items.Add(Read(parser, text));
        }

        var last = piece.Items.Count == 0 ? piece.Start + (flow ? 1 : 0) : piece.Items[^1].End;
        piece.End = flow ? Closed(text, last, ']') : last;
        return piece;
    }

    // One past the closing brace or bracket behind the last thing inside; remarks may stand between.
    private static int Closed(string text, int from, char close)
    {
        for (var i = from; i < text.Length; i++)
        {
            if (text[i] == close)
            {
                return i + 1;
            }

            if (text[i] == '#')
            {
                i = text.IndexOf('\n', i) is >= 0 and var end ? end : text.Length;
            }
        }

        return text.Length;
    }
}
