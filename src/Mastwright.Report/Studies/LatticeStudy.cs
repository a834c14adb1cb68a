using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Catalog;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Whether one round conductor may stand for a lattice mast.</summary>
public static class LatticeStudy
{
    // From this difference on the legs should be taken one by one.
    private const double Noticeable = 0.03;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("lattice", "Whether one round conductor may stand for a lattice mast: both ways solved and compared on every band", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("The lattice at radio frequency", station.Name, station.UnitSystem);
        var (bands, findings) = LatticeRun.Of(station, input.Progress, input.Cancellation);
        if (bands.IsEmpty)
        {
            document.Findings(input.Placed(findings));
            return document.Text("No mast of this station is a lattice: tubes are solved as they are.").Build();
        }

        document.Text("Each mast bare over perfect ground: once as one round conductor of the radius that stands for its legs, once with every leg a wire of its own, tied together where sections and guys meet. Diagonals and horizontals are left out of both.");
        document.Findings(input.Placed(findings));
        foreach (var mast in bands.GroupBy(b => b.Mast))
        {
            document.Section($"Mast {mast.Key}");
            foreach (var section in station.Masts.First(m => m.Name == mast.Key).Sections.Where(s => s.Lattice is not null).DistinctBy(s => s.Lattice))
            {
                var row = Catalogue.Default.Lattices[section.Lattice!];
                document.Text($"{row.Name}: {row.Legs} legs of {document.Show(row.LegDiameterM, QuantityKind.FineLength, 3)} on faces of {document.Show(row.FaceWidthM, QuantityKind.FineLength, 3)} act like one conductor of {document.Show(2 * WireModels.RadiusM(section), QuantityKind.FineLength, 3)} diameter.");
            }

            document.Table("One conductor beside every leg", ["Band", "#One conductor", "#Every leg", "#Apart", "#As if longer by", "#Heat in the mast, one", "#Every leg"], mast.Select(b => new Cell[]
            {
                b.Band.Title, StudyWords.Ohm(b.EquivalentOhm), StudyWords.Ohm(b.LegsOhm), StudyWords.Share(b.Apart), (100 * b.LengthApart).ToString("+0.00;-0.00", CultureInfo.InvariantCulture) + " %", Heat(b.EquivalentHeat), Heat(b.LegsHeat),
            }));
            var worst = mast.MaxBy(b => Math.Abs(b.LengthApart))!;
            document.Text(Math.Abs(worst.LengthApart) < Noticeable
                ? $"The two differ at most as a change of {StudyWords.Share(Math.Abs(worst.LengthApart))} in height would make them differ ({worst.Band.Title}): less than soil, guys and the base region bring. One conductor is justified."
                : $"On {worst.Band.Title} the two differ as a change of {StudyWords.Share(Math.Abs(worst.LengthApart))} in height would make them differ: put “lattice-as: legs” into the mast.");
        }

        return document.Build();
    }

    private static string Heat(double share) => (100 * share).ToString("0.00", CultureInfo.InvariantCulture) + " %";
}
