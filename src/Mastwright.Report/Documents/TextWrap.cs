using SkiaSharp;

namespace Mastwright.Report.Documents;

/// <summary>Measures text and breaks it into lines.</summary>
internal static class TextWrap
{
    /// <summary>Width of a text in points.</summary>
    public static float Width(string text, float size, bool bold)
    {
        using var font = PrintFonts.Font(size, bold);
        return font.MeasureText(text);
    }

    /// <summary>Width of the longest word, in points: a column narrower than this has to break words.</summary>
    public static float LongestWord(string text, float size, bool bold) =>
        text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(w => Width(w, size, bold)).DefaultIfEmpty(0).Max();

    /// <summary>The lines of a text no wider than <paramref name="width"/>; words wider than that are broken.</summary>
    public static List<string> Lines(string text, float width, float size, bool bold = false)
    {
        using var font = PrintFonts.Font(size, bold);
        var lines = new List<string>();
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (var whole in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var word = whole;
                var longer = line.Length == 0 ? word : line + " " + word;
                if (font.MeasureText(longer) <= width)
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                while (font.MeasureText(word) > width && word.Length > 1)
                {
                    var fits = Math.Max(1, Fitting(font, word, width));
                    lines.Add(word[..fits]);
                    word = word[fits..];
                }

                line = word;
            }

            lines.Add(line);
        }

        return lines;
    }

    // Breaks after a sign that joins words when one is near the edge, else where the column ends.
    private static int Fitting(SKFont font, string word, float width)
    {
        var n = word.Length;
        while (n > 1 && font.MeasureText(word[..n]) > width)
        {
            n--;
        }

        var joint = word.LastIndexOfAny(['-', '/', ',', '.', '[', '_'], n - 1);
        return joint > n / 2 ? joint + 1 : n > 1 && char.IsHighSurrogate(word[n - 1]) ? n - 1 : n;
    }
}
