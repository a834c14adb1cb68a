using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Mastwright.Report.Documents;

/// <summary>A line of the outline a reader shows beside the pages.</summary>
/// <param name="Level">1 for a chapter, more for what lies inside.</param>
/// <param name="Text">Its words.</param>
/// <param name="Page">The page, from 1.</param>
/// <param name="TopPt">How far below the page's top, points.</param>
internal sealed record OutlineEntry(int Level, string Text, int Page, float TopPt);

/// <summary>
/// Puts an outline into a printed file as an incremental update (ISO 32000-1:2008, 7.5.6 and 12.3.3): the file stays
/// as it is, and the changed catalogue with the outline's objects is appended. The printing library offers no outline.
/// </summary>
internal static partial class PdfOutline
{
    /// <summary>The file with its outline; the file itself when there is nothing to put in.</summary>
    /// <param name="pdf">A file with a plain cross-reference table.</param>
    /// <param name="entries">The lines in reading order.</param>
    /// <param name="heightPt">Height of a page.</param>
    public static byte[] Add(byte[] pdf, IReadOnlyList<OutlineEntry> entries, float heightPt)
    {
        if (entries.Count == 0)
        {
            return pdf;
        }

        var text = Encoding.Latin1.GetString(pdf);
        var start = int.Parse(Start().Matches(text)[^1].Groups[1].Value, CultureInfo.InvariantCulture);
        var trailer = text[text.IndexOf("trailer", start, StringComparison.Ordinal)..];
        var size = int.Parse(Size().Match(trailer).Groups[1].Value, CultureInfo.InvariantCulture);
        var root = int.Parse(Root().Match(trailer).Groups[1].Value, CultureInfo.InvariantCulture);
        var offsets = Offsets(text, start);
        string Body(int number) => text[(text.IndexOf("obj", offsets[number], StringComparison.Ordinal) + 3)..text.IndexOf("endobj", offsets[number], StringComparison.Ordinal)].Trim();

        var catalogue = Body(root);
        var pages = Pages(Body, int.Parse(PagesOf().Match(catalogue).Groups[1].Value, CultureInfo.InvariantCulture)).ToList();
        var objects = new List<(int Number, string Body)>
        {
            (root, catalogue[..catalogue.LastIndexOf(">>", StringComparison.Ordinal)] + string.Create(CultureInfo.InvariantCulture, $"\n/Outlines {size} 0 R\n/PageMode /UseOutlines>>")),
        };
        objects.AddRange(Items(entries, pages, size, heightPt));

        var update = new StringBuilder(text.EndsWith('\n') ? "" : "\n");
        var table = new StringBuilder("xref\n");
        foreach (var run in Runs([.. objects.Select(o => o.Number)]))
        {
            table.Append(CultureInfo.InvariantCulture, $"{run[0]} {run.Count}\n");
            foreach (var number in run)
            {
                table.Append(CultureInfo.InvariantCulture, $"{pdf.Length + update.Length:0000000000} 00000 n \n");
                update.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{objects.First(o => o.Number == number).Body}\nendobj\n");
            }
        }

        var place = pdf.Length + update.Length;
        var info = Info().Match(trailer);
        update.Append(table).Append(CultureInfo.InvariantCulture, $"trailer\n<</Size {size + entries.Count + 1}\n/Root {root} 0 R\n{(info.Success ? info.Value + "\n" : "")}/Prev {start}>>\nstartxref\n{place}\n%%EOF\n");
        return [.. pdf, .. Encoding.Latin1.GetBytes(update.ToString())];
    }

    // The outline itself has the first free number, its lines those after it.
    private static IEnumerable<(int Number, string Body)> Items(IReadOnlyList<OutlineEntry> entries, List<int> pages, int first, float heightPt)
    {
        var parents = new int[entries.Count];
        var open = new Stack<int>();
        for (var i = 0; i < entries.Count; i++)
        {
            while (open.Count > 0 && entries[open.Peek()].Level >= entries[i].Level)
            {
                open.Pop();
            }

            parents[i] = open.Count == 0 ? -1 : open.Peek();
            open.Push(i);
        }

        List<int> Under(int parent) => [.. Enumerable.Range(0, entries.Count).Where(i => parents[i] == parent)];
        string Ref(int index) => string.Create(CultureInfo.InvariantCulture, $"{first + 1 + index} 0 R");
        var top = Under(-1);
        yield return (first, string.Create(CultureInfo.InvariantCulture, $"<</Type /Outlines /First {Ref(top[0])} /Last {Ref(top[^1])} /Count {top.Count}>>"));
        for (var i = 0; i < entries.Count; i++)
        {
            var (siblings, below) = (Under(parents[i]), Under(i));
            var at = siblings.IndexOf(i);
            var body = new StringBuilder("<</Title <FEFF").Append(Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(entries[i].Text))).Append('>');
            body.Append(CultureInfo.InvariantCulture, $" /Parent {(parents[i] < 0 ? $"{first} 0 R" : Ref(parents[i]))}");
            body.Append(at > 0 ? $" /Prev {Ref(siblings[at - 1])}" : "").Append(at < siblings.Count - 1 ? $" /Next {Ref(siblings[at + 1])}" : "");
            body.Append(below.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $" /First {Ref(below[0])} /Last {Ref(below[^1])} /Count -{below.Count}") : "");
            body.Append(CultureInfo.InvariantCulture, $" /Dest [{pages[entries[i].Page - 1]} 0 R /XYZ 0 {heightPt - entries[i].TopPt:0.##} null]>>");
            yield return (first + 1 + i, body.ToString());
        }
    }

    private static IEnumerable<int> Pages(Func<int, string> body, int number)
    {
        var text = body(number);
        return Kids().Match(text) is { Success: true } kids
            ? Reference().Matches(kids.Groups[1].Value).SelectMany(m => Pages(body, int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture)))
            : [number];
    }

    private static Dictionary<int, int> Offsets(string text, int start)
    {
        var offsets = new Dictionary<int, int>();
        var lines = text[start..text.IndexOf("trailer", start, StringComparison.Ordinal)].Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var next = 0;
        foreach (var parts in lines.Skip(1).Select(l => l.Split(' ')))
        {
            if (parts.Length == 2)
            {
                next = int.Parse(parts[0], CultureInfo.InvariantCulture);
            }
            else
            {
                offsets[next++] = int.Parse(parts[0], CultureInfo.InvariantCulture);
            }
        }

        return offsets;
    }

    private static IEnumerable<List<int>> Runs(List<int> numbers)
    {
        var run = new List<int>();
        foreach (var n in numbers.Order())
        {
            if (run.Count > 0 && n != run[^1] + 1)
            {
                yield return run;
                run = [];
            }

            run.Add(n);
        }

        yield return run;
    }

    [GeneratedRegex(@"startxref\s+(\d+)")]
    private static partial Regex Start();

    [GeneratedRegex(@"/Size\s+(\d+)")]
    private static partial Regex Size();

    [GeneratedRegex(@"/Root\s+(\d+)\s+0\s+R")]
    private static partial Regex Root();

    [GeneratedRegex(@"/Info\s+\d+\s+0\s+R")]
    private static partial Regex Info();

    [GeneratedRegex(@"/Pages\s+(\d+)\s+0\s+R")]
    private static partial Regex PagesOf();

    [GeneratedRegex(@"/Kids\s*\[([^\]]*)\]")]
    private static partial Regex Kids();

    [GeneratedRegex(@"(\d+)\s+0\s+R")]
    private static partial Regex Reference();
}
