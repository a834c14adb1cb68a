using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Book;

/// <summary>How the station survives: the base gap and the checks of protection and people.</summary>
internal static class SurviveChapter
{
    public static void Write(DocumentBuilder book, StationResult result)
    {
        book.Add(new PageBreak()).Add(new Heading(1, "How it survives")).Caution(GapAnswer.Caution);
        foreach (var mast in result.Masts)
        {
            book.Section($"Base gap of mast {mast.Name}");
            Gap(book, result, mast);
        }

        book.Section("Checks of protection and people").Checks("Worst of each kind", result.WorstOfEachKind.Where(c => c.Trade == Trade.Survive));
    }

    private static void Gap(DocumentBuilder book, StationResult result, MastResult mast)
    {
        if (GapBar.Of(mast.Name, mast.Gap, result.Station.UnitSystem) is { } bar)
        {
            book.Add(bar);
        }

        switch (mast.Gap)
        {
            case GapSetting gap:
                book.Table("The gap", ["What", "#Value"],
                [
                    ["set", book.Show(gap.SpacingM)], ["nearest feeler", gap.Feeler.Text], ["smallest that holds off", book.Show(gap.WindowLowM)], ["largest that protects", book.Show(gap.WindowHighM)],
                    ["highest working peak", book.Show(gap.WorkingPeakV, 3)], ["sure to hold, wet and thin air", book.Show(gap.HoldOffV, 3)], ["fires on a lightning front at the most", book.Show(gap.FiringV, 3)], ["weakest part behind it", book.Show(gap.WeakestStrengthV, 3)],
                ]);
                break;
            case NoGapFits none:
                book.Text($"No gap fits: the working peak is {book.Show(none.WorkingPeakV, 3)} ({none.GoverningBand}), the weakest part stands {book.Show(none.WeakestStrengthV, 3)} ({none.WeakestPart}).");
                foreach (var change in none.Changes)
                {
                    book.Add(new Note(NoteKind.Remark, change));
                }

                break;
            default:
                book.Findings(mast.Gap.Findings);
                break;
        }
    }
}
