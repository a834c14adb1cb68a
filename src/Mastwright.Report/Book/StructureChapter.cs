using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Structure.Chains;

namespace Mastwright.Report.Book;

/// <summary>How the masts stand: elevation, base, load cases, guys piece by piece.</summary>
internal static class StructureChapter
{
    public static void Write(DocumentBuilder book, StationResult result)
    {
        foreach (var (mast, answer) in result.Station.Masts.Zip(result.Masts))
        {
            book.Add(new PageBreak()).Add(new Heading(1, $"Mast {mast.Name}: how it stands"));
            book.Add(Elevation.Of(result.Station, mast));
            book.Section("The base").Add(BaseDetail.Of(result.Station, mast, answer.Gap));
            Cases(book, answer);
            Guys(book, result.Station, mast);
            LostGuys(book, answer);
            book.Section("Checks of the structure").Checks("Worst of each kind", WorstOf(result, mast));
        }
    }

    // A check names its mast in its brackets; with one mast all are its own.
    private static bool Concerns(Check check, Mast mast) =>
        !check.Id.Contains('[', StringComparison.Ordinal) || check.Id.Contains($"[{mast.Name},", StringComparison.Ordinal) || check.Id.Contains($"[{mast.Name}]", StringComparison.Ordinal);

    private static IEnumerable<Check> WorstOf(StationResult result, Mast mast) =>
        (result with { Checks = [.. result.Checks.Where(c => c.Trade == Trade.Stand && (result.Station.Masts.Length == 1 || Concerns(c, mast)))] }).WorstOfEachKind;

    private static void Cases(DocumentBuilder book, MastResult mast)
    {
        // Of all wind directions only the worst by each measure is worth a line.
        var stable = mast.Stand.Cases.Where(c => c.Stable).ToList();
        var shown = mast.Stand.Cases.Where(c => !c.Stable).Take(6).Concat(stable.Count == 0 ? [] : new[]
        {
            stable[0], stable.MaxBy(c => c.TopDeflectionM)!, stable.MaxBy(c => c.BaseCompressionN)!, stable.MaxBy(c => c.LargestGuyN)!, stable.MaxBy(c => c.LargestMomentNm)!,
        }).Distinct();
        book.Section("Load cases").Table($"Still air and the worst of {mast.Stand.Cases.Length} cases", ["Case", "#Top moves", "#Compression at the foot", "#Largest guy", "#Largest moment"], shown.Select(c => c.Stable
            ? new Cell[] { c.Name, book.Show(c.TopDeflectionM < 1e-6 ? 0 : c.TopDeflectionM, QuantityKind.FineLength, 3), book.Show(c.BaseCompressionN, QuantityKind.Force, 3), book.Show(c.LargestGuyN, QuantityKind.Force, 3), book.Show(c.LargestMomentNm < 1e-3 ? 0 : c.LargestMomentNm, QuantityKind.Moment, 3) }
            : [c.Name, new Cell("does not stand", Verdict.Fail), "", "", ""]));
    }

    private static void Guys(DocumentBuilder book, Station station, Mast mast)
    {
        var model = StandModel.Of(station, mast);
        book.Section("Guys").Table("Levels", ["#Level", "#Height", "Strand", "#Breaks at", "#Set at", "Insulators", "#From the mast at"], mast.Guys.Select((g, i) => new Cell[]
        {
            $"{i + 1}", book.Show(g.HeightM, QuantityKind.Length), g.Strand, book.Show(StandModel.StrandOf(g.Strand).BreakingN, QuantityKind.Force, 3),
            book.Show(g.InitialTension.For(StandModel.StrandOf(g.Strand).BreakingN), QuantityKind.Force, 3), g.Insulator,
            string.Join(", ", Sheets.GuyPlaces.InsulatorsM(mast, g).Select(d => book.Show(d, QuantityKind.Length, 3))),
        }));
        foreach (var (level, n) in mast.Guys.Select((g, i) => (g, i + 1)))
        {
            if (level.Hardware is not { } hardware)
            {
                book.Add(new Note(NoteKind.Assumption, $"Level {n}: the file does not describe the fittings, so the guy is not drawn piece by piece and its fittings are not checked. Add “hardware:” to the level."));
                continue;
            }

            book.Add(new Heading(3, $"Level {n} piece by piece"));
            var pieces = GuyChains.Of(model.Guys.First(g => g.Level == n), level, hardware);
            book.Add(ChainStrip.Of($"of mast {mast.Name}, level {n}", pieces));
            book.Table("Pieces from the anchor to the mast", ["#No.", "Piece", "#Breaks at", "#Marked working load", "Remark"], pieces.Select((p, i) => new Cell[]
            {
                $"{i + 1}", p.Name, double.IsInfinity(p.BreakingN) ? "" : book.Show(p.BreakingN, QuantityKind.Force, 3), p.WorkingLoadN is { } w ? book.Show(w, QuantityKind.Force, 3) : "", Remark(book, p),
            }));
        }
    }

    private static string Remark(DocumentBuilder book, ChainPiece piece) => piece switch
    {
        AnchorEye => "strength checked with the anchor",
        MastAttachment => "strength: the mast's maker",
        ShacklePiece s => s.PinSecured ? "pin wired" : "wire the pin",
        TurnbucklePiece t => $"open {100 * t.OpenShare:0} % of {book.Show(t.TakeUpM, QuantityKind.FineLength, 3)}" + (t.Locked ? ", locked" : ", lock it"),
        EndFitting { Kind: EndFittingKind.Clips } c => $"{c.Clips} clips" + (c.ClipTorqueNeededNm > 0 ? $", {book.Show(c.ClipTorqueNeededNm, QuantityKind.Moment, 3)}" : ""),
        EndFitting { BackUpClip: true } e => $"holds {100 * e.Efficiency:0} % of the strand; a clip behind it keeps it from unwrapping",
        EndFitting e => $"holds {100 * e.Efficiency:0} % of the strand",
        InsulatorPiece { StrandLoops: true } => "loops interlock: a broken egg still holds the guy",
        _ => "",
    };

    private static void LostGuys(DocumentBuilder book, MastResult mast)
    {
        if (mast.Stand.LostGuys.IsEmpty)
        {
            return;
        }

        book.Section("If a guy is lost").Table("In still air, on the way to the new rest", ["Guy lost", "Mast", "#Largest guy tension", "#Largest at the foot", "#Least at the foot"], mast.Stand.LostGuys.Select(l => new Cell[]
        {
            l.Guy, l.Stands ? new Cell("stands", Verdict.Pass) : new Cell("comes down", Verdict.Caution),
            l.Stands ? book.Show(l.LargestGuyPeakN, QuantityKind.Force, 3) : "", l.Stands ? book.Show(l.LargestFootN, QuantityKind.Force, 3) : "", l.Stands ? book.Show(l.LeastFootN, QuantityKind.Force, 3) : "",
        }));
    }
}
