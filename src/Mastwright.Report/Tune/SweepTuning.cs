using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis;
using Mastwright.Analysis.Tune;
using Mastwright.Build;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Fit;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Coils;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Tune;

/// <summary>What is asked of a measured sweep.</summary>
/// <param name="Station">The station.</param>
/// <param name="MastIndex">The mast it was taken at.</param>
/// <param name="Measured">The sweep at the analyser.</param>
/// <param name="Between">What lies between, in order from the analyser to the feed terminal.</param>
/// <param name="Fit">Inputs to fit, by word; empty for none.</param>
/// <param name="Band">Band the network is to be set for; null for none.</param>
/// <param name="Present">Settings of the network now, by part.</param>
/// <param name="Coil">The tapped coil; null when unknown.</param>
public sealed record SweepRequest(
    Station Station, int MastIndex, MeasuredSweep Measured, ImmutableArray<PlaneElement> Between, ImmutableArray<string> Fit, Band? Band,
    IReadOnlyDictionary<string, double> Present, AirCoil? Coil)
{
    /// <summary>The mast.</summary>
    public Mast Mast => Station.Masts[MastIndex];
}

/// <summary>What came of it.</summary>
/// <param name="Request">What was asked.</param>
/// <param name="AtBase">The sweep at the feed terminal; null when it has no phase.</param>
/// <param name="Predicted">The prediction over the band.</param>
/// <param name="Overlay">Sweep over prediction; null without phase.</param>
/// <param name="SwrOverlay">Ratio over ratio, when there is no phase.</param>
/// <param name="Fit">The fit; null when none was asked for or possible.</param>
/// <param name="Fitted">Inputs with the fitted values.</param>
/// <param name="Next">The next setting; null when none was asked for or possible.</param>
/// <param name="Findings">Everything worth saying.</param>
public sealed record SweepAnswer(
    SweepRequest Request, ImpedanceSweep? AtBase, ImpedanceSweep Predicted, SweepOverlay? Overlay, SwrOverlay? SwrOverlay,
    SweepFitResult? Fit, FeedInputs Fitted, NextSetting? Next, ImmutableArray<Finding> Findings);

/// <summary>Lays a measured sweep over the prediction, fits what is uncertain, and says what to set next.</summary>
public static class SweepTuning
{
    private const int PredictedPoints = 201;
    private const double WidenSinglePoint = 0.01;

    /// <summary>Answers; null with the findings that stand in its way.</summary>
    public static (SweepAnswer? Answer, ImmutableArray<Finding> Findings) Of(SweepRequest request, IProgress<AnalysisStep>? progress, CancellationToken cancellation)
    {
        var findings = new List<Finding>();
        var (from, to) = (request.Measured.FromHz, request.Measured.ToHz);
        if (!(from > 0))
        {
            return (null, [new Finding("sweep-zero", Severity.Error, "The sweep begins at zero frequency, where an antenna has no impedance.", new(request.Measured.Name, 0, 0, ""), WayOut: "Sweep from above 0 Hz, or delete that row.")]);
        }

        if (to <= from)
        {
            (from, to) = (from * (1 - WidenSinglePoint), to * (1 + WidenSinglePoint));
        }

        var (prediction, faults) = FeedPrediction.Of(request.Station, request.MastIndex, from, to, progress, cancellation);
        findings.AddRange(faults);
        if (prediction is null)
        {
            return (null, faults);
        }

        var reference = request.Measured.Impedance?.ReferenceOhm ?? request.Measured.Swr!.ReferenceOhm;
        var grid = Enumerable.Range(0, PredictedPoints).Select(i => from + ((to - from) * i / (PredictedPoints - 1))).ToArray();
        var predicted = Sweep("prediction", reference, grid, prediction.FeedOhm(prediction.Design, grid));
        progress?.Report(new AnalysisStep("Laying the sweep over the prediction", 0.8));
        if (request.Measured.Impedance is not { } atAnalyser)
        {
            return WithoutPhase(request, predicted, prediction, findings);
        }

        var moved = Collect(findings, ReferencePlane.ToAntenna(atAnalyser, request.Between));
        var overlay = moved is null ? null : Collect(findings, SweepOverlay.Of(moved, predicted));
        if (moved is null || overlay is null)
        {
            return (null, [.. findings]);
        }

        SweepFitResult? fit = null;
        var inputs = prediction.Design;
        if (!request.Fit.IsEmpty)
        {
            progress?.Report(new AnalysisStep("Fitting " + string.Join(", ", request.Fit), 0.85));
            var (reading, fitted) = SweepFitInputs.Fit(moved, prediction, request.Fit, cancellation);
            fit = Collect(findings, reading);
            inputs = fitted;
        }

        var (next, problems) = Next(request, moved, prediction);
        findings.AddRange(problems);
        return (new SweepAnswer(request, moved, predicted, overlay, null, fit, inputs, next, [.. findings]), []);
    }

    private static (SweepAnswer?, ImmutableArray<Finding>) WithoutPhase(SweepRequest request, ImpedanceSweep predicted, FeedPrediction prediction, List<Finding> findings)
    {
        var swr = request.Measured.Swr!;
        foreach (var element in request.Between)
        {
            if (element is not Cable cable)
            {
                findings.Add(new Finding("plane-needs-phase", Severity.Error, "A reading without phase cannot be moved past a choke or a stray.", new(swr.Name, 0, 0, ""), WayOut: "Export R and X or S11 with phase."));
                return (null, [.. findings]);
            }

            if (Collect(findings, ReferencePlane.ToAntenna(swr, cable)) is not { } moved)
            {
                return (null, [.. findings]);
            }

            swr = moved;
        }

        var overlay = Collect(findings, SwrOverlay.Of(swr, predicted));
        findings.Add(new Finding("sweep-no-phase", Severity.Note, "The sweep has no phase: nothing can be fitted, and no setting of the network follows from it.", new(swr.Name, 0, 0, ""), WayOut: "Export R and X or S11 with phase."));
        return overlay is null ? (null, [.. findings]) : (new SweepAnswer(request, null, predicted, null, overlay, null, prediction.Design, null, [.. findings]), []);
    }

    private static (NextSetting?, ImmutableArray<Finding>) Next(SweepRequest request, ImpedanceSweep atBase, FeedPrediction prediction)
    {
        if (request.Band is not { } band)
        {
            return (null, []);
        }

        if (atBase.Points.Length < 2 || band.FrequencyHz < atBase.FromHz || band.FrequencyHz > atBase.ToHz)
        {
            return (null, [new Finding("band-outside", Severity.Warning, FormattableString.Invariant($"The sweep does not reach {band.FrequencyHz / 1e6:0.####} MHz, so no setting for {band.Title} follows from it."), new(atBase.Name, 0, 0, ""), Allowed: FormattableString.Invariant($"{atBase.FromHz / 1e6:0.####} to {atBase.ToHz / 1e6:0.####} MHz"), WayOut: "Sweep over the band's frequency, or name another band.")]);
        }

        var measured = LoadImpedance.Table([.. atBase.Points.Select(p => (p.FrequencyHz, p.ImpedanceOhm))]).At(band.FrequencyHz)[0, 0];
        return NextSetting.Of(request.Station, request.Station.Masts[request.MastIndex].Name, band, measured, prediction.FeedOhm(prediction.Design, [band.FrequencyHz])[0], request.Present, request.Coil);
    }

    private static ImpedanceSweep Sweep(string name, double reference, double[] hz, IReadOnlyList<Complex> ohm) =>
        new(name, reference, [.. hz.Zip(ohm, (f, z) => new SweepPoint(f, z))]);

    private static T? Collect<T>(List<Finding> findings, Reading<T> reading)
        where T : class
    {
        findings.AddRange(reading.Findings);
        return reading.Value;
    }
}
