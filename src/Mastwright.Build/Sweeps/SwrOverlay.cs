using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Sweeps;

/// <summary>Measured and predicted standing-wave ratio at one frequency.</summary>
/// <param name="FrequencyHz">Frequency.</param>
/// <param name="Measured">Measured ratio.</param>
/// <param name="Predicted">Predicted ratio.</param>
public readonly record struct SwrOverlayPoint(double FrequencyHz, double Measured, double Predicted);

/// <summary>A sweep without phase laid over a prediction: all that can be said of a reading of the standing-wave ratio.</summary>
/// <param name="Points">One for every measured frequency inside the predicted range.</param>
/// <param name="ReflectionRms">RMS of |Γ| measured less |Γ| predicted.</param>
/// <param name="BestMatchShift">Frequency of the least measured ratio less that of the least predicted one, over the same band.</param>
public sealed record SwrOverlay(ImmutableArray<SwrOverlayPoint> Points, Trail ReflectionRms, Trail BestMatchShift)
{
    /// <summary>Lays a reading over a prediction at the same plane.</summary>
    public static Reading<SwrOverlay> Of(SwrSweep measured, ImpedanceSweep predicted)
    {
        var at = SweepOverlay.Interpolate(predicted, measured.ReferenceOhm);
        var points = measured.Points
            .Where(p => p.FrequencyHz >= predicted.FromHz && p.FrequencyHz <= predicted.ToHz)
            .Select(p => new SwrOverlayPoint(p.FrequencyHz, p.Swr, StandingWave.Ratio(at(p.FrequencyHz).Magnitude)))
            .ToImmutableArray();
        if (points.Length == 0)
            return new(null, [new("overlay-empty", Severity.Error, "The measured and the predicted sweep have no frequency in common.", new(measured.Name, 0, 0, ""), null, null, "Predict over the measured band; check the frequency unit of the sweep.")]);
        var source = Source.Derived("sweep-fit.md");
        var count = Trail.Given("points compared", "n", points.Length, QuantityKind.Count, new(measured.Name, SourceKind.Design));
        var rms = Math.Sqrt(points.Average(p => Math.Pow(StandingWave.Reflection(p.Measured) - StandingWave.Reflection(p.Predicted), 2)));
        var (least, foretold) = (points.MinBy(p => p.Measured).FrequencyHz, points.MinBy(p => p.Predicted).FrequencyHz);
        var outside = measured.Points.Length - points.Length;
        return new(
            new(points,
                Trail.Computed("RMS difference of reflection magnitude", "Δ|Γ|", rms, QuantityKind.Ratio, "Δ|Γ| = √(Σ(|Γm| − |Γp|)²/n)", source, count),
                Trail.Computed("shift of the best match", "Δf", least - foretold, QuantityKind.Frequency, "Δf = f(least SWR measured) − f(least SWR predicted)", source, count)
                    .Remark("to the nearest measured frequency; without phase nothing more can be said")),
            outside == 0 ? [] : [new("overlay-outside", Severity.Warning, string.Create(CultureInfo.InvariantCulture, $"{outside} of {measured.Points.Length} measured points lie outside the predicted range and are left out."), new(measured.Name, 0, 0, ""), null, null, "Predict over the whole measured band.")]);
    }
}
