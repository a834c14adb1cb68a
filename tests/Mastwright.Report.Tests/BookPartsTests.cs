using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using UglyToad.PdfPig.Outline;
using ReadPdf = UglyToad.PdfPig.PdfDocument;

namespace Mastwright.Report.Tests;

public class BookPartsTests
{
    /// <summary>ISO 32000-1, 12.3.3, read back by an independent reader: chapters with their sections, each leading to the page that the contents name.</summary>
    [Fact]
    public void The_outline_leads_to_every_heading()
    {
        var book = Stations.Book("lattice-22m");
        using var pdf = ReadPdf.Open(PdfDocument.Write(book, Paper.A4, Stations.Day));

        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        var nodes = bookmarks.GetNodes().OfType<DocumentBookmarkNode>().ToList();
        var headings = book.Blocks.OfType<Heading>().ToList();
        Assert.Equal(headings.Select(h => h.Text), nodes.Select(n => n.Title));
        Assert.Equal(headings.Count(h => h.Level == 1), bookmarks.Roots.Count);
        Assert.All(nodes, n => Assert.Contains(Squeezed(n.Title), Squeezed(string.Join(' ', pdf.GetPage(n.PageNumber).GetWords().Select(w => w.Text))), StringComparison.Ordinal));

        // The contents lead there too.
        var links = pdf.GetPage(2).GetAnnotations().Count(a => a.Type == UglyToad.PdfPig.Annotations.AnnotationType.Link);
        Assert.Equal(headings.Count(h => h.Level <= 2), links);
    }

    [Fact]
    public void A_document_without_headings_has_no_outline()
    {
        using var pdf = ReadPdf.Open(PdfDocument.Write(new Document("t", "s", [new Paragraph("words")]), Paper.A4, Stations.Day));

        Assert.False(pdf.TryGetBookmarks(out _));
        Assert.Equal(1, pdf.NumberOfPages);
    }

    [Fact]
    public void Every_check_has_its_grounds_in_the_appendix()
    {
        var blocks = Stations.Book("ice-27m").Blocks;
        var appendix = blocks.SkipWhile(b => b is not Heading { Text: "Appendix: every check with its grounds" }).OfType<DataTable>().ToList();
        var checks = Stations.Input("ice-27m").Result.Checks;

        // In full under its own name, or by its own numbers under the first that is worked out alike.
        Assert.All(checks, c => Assert.True(
            appendix.Any(t => t.Caption.EndsWith($"({c.Id})", StringComparison.Ordinal)) || appendix.Any(t => t.Caption == "By the same formulas" && t.Rows.Any(r => r[0].Text == c.Id)), c.Id));

        // A number is worked out once: what is said to be above stands above.
        var seen = new HashSet<string>();
        foreach (var row in appendix.Where(t => t.Columns[0].Header == "No.").SelectMany(t => t.Rows))
        {
            if (row[0].Text.Length > 0)
            {
                Assert.True(seen.Add(row[0].Text));
            }
            else
            {
                Assert.Contains(row[4].Text["see no. ".Length..], seen);
            }
        }
    }

    [Fact]
    public void What_lies_at_a_bearing_is_drawn_there_with_its_distance()
    {
        var text = Stations.Text("pair-80m").Replace("power-line-distance: 120 m", "power-line-distance: 40 m, power-line-bearing: 90 °", StringComparison.Ordinal);
        text = text.Replace("40 m, power-line-bearing: 90 °", "40 m\n  power-line-bearing: 90 °", StringComparison.Ordinal);
        var figure = SitePlan.Of(Stations.Read(text).Station);

        Assert.Contains("40 m at 90°", figure.Svg, StringComparison.Ordinal);
        Assert.Contains("nearest power line", figure.Svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_group_is_drawn_with_its_distances_and_the_bearings_it_sends_to()
    {
        var station = Stations.Input("pair-80m").Station;
        var figure = GroupPlan.Of(station, station.Groups[0]);

        Assert.All(station.Masts.Select(m => m.Name).Concat(station.Groups[0].Directions.Select(d => d.Name)), n => Assert.Contains(n, figure.Svg, StringComparison.Ordinal));
        Assert.Contains(Stations.Book("pair-80m").Blocks.OfType<Figure>(), f => f.Svg == figure.Svg);
    }

    [Fact]
    public void The_book_holds_the_papers_to_build_by()
    {
        var chapters = Stations.Book("lattice-22m").Blocks.OfType<Heading>().Where(h => h.Level == 1).Select(h => h.Text).ToList();

        Assert.All(new[] { "materials", "setting out", "cutting", "concrete and bars", "raising and first use", "tensioning" }, p => Assert.Contains("Build papers: " + p, chapters));
    }

    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
