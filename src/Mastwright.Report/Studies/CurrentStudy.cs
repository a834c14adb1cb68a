using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Currents along every wire.</summary>
public static class CurrentStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("currents", "Currents along mast, top wires, guys and radials on every band, drawn and in a table", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Currents", station.Name, station.UnitSystem);
        var (bands, findings) = CurrentRun.Of(station, input.Progress, input.Cancellation);
        document.Text("RMS currents at full power over the real soil, one mast driven and the others open. Alike wires show the one that carries most.");
        document.Findings(input.Placed(findings));
        foreach (var band in bands)
        {
            document.Section($"Mast {band.Mast}, {band.Band.Title}: {document.Show(band.Band.PowerW, QuantityKind.Power, 3)}, {document.Show(band.BaseRms, QuantityKind.RmsCurrent, 3)} into the base");
            document.Table("Currents", ["Wires", "#Alike", "#At the start", "#Largest", "#There, from the start", "#At the end"], band.Wires.Where(w => w.AmpsRms.Length > 0).GroupBy(w => RadiatePlots.Family(w.Wire)).Select(g =>
            {
                var w = g.MaxBy(x => x.AmpsRms.Max())!;
                return new Cell[]
                {
                    g.Count() > 1 ? g.Key : w.Wire, g.Count().ToString(System.Globalization.CultureInfo.InvariantCulture), document.Show(w.AmpsRms[0], QuantityKind.RmsCurrent, 3), document.Show(w.AmpsRms.Max(), QuantityKind.RmsCurrent, 3),
                    document.Show(w.AlongM[w.AmpsRms.IndexOf(w.AmpsRms.Max())], QuantityKind.Length, 3), document.Show(w.AmpsRms[^1], QuantityKind.RmsCurrent, 3),
                };
            }));
            document.Add(RadiatePlots.Currents(band, document.Units));
        }

        return document.Build();
    }
}
