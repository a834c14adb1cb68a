using SkiaSharp;

namespace Mastwright.Report.Documents;

/// <summary>
/// Prints a document as PDF: fonts embedded, drawings as vectors, tables that go on over pages under repeated heads,
/// a running head and page numbers, an outline, and contents that lead to their page. Equal input gives equal bytes: the date is the caller's.
/// </summary>
public static class PdfDocument
{
    private const float Grey = 8;

    /// <summary>The bytes of the file.</summary>
    /// <param name="document">What to print.</param>
    /// <param name="paper">On which paper.</param>
    /// <param name="date">The date shown at the foot of each page.</param>
    /// <param name="cancellation">Stops the work between two pages.</param>
    public static byte[] Write(Document document, Paper paper, DateOnly date, CancellationToken cancellation = default)
    {
        var layout = new PdfLayout(paper);
        layout.Title(document);
        foreach (var (block, next) in document.Blocks.Zip(document.Blocks.Skip(1).Append(null!)))
        {
            cancellation.ThrowIfCancellationRequested();
            layout.Place(block, next, document);
        }

        using var stream = new MemoryStream();
        var day = date.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
        var metadata = new SKDocumentPdfMetadata
        {
            Title = document.Title,
            Subject = document.Subtitle,
            Creator = "Mastwright",
            Producer = "Mastwright",
            Creation = day,
            Modified = day,
            RasterDpi = 300,
            EncodingQuality = 101,
        };
        using (var pdf = SKDocument.CreatePdf(stream, metadata))
        {
            for (var p = 0; p < layout.Pages.Count; p++)
            {
                cancellation.ThrowIfCancellationRequested();
                var canvas = pdf.BeginPage(layout.WidthPt, layout.HeightPt);
                foreach (var draw in layout.Pages[p])
                {
                    draw(canvas);
                }

                Frame(canvas, layout, document, date, p + 1);
                pdf.EndPage();
            }

            pdf.Close();
        }

        return PdfOutline.Add(stream.ToArray(), layout.Outline, layout.HeightPt);
    }

    private static void Frame(SKCanvas canvas, PdfLayout layout, Document document, DateOnly date, int page)
    {
        using var font = PrintFonts.Font(Grey, false);
        using var ink = new SKPaint { Color = new SKColor(70, 70, 70), IsAntialias = true };
        using var rule = new SKPaint { Color = new SKColor(150, 150, 150), StrokeWidth = 0.5f, IsStroke = true };
        var (left, right) = (layout.LeftPt, layout.LeftPt + layout.TextWidthPt);
        var top = layout.TopPt - 16;
        var bottom = layout.HeightPt - layout.BottomPt + 18;
        var half = layout.TextWidthPt * 0.48f;
        canvas.DrawText(Cut(document.Subtitle.Length > 0 ? document.Subtitle : document.Title, half, font), left, top, SKTextAlign.Left, font, ink);
        canvas.DrawText(Cut(document.Subtitle.Length > 0 ? document.Title : "", half, font), right, top, SKTextAlign.Right, font, ink);
        canvas.DrawLine(left, top + 4, right, top + 4, rule);
        canvas.DrawLine(left, bottom - 10, right, bottom - 10, rule);
        canvas.DrawText(date.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture), left, bottom, SKTextAlign.Left, font, ink);
        canvas.DrawText($"page {page} of {layout.Pages.Count}", right, bottom, SKTextAlign.Right, font, ink);
    }

    private static string Cut(string text, float width, SKFont font)
    {
        if (font.MeasureText(text) <= width)
        {
            return text;
        }

        var n = text.Length;
        while (n > 1 && font.MeasureText(text[..n] + "…") > width)
        {
            n--;
        }

        return text[..n].TrimEnd() + "…";
    }
}
