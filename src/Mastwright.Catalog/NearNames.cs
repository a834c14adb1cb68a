using System.Collections.Immutable;
using Mastwright.Model.Text;

namespace Mastwright.Catalog;

/// <summary>Finds the names a mistyped one may have meant.</summary>
internal static class NearNames
{
    private const int Most = 3;

    /// <summary>The form in which names are compared: lower case, without spaces, hyphens and underscores.</summary>
    /// <remarks>A hyphen between digits stays: 1-1/4 in is not 11/4 in.</remarks>
    public static string Key(string name)
    {
        var kept = new List<char>(name.Length);
        for (var i = 0; i < name.Length; i++)
        {
            var c = name[i];
            var joins = c is ' ' or '-' or '_';
            var betweenDigits = joins && i > 0 && i + 1 < name.Length && char.IsDigit(name[i - 1]) && char.IsDigit(name[i + 1]);
            if (!joins)
            {
                kept.Add(char.ToLowerInvariant(c));
            }
            else if (betweenDigits)
            {
                kept.Add('-');
            }
        }

        return new string([.. kept]);
    }

    /// <summary>Up to three of <paramref name="names"/> within a third of the asked name's length in edits, or containing it.</summary>
    public static ImmutableArray<string> To(string asked, IEnumerable<string> names)
    {
        var key = Key(asked);
        if (key.Length == 0 || key.Length > 200)
        {
            return [];
        }

        var limit = Math.Max(2, key.Length / 3);
        return
        [
            .. names
                .Select(n => (Name: n, Key: Key(n)))
                .Select(n => (n.Name, Edits: Distance(key, n.Key), Within: n.Key.Contains(key, StringComparison.Ordinal)))
                .Where(n => n.Edits <= limit || n.Within)
                .OrderBy(n => n.Within ? Math.Min(n.Edits, limit) : n.Edits)
                .ThenBy(n => n.Name, StringComparer.Ordinal)
                .Take(Most)
                .Select(n => n.Name),
        ];
    }

    /// <summary>Single-letter edits between two words, swaps of neighbours counting as one.</summary>
    public static int Distance(string a, string b) => NearMiss.Edits(a, b);
}
