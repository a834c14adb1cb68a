using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Impedance and standing wave ratio across every band.</summary>
public static class BandStudy
{
    private const int RowsShown = 13;

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("band", "Impedance and standing wave ratio as smooth curves across every band, over the real soil", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Across the bands", station.Name, station.UnitSystem);
        var (bands, findings) = BandImpedanceRun.Of(station, input.Progress, input.Cancellation);
        document.Text("Impedance at the feed point, insulator and stray capacitance included, over the real soil with every radial as a wire. A few frequencies are solved; a rational curve through them gives the rest, and its error is estimated by how far two such curves differ. The network is the one chosen for the band at its own frequency, left as it is.");
        document.Findings(input.Placed(findings));
        document.Table("Band by band", ["Mast", "Band", "#From", "#To", "#Solved", "#Error of the curve", "Network", "#SWR 2 over"], bands.Select(b => new Cell[]
        {
            b.Mast, b.Band.Title, document.Show(b.Points[0].FrequencyHz, QuantityKind.Frequency), document.Show(b.Points[^1].FrequencyHz, QuantityKind.Frequency), b.Solved.ToString(CultureInfo.InvariantCulture),
            (b.ErrorEstimate < 1e-4 ? "under 0.01 %" : (100 * b.ErrorEstimate).ToString("0.##", CultureInfo.InvariantCulture) + " %") + (b.Converged ? "" : " (!)"), b.Network ?? "none",
            b.Bandwidth is { } w ? (w.IsAtLeast ? "≥ " : "") + QuantityFormat.Digits(w.WidthHz / 1e3, 3) + " kHz" : "–",
        }));
        foreach (var band in bands)
        {
            One(document, band);
        }

        return document.Build();
    }

    private static void One(DocumentBuilder document, BandImpedance band)
    {
        document.Section($"Mast {band.Mast}, {band.Band.Title}");
        var step = Math.Max(1, (band.Points.Length - 1) / (RowsShown - 1));
        document.Table("Impedance and standing wave ratio", ["#Frequency", "#Resistance", "#Reactance", "#SWR, no network", "#SWR with the network"], band.Points.Where((p, i) => i % step == 0 || p.FrequencyHz == band.Band.FrequencyHz).Select(p => new Cell[]
        {
            document.Show(p.FrequencyHz, QuantityKind.Frequency, 5), document.Show(p.FeedOhm.Real, QuantityKind.Resistance, 3), document.Show(p.FeedOhm.Imaginary, QuantityKind.Resistance, 3), StudyWords.Swr(p.BareSwr), p.MatchedSwr is { } s ? StudyWords.Swr(s) : "–",
        }));
        document.Add(Drawings.Plots.Curves($"Impedance of mast {band.Mast}, {band.Band.Title}", "Resistance and reactance at the feed point.", "frequency, MHz", "ohms",
            [new Curve("resistance", [.. band.Points.Select(p => (p.FrequencyHz / 1e6, p.FeedOhm.Real))]), new Curve("reactance", [.. band.Points.Select(p => (p.FrequencyHz / 1e6, p.FeedOhm.Imaginary))], Drawings.Plots.Dash(1))]));
        if (band.Network is not null)
        {
            document.Add(Drawings.Plots.Curves($"Standing wave ratio of mast {band.Mast}, {band.Band.Title}", "Standing wave ratio on the line with the network, cut off at 5.", "frequency, MHz", "SWR",
                [new Curve("with the network", [.. band.Points.Select(p => (p.FrequencyHz / 1e6, Math.Min(5, p.MatchedSwr!.Value)))])]));
        }
    }

}
