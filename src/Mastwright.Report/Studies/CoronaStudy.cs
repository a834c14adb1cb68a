using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Statics;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Static and corona of every mast.</summary>
public static class CoronaStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("corona", "Static and corona: surface gradients, onset by weather, quiet ring, drain, guys", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Static and corona", input.Station.Name, input.Station.UnitSystem).Caution(StaticStudy.Caution).Caution(RfCorona.Caution);
        for (var m = 0; m < input.Station.Masts.Length; m++)
        {
            var (mast, result) = (input.Station.Masts[m], input.Result.Masts[m]);
            document.Section($"Mast {mast.Name}");
            var report = StaticsRun.Of(input.Station, mast, result, input.Result.Groups, input.Progress, input.Cancellation);
            document.Findings(report.Findings);
            if (report.Static is { } still)
            {
                document.Checks("Checks", report.Checks);
                if (CoronaMap.Of(mast, report, document.Units) is { } map)
                {
                    document.Add(map);
                }

                Field(document, mast, still);
                Ring(document, input.Station, report);
                Drain(document, input.Station, report);
                Points(document, report);
                UnderPower(document, report, result);
                Surfaces(document, report);
                Guys(document, report);
            }
        }

        return document.Build();
    }

    private static void Field(DocumentBuilder document, Mast mast, StaticResult still)
    {
        document.Table("Where it sprays first, the mast drained to earth", ["Part", "#Height", "#Field there over atmospheric field", "#Onset gradient there", "#Atmospheric field at onset", .. Weather.Usual.Select(w => "#" + w.Name)],
            still.Places.Select(p => new Cell[]
            {
                p.Part, document.Show(p.HeightM, QuantityKind.Length, 3), document.Show(p.Enhancement, 3), document.Show(p.OnsetGradient, 3), document.Show(p.OnsetField, 3),
            }.Concat(Weather.Usual.Select(w => w.FieldVPerM.Value > p.OnsetField.Value ? new Cell("sprays", Verdict.Caution) : new Cell("quiet", Verdict.Pass))).ToArray()));
        var unit = Model.Units.QuantityFormat.UnitFor(1, QuantityKind.Length, document.Units);
        double[] up = [.. still.Along.Select(p => unit.FromSi(p.HeightM))];
        Curve[] weathers = [.. Weather.Usual.Skip(1).Select(w => Curve.Of(w.Name, [up[0], up[^1]], [w.FieldVPerM.Value / 1e3, w.FieldVPerM.Value / 1e3]))];
        document.Add(Plots.Curves("Onset of corona along the mast", "Atmospheric field in which each height of shaft and rod would begin to spray, by decades: what lies below a weather's line sprays in it",
            new PlotAxis($"height, {unit.Symbol}"), new PlotAxis("atmospheric field, kV/m", true), [Curve.Of("shaft and rod", up, still.Along.Select(p => p.OnsetVPerM / 1e3)), .. weathers]));
        document.Table("By hand beside it", ["What", "#Boundary elements", "#By hand"],
        [
            ["field at the tip over atmospheric field", document.Show(still.Places[0].Enhancement, 3), document.Show(still.HandEnhancement, 3)],
        ]);
        if (mast.Top is null && mast.Sections[^1].Lattice is not null)
        {
            document.Add(new Note(NoteKind.Assumption, "Above, a lattice top is taken as a round shaft of the same girth; its leg ends stand in a table of their own below, as round ends. Cut edges, bolts and wire tips are sharper still and spray earlier."));
        }

        if (still.EffectiveHeightM is { } height)
        {
            document.Table("The mast left floating, before anything sparks or sprays",
                ["Weather", "#Atmospheric field", "#Potential of the mast", "#Its charge"], still.FloatingV.Select(f => new Cell[]
                {
                    f.Weather.Name, document.Show(f.Weather.FieldVPerM, 3), document.Show(f.Volts, 3), document.Show(f.Volts.Value * still.CapacitanceF.Value * 1e6, QuantityKind.Ratio, 3) + " µC",
                }));
            document.Text($"Capacitance {document.Show(still.CapacitanceF, 3)}, effective height {document.Show(height, 3)}.");
        }
    }

    private static void Ring(DocumentBuilder document, Station station, StaticsReport report)
    {
        var field = document.Show(station.Statics.QuietFieldVPerM, QuantityKind.ElectricField, 3);
        if (report.Ring is not { } ring)
        {
            return;
        }

        document.Findings(ring.Findings);
        if (ring.AlreadyQuiet)
        {
            document.Text($"Without any ring the top is quiet up to {field}.");
        }
        else if (!ring.Choices.IsEmpty)
        {
            document.Table($"The smallest ring that keeps it quiet up to {field}, for each tube, level with the highest point", ["#Tube", "#Ring diameter", "#Quiet up to"], ring.Choices.Select(c => new Cell[]
            {
                document.Show(c.Ring.TubeDiameterM, QuantityKind.FineLength, 3), document.Show(c.Ring.RingDiameterM, QuantityKind.Length, 3), document.Show(c.OnsetFieldVPerM, QuantityKind.ElectricField, 3),
            }));
        }
    }

    private static void Drain(DocumentBuilder document, Station station, StaticsReport report)
    {
        if (report.Current is not { } current || report.Drain is not { } drain)
        {
            return;
        }

        document.Table("Current of point discharge in the storm field", ["Law", "#Current"],
        [
            [$"in wind of {document.Show(station.Statics.StormWindMPerS, QuantityKind.Speed, 3)}, this mast", document.Show(current, 3)],
            ["by hand: square law of one 8.4 m point at Kew", document.Show(PointDischarge.AtKew(Weather.Usual[^1].FieldVPerM), 3)],
        ]);
        document.Table("A drain across the base", ["What", "#Value"],
        [
            ["smallest resistance, for the loss allowed", document.Show(drain.LowestOhm, 3)],
            ["largest resistance, for the voltage allowed", document.Show(drain.HighestOhm, 3)],
            ["resistor to fit", drain.ResistorOhm is { } r ? document.Show(r, 3) : "none fits"],
            ["its rating", drain.RatingW is { } w ? document.Show(w, 3) : "–"],
            ["time constant with the mast", drain.TimeConstantS is { } t ? document.Show(t, 3) : "–"],
            [$"or a choke of Q {StaticDrain.ChokeQ:0}", document.Show(drain.ChokeH, 3)],
        ]);
        document.Table("Loss in that resistor", ["Band", "#Loss", "#Share of the power"], drain.Losses.Select(l => new Cell[]
        {
            l.Band, document.Show(l.LossW, 3), Model.Units.QuantityFormat.Digits(100 * l.Share.Value, 2) + " %",
        }));
        document.Findings(drain.Findings);
    }

    private static void Points(DocumentBuilder document, StaticsReport report)
    {
        if (report.TopPoints.IsEmpty)
        {
            return;
        }

        document.Table("Thin metal on the top in three dimensions, drained to earth", ["Part", "#Height", "#Field there over atmospheric field", "#Atmospheric field at onset", .. Weather.Usual.Select(w => "#" + w.Name)],
            report.TopPoints.Select(p => new Cell[]
            {
                p.Part, document.Show(p.HeightM, QuantityKind.Length, 3), document.Show(p.Enhancement, 3), document.Show(p.OnsetField, 3),
            }.Concat(Weather.Usual.Select(w => w.FieldVPerM.Value > p.OnsetField.Value ? new Cell("sprays", Verdict.Caution) : new Cell("quiet", Verdict.Pass))).ToArray()));
    }

    private static void Surfaces(DocumentBuilder document, StaticsReport report)
    {
        if (report.RfSurfaces.IsEmpty)
        {
            return;
        }

        document.Table("Surfaces under full power on their worst band, mismatch and modulation included", ["Part", "Band", "#Height", "#Gradient, crest", "#Onset, crest", "#Share of onset"], report.RfSurfaces.Select(r => new Cell[]
        {
            r.Surface.Part, r.Band, document.Show(r.Surface.HeightM, QuantityKind.Length, 3), document.Show(r.Surface.GradientVPerM, 3), document.Show(r.Surface.OnsetVPerM, 3),
            r.Surface.Use > 1 ? new Cell(Model.Units.QuantityFormat.Digits(100 * r.Surface.Use, 3) + " %", Verdict.Fail) : Model.Units.QuantityFormat.Digits(100 * r.Surface.Use, 3) + " %",
        }));
        document.Text("Gradients follow from the charge on the solved wires. Ends of wire, clips and thimbles spray earlier than the round wire beside them: leave them a factor of two.");
    }

    private static void UnderPower(DocumentBuilder document, StaticsReport report, MastResult result)
    {
        if (report.UnderPower.IsEmpty || result.Bands.IsEmpty)
        {
            return;
        }

        document.Table("Onset under the station's own voltage at foot and top", ["Place", "#Height", "#Onset, crest", "#Working crest, mismatch and modulation included"], report.UnderPower.Select(p => new Cell[]
        {
            p.Part, document.Show(p.HeightM, QuantityKind.Length, 3), document.Show(p.OnsetPeakV, 3),
            p.Part == "foot" ? document.Show(FootCrest(report, result), QuantityKind.PeakVoltage, 3) : TopVolts(document, report),
        }));
    }

    // The check of the foot carries the crest it was held against.
    private static double FootCrest(StaticsReport report, MastResult result) =>
        report.Checks.FirstOrDefault(c => c.Id.StartsWith("survive.rf-corona[", StringComparison.Ordinal) && c.Id.EndsWith(", foot]", StringComparison.Ordinal))?.Demand.Value ?? result.Bands.Max(b => b.BasePeakV.Value);

    private static string TopVolts(DocumentBuilder document, StaticsReport report) =>
        report.RfSurfaces.FirstOrDefault(r => r.Surface.Part is "top" or "rod and top")?.Surface.GradientVPerM.Inputs.FirstOrDefault(i => i.Kind == QuantityKind.PeakVoltage) is { } volts ? document.Show(volts, 3) : "not solved";

    private static void Guys(DocumentBuilder document, StaticsReport report)
    {
        if (report.Guys is not { } guys)
        {
            return;
        }

        var storm = Weather.Usual[^1].FieldVPerM.Value;
        document.Text($"Guys in the atmospheric field by charge simulation, {guys.Unknowns} unknowns; pieces between insulators float without charge. On the mast among its guys the field is {document.Show(guys.MastEnhancement, 3)} times the atmospheric one.");
        document.Table("Pieces of the guys", ["Guy", "#Piece from the top", "#Potential in the storm field", "#Field on it over atmospheric field", "#Atmospheric field at onset"], guys.Sections.Select(s => new Cell[]
        {
            s.Guy, document.Show(s.Section, QuantityKind.Count), document.Show(Math.Abs(s.PotentialPerFieldM.Value) * storm, QuantityKind.PeakVoltage, 3), document.Show(s.Enhancement, 3), document.Show(s.OnsetField, 3),
        }));
        document.Table("Guy insulators in the storm field, dry and before anything leaks", ["Guy", "#Insulator from the top", "#Voltage across it"], guys.Insulators.Select(i => new Cell[]
        {
            i.Guy, document.Show(i.Insulator, QuantityKind.Count), document.Show(i.VoltsPerFieldM.Value * storm, QuantityKind.PeakVoltage, 3),
        }));
    }
}
