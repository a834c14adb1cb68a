using System.Text.RegularExpressions;

namespace Mastwright.Workbench.Edits;

/// <summary>
/// Changes one value in the text of a design file and keeps everything else to the letter: comments, order, spacing.
/// Every method gives the new text, or null when the place cannot be found or the text cannot be read.
/// </summary>
public static partial class TextEdits
{
    /// <summary>Writes a value at a dotted path, e.g. <c>masts[0].guys[1].height</c>; adds the field, and the blocks around it, when the file has none.</summary>
    public static string? Set(string text, string path, string value)
    {
        if (TextOutline.Of(text) is not { } piece)
        {
            return null;
        }

        var steps = StepsOf(path);
        var flow = false;
        for (var i = 0; i < steps.Count; i++)
        {
            flow |= piece.Flow;
            if (steps[i] is int index)
            {
                if (piece.Kind != PieceKind.List || index >= piece.Items.Count)
                {
                    return null;
                }

                piece = piece.Items[index];
                continue;
            }

            var key = (string)steps[i];
            if (piece.Kind != PieceKind.Block)
            {
                return null;
            }

            if (piece[key] is { } inner)
            {
                piece = inner;
                continue;
            }

            var rest = steps.Skip(i + 1).ToList();
            return rest.Any(s => s is int) ? null : AddKey(text, piece, key, rest.Cast<string>().Reverse().Aggregate(Written(value, flow || rest.Count > 0), (v, k) => $"{{ {k}: {v} }}"));
        }

        // A whole block is not written anew; writing what stands there already changes nothing.
        if (piece.Kind == PieceKind.Block)
        {
            return text[piece.Start..piece.End] == value ? text : null;
        }

        return text[..piece.Start] + (piece.Kind == PieceKind.List || text[piece.Start..piece.End] == value ? value : Written(value, flow)) + text[piece.End..];
    }

    /// <summary>Takes a field out, so that its default holds.</summary>
    public static string? Remove(string text, string path)
    {
        var steps = StepsOf(path);
        if (steps.Count == 0 || Parent(text, steps) is not { } parent)
        {
            return null;
        }

        if (steps[^1] is int index)
        {
            return parent.Kind == PieceKind.List && index < parent.Items.Count && parent.Items.Count > 1
                ? RemovePart(text, parent, index, [.. parent.Items.Select(p => (p.Start, p.End))], dash: true) : null;
        }

        var at = parent.Entries.FindIndex(e => e.Key == (string)steps[^1]);
        return at < 0 || parent.Entries.Count < 2 ? null : RemovePart(text, parent, at, [.. parent.Entries.Select(e => (e.Start, e.Value.End))], dash: false);
    }

    /// <summary>Adds an item to a list, written in braces.</summary>
    public static string? Add(string text, string listPath, string item)
    {
        if (TextOutline.Of(text) is not { } root || Walk(root, StepsOf(listPath)) is not { Kind: PieceKind.List } list)
        {
            return null;
        }

        if (list.Flow)
        {
            var close = text.LastIndexOf(']', list.End - 1);
            return text[..close].TrimEnd() + (list.Items.Count > 0 ? ", " : "") + item + text[close..];
        }

        var end = LineEnd(text, list.End);
        return text[..end] + "\n" + new string(' ', list.Column) + "- " + item + text[end..];
    }

    /// <summary>Writes a whole list anew, one item after the other; remarks inside the old list go with it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="listPath">Path of the list.</param>
    /// <param name="lines">The lines of the new list, the first item's dash in the first column.</param>
    public static string? SetList(string text, string listPath, IReadOnlyList<string> lines)
    {
        if (TextOutline.Of(text) is not { } root || Walk(root, StepsOf(listPath)) is not { Kind: PieceKind.List, Flow: false } list)
        {
            return null;
        }

        var indent = new string(' ', list.Column);
        return text[..list.Start] + string.Join("\n" + indent, lines) + text[list.End..];
    }

    /// <summary>The value at a path as it is written; null when the file has none.</summary>
    public static string? WrittenAt(string text, string path) =>
        TextOutline.Of(text) is { } root && Walk(root, StepsOf(path)) is { } piece ? text[piece.Start..piece.End] : null;

    private static string AddKey(string text, OutlinePiece block, string key, string written)
    {
        if (block.Flow)
        {
            var close = text.LastIndexOf('}', block.End - 1);
            return text[..close].TrimEnd() + (block.Entries.Count > 0 ? ", " : " ") + $"{key}: {written} " + text[close..];
        }

        // After the last value, past the comment that may stand behind it on its line.
        var end = LineEnd(text, block.End);
        var column = block.Entries.Count > 0 ? ColumnOf(text, block.Entries[0].Start) : block.Column;
        return text[..end] + "\n" + new string(' ', column) + $"{key}: {written}" + text[end..];
    }

    private static string RemovePart(string text, OutlinePiece parent, int index, List<(int Start, int End)> parts, bool dash)
    {
        var (start, end) = parts[index];
        if (parent.Flow)
        {
            return index + 1 < parts.Count ? text[..start] + text[parts[index + 1].Start..] : text[..parts[index - 1].End] + text[end..];
        }

        // The first key of an item shares its line with the dash: what follows moves up to it.
        if (!dash && index == 0)
        {
            return text[..start] + text[parts[1].Start..];
        }

        var from = text.LastIndexOf('\n', Math.Max(0, start - 1)) + 1;
        var to = LineEnd(text, end);
        return text[..from] + (to < text.Length ? text[(to + 1)..] : "");
    }

    private static OutlinePiece? Parent(string text, List<object> steps) =>
        TextOutline.Of(text) is { } root ? Walk(root, steps[..^1]) : null;

    private static OutlinePiece? Walk(OutlinePiece piece, List<object> steps)
    {
        foreach (var step in steps)
        {
            var next = step is int index ? (piece.Kind == PieceKind.List && index < piece.Items.Count ? piece.Items[index] : null) : piece[(string)step];
            if (next is null)
            {
                return null;
            }

            piece = next;
        }

        return piece;
    }

    private static int LineEnd(string text, int from)
    {
        var end = text.IndexOf('\n', from);
        return end < 0 ? text.Length : end > 0 && text[end - 1] == '\r' ? end - 1 : end;
    }

    private static int ColumnOf(string text, int at) => at - (text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1);

    private static string Written(string value, bool flow) =>
        (flow ? PlainInBraces() : PlainInBlock()).IsMatch(value) || value.StartsWith('{') || value.StartsWith('[') ? value : "'" + value.Replace("'", "''") + "'";

    private static List<object> StepsOf(string path)
    {
        var steps = new List<object>();
        foreach (Match m in Step().Matches(path))
        {
            steps.Add(m.Groups["index"].Success ? int.Parse(m.Groups["index"].Value, System.Globalization.CultureInfo.InvariantCulture) : m.Groups["key"].Value);
        }

        return steps;
    }

    [GeneratedRegex(@"\[(?<index>\d{1,6})\]|(?<key>[^.\[\]]+)")]
    private static partial Regex Step();

    // Text that needs no quotes where the value has its line to itself.
    [GeneratedRegex(@"^-?[\p{L}\p{N}]([^:#\r\n]|:(?=\S)|(?<=\S)#)*(?<!\s)$")]
    private static partial Regex PlainInBlock();

    // Text that needs no quotes between braces or brackets.
    [GeneratedRegex(@"^-?[\p{L}\p{N}]([^:#{}\[\],&*!|>'""@`\r\n]*[^:#{}\[\],&*!|>'""@`\r\n\s])?$")]
    private static partial Regex PlainInBraces();
}
