using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Electric and magnetic fields around the base.</summary>
public static class NearFieldStudy
{
    private const string Caution =
        "These are fields, not permission: which limit is law, and how it averages, is for your country to say. `mastwright people` holds the fields against the published limits. Metal and people nearby change them.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("near-field", "Electric and magnetic fields around the base over the real soil, by distance and as a map", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Fields near the mast", station.Name, station.UnitSystem).Caution(Caution);
        var (fields, findings) = NearFieldRun.Of(station, input.Progress, input.Cancellation);
        document.Text("RMS fields at full power without averaging, each mast alone, over the real soil: midway between two guys, and under a guy where pieces that ring raise them.");
        document.Findings(input.Placed(findings));
        foreach (var field in fields)
        {
            document.Section($"Mast {field.Mast}, {field.Band.Title}, {document.Show(field.Band.PowerW, QuantityKind.Power, 3)}");
            var heights = NearFieldRun.HeightsM;
            foreach (var (title, rows) in new[] { ("Between two guys", field.BetweenGuys), ("Under a guy", field.AlongGuy) })
            {
                document.Table(title, ["#Distance", .. heights.Select(h => $"#E at {Height(document, h)}"), .. heights.Select(h => $"#H at {Height(document, h)}")], NearFieldRun.DistancesM.Select(d =>
                    heights.Select(h => (Cell)document.Show(At(rows, d, h).ElectricVPerM, QuantityKind.ElectricField, 3))
                        .Concat(heights.Select(h => (Cell)document.Show(At(rows, d, h).MagneticAPerM, QuantityKind.MagneticField, 3)))
                        .Prepend(document.Show(d, QuantityKind.Length, 3)).ToArray()));
            }

            if (!field.Map.IsEmpty)
            {
                document.Add(RadiatePlots.Map(field, input.Station.UnitSystem));
            }
        }

        return document.Build();
    }

    private static FieldAt At(IEnumerable<FieldAt> rows, double distanceM, double heightM) => rows.First(r => r.DistanceM == distanceM && r.HeightM == heightM);

    private static string Height(DocumentBuilder document, double heightM) => string.Create(CultureInfo.InvariantCulture, $"{document.Show(heightM, QuantityKind.Length, 2)}");
}
