using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Report.Sheets;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Book;

/// <summary>The whole station on paper: what it is, why it holds, and how to build it.</summary>
public static class StationBook
{
    /// <summary>The book.</summary>
    /// <param name="input">The station.</param>
    /// <param name="prices">Prices for the list of materials; null for the invented samples.</param>
    public static Document Of(StudyInput input, Reading<PriceList>? prices = null)
    {
        var station = input.Station;
        var result = input.Result;
        var book = new DocumentBuilder("Station book", station.Name, station.UnitSystem);
        Summary.Write(book, result);
        book.Add(new PageBreak()).Add(new Heading(1, "Contents")).Add(new Contents());

        book.Add(new PageBreak()).Add(new Heading(1, "The site")).Add(SitePlan.Of(station));
        book.Checks("Checks of the site", result.Checks.Where(c => c.Trade == Trade.Site));
        StructureChapter.Write(book, result);
        RadioChapter.Write(book, result, input.Cancellation);
        SurviveChapter.Write(book, result);

        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: materials"));
        MaterialsSheet.Write(book, station, result, prices ?? MaterialsSheet.SamplePrices());
        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: setting out"));
        SetOutSheet.Write(book, station);
        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: cutting"));
        CutSheet.Write(book, station, input.Cancellation);
        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: concrete and bars"));
        ConcreteSheet.Write(book, station, result, input.Cancellation);
        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: raising and first use"));
        RaisingSheet.Write(book, station, result);
        book.Add(new PageBreak()).Add(new Heading(1, "Build papers: tensioning"));
        TensionSheet.Write(book, station, input.Cancellation);

        Grounds.Write(book, result);
        return book.Build();
    }
}
