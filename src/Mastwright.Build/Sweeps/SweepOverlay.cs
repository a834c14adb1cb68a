using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Model.Trails;
using MathNet.Numerics.Interpolation;

namespace Mastwright.Build.Sweeps;

/// <summary>Measured and predicted at one frequency.</summary>
/// <param name="FrequencyHz">Frequency.</param>
/// <param name="MeasuredOhm">Measured impedance.</param>
/// <param name="PredictedOhm">Predicted impedance.</param>
/// <param name="MeasuredSwr">Measured standing-wave ratio.</param>
/// <param name="PredictedSwr">Predicted standing-wave ratio.</param>
/// <param name="ReflectionDistance">|Γ measured − Γ predicted|: 0 the same, 2 opposite ends of the chart.</param>
public readonly record struct OverlayPoint(double FrequencyHz, Complex MeasuredOhm, Complex PredictedOhm, double MeasuredSwr, double PredictedSwr, double ReflectionDistance);

/// <summary>A resonance found in both sweeps.</summary>
/// <param name="MeasuredHz">Where the measured reactance passes zero.</param>
/// <param name="PredictedHz">The nearest predicted resonance.</param>
public readonly record struct ResonancePair(double MeasuredHz, double PredictedHz)
{
    /// <summary>Measured less predicted, over predicted.</summary>
    public double RelativeShift => (MeasuredHz - PredictedHz) / PredictedHz;
}

/// <summary>A measured sweep laid over a prediction.</summary>
/// <param name="ReferenceOhm">Reference for reflection and standing-wave ratio.</param>
/// <param name="Points">One for every measured frequency inside the predicted range.</param>
/// <param name="Resonances">Measured resonances with the nearest predicted ones.</param>
/// <param name="MeanResistanceDifference">Mean of measured less predicted resistance.</param>
/// <param name="MeanReactanceDifference">Mean of measured less predicted reactance.</param>
/// <param name="ResistanceRms">Root mean square of the resistance differences.</param>
/// <param name="ReactanceRms">Root mean square of the reactance differences.</param>
/// <param name="ReflectionRms">Root mean square of the reflection distances.</param>
/// <param name="WorstReflection">Largest reflection distance; its note says where.</param>
public sealed record SweepOverlay(
    double ReferenceOhm,
    ImmutableArray<OverlayPoint> Points,
    ImmutableArray<ResonancePair> Resonances,
    Trail MeanResistanceDifference,
    Trail MeanReactanceDifference,
    Trail ResistanceRms,
    Trail ReactanceRms,
    Trail ReflectionRms,
    Trail WorstReflection)
{
    private const int AkimaNeeds = 5;

    /// <summary>
    /// Lays <paramref name="measured"/> over <paramref name="predicted"/>, both at the same plane. Between its own
    /// frequencies the prediction is interpolated as reflection, which stays smooth and bounded where an impedance
    /// has poles. Measured points outside the predicted range are left out with a warning.
    /// </summary>
    public static Reading<SweepOverlay> Of(ImpedanceSweep measured, ImpedanceSweep predicted)
    {
        var at = Interpolate(predicted, measured.ReferenceOhm);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var points = measured.Points
            .Where(p => p.FrequencyHz >= predicted.FromHz && p.FrequencyHz <= predicted.ToHz)
            .Select(p => Point(p, at(p.FrequencyHz), measured.ReferenceOhm))
            .Where(p => Complex.IsFinite(p.PredictedOhm))
            .ToImmutableArray();
        var outside = measured.Points.Length - points.Length;
        if (outside > 0)
            findings.Add(new("overlay-outside", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"{outside} of {measured.Points.Length} measured points lie outside the predicted range {predicted.FromHz / 1e6:0.####} to {predicted.ToHz / 1e6:0.####} MHz and are left out."), new(measured.Name, 0, 0, ""), null, null, "Predict over the whole measured band."));
        if (points.Length == 0)
        {
            findings.Add(new("overlay-empty", Severity.Error, "The measured and the predicted sweep have no frequency in common.", new(measured.Name, 0, 0, ""), null, null, "Predict over the measured band; check the frequency unit of the sweep."));
            return new(null, findings.ToImmutable());
        }
        var expected = predicted.ResonancesHz();
        var pairs = expected.Length == 0 ? [] : measured.ResonancesHz().Select(m => new ResonancePair(m, expected.MinBy(p => Math.Abs(p - m)))).ToImmutableArray();
        var worst = points.MaxBy(p => p.ReflectionDistance);
        var source = Source.Derived("sweep-fit.md");
        Trail Stat(string name, string symbol, double value, QuantityKind kind, string formula) =>
            Trail.Computed(name, symbol, value, kind, formula, source, Trail.Given("points compared", "n", points.Length, QuantityKind.Count, new(measured.Name, SourceKind.Design)));
        return new(
            new(measured.ReferenceOhm, points, pairs,
                Stat("mean resistance difference", "ΔR", points.Average(p => p.MeasuredOhm.Real - p.PredictedOhm.Real), QuantityKind.Resistance, "ΔR = Σ(Rm − Rp)/n"),
                Stat("mean reactance difference", "ΔX", points.Average(p => p.MeasuredOhm.Imaginary - p.PredictedOhm.Imaginary), QuantityKind.Resistance, "ΔX = Σ(Xm − Xp)/n"),
                Stat("RMS resistance difference", "ΔRrms", Rms(points, p => p.MeasuredOhm.Real - p.PredictedOhm.Real), QuantityKind.Resistance, "ΔRrms = √(Σ(Rm − Rp)²/n)"),
                Stat("RMS reactance difference", "ΔXrms", Rms(points, p => p.MeasuredOhm.Imaginary - p.PredictedOhm.Imaginary), QuantityKind.Resistance, "ΔXrms = √(Σ(Xm − Xp)²/n)"),
                Stat("RMS reflection distance", "ΔΓrms", Rms(points, p => p.ReflectionDistance), QuantityKind.Ratio, "ΔΓrms = √(Σ|Γm − Γp|²/n)"),
                Stat("largest reflection distance", "ΔΓmax", worst.ReflectionDistance, QuantityKind.Ratio, "ΔΓmax = max|Γm − Γp|")
                    .Remark(string.Create(CultureInfo.InvariantCulture, $"at {worst.FrequencyHz / 1e6:0.####} MHz"))),
            findings.ToImmutable());
    }

    private static OverlayPoint Point(SweepPoint measured, Complex predictedReflection, double reference)
    {
        var reflection = measured.Reflection(reference);
        return new(
            measured.FrequencyHz,
            measured.ImpedanceOhm,
            reference * (1 + predictedReflection) / (1 - predictedReflection),
            StandingWave.Ratio(reflection.Magnitude),
            StandingWave.Ratio(predictedReflection.Magnitude),
            (reflection - predictedReflection).Magnitude);
    }

    internal static Func<double, Complex> Interpolate(ImpedanceSweep sweep, double reference)
    {
        var f = sweep.Points.Select(p => p.FrequencyHz).ToArray();
        var g = sweep.Points.Select(p => p.Reflection(reference)).ToArray();
        if (f.Length == 1) return _ => g[0];
        var re = g.Select(x => x.Real).ToArray();
        var im = g.Select(x => x.Imaginary).ToArray();
        IInterpolation real = f.Length >= AkimaNeeds ? CubicSpline.InterpolateAkimaSorted(f, re) : LinearSpline.InterpolateSorted(f, re);
        IInterpolation imaginary = f.Length >= AkimaNeeds ? CubicSpline.InterpolateAkimaSorted(f, im) : LinearSpline.InterpolateSorted(f, im);
        return x => new(real.Interpolate(x), imaginary.Interpolate(x));
    }

    private static double Rms(ImmutableArray<OverlayPoint> points, Func<OverlayPoint, double> value) =>
        Math.Sqrt(points.Average(p => value(p) * value(p)));
}
