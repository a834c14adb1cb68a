using Mastwright.Analysis.Survive;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Lightning;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>The earth of every mast.</summary>
public static class EarthStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("earth", "The earth of every mast: resistance by hand and solved, soil that breaks down, step and touch", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("The earth", station.Name, station.UnitSystem).Caution(StrikeCautions.Storm);
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var mast = station.Masts[m];
            document.Section($"Mast {mast.Name}");
            var report = EarthRun.Of(station, mast, input.Result.Masts[m], input.Progress, input.Cancellation);
            document.Findings(report.Findings);
            document.Table("Resistance to remote earth, low current", ["Electrode", "#By hand", "#Solved", "Remark"], report.Rows.Select(r => new Cell[]
            {
                r.Name, r.Hand is null ? "no formula" : document.Show(r.Hand, 3), document.Show(r.Solved, 3), r.Hand?.Note ?? "",
            }).Concat(report.Limits.Select(l => new Cell[] { $"for comparison: {l.Name}", document.Show(l, 3), "", l.Name.Contains("plate", StringComparison.Ordinal) ? "as wide as the radials: they cannot lie below it" : "that holds the rods: they cannot lie below it" })));
            Breakdown(document, report);
            if (report.Rise is { } rise)
            {
                document.Table($"Step and touch between two radials while the plate rises to {document.Show(rise, 3)} (first negative stroke)", ["#Distance", "#Soil", "#Step of a metre", "#Touch"], report.Around.Select(g => new Cell[]
                {
                    document.Show(g.DistanceM, QuantityKind.Length, 3), document.Show(g.SurfaceV, 3), document.Show(g.StepV, 3), document.Show(g.TouchV, 3),
                }));
                var unit = QuantityFormat.UnitFor(1, QuantityKind.Length, document.Units);
                Curve Over(string name, Func<Protection.Earthing.GroundVoltage, double> volts, int n) => new(name, [.. report.Around.Select(g => (unit.FromSi(g.DistanceM), volts(g) / 1e3))], Plots.Dash(n));
                document.Add(Plots.Curves("Soil and step", "Voltage of the soil and of a step over the distance from the mast", $"distance, {unit.Symbol}", "voltage, kV",
                    [Over("soil", g => g.SurfaceV.Value, 0), Over("step", g => g.StepV.Value, 1), Over("touch", g => g.TouchV.Value, 2)]));
                document.Text($"By hand, a step from one to two metres beside a half ball of the same resistance: {document.Show(report.HandStep!, 3)}. " +
                    $"For orientation, half a second of mains current allows {document.Show(report.StepLimit, 3)} of step and {document.Show(report.TouchLimit, 3)} of touch (IEEE Std 80, a person of 50 kg); no standard gives limits for a strike.");
            }
        }

        return document.Build();
    }

    private static void Breakdown(DocumentBuilder document, EarthReport report)
    {
        var rows = new List<Cell[]>();
        if (report.RodUnderCurrent is { } rod)
        {
            rows.Add(["one rod that takes its share of the first negative stroke, were there no radials", document.Show(rod.Inputs[0], 3), document.Show(rod, 3)]);
        }

        if (report.RadialSheath is { } sheath)
        {
            rows.Add(["radius of broken-down soil round the radials, were the current even", "", document.Show(sheath.Value, QuantityKind.FineLength, 3)]);
        }

        document.Table("Soil that breaks down (400 kV/m)", ["What", "#Low current", "#In the stroke"], rows);
    }
}
