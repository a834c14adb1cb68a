using System.Diagnostics;
using Mastwright.Model.Trails;
using Mastwright.Report.Book;
using Mastwright.Report.Documents;
using ReadPdf = UglyToad.PdfPig.PdfDocument;

namespace Mastwright.Report.Tests;

public class BookTests
{
    public static TheoryData<string> Examples => new("lattice-22m", "tube-12m", "ice-27m", "pair-80m", "fails");

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_book_of_every_example_reads_back_from_its_pdf_page_by_page(string example)
    {
        var station = Stations.Input(example).Station;
        var book = Stations.Book(example);
        var paper = Paper.For(station.UnitSystem);
        using var pdf = ReadPdf.Open(PdfDocument.Write(book, paper, Stations.Day));
        var pages = pdf.GetPages().ToList();

        foreach (var page in pages)
        {
            var text = string.Join(' ', page.GetWords().Select(w => w.Text));
            Assert.Contains(station.Name, text, StringComparison.Ordinal);
            Assert.Contains($"page {page.Number} of {pages.Count}", text, StringComparison.Ordinal);
            Assert.Contains("2027-05-01", text, StringComparison.Ordinal);

            // Nothing is cut off at the edge of the paper, and all of it is in the fonts that are shipped.
            Assert.Equal(paper.WidthMm, (double)page.Width * 25.4 / 72, 0.1);
            Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Right, 0, page.Width - 20));
            Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Left, 20, page.Width));
            Assert.All(page.Letters, l => Assert.InRange(l.BoundingBox.Bottom, 15, page.Height - 15));
            Assert.All(page.Letters, l => Assert.Contains("DejaVuSans", l.FontName, StringComparison.Ordinal));
        }

        var all = string.Join(' ', pages.SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.All(book.Blocks.OfType<Heading>(), h => Assert.Contains(Squeezed(h.Text), Squeezed(all), StringComparison.Ordinal));
        Assert.Contains("licensed engineer", all, StringComparison.Ordinal);
        Assert.Contains("Signature", all, StringComparison.Ordinal);
        Assert.Equal(example == "fails", book.Verdict == Verdict.Fail);
    }

    [Fact]
    public void Equal_input_gives_equal_bytes()
    {
        var book = Stations.Book("ice-27m");

        Assert.Equal(PdfDocument.Write(book, Paper.A4, Stations.Day), PdfDocument.Write(book, Paper.A4, Stations.Day));
        Assert.Equal(HtmlDocument.Write(book, Stations.Day), HtmlDocument.Write(StationBook.Of(Stations.Read(Stations.Text("ice-27m"))), Stations.Day));
    }

    [Fact]
    public void The_contents_name_the_page_on_which_each_chapter_stands()
    {
        var book = Stations.Book("lattice-22m");
        using var pdf = ReadPdf.Open(PdfDocument.Write(book, Paper.A4, Stations.Day));
        var contents = string.Join(' ', pdf.GetPage(2).GetWords().Select(w => w.Text));

        foreach (var chapter in book.Blocks.OfType<Heading>().Where(h => h.Level == 1 && h.Text.StartsWith("Build papers", StringComparison.Ordinal)))
        {
            var page = pdf.GetPages().First(p => p.Number > 2 && string.Join(' ', p.GetWords().Select(w => w.Text)).Contains(chapter.Text, StringComparison.Ordinal)).Number;
            Assert.Contains($"{chapter.Text} {page}", contents, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Each_mast_of_a_station_has_all_its_kinds_of_checks_in_its_own_chapter()
    {
        var tables = Stations.Book("pair-80m").Blocks.SkipWhile(b => b is not Heading { Level: 1, Text: "Mast West: how it stands" })
            .TakeWhile(b => b is not Heading { Level: 1, Text: "Mast West: how it radiates" }).OfType<DataTable>().Where(t => t.Caption == "Worst of each kind").ToList();
        var kinds = Stations.Input("pair-80m").Result.Checks.Where(c => c.Trade == Trade.Stand).Select(c => Analysis.Results.StationResult.KindOf(c.Id)).Distinct().Count();

        Assert.Equal(2, tables.Count);
        Assert.All(tables, t => Assert.Equal(kinds, t.Rows.Length));
    }

    [Fact]
    public void Units_of_the_station_decide_paper_and_figures()
    {
        var input = Stations.Read(Stations.Text("ice-27m").Replace("units: metric", "units: us", StringComparison.Ordinal));
        var book = StationBook.Of(input);
        using var pdf = ReadPdf.Open(PdfDocument.Write(book, Paper.For(input.Station.UnitSystem), Stations.Day));
        var all = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));

        Assert.Equal(612, pdf.GetPage(1).Width, 0.5);
        Assert.Contains("lbf", all, StringComparison.Ordinal);
        Assert.DoesNotContain(" kN", all.Replace("base-egg-300kN", "", StringComparison.Ordinal).Replace("anchor rated 160 kN", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Pdftotext_reads_the_signs_of_the_trade()
    {
        if (Environment.GetEnvironmentVariable("PATH")!.Split(Path.PathSeparator).All(d => !File.Exists(Path.Combine(d, "pdftotext"))))
        {
            Assert.Skip("pdftotext is not on this machine");
        }

        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, PdfDocument.Write(Stations.Book("lattice-22m"), Paper.A4, Stations.Day));
            using var run = Process.Start(new ProcessStartInfo("pdftotext", ["-layout", file, "-"]) { RedirectStandardOutput = true })!;
            var text = run.StandardOutput.ReadToEnd();
            run.WaitForExit();

            Assert.All(new[] { "Ω", "°", "−", "√", "µH", "✓", "Meadow mast", "page 1 of" }, s => Assert.Contains(s, text, StringComparison.Ordinal));
        }
        finally
        {
            File.Delete(file);
        }
    }

    // Lines break where they must on paper.
    private static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
