using System.Globalization;
using System.Numerics;
using Mastwright.Build.Sweeps;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Tune;

/// <summary>Writes what a sweep says.</summary>
public static class SweepDocument
{
    private const int RowsShown = 21;
    private const string Caution = "Transmitter off and locked out, and the mast earthed through its drain, before the analyser or a tap is touched; static and other stations' signals can hurt you and the analyser. Local codes and the makers' data come first.";

    /// <summary>The document.</summary>
    public static Document Of(SweepAnswer answer)
    {
        var request = answer.Request;
        var document = new DocumentBuilder($"Sweep of mast {request.Mast.Name} over the prediction", $"{request.Station.Name}; {request.Measured.Name}", request.Station.UnitSystem);
        document.Caution(Caution);
        if (!request.Between.IsEmpty)
        {
            document.Text($"Moved from the analyser to the feed terminal through: {string.Join(", then ", request.Between.Select(e => Words(document, e)))}.");
        }

        document.Add(SweepPlot.Of(answer));
        if (answer.Overlay is { } overlay)
        {
            Overlay(document, overlay);
        }
        else if (answer.SwrOverlay is { } swr)
        {
            Ratios(document, swr);
        }

        Fit(document, answer);
        if (answer.Next is { } next)
        {
            Next(document, answer, next);
        }

        return document.Findings(answer.Findings.DistinctBy(f => (f.Code, f.Message))).Build();
    }

    private static void Overlay(DocumentBuilder document, SweepOverlay overlay)
    {
        document.Section("Measured and predicted");
        var rows = Thin(overlay.Points.Length).Select(i => overlay.Points[i]);
        document.Table($"At the feed terminal, {overlay.Points.Length} points compared", ["#Frequency", "#R measured", "#R predicted", "#X measured", "#X predicted", "#SWR measured", "#SWR predicted"], rows.Select(p => new Cell[]
        {
            document.Show(p.FrequencyHz, QuantityKind.Frequency, 5), Ohm(document, p.MeasuredOhm.Real), Ohm(document, p.PredictedOhm.Real), Ohm(document, p.MeasuredOhm.Imaginary), Ohm(document, p.PredictedOhm.Imaginary),
            Ratio(p.MeasuredSwr), Ratio(p.PredictedSwr),
        }));
        Trail[] statistics = [overlay.MeanResistanceDifference, overlay.MeanReactanceDifference, overlay.ResistanceRms, overlay.ReactanceRms, overlay.ReflectionRms, overlay.WorstReflection];
        document.Table("Differences, measured less predicted", ["What", "#Value", "Where"], statistics.Select(t => new Cell[] { t.Name, document.Show(t, 3), t.Note ?? "" }));
        if (!overlay.Resonances.IsEmpty)
        {
            document.Table("Resonances", ["#Measured", "#Predicted", "#Shift"], overlay.Resonances.Select(r => new Cell[]
            {
                document.Show(r.MeasuredHz, QuantityKind.Frequency, 5), document.Show(r.PredictedHz, QuantityKind.Frequency, 5), (100 * r.RelativeShift).ToString("+0.00;−0.00", CultureInfo.InvariantCulture) + " %",
            }));
        }
    }

    private static void Ratios(DocumentBuilder document, SwrOverlay overlay)
    {
        document.Section("Measured and predicted standing-wave ratio");
        document.Table("", ["#Frequency", "#SWR measured", "#SWR predicted"], Thin(overlay.Points.Length).Select(i => overlay.Points[i]).Select(p => new Cell[]
        {
            document.Show(p.FrequencyHz, QuantityKind.Frequency, 5), Ratio(p.Measured), Ratio(p.Predicted),
        }));
        document.Table("Differences", ["What", "#Value"], new[] { overlay.ReflectionRms, overlay.BestMatchShift }.Select(t => new Cell[] { t.Name, document.Show(t, 3) }));
    }

    private static void Fit(DocumentBuilder document, SweepAnswer answer)
    {
        if (answer.Fit is not { } fit)
        {
            return;
        }

        document.Section("What the sweep says of the uncertain inputs");
        document.Table("Fitted, with 95 % confidence", ["Input", "#As designed", "#Fitted", "#Low", "#High", "State"], fit.Parameters.Select(p => new Cell[]
        {
            p.Parameter.Name, document.Show(p.Parameter.Start, p.Parameter.Kind), document.Show(p.Value), document.Show(p.Low, p.Parameter.Kind), document.Show(p.High, p.Parameter.Kind),
            p.AtLimit ? new Cell("at its limit", Verdict.Caution) : p.Parameter.Start >= p.Low && p.Parameter.Start <= p.High ? "as designed" : new Cell("differs", Verdict.Caution),
        }));
        document.Text($"RMS reflection distance {document.Show(fit.RmsBefore, 3)} before, {document.Show(fit.RmsAfter, 3)} after. The bounds hold the scatter of the sweep and the model as it is, not an error of calibration that moves all points together.");
        if (!fit.OutliersHz.IsEmpty)
        {
            document.Add(new Note(NoteKind.Remark, $"{fit.OutliersHz.Length} point(s) stand far out of the rest, first at {document.Show(fit.OutliersHz[0], QuantityKind.Frequency, 5)}: another station, a loose plug, or a guy that rings."));
        }

        if (fit.Parameters.Any(p => p.Parameter.Symbol == "Rg"))
        {
            document.Add(new Note(NoteKind.Assumption, "One earth loss resistance is taken for the whole sweep; that holds for a narrow band."));
        }
    }

    private static void Next(DocumentBuilder document, SweepAnswer answer, NextSetting next)
    {
        document.Section($"Next setting of the network at {document.Show(next.FrequencyHz, QuantityKind.Frequency, 5)}");
        document.Text($"The mast shows {Show(document, next.MeasuredOhm)} at the feed terminal; {Show(document, next.PredictedOhm)} was predicted. The present settings give an SWR of {Ratio(next.SwrNow)} on the line, the next ones {Ratio(next.SwrNext)} with the losses of the parts in. Network: {next.Network}.");
        if (next.OtherForm)
        {
            document.Add(new Note(NoteKind.Assumption, "The present form cannot match the mast as measured, whatever its settings; another form is given."));
        }

        var coil = answer.Request.Coil;
        document.Table("", ["Part", "What", "#Now", "#Next", "#Change", .. coil is null ? Array.Empty<string>() : ["#Tap now", "#Tap next"]], next.Parts.Select(p => (Cell[])
        [
            p.Name, p.Title, p.Now is { } now ? document.Show(now, p.Kind) : "not there", document.Show(p.Next, p.Kind), p.Now is { } n ? Percent((p.Next / n) - 1) : "",
            .. coil is null ? Array.Empty<Cell>() : [Turns(p, p.TurnsNow, p.Now is not null), Turns(p, p.TurnsNext, true)],
        ]));
        document.Add(new Note(NoteKind.Remark, answer.Request.Present.Count > 0 ? "Present settings as given; what is not given is taken from the design." : "Present settings are taken from the design; give what is really set to have the change right."));
        if (coil is not null)
        {
            document.Add(new Note(NoteKind.Remark, $"Taps count turns from one end of a coil of {coil.Turns.ToString("0.##", CultureInfo.InvariantCulture)} turns, {document.Show(coil.InductanceH, QuantityKind.Inductance)} in all, the rest left open."));
        }
    }

    private static Cell Turns(PartSetting part, double? turns, bool wanted) =>
        part.Kind != QuantityKind.Inductance || !wanted ? "" : turns is { } t ? t.ToString("0.0", CultureInfo.InvariantCulture) : "beyond this coil";

    // A sweep may have a thousand points; a table of them helps nobody.
    private static IEnumerable<int> Thin(int count) =>
        count <= RowsShown ? Enumerable.Range(0, count) : Enumerable.Range(0, RowsShown).Select(i => (int)Math.Round((double)i * (count - 1) / (RowsShown - 1)));

    private static string Words(DocumentBuilder document, PlaneElement element) => element switch
    {
        Cable c => $"{document.Show(c.LengthM, QuantityKind.Length)} of {document.Show(c.CharacteristicOhm, QuantityKind.Resistance)} cable, velocity factor {QuantityFormat.Digits(c.VelocityFactor, 3)}, {QuantityFormat.Digits(c.LossDbPerM * 100, 3)} dB per 100 m at {document.Show(c.LossAtHz, QuantityKind.Frequency)}",
        SeriesChoke s => $"a series choke of {document.Show(s.Branch.InductanceH, QuantityKind.Inductance)} and {document.Show(s.Branch.ResistanceOhm, QuantityKind.Resistance)}",
        DrainChoke d => $"a drain choke of {document.Show(d.Branch.InductanceH, QuantityKind.Inductance)} and {document.Show(d.Branch.ResistanceOhm, QuantityKind.Resistance)}",
        StrayShunt s => $"a stray capacitance of {document.Show(s.CapacitanceF, QuantityKind.Capacitance)}",
        _ => element.ToString(),
    };

    private static string Show(DocumentBuilder document, Complex z) =>
        $"{QuantityFormat.Digits(z.Real, 4)} {(z.Imaginary < 0 ? "−" : "+")} j{document.Show(Math.Abs(z.Imaginary), QuantityKind.Resistance)}";

    private static string Ohm(DocumentBuilder document, double value) => document.Show(value, QuantityKind.Resistance);

    private static string Ratio(double swr) => double.IsInfinity(swr) || swr > 999 ? "> 999" : QuantityFormat.Digits(swr, 3);

    private static string Percent(double share) => (100 * share).ToString("+0.0;−0.0;0", CultureInfo.InvariantCulture) + " %";
}
