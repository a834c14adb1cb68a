using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>Writes changed values into the text of a design file and leaves everything else, comments included, as it stands.</summary>
public static class DesignEdit
{
    /// <summary>The text with the changes in it.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="places">Where each of its fields stands.</param>
    /// <param name="changes">
    /// What to change. A field the file leaves out is added beside a field of its block that is there; when the file leaves out the
    /// whole block, the block is added beside a field of the block around it.
    /// </param>
    public static string Apply(string text, ImmutableDictionary<string, Place> places, IEnumerable<DesignChange> changes)
    {
        var lines = text.Split('\n').ToList();
        var all = Whole([.. changes], places);

        // From the end backwards, so that places before a change stay true; within one place what is changed comes before what is added in front of it.
        var known = all.Select(c => (Change: c, Place: places.GetValueOrDefault(c.Path), Beside: FirstField(c, places)))
            .OrderByDescending(k => (k.Place ?? k.Beside)?.Line ?? 0).ThenByDescending(k => (k.Place ?? k.Beside)?.Column ?? 0).ThenBy(k => k.Place is null ? 1 : 0);
        foreach (var (change, place, beside) in known)
        {
            if (place is not null)
            {
                var line = lines[place.Line - 1];
                var from = place.Column - 1;
                lines[place.Line - 1] = line[..from] + change.Value + line[EndOfScalar(line, from)..];
            }
            else if (beside is not null)
            {
                Insert(lines, beside, change);
            }
        }

        return string.Join('\n', lines);
    }

    // Fields of a block that the file leaves out altogether become one field of the block around it, written in braces.
    private static ImmutableArray<DesignChange> Whole(ImmutableArray<DesignChange> changes, ImmutableDictionary<string, Place> places)
    {
        var missing = changes.Where(c => !places.ContainsKey(c.Path) && FirstField(c, places) is null && BlockOf(c.Path).Contains('.', StringComparison.Ordinal)).ToLookup(c => BlockOf(c.Path));
        if (missing.Count == 0)
        {
            return changes;
        }

        var blocks = missing.Select(g => new DesignChange(g.Key, g.Key[(g.Key.LastIndexOf('.') + 1)..], "{ " + string.Join(", ", g.Select(c => $"{c.Key}: {c.Value}")) + " }"));
        return Whole([.. changes.Where(c => !missing.Contains(BlockOf(c.Path))), .. blocks], places);
    }

    private static string BlockOf(string path) => path.LastIndexOf('.') is var dot and > 0 ? path[..dot] : "";

    private static void Insert(List<string> lines, Place first, DesignChange change)
    {
        // Right before the key of a field that is there: the same line inside braces, a line of its own in a block.
        var line = lines[first.Line - 1];
        var colon = line.LastIndexOf(':', first.Column - 2);
        var key = line.LastIndexOfAny(['{', ',', '-', ' '], Math.Max(0, colon - 1)) + 1;
        if (colon > 0 && line[colon - 1] is '"' or '\'')
        {
            key = line.LastIndexOf(line[colon - 1], colon - 2);
        }

        // A key may hold a hyphen: what stands before it decides, not the hyphen.
        while (key > 1 && line[key - 1] == '-' && line[key - 2] != ' ')
        {
            key = line.LastIndexOfAny(['{', ',', '-', ' '], key - 2) + 1;
        }

        var before = line[..key];
        lines[first.Line - 1] = before.Contains('{', StringComparison.Ordinal)
            ? before + $"{change.Key}: {change.Value}, " + line[key..]
            : before + $"{change.Key}: {change.Value}\n" + new string(' ', key) + line[key..];
    }

    // The first field of the same block whose value stands on its key's own line and holds nothing below it.
    private static Place? FirstField(DesignChange change, ImmutableDictionary<string, Place> places)
    {
        var block = BlockOf(change.Path) + ".";
        return places.Where(p => p.Key.Length > block.Length && p.Key.StartsWith(block, StringComparison.Ordinal) && p.Key.IndexOfAny(['.', '['], block.Length) < 0)
            .Where(p => !places.Keys.Any(k => k.StartsWith(p.Key + ".", StringComparison.Ordinal) || k.StartsWith(p.Key + "[", StringComparison.Ordinal)))
            .Select(p => p.Value).OrderBy(p => p.Line).ThenBy(p => p.Column).FirstOrDefault();
    }

    private static int EndOfScalar(string line, int from)
    {
        if (line[from] is '"' or '\'')
        {
            var close = line.IndexOf(line[from], from + 1);
            return close < 0 ? line.Length : close + 1;
        }

        var braces = line[..from].Contains('{', StringComparison.Ordinal);
        for (var i = from; i < line.Length; i++)
        {
            if ((braces && line[i] is ',' or '}') || (line[i] == '#' && i > 0 && line[i - 1] == ' ') || line[i] == '\r')
            {
                return TrimmedEnd(line, from, i);
            }
        }

        return TrimmedEnd(line, from, line.Length);
    }

    private static int TrimmedEnd(string line, int from, int to)
    {
        while (to > from && line[to - 1] == ' ')
        {
            to--;
        }

        return to;
    }
}
