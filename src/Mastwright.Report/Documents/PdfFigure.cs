using System.Globalization;
using System.Text.RegularExpressions;
using SkiaSharp;
using Svg.Skia;

namespace Mastwright.Report.Documents;

/// <summary>A drawing on paper, in its own millimetres so that its scale holds, or smaller when the page is.</summary>
internal static partial class PdfFigure
{
    private const float CaptionSize = 8.5f;

    public static void Place(PdfLayout page, Figure figure)
    {
        var (width, height) = Size(page, figure);
        page.Need(Height(page, figure));
        var (x, y) = (page.LeftPt + ((page.TextWidthPt - width) / 2), page.Y);
        page.Draw(canvas =>
        {
            using var svg = new SKSvg();
            svg.Settings.TypefaceProviders?.Clear();
            svg.Settings.TypefaceProviders?.Add(new PrintFonts.ForDrawings());
            if (svg.FromSvg(figure.Svg) is not { } picture)
            {
                return;
            }

            canvas.Save();
            canvas.Translate(x, y);
            canvas.Scale(width / picture.CullRect.Width, height / picture.CullRect.Height);
            canvas.Translate(-picture.CullRect.Left, -picture.CullRect.Top);
            canvas.DrawPicture(picture);
            canvas.Restore();
        });
        page.Advance(height + 3);
        foreach (var line in TextWrap.Lines(figure.Caption, page.TextWidthPt, CaptionSize))
        {
            page.Text(line, page.LeftPt, page.Y + CaptionSize, CaptionSize, colour: new SKColor(50, 50, 50));
            page.Advance(CaptionSize * 1.3f);
        }

        page.Advance(8);
    }

    /// <summary>Height with its caption.</summary>
    public static float Height(PdfLayout page, Figure figure) =>
        Size(page, figure).Height + 3 + Caption(page, figure);

    private static float Caption(PdfLayout page, Figure figure) => TextWrap.Lines(figure.Caption, page.TextWidthPt, CaptionSize).Count * CaptionSize * 1.3f;

    private static (float Width, float Height) Size(PdfLayout page, Figure figure)
    {
        var box = ViewBox().Match(figure.Svg);
        var (w, h) = box.Success
            ? (float.Parse(box.Groups[1].Value, CultureInfo.InvariantCulture) * PdfLayout.PerMm, float.Parse(box.Groups[2].Value, CultureInfo.InvariantCulture) * PdfLayout.PerMm)
            : (page.TextWidthPt, page.TextWidthPt / 2);
        var scale = Math.Min(1, Math.Min(page.TextWidthPt / w, (page.TextHeightPt - Caption(page, figure) - 30) / h));
        return (w * scale, h * scale);
    }

    [GeneratedRegex("viewBox=\"[-0-9.]+ [-0-9.]+ ([0-9.]+) ([0-9.]+)\"")]
    private static partial Regex ViewBox();
}
