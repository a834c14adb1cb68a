using Mastwright.Analysis.Survive;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>The base gap of every mast: its window, the feeler, what bounds it on both sides, and how it fires in a strike.</summary>
public static class GapStudy
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("gap", "The base gap: its window, the feeler in inch and millimetre, what bounds it on both sides", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("The base gap", station.Name, station.UnitSystem).Caution(GapAnswer.Caution);
        for (var m = 0; m < station.Masts.Length; m++)
        {
            var mast = input.Result.Masts[m];
            document.Section($"Mast {mast.Name}");
            var report = GapOnStrike.Of(station, station.Masts[m], mast, input.Result.Groups);
            document.Table("Working peaks", ["Band", "#Base crest at full power", "#With mismatch and modulation"], report.Request.Bands
                .OrderByDescending(b => b.CarrierPeakV.Value * b.ModulationFactor).Select(b => new Cell[]
                {
                    b.Name, document.Show(b.CarrierPeakV, 3), document.Show(b.CarrierPeakV.Value * b.ModulationFactor * report.Request.MismatchFactor, QuantityKind.PeakVoltage, 3),
                }));
            document.Table("Parts behind the gap", ["Part", "#Withstands"], report.Request.Protected.Select(p => new Cell[] { p.Name, document.Show(p.StrengthPeakV, 3) }));
            Answer(document, mast.Gap, "The setting", "No gap fits");
            document.Findings(mast.Gap.Findings);
            document.Checks("Checks", input.Result.Checks.Where(c => c.Id.StartsWith("survive.gap", StringComparison.Ordinal) && c.Id.EndsWith($"[{mast.Name}]", StringComparison.Ordinal)));
            Window(document, report);
            Strike(document, report);
        }

        return document.Build();
    }

    private static void Answer(DocumentBuilder document, GapAnswer answer, string fits, string fitsNot)
    {
        switch (answer)
        {
            case GapSetting setting:
                Setting(document, setting, fits);
                break;
            case NoGapFits none:
                None(document, none, fitsNot);
                break;
        }
    }

    private static void Setting(DocumentBuilder document, GapSetting s, string title) => document.Table(title, ["What", "#Value"],
    [
        ["set", document.Show(s.SpacingM, 3)],
        ["feeler", $"{s.Feeler.InchText} or {QuantityFormat.Digits(s.Feeler.Millimetres, 3)} mm"],
        ["smallest that holds off, setting error included", document.Show(s.WindowLowM, 3)],
        ["largest that protects, setting error included", document.Show(s.WindowHighM, 3)],
        ["highest working peak, mismatch and modulation included", document.Show(s.WorkingPeakV, 3)],
        ["holds at radio frequency, wet, thinnest air, set too small", document.Show(s.HoldOffV, 3)],
        ["sparks at slowly rising voltage, dry, densest air", document.Show(s.StaticSparkV, 3)],
        ["fires on a lightning front, densest air, set too wide", document.Show(s.FiringV, 3)],
        ["weakest part behind it", document.Show(s.WeakestStrengthV, 3)],
    ]);

    private static void None(DocumentBuilder document, NoGapFits n, string title)
    {
        document.Table(title, ["What", "#Value"],
        [
            ["smallest that holds off", document.Show(n.WindowLowM, 3)],
            ["largest that protects", n.WindowHighM is { } high ? document.Show(high, 3) : "none"],
            [$"highest working peak ({n.GoverningBand})", document.Show(n.WorkingPeakV, 3)],
            [$"weakest part ({n.WeakestPart})", document.Show(n.WeakestStrengthV, 3)],
            ["strength every part would need", document.Show(n.StrengthNeededV, 3)],
            ["working peak that would be allowed", n.WorkingPeakAllowedV.Value > 0 ? document.Show(n.WorkingPeakAllowedV, 3) : "none"],
        ]);
        document.Add(new Steps([.. n.Changes]));
    }

    // Both sides of the window over the spacing: what the gap holds must lie above the lower level, what it fires at below the upper one.
    private static void Window(DocumentBuilder document, GapReport report)
    {
        if (report.SpacingM is not { } s || report.Standard is GapInputUnusable)
        {
            return;
        }

        var (working, weakest) = report.Standard switch
        {
            GapSetting g => (g.WorkingPeakV.Value, g.WeakestStrengthV.Value),
            NoGapFits n => (n.WorkingPeakV.Value, n.WeakestStrengthV.Value),
            _ => (0, 0),
        };
        var unit = QuantityFormat.UnitFor(0.005, QuantityKind.FineLength, document.Units);
        var at = Enumerable.Range(1, 40).Select(i => s * i / 16.0).ToArray();
        double[] x = [.. at.Select(unit.FromSi)];
        Curve Of(string name, Func<double, double> volts) => new(name, [.. at.Select((d, i) => (x[i], volts(d) / 1000))]);
        Curve[] lines =
        [
            Of("holds, radio frequency", d => GapWindow.HoldOffAt(report.Request, d).Value),
            Of("fires, standard front", d => GapWindow.FiringAt(report.Request, d).Value),
            .. report.Fronts.Select(f => Of("fires, " + f.Name.Split(',')[0], d => GapWindow.FiringOn(report.Request, f, d).Value)),
            Of("working peak + margin", _ => working * report.Request.HoldOffMargin),
            Of("weakest part − margin", _ => weakest / report.Request.ProtectionMargin),
        ];
        document.Add(Plots.Curves("The window of the gap", "The window: above the lower level it holds, below the upper one it protects. What the gap holds and what it fires at over its spacing, volts by decades; the setting lies at two fifths of the level axis",
            new PlotAxis($"spacing, {unit.Symbol}"), new PlotAxis("crest voltage, kV", true), [.. lines.Select((l, n) => l with { Dash = Plots.Dash(n) })]));
    }

    private static void Strike(DocumentBuilder document, GapReport report)
    {
        if (report.OnStrike is not { } onStrike || report.SpacingM is not { } s)
        {
            return;
        }

        var waits = report.Firings.Any(f => f.LateV is not null);
        document.Table($"The gap of {document.Show(s, QuantityKind.FineLength, 3)} in a strike: its volt-time curve, densest air, set too wide",
            ["Stroke", "#Fires after", "#at", "#Over its static voltage", .. waits ? ["#One time in twenty above"] : Array.Empty<string>()],
            report.Firings.Select(f => new Cell[]
            {
                f.Stroke, f.FiresAfterS is { } t ? document.Show(t, QuantityKind.Time, 3) : "end of the front", document.Show(f.FiringV, 3), QuantityFormat.Digits(f.Ratio, 3),
            }.Concat(waits ? [f.LateV is { } late ? document.Show(late, QuantityKind.PeakVoltage, 3) : (Cell)"–"] : []).ToArray()));
        double[] lags = [30e-9, 100e-9, 300e-9];
        document.Table("The same gap, were its lag another: no volt-time table of gaps of millimetres is published, so trust the order and not the digit",
            ["Stroke", .. lags.Select(l => $"#lag of {document.Show(l, QuantityKind.Time, 2)}")],
            report.Fronts.Select(f => lags.Select(l => document.Show(GapWindow.FiringOn(report.Request with { FormativeLagS = l, StatisticalLagS = 0 }, f, s).Value, QuantityKind.PeakVoltage, 2))
                .Prepend(f.Name).Select(t => (Cell)t).ToArray()));
        document.Text(
            $"On a standard front the gap is counted with {QuantityFormat.Digits(GapWindow.ImpulseRatio(report.Request).Value, 3)} times its static voltage, and the verdict is held against that, because strengths of parts are stated for that front. " +
            "A stroke is steeper: the table and the window below take each stroke's own front, with no network beside the gap, which is the steepest there can be. What then reaches each part through the network is followed by the study of the strike.");
        Answer(document, onStrike, "The window on the steepest stroke", "No gap fits on the steepest stroke");
        if (onStrike is NoGapFits)
        {
            document.Text("That no gap fits here does not mean that none should be fitted: keep the gap of the standard front, and do one or more of the above.");
        }
    }
}
