using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>Writes changed values into the text of a design file and leaves everything else, comments included, as it stands.</summary>
public static class DesignEdit
{
    /// <summary>The text with the changes in it.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="places">Where each of its fields stands.</param>
    /// <param name="changes">What to change; a field the file leaves out is added beside its block's first field.</param>
    public static string Apply(string text, ImmutableDictionary<string, Place> places, IEnumerable<DesignChange> changes)
    {
        var lines = text.Split('\n').ToList();

        // From the end backwards, so that places before a change stay true.
        var known = changes.Select(c => (Change: c, Place: places.GetValueOrDefault(c.Path))).ToList();
        foreach (var (change, place) in known.Where(k => k.Place is not null).OrderByDescending(k => k.Place!.Line).ThenByDescending(k => k.Place!.Column))
        {
            var line = lines[place!.Line - 1];
            var from = place.Column - 1;
            lines[place.Line - 1] = line[..from] + change.Value + line[EndOfScalar(line, from)..];
        }

        foreach (var (change, _) in known.Where(k => k.Place is null).OrderByDescending(k => FirstField(k.Change, places)?.Line ?? 0))
        {
            if (FirstField(change, places) is { } first)
            {
                Insert(lines, first, change);
            }
        }

        return string.Join('\n', lines);
    }

    private static void Insert(List<string> lines, Place first, DesignChange change)
    {
        // Right before the key of a field that is there: the same line inside braces, a line of its own in a block.
        var line = lines[first.Line - 1];
        var colon = line.LastIndexOf(':', first.Column - 2);
        var key = line.LastIndexOfAny(['{', ',', '-', ' '], Math.Max(0, colon - 1)) + 1;
        var before = line[..key];
        lines[first.Line - 1] = before.Contains('{', StringComparison.Ordinal)
            ? before + $"{change.Key}: {change.Value}, " + line[key..]
            : before + $"{change.Key}: {change.Value}\n" + new string(' ', key) + line[key..];
    }

    private static Place? FirstField(DesignChange change, ImmutableDictionary<string, Place> places)
    {
        var block = change.Path[..change.Path.LastIndexOf('.')];
        return places.GetValueOrDefault(block + ".height") ?? places.GetValueOrDefault(block + ".name") ?? places.GetValueOrDefault(block + ".strand");
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
