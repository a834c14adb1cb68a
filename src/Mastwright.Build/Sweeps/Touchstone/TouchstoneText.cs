using System.Globalization;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>One word of the text with its place.</summary>
internal readonly record struct Word(string Text, int Line, int Column)
{
    public bool TryNumber(out double value) =>
        double.TryParse(Text, NumberStyles.Float, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

    public bool Is(string other) => string.Equals(Text, other, StringComparison.OrdinalIgnoreCase);
}

/// <summary>One line of the text that holds more than a comment.</summary>
/// <param name="Number">One-based line number.</param>
/// <param name="Content">The line without its comment.</param>
/// <param name="Words">Its words, split at blanks and tabs.</param>
/// <param name="EndsFile">Whether the text stops inside this line, with no line end after it.</param>
internal sealed record TextLine(int Number, string Content, IReadOnlyList<Word> Words, bool EndsFile)
{
    public char First => Words[0].Text[0];
}

/// <summary>Cuts a Touchstone text into lines and words: comments from <c>!</c> go, CR-LF, LF and CR all end a line.</summary>
internal static class TouchstoneText
{
    public static List<TextLine> Lines(string text)
    {
        var result = new List<TextLine>();
        var number = 0;
        var start = text.Length > 0 && text[0] == '\uFEFF' ? 1 : 0;
        while (start < text.Length)
        {
            number++;
            var end = text.AsSpan(start).IndexOfAny('\r', '\n');
            var endsFile = end < 0;
            var stop = endsFile ? text.Length : start + end;
            Add(result, number, text[start..stop], endsFile);
            if (endsFile) break;
            start = stop + (text[stop] == '\r' && stop + 1 < text.Length && text[stop + 1] == '\n' ? 2 : 1);
        }
        return result;
    }

    private static void Add(List<TextLine> lines, int number, string raw, bool endsFile)
    {
        var comment = raw.IndexOf('!', StringComparison.Ordinal);
        var content = comment < 0 ? raw : raw[..comment];
        var words = new List<Word>();
        for (var i = 0; i < content.Length;)
        {
            if (char.IsWhiteSpace(content[i]))
            {
                i++;
                continue;
            }
            var from = i;
            while (i < content.Length && !char.IsWhiteSpace(content[i])) i++;
            words.Add(new(content[from..i], number, from + 1));
        }
        // A comment in the last line shows that the numbers before it were written in full.
        if (words.Count > 0) lines.Add(new(number, content, words, endsFile && comment < 0));
    }
}
