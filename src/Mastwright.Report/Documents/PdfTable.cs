using System.Collections.Immutable;
using Mastwright.Model.Trails;
using SkiaSharp;

namespace Mastwright.Report.Documents;

/// <summary>A table on paper: columns as wide as they need, rows that go on over pages under the repeated head.</summary>
internal static class PdfTable
{
    private const float Pad = 3;
    private static readonly float[] Sizes = [8.5f, 8, 7.5f, 7, 6.5f, 6];

    public static void Place(PdfLayout page, DataTable table)
    {
        if (table.Columns.IsEmpty)
        {
            return;
        }

        var set = Set(page, table);
        page.Need(Opening(page, table));
        if (table.Caption.Length > 0)
        {
            page.Lines(table.Caption, 9.5f, bold: true);
            page.Advance(2);
        }

        Head(page, set);
        var shade = false;
        foreach (var row in table.Rows)
        {
            Row(page, set, row, shade);
            shade = !shade;
        }

        page.Rule(page.LeftPt, page.Y, page.LeftPt + set.Total, page.Y, 0.6f);
        page.Advance(9);
    }

    /// <summary>Height that caption, head and first rows need, so that they stay together.</summary>
    public static float Opening(PdfLayout page, DataTable table)
    {
        var set = Set(page, table);
        return (table.Caption.Length > 0 ? 16 : 0) + HeadHeight(set) + table.Rows.Take(2).Sum(r => Lines(set, r).Max(l => l.Count) * set.Line + (2 * Pad));
    }

    private sealed record Setting(DataTable Table, float Size, float[] Widths)
    {
        public float Line => Size * 1.25f;

        public float Total => Widths.Sum();
    }

    private static Setting Set(PdfLayout page, DataTable table)
    {
        var n = table.Columns.Length;
        foreach (var size in Sizes)
        {
            var (least, wish) = (new float[n], new float[n]);
            for (var c = 0; c < n; c++)
            {
                foreach (var (text, bold) in table.Rows.Select(r => (Shown(r[c]), r[c].Verdict is not null)).Append((table.Columns[c].Header, true)))
                {
                    least[c] = Math.Max(least[c], TextWrap.LongestWord(text, size, bold) + (2 * Pad) + 0.5f);
                    wish[c] = Math.Max(wish[c], text.Split('\n').Max(l => TextWrap.Width(l, size, bold)) + (2 * Pad) + 0.5f);
                }

                // A number and its unit stay on one line.
                least[c] = table.Columns[c].Align == Align.Right ? Math.Max(least[c], table.Rows.Select(r => TextWrap.Width(Shown(r[c]), size, false) + (2 * Pad) + 0.5f).DefaultIfEmpty(0).Max()) : least[c];
            }

            if (wish.Sum() <= page.TextWidthPt)
            {
                return new Setting(table, size, Widened(table, wish, page.TextWidthPt - wish.Sum()));
            }

            if (least.Sum() <= page.TextWidthPt)
            {
                var share = (page.TextWidthPt - least.Sum()) / (wish.Sum() - least.Sum());
                return new Setting(table, size, [.. least.Select((l, c) => l + (share * (wish[c] - l)))]);
            }
        }

        // Too much for the page even in small type: words are broken.
        var natural = Enumerable.Range(0, n).Select(c => table.Rows.Select(r => TextWrap.LongestWord(Shown(r[c]), Sizes[^1], false)).Append(TextWrap.LongestWord(table.Columns[c].Header, Sizes[^1], true)).Max() + (2 * Pad)).Select(w => Math.Min(w, page.TextWidthPt / 2)).ToArray();
        return new Setting(table, Sizes[^1], [.. natural.Select(w => w * page.TextWidthPt / natural.Sum())]);
    }

    // Columns left empty are there to be written in by hand: they get the room that is over.
    private static float[] Widened(DataTable table, float[] widths, float spare)
    {
        var empty = Enumerable.Range(0, widths.Length).Where(c => table.Rows.Length > 0 && table.Rows.All(r => string.IsNullOrWhiteSpace(r[c].Text))).ToList();
        foreach (var c in empty)
        {
            widths[c] += spare / empty.Count;
        }

        return widths;
    }

    private static string Shown(Cell cell) => cell.Verdict is { } v ? PdfLayout.Sign(v) + "\u00a0" + cell.Text : cell.Text;

    private static List<List<string>> Lines(Setting set, ImmutableArray<Cell> row) =>
        [.. row.Select((c, i) => TextWrap.Lines(Shown(c), set.Widths[i] - (2 * Pad), set.Size, c.Verdict is Verdict.Fail))];

    private static List<List<string>> HeadLines(Setting set) =>
        [.. set.Table.Columns.Select((c, i) => TextWrap.Lines(c.Header, set.Widths[i] - (2 * Pad), set.Size, true))];

    private static float HeadHeight(Setting set) => (HeadLines(set).Max(l => l.Count) * set.Line) + (2 * Pad);

    private static void Head(PdfLayout page, Setting set)
    {
        var (lines, height) = (HeadLines(set), HeadHeight(set));
        page.Box(page.LeftPt, page.Y, set.Total, height, new SKColor(222, 222, 222));
        page.Rule(page.LeftPt, page.Y, page.LeftPt + set.Total, page.Y, 0.9f);
        Cells(page, set, lines, _ => true);
        page.Advance(height);
        page.Rule(page.LeftPt, page.Y, page.LeftPt + set.Total, page.Y, 0.6f);
    }

    private static void Row(PdfLayout page, Setting set, ImmutableArray<Cell> row, bool shade)
    {
        var lines = Lines(set, row);
        do
        {
            var height = (lines.Max(l => l.Count) * set.Line) + (2 * Pad);
            if (height > page.Left && height <= page.TextHeightPt - HeadHeight(set))
            {
                Turn(page, set);
            }

            // A row taller than a page is cut between its lines.
            var room = Math.Max(1, (int)((page.Left - (2 * Pad)) / set.Line));
            var part = lines.Select(l => l.Take(room).ToList()).ToList();
            height = (part.Max(l => l.Count) * set.Line) + (2 * Pad);
            if (shade)
            {
                page.Box(page.LeftPt, page.Y, set.Total, height, new SKColor(244, 244, 244));
            }

            Cells(page, set, part, c => row[c].Verdict is Verdict.Fail);
            page.Advance(height);
            page.Rule(page.LeftPt, page.Y, page.LeftPt + set.Total, page.Y, 0.3f, new SKColor(190, 190, 190));
            lines = [.. lines.Select(l => l.Skip(room).ToList())];
            if (lines.Any(l => l.Count > 0))
            {
                Turn(page, set);
            }
        }
        while (lines.Any(l => l.Count > 0));
    }

    private static void Turn(PdfLayout page, Setting set)
    {
        page.NewPage();
        Head(page, set);
    }

    private static void Cells(PdfLayout page, Setting set, List<List<string>> lines, Func<int, bool> bold)
    {
        var x = page.LeftPt;
        for (var c = 0; c < lines.Count; c++)
        {
            var right = set.Table.Columns[c].Align == Align.Right;
            for (var l = 0; l < lines[c].Count; l++)
            {
                page.Text(lines[c][l], right ? x + set.Widths[c] - Pad : x + Pad, page.Y + Pad + (set.Size * 0.95f) + (l * set.Line), set.Size, bold(c), right ? SKTextAlign.Right : SKTextAlign.Left);
            }

            x += set.Widths[c];
        }
    }
}
