using System.Xml.Linq;
using Mastwright.Model.Units;
using Mastwright.Report.Book;
using Mastwright.Report.Documents;
using ReadPdf = UglyToad.PdfPig.PdfDocument;

namespace Mastwright.Report.Tests;

public class DocumentPrintTests
{
    private const string Hostile = "<script>alert(\"1\")</script> & 'x'";

    [Fact]
    public void A_table_goes_on_over_pages_under_its_repeated_head()
    {
        var document = new DocumentBuilder("Long", "Test", UnitSystem.Metric)
            .Table("Many rows", ["Unmistakable head", "#Number"], Enumerable.Range(1, 200).Select(i => new Cell[] { $"row{i}.", $"{i}" })).Build();

        using var pdf = ReadPdf.Open(PdfDocument.Write(document, Paper.A4, Stations.Day));
        var pages = pdf.GetPages().Select(p => string.Join(' ', p.GetWords().Select(w => w.Text))).ToList();

        Assert.InRange(pages.Count, 3, 8);
        Assert.All(pages, p => Assert.Contains("Unmistakable head", p, StringComparison.Ordinal));
        var all = string.Join(' ', pages);
        Assert.All(Enumerable.Range(1, 200), i => Assert.Contains($"row{i}. ", all + " ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cell_longer_than_a_page_and_a_word_wider_than_a_column_are_printed_whole()
    {
        var words = string.Join(' ', Enumerable.Range(0, 3000).Select(i => $"w{i}"));
        var document = new DocumentBuilder("Long", "Test", UnitSystem.Metric)
            .Table("", ["Text", "Other"], [[words, "short"], [new string('x', 400), "after"]]).Build();

        using var pdf = ReadPdf.Open(PdfDocument.Write(document, Paper.Letter, Stations.Day));
        var all = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));

        Assert.Contains("w2999", all, StringComparison.Ordinal);
        Assert.Contains("after", all, StringComparison.Ordinal);
        Assert.Equal(400, pdf.GetPages().SelectMany(p => p.Letters).Count(l => l.Value == "x") - all.Split(' ').Count(w => w == "Text"));
    }

    [Fact]
    public void A_page_holds_nothing_that_a_hostile_name_could_run()
    {
        var quoted = "\"" + Hostile.Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
        var text = Stations.Text("tube-12m").Replace("name: Garden tube", "name: " + quoted, StringComparison.Ordinal)
            .Replace("- name: T\n", $"- name: {quoted}\n", StringComparison.Ordinal).Replace("name: back,", $"name: {quoted},", StringComparison.Ordinal);
        var book = StationBook.Of(Stations.Read(text));

        var html = HtmlDocument.Write(book, Stations.Day);

        Assert.Contains("&lt;script&gt;alert", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("http://", html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("https://", html, StringComparison.Ordinal);
        Assert.All(book.Blocks.OfType<Figure>(), f => XElement.Parse(f.Svg));
        Assert.NotEmpty(PdfDocument.Write(book, Paper.Letter, Stations.Day));
    }

    [Fact]
    public void Whatever_a_drawing_could_run_or_fetch_is_left_out_of_the_page()
    {
        var svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\" onload=\"x()\"><script>x()</script><image href=\"http://x\"/><rect width=\"1\" height=\"1\"/></svg>";
        var html = HtmlDocument.Write(new DocumentBuilder("T", "S", UnitSystem.Metric).Add(new Figure("c", svg)).Build(), Stations.Day);

        Assert.DoesNotContain("onload", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<image", html, StringComparison.Ordinal);
        Assert.Contains("<rect", html, StringComparison.Ordinal);
    }
}
