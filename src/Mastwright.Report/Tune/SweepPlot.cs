using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Tune;

/// <summary>Draws a sweep over its prediction: resistance and reactance, or the standing-wave ratio where there is no phase.</summary>
public static class SweepPlot
{
    // Above this a ratio says no more than that nothing fits; drawn to scale it would flatten all the rest.
    private const double HighestRatio = 20;
    private const string Predicted = "3 1.5";
    private const string Grey = "#888";

    /// <summary>The figure.</summary>
    public static Figure Of(SweepAnswer answer) => answer.Overlay is { } overlay
        ? Plots.Curves("Measured over predicted", "Resistance and reactance at the feed terminal over frequency: measured solid, predicted dashed; resistance black, reactance grey", "frequency, MHz", "R and X, Ω",
        [
            Measured("R measured", overlay.Points.Select(p => (p.FrequencyHz, p.MeasuredOhm.Real))),
            Prediction("R predicted", overlay.Points.Select(p => (p.FrequencyHz, p.PredictedOhm.Real))),
            Measured("X measured", overlay.Points.Select(p => (p.FrequencyHz, p.MeasuredOhm.Imaginary))) with { Colour = Grey },
            Prediction("X predicted", overlay.Points.Select(p => (p.FrequencyHz, p.PredictedOhm.Imaginary))) with { Colour = Grey },
        ])
        : Plots.Curves("Measured over predicted", "Standing-wave ratio over frequency: measured solid, predicted dashed", "frequency, MHz", "SWR",
        [
            Measured("measured", answer.SwrOverlay!.Points.Select(p => (p.FrequencyHz, Math.Min(p.Measured, HighestRatio)))),
            Prediction("predicted", answer.SwrOverlay.Points.Select(p => (p.FrequencyHz, Math.Min(p.Predicted, HighestRatio)))),
        ]);

    private static Curve Measured(string name, IEnumerable<(double Hz, double Y)> points) => new(name, [.. points.Select(p => (p.Hz / 1e6, p.Y))], WidthMm: 0.6);

    private static Curve Prediction(string name, IEnumerable<(double Hz, double Y)> points) => new(name, [.. points.Select(p => (p.Hz / 1e6, p.Y))], Predicted, 0.35);
}
