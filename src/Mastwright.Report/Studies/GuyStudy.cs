using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Structure.Chains;

namespace Mastwright.Report.Studies;

/// <summary>Every guy as a chain of real pieces: weakest link, clear length, turnbuckle travel, and the rules of making it up.</summary>
public static class GuyStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("guys", "Every guy piece by piece: weakest link, clear length, turnbuckle travel, and what is made up wrong", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Guys piece by piece", input.Station.Name, input.Station.UnitSystem).Caution(ChainAnalysis.Caution);
        foreach (var (mast, result) in input.Station.Masts.Zip(input.Result.Masts))
        {
            document.Section($"Mast {mast.Name}");
            for (var level = 1; level <= mast.Guys.Length; level++)
            {
                if (mast.Guys[level - 1].Hardware is null)
                {
                    document.Add(new Note(NoteKind.Assumption, $"Level {level}: the file does not describe the fittings, so they are not checked. Add “hardware:” to the level."));
                }
                else if (result.Stand.Chains.FirstOrDefault(c => c.Level == level) is { } chain)
                {
                    Write(document, mast.Name, chain);
                }
                else
                {
                    document.Text($"Level {level}: the mast does not stand in still air, so nothing pulls the guys as they should be pulled.");
                }
            }
        }

        return document.Build();
    }

    private static void Write(DocumentBuilder document, string mast, ChainResult chain)
    {
        var (demand, report) = (chain.Demand, chain.Report);
        document.Add(new Heading(3, $"Level {chain.Level}, the hardest pulled: {chain.Chain.Name}"));
        document.Add(ChainStrip.Of($"of mast {mast}, level {chain.Level}", chain.Chain.Pieces));
        document.Table("From the anchor to the mast", ["#No.", "Piece", "#Length", "#Breaks at", "#May pull", "#Used", ""], chain.Chain.Pieces.Select((p, i) => Row(document, report, demand, p, i)));
        document.Text($"Weakest link: {report.Weakest?.Piece.Name ?? "none"}. Largest tension {document.Show(demand.GreatestTensionN, QuantityKind.Force, 3)} ({demand.GoverningCase})."
            + (report.ClearLength is { } clear ? $" Clear length of strand at the anchor: {document.Show(clear, 3)} of {document.Show(demand.LengthM, QuantityKind.Length, 4)} between the pins." : ""));
        Travel(document, chain);
        document.Checks("Checks", report.Checks);
        if (report.Findings.IsEmpty)
        {
            document.Text("Nothing is made up wrong.");
        }

        document.Findings(report.Findings);
    }

    private static Cell[] Row(DocumentBuilder document, ChainReport report, ChainDemand demand, ChainPiece piece, int place)
    {
        var capacity = report.Capacities.FirstOrDefault(c => c.Position == place);
        var length = piece switch { StrandPiece { FixedLengthM: null } => report.ClearLength?.Value ?? 0, StrandPiece s => s.FixedLengthM!.Value, TurnbucklePiece t => t.ClosedLengthM + (t.OpenShare * t.TakeUpM), _ => piece.LengthM };
        return
        [
            $"{place + 1}", piece.Name, length > 0 ? document.Show(length, length < 1 ? QuantityKind.FineLength : QuantityKind.Length, 3) : "",
            capacity is null ? "" : document.Show(capacity.Breaking, 3), capacity is null ? "" : document.Show(capacity.Capacity, 3),
            capacity is null ? "" : $"{100 * demand.GreatestTensionN / capacity.Capacity.Value:0} %",
            report.Weakest is { } w && w.Position == place ? new Cell("weakest", Verdict.Caution) : "",
        ];
    }

    private static void Travel(DocumentBuilder document, ChainResult chain)
    {
        if (chain.Chain.Pieces.OfType<TurnbucklePiece>().FirstOrDefault() is not { } turnbuckle || chain.Chain.Pieces.OfType<StrandPiece>().MinBy(s => s.BreakingN) is not { } strand)
        {
            return;
        }

        // How much thread it would take to bring the guy back to its set tension at that temperature.
        var give = chain.Demand.LengthM / strand.AxialStiffnessN;
        var (tighten, slacken) = (turnbuckle.OpenShare * turnbuckle.TakeUpM, (1 - turnbuckle.OpenShare) * turnbuckle.TakeUpM);
        document.Table("Travel of the turnbuckle", ["When", "#Tension", "#To bring it back to its set tension", "#Left to tighten", "#Left to slacken"], new[]
        {
            ("coldest", chain.Demand.ColdestTensionN), ("as set", chain.Demand.SetTensionN), ("hottest", chain.Demand.HottestTensionN),
        }.Select(r => (r, In: (chain.Demand.SetTensionN - r.Item2) * give)).Select(x => new Cell[]
        {
            x.r.Item1, document.Show(x.r.Item2, QuantityKind.Force, 3), x.In == 0 ? "" : $"{document.Show(Math.Abs(x.In), QuantityKind.FineLength, 2)} {(x.In > 0 ? "in" : "out")}",
            document.Show(tighten - x.In, QuantityKind.FineLength, 3), document.Show(slacken + x.In, QuantityKind.FineLength, 3),
        }));
    }
}
