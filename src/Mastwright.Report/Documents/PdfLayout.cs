using Mastwright.Model.Trails;
using SkiaSharp;

namespace Mastwright.Report.Documents;

/// <summary>Sets the blocks of a document on pages, as drawing orders that run once all pages are known.</summary>
internal sealed class PdfLayout
{
    /// <summary>Points in a millimetre.</summary>
    public const float PerMm = 72f / 25.4f;

    private const float TextSize = 9.5f;
    private const float Leading = 1.32f;
    private readonly Paper paper;
    private readonly List<OutlineEntry> headings = [];
    private float y;

    public PdfLayout(Paper paper)
    {
        this.paper = paper;
        NewPage();
    }

    /// <summary>The pages, each as orders to draw.</summary>
    public List<List<Action<SKCanvas>>> Pages { get; } = [];

    /// <summary>The headings with their places, for the outline.</summary>
    public IReadOnlyList<OutlineEntry> Outline => headings;

    public float WidthPt => (float)paper.WidthMm * PerMm;

    public float HeightPt => (float)paper.HeightMm * PerMm;

    public float LeftPt => (float)Paper.SideMm * PerMm;

    public float TopPt => (float)Paper.TopMm * PerMm;

    public float BottomPt => (float)Paper.BottomMm * PerMm;

    public float TextWidthPt => (float)paper.TextWidthMm * PerMm;

    /// <summary>Height of a page's text.</summary>
    public float TextHeightPt => (float)paper.TextHeightMm * PerMm;

    /// <summary>What is left of the page.</summary>
    public float Left => HeightPt - BottomPt - y;

    /// <summary>Where the next thing goes.</summary>
    public float Y => y;

    private bool Fresh => y <= TopPt + 0.01f;

    /// <summary>The title at the head of the first page.</summary>
    public void Title(Document document)
    {
        Lines(document.Title, 20, bold: true);
        if (document.Subtitle.Length > 0)
        {
            Lines(document.Subtitle, 13, bold: false);
        }

        y += 8;
    }

    /// <summary>One block; <paramref name="next"/> is what follows, which a heading must not be parted from.</summary>
    public void Place(Block block, Block? next, Document document)
    {
        switch (block)
        {
            case Heading h:
                PlaceHeading(h, next);
                break;
            case Paragraph p:
                Lines(p.Text, TextSize, bold: false);
                y += 5;
                break;
            case Note n:
                PdfNotes.Place(this, n);
                break;
            case Steps s:
                PdfNotes.Place(this, s);
                break;
            case DataTable t:
                PdfTable.Place(this, t);
                break;
            case Figure f:
                PdfFigure.Place(this, f);
                break;
            case Contents:
                PlaceContents(document);
                break;
            case PageBreak when !Fresh:
                NewPage();
                break;
        }
    }

    /// <summary>Goes on to a new page.</summary>
    public void NewPage()
    {
        Pages.Add([]);
        y = TopPt;
    }

    /// <summary>Takes a new page when less than this is left of the present one.</summary>
    public void Need(float height)
    {
        if (height > Left && !Fresh)
        {
            NewPage();
        }
    }

    /// <summary>Takes up height.</summary>
    public void Advance(float height) => y += height;

    /// <summary>Adds an order to the present page.</summary>
    public void Draw(Action<SKCanvas> order) => Pages[^1].Add(order);

    /// <summary>A line of text with its baseline at a place on the present page.</summary>
    public void Text(string text, float x, float baseline, float size, bool bold = false, SKTextAlign align = SKTextAlign.Left, SKColor? colour = null) => Draw(canvas =>
    {
        using var font = PrintFonts.Font(size, bold);
        using var ink = new SKPaint { Color = colour ?? SKColors.Black, IsAntialias = true };
        canvas.DrawText(text, x, baseline, align, font, ink);
    });

    /// <summary>A rectangle, filled or outlined.</summary>
    public void Box(float x, float top, float width, float height, SKColor colour, float stroke = 0) => Draw(canvas =>
    {
        using var ink = new SKPaint { Color = colour, IsStroke = stroke > 0, StrokeWidth = stroke, IsAntialias = true };
        canvas.DrawRect(x, top, width, height, ink);
    });

    /// <summary>A straight rule.</summary>
    public void Rule(float x1, float y1, float x2, float y2, float stroke, SKColor? colour = null) => Draw(canvas =>
    {
        using var ink = new SKPaint { Color = colour ?? SKColors.Black, IsStroke = true, StrokeWidth = stroke, IsAntialias = true };
        canvas.DrawLine(x1, y1, x2, y2, ink);
    });

    /// <summary>Running text from the present place on, over pages where it must.</summary>
    public void Lines(string text, float size, bool bold, float indent = 0)
    {
        foreach (var line in TextWrap.Lines(text, TextWidthPt - indent, size, bold))
        {
            Need(size * Leading);
            Text(line, LeftPt + indent, y + size, size, bold);
            y += size * Leading;
        }
    }

    private void PlaceHeading(Heading heading, Block? next)
    {
        var size = heading.Level switch { 1 => 16f, 2 => 12.5f, _ => 10.5f };
        if (!Fresh)
        {
            y += heading.Level switch { 1 => 14, 2 => 10, _ => 6 };
        }

        var follows = next switch
        {
            Figure f => PdfFigure.Height(this, f),
            DataTable t => PdfTable.Opening(this, t),
            _ => 34,
        };
        Need(Math.Min((size * Leading) + 4 + follows, TextHeightPt));
        var name = Target(headings.Count);
        var point = new SKPoint(0, Math.Max(0, y - 6));
        Draw(canvas => canvas.DrawNamedDestinationAnnotation(point, name)?.Dispose());
        headings.Add(new OutlineEntry(heading.Level, heading.Text, Pages.Count, point.Y));
        Lines(heading.Text, size, bold: true);
        if (heading.Level == 1)
        {
            Rule(LeftPt, y + 1, LeftPt + TextWidthPt, y + 1, 1);
            y += 4;
        }

        y += 3;
    }

    // The pages are known only when all is set, so each line looks its page up when it is drawn.
    private void PlaceContents(Document document)
    {
        var entries = document.Blocks.OfType<Heading>().Where(h => h.Level <= 2).ToList();
        for (var i = 0; i < entries.Count; i++)
        {
            var entry = entries[i];
            var size = entry.Level == 1 ? 9.5f : 8.5f;
            Need(size * 1.3f);
            var (index, baseline, indent) = (i, y + size, entry.Level == 1 ? 0f : 14f);
            var text = TextWrap.Lines(entry.Text, TextWidthPt - indent - 40, size, entry.Level == 1)[0];
            Text(text, LeftPt + indent, baseline, size, entry.Level == 1);
            Draw(canvas =>
            {
                using var font = PrintFonts.Font(size, entry.Level == 1);
                using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
                var heading = headings.Select((h, n) => (h, n)).Where(h => h.h.Level <= 2).ElementAt(index);
                canvas.DrawLinkDestinationAnnotation(new SKRect(LeftPt, baseline - size, LeftPt + TextWidthPt, baseline + 2), Target(heading.n))?.Dispose();
                canvas.DrawText(heading.h.Page.ToString(System.Globalization.CultureInfo.InvariantCulture), LeftPt + TextWidthPt, baseline, SKTextAlign.Right, font, ink);
            });
            y += (size * 1.3f) + (entry.Level == 1 ? 1 : 0);
        }

        y += 6;
    }

    private static string Target(int heading) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"h{heading}");

    /// <summary>The word for a verdict with a sign that shows without colour.</summary>
    public static string Sign(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "✓",
        Verdict.Fail => "✗",
        Verdict.Caution => "!",
        _ => "?",
    };
}
