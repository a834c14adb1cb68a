using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Book;

/// <summary>The first page: the verdict, what governs it, and room for signatures.</summary>
internal static class Summary
{
    public static void Write(DocumentBuilder book, StationResult result)
    {
        var station = result.Station;
        var failed = result.Checks.Count(c => c.Verdict == Verdict.Fail);
        var unknown = result.Checks.Count(c => c.Verdict == Verdict.Unknown);
        var cautions = result.Checks.Count(c => c.Verdict == Verdict.Caution);
        book.Add(new Heading(1, result.Verdict switch
        {
            Verdict.Fail => $"Not fit to build: {failed} of {result.Checks.Length} checks fail",
            Verdict.Unknown => $"Open: {unknown} of {result.Checks.Length} checks cannot be decided",
            Verdict.Caution => $"Fit, with {cautions} cautions, by the {result.Checks.Length} checks made here",
            _ => $"Fit, by the {result.Checks.Length} checks made here",
        }));
        if (station.Notes.Length > 0)
        {
            book.Text(station.Notes);
        }

        book.Checks("The hardest check of each trade", result.WorstOfEachTrade);
        foreach (var mast in station.Masts)
        {
            var guys = string.Join(", ", mast.Guys.Select(g => book.Show(g.HeightM, QuantityKind.Length, 3)));
            book.Text($"Mast {mast.Name}: {book.Show(mast.LengthM, QuantityKind.Length)} of mast, top {book.Show(mast.TopM, QuantityKind.Length)} above ground, guyed at {guys} to {mast.Anchors.Length} anchors; " +
                $"{mast.Radials.Count} radials of {book.Show(mast.Radials.LengthM, QuantityKind.Length, 3)}; base insulator {mast.Base.Insulator}.");
        }

        book.Caution("These figures help a careful person; they do not replace local codes, the makers' data and a licensed engineer. Nobody has signed this design until the lines below are filled.");
        book.Table("Reviewed", ["What", "Name and licence", "Signature", "Date"],
        [
            ["structure, footings, anchors: licensed engineer", "\n", "", ""],
            ["electrical safety, earthing, lightning", "\n", "", ""],
            ["owner and builder", "\n", "", ""],
        ]);
        book.Text(string.Create(CultureInfo.InvariantCulture, $"Fingerprint of the design: {result.Fingerprint[..Math.Min(16, result.Fingerprint.Length)]}. A book with another fingerprint describes another design."));
    }
}
