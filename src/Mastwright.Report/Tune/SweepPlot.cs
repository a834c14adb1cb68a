using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Tune;

/// <summary>Draws a sweep over its prediction: resistance and reactance, or the standing-wave ratio where there is no phase.</summary>
public static class SweepPlot
{
    private const double WidthMm = 170;
    private const double HeightMm = 100;
    private const double LeftMm = 18;
    private const double BottomMm = 14;
    private const double TopMm = 12;
    private const double RightMm = 4;
    private const int Ticks = 5;

    private sealed record Line(string Name, string Dash, double Width, string Grey, ImmutableArray<(double X, double Y)> Points);

    /// <summary>The figure.</summary>
    public static Figure Of(SweepAnswer answer) => answer.Overlay is { } overlay
        ? Draw("Resistance and reactance at the feed terminal over frequency: measured solid, predicted dashed", "Ω",
        [
            new("R measured", "", 0.6, "#000", [.. overlay.Points.Select(p => (p.FrequencyHz / 1e6, p.MeasuredOhm.Real))]),
            new("R predicted", "3 1.5", 0.35, "#000", [.. overlay.Points.Select(p => (p.FrequencyHz / 1e6, p.PredictedOhm.Real))]),
            new("X measured", "", 0.6, "#888", [.. overlay.Points.Select(p => (p.FrequencyHz / 1e6, p.MeasuredOhm.Imaginary))]),
            new("X predicted", "3 1.5", 0.35, "#888", [.. overlay.Points.Select(p => (p.FrequencyHz / 1e6, p.PredictedOhm.Imaginary))]),
        ])
        : Draw("Standing-wave ratio over frequency: measured solid, predicted dashed", "SWR",
        [
            new("measured", "", 0.6, "#000", [.. answer.SwrOverlay!.Points.Select(p => (p.FrequencyHz / 1e6, Math.Min(p.Measured, 20)))]),
            new("predicted", "3 1.5", 0.35, "#000", [.. answer.SwrOverlay.Points.Select(p => (p.FrequencyHz / 1e6, Math.Min(p.Predicted, 20)))]),
        ]);

    private static Figure Draw(string caption, string unit, ImmutableArray<Line> lines)
    {
        var all = lines.SelectMany(l => l.Points).ToList();
        var (x0, x1) = Range(all.Min(p => p.X), all.Max(p => p.X));
        var (y0, y1) = Range(all.Min(p => p.Y), all.Max(p => p.Y));
        double X(double v) => LeftMm + ((v - x0) / (x1 - x0) * (WidthMm - LeftMm - RightMm));
        double Y(double v) => HeightMm - BottomMm - ((v - y0) / (y1 - y0) * (HeightMm - BottomMm - TopMm));
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WidthMm} {HeightMm}\" font-family=\"sans-serif\" font-size=\"3.4\" fill=\"none\">");
        for (var i = 0; i <= Ticks; i++)
        {
            var (x, y) = (x0 + ((x1 - x0) * i / Ticks), y0 + ((y1 - y0) * i / Ticks));
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{X(x):0.##} {Y(y0):0.##}V{Y(y1):0.##}M{X(x0):0.##} {Y(y):0.##}H{X(x1):0.##}\" stroke=\"#ccc\" stroke-width=\"0.15\"/>");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(x):0.##}\" y=\"{HeightMm - BottomMm + 4.5:0.##}\" text-anchor=\"middle\" fill=\"#000\">{x:0.###}</text><text x=\"{LeftMm - 1.5:0.##}\" y=\"{Y(y) + 1.2:0.##}\" text-anchor=\"end\" fill=\"#000\">{y:G4}</text>");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{WidthMm - RightMm}\" y=\"{HeightMm - 3}\" text-anchor=\"end\" fill=\"#000\">MHz</text><text x=\"{LeftMm - 1.5}\" y=\"{TopMm - 4}\" text-anchor=\"end\" fill=\"#000\">{unit}</text>");
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            var style = string.Create(CultureInfo.InvariantCulture, $"stroke=\"{line.Grey}\" stroke-width=\"{line.Width}\"{(line.Dash.Length > 0 ? $" stroke-dasharray=\"{line.Dash}\"" : "")}");
            svg.Append(CultureInfo.InvariantCulture, $"<polyline {style} points=\"{string.Join(' ', line.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{X(p.X):0.##},{Y(p.Y):0.##}")))}\"/>");
            svg.Append(CultureInfo.InvariantCulture, $"<path {style} d=\"M{LeftMm + 4 + (i * 36)} 5h8\"/><text x=\"{LeftMm + 13.5 + (i * 36)}\" y=\"6.2\" fill=\"#000\">{line.Name}</text>");
        }

        return new Figure(caption, svg.Append("</svg>").ToString())
        {
            Data = new FigureData("frequency, MHz", unit, [.. lines.Select(l => new FigureSeries(l.Name, [.. l.Points.Select(p => new FigurePoint(p.X, p.Y, X(p.X), Y(p.Y)))]))]),
        };
    }

    private static (double From, double To) Range(double from, double to) => to > from ? (from, to) : (from - 1, to + 1);
}
