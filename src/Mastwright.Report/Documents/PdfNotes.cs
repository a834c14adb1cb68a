using SkiaSharp;

namespace Mastwright.Report.Documents;

/// <summary>Notes set apart and steps with a box to tick.</summary>
internal static class PdfNotes
{
    private const float Size = 9;
    private const float Line = Size * 1.32f;

    public static void Place(PdfLayout page, Note note)
    {
        var word = note.Kind switch { NoteKind.Caution => "Caution", NoteKind.Assumption => "Note", _ => "Remark" };
        var caution = note.Kind == NoteKind.Caution;
        var indent = 60f;
        var lines = TextWrap.Lines(note.Text, page.TextWidthPt - indent - 6, Size);
        var height = (lines.Count * Line) + 6;
        page.Need(Math.Min(height, page.TextHeightPt / 3));
        var first = true;
        foreach (var line in lines)
        {
            page.Need(Line);
            if (first)
            {
                page.Text(word, page.LeftPt + 8, page.Y + Size + 2, Size, bold: true);
            }

            page.Rule(page.LeftPt + 2, page.Y, page.LeftPt + 2, page.Y + Line + 3, caution ? 3 : 1, caution ? SKColors.Black : new SKColor(130, 130, 130));
            page.Text(line, page.LeftPt + indent, page.Y + Size + 2, Size, bold: false);
            page.Advance(Line);
            first = false;
        }

        page.Advance(7);
    }

    public static void Place(PdfLayout page, Steps steps)
    {
        for (var i = 0; i < steps.Items.Length; i++)
        {
            var hold = steps.Items[i].StartsWith("HOLD", StringComparison.Ordinal);
            var lines = TextWrap.Lines(steps.Items[i], page.TextWidthPt - 42, Size, hold);
            page.Need(Math.Min((lines.Count * Line) + 4, page.TextHeightPt));
            page.Box(page.LeftPt + 2, page.Y + 1.5f, 9, 9, SKColors.Black, hold ? 1.6f : 0.8f);
            page.Text($"{i + 1}.", page.LeftPt + 32, page.Y + Size, Size, hold, SKTextAlign.Right);
            foreach (var line in lines)
            {
                page.Need(Line);
                page.Text(line, page.LeftPt + 38, page.Y + Size, Size, hold);
                page.Advance(Line);
            }

            page.Advance(3.5f);
        }

        page.Advance(5);
    }
}
