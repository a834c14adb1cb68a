using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>What the guys do at radio frequency, and where to cut them.</summary>
public static class GuyCurrentStudy
{
    private const string Caution =
        "Stored tension, falls and a falling mast kill. Put insulators into a guy on the ground, or take the load with a temporary guy first; never slacken a guy of a standing mast alone. Insulators carry the guy's whole force: hold the maker's strength against it.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("guy-currents", "Which guy pieces resonate on which band, the voltage across every insulator, and where to cut", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Guys at radio frequency", station.Name, station.UnitSystem).Caution(Caution);
        document.Text("Each mast alone at full power, over perfect ground. A piece rings when its current passes a tenth of the largest on the mast; pieces bonded to the mast count as part of it. Voltages are peak values; the figure allowed is half the insulator's wet flashover at power frequency.");
        foreach (var mast in GuyCurrentRun.Of(station, input.Progress, input.Cancellation))
        {
            document.Section($"Mast {mast.Mast}");
            if (mast.Drives.All(d => d.Pieces.IsEmpty))
            {
                document.Text("No guy of this mast conducts.");
                continue;
            }

            document.Checks("Insulators", mast.Checks);
            Ringing(document, mast);
            Pieces(document, mast);
            Insulators(document, mast);
        }

        return document.Build();
    }

    private static void Ringing(DocumentBuilder document, GuyCurrents mast)
    {
        var ringing = mast.Drives.SelectMany(d => d.Pieces.Where(p => p.Rings).Select(p => (d.Case, Piece: p))).ToList();
        if (ringing.Count == 0)
        {
            document.Text("No piece rings on any band: leave the guys as they are.");
            return;
        }

        document.Table("Pieces that ring, the worst guy of each level", ["Band", "Guy", "#From", "#To", "#Length in wavelengths", "#Largest current RMS", "#Of the mast's", "Foot"], ringing.GroupBy(r => (r.Case, r.Piece.Level, r.Piece.Piece)).Select(g => g.MaxBy(r => r.Piece.OfMast)).OrderByDescending(r => r.Piece.OfMast).Select(r => new Cell[]
        {
            r.Case, $"level {r.Piece.Level} to {r.Piece.Anchor}", document.Show(r.Piece.FromM, QuantityKind.Length, 3), document.Show(r.Piece.ToM, QuantityKind.Length, 3), r.Piece.Waves.ToString("0.00", CultureInfo.InvariantCulture),
            document.Show(r.Piece.LargestRms, QuantityKind.RmsCurrent, 3), StudyWords.Share(r.Piece.OfMast), r.Piece.Grounded ? "in the ground" : "insulated",
        }));
        var still = mast.AfterCuts.SelectMany(d => d.Pieces).Where(p => p.Rings).ToList();
        var most = mast.AfterCuts.SelectMany(d => d.Pieces).Where(p => !p.Bonded).Select(p => p.OfMast).DefaultIfEmpty().Max();
        document.Table("Where to cut: an insulator more in every guy of the level", ["Level", "#At, from the mast"], mast.Cuts.Select(c => new Cell[] { c.Level.ToString(CultureInfo.InvariantCulture), document.Show(c.AtM, QuantityKind.Length, 3) }));
        document.Text(still.Count == 0
            ? $"Solved again with these cuts no piece rings; the largest carries {StudyWords.Share(most)} of the mast's current. Put the places into “insulators-at” of the level."
            : $"Solved again with these cuts {still.Count} pieces still ring, the largest at {StudyWords.Share(most)}: move cuts, or take rope that does not conduct for the lower ends.");
    }

    private static void Pieces(DocumentBuilder document, GuyCurrents mast) => document.Table("Largest current of each piece over the mast's, the worst guy of the level", ["Piece", "#Length", .. mast.Drives.Select(d => "#" + d.Case)],
        mast.Drives[0].Pieces.GroupBy(p => (p.Level, p.Piece)).OrderBy(g => g.Key).Select(g => mast.Drives
            .Select(d => d.Pieces.Where(p => (p.Level, p.Piece) == g.Key).MaxBy(p => p.OfMast)!)
            .Select(p => new Cell(StudyWords.Share(p.OfMast), p.Rings ? Verdict.Caution : null))
            .Prepend(document.Show(g.Max(p => p.ToM - p.FromM), QuantityKind.Length, 3)).Prepend($"level {g.Key.Level}, piece {g.Key.Piece}{(g.First().Bonded ? ", bonded" : g.First().Grounded ? ", grounded" : "")}").ToArray()));

    private static void Insulators(DocumentBuilder document, GuyCurrents mast) => document.Table("Peak voltage across each insulator, the worst guy of the level", ["Level", "#At, from the mast", .. mast.Drives.Select(d => "#" + d.Case)],
        mast.Drives[0].Insulators.GroupBy(i => (i.Level, At: Math.Round(i.AtM, 1))).OrderBy(g => g.Key).Select(g => mast.Drives
            .Select(d => (Cell)document.Show(d.Insulators.Where(i => (i.Level, At: Math.Round(i.AtM, 1)) == g.Key).Max(i => i.PeakV), QuantityKind.PeakVoltage, 3))
            .Prepend(document.Show(g.Key.At, QuantityKind.Length, 3)).Prepend(g.Key.Level.ToString(CultureInfo.InvariantCulture)).ToArray()));
}
