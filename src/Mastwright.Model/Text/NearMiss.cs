namespace Mastwright.Model.Text;

/// <summary>Finds the known word that a mistyped one was probably meant to be.</summary>
public static class NearMiss
{
    /// <summary>
    /// The word of <paramref name="known"/> nearest to <paramref name="written"/> by edits of single letters
    /// (swaps of neighbours count as one), or null when none is near enough to be a slip of the hand.
    /// </summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        var plain = Fold(written);
        var best = known
            .Select(word => (Word: word, Edits: Edits(plain, Fold(word))))
            .OrderBy(c => c.Edits)
            .FirstOrDefault();
        return best.Word is not null && best.Edits <= Math.Max(1, plain.Length / 3) ? best.Word : null;
    }

    /// <summary>Whether two spellings differ only in case, blanks, underscores and hyphens.</summary>
    public static bool SameWord(string a, string b) => Fold(a) == Fold(b);

    /// <summary>Single-letter edits that turn one word into the other, swaps of neighbours counting as one (optimal string alignment, Damerau 1964).</summary>
    public static int Edits(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            d[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            d[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), d[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }

    private static string Fold(string word) => word.ToLowerInvariant().Replace('_', '-').Replace(' ', '-');
}
