using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>One line of a plot, in the units shown.</summary>
/// <param name="Name">Its name, written at its end.</param>
/// <param name="X">Abscissae.</param>
/// <param name="Y">Ordinates.</param>
internal sealed record PlotLine(string Name, IReadOnlyList<double> X, IReadOnlyList<double> Y);

/// <summary>An axis.</summary>
/// <param name="Title">What it shows, with its unit.</param>
/// <param name="Logarithmic">Whether it is divided by decades; values at or below zero are then left out.</param>
internal sealed record PlotAxis(string Title, bool Logarithmic = false);

/// <summary>Line plots as SVG in millimetres, told apart by dash and width so that grey paper suffices.</summary>
internal static class WavePlots
{
    private const double WidthMm = 160;
    private const double HeightMm = 78;
    private const double LeftMm = 18;
    private const double RightMm = 40;
    private const double TopMm = 4;
    private const double BottomMm = 14;

    private static readonly string[] Dashes = ["", "2.4 1.2", "0.7 0.9", "4 1 0.7 1", "1.4 0.7", "5 1.4"];
    private static readonly string[] Greys = ["#111", "#333", "#111", "#555", "#333", "#555"];

    /// <summary>A figure of lines over shared axes, with the numbers behind it.</summary>
    /// <param name="caption">The words under it.</param>
    /// <param name="x">The level axis.</param>
    /// <param name="y">The upright axis.</param>
    /// <param name="lines">The lines; those without two usable points are left out.</param>
    public static Figure Plot(string caption, PlotAxis x, PlotAxis y, params ReadOnlySpan<PlotLine> lines)
    {
        var svg = Lines(x, y, lines);
        var usable = Usable(x, y, lines);
        if (usable.Count == 0)
        {
            return new Figure(caption, svg);
        }

        var across = Scale.Of(x, usable.SelectMany(l => l.X), LeftMm, WidthMm - RightMm);
        var up = Scale.Of(y, usable.SelectMany(l => l.Y), HeightMm - BottomMm, TopMm);
        return new Figure(caption, svg)
        {
            Data = new FigureData(x.Title, y.Title, [.. usable.Select(l => new FigureSeries(l.Name, [.. l.X.Zip(l.Y, (a, b) => new FigurePoint(a, b, across.At(a), up.At(b)))]))]),
        };
    }

    /// <summary>A plot of lines over shared axes.</summary>
    /// <param name="x">The level axis.</param>
    /// <param name="y">The upright axis.</param>
    /// <param name="lines">The lines; those without two usable points are left out.</param>
    public static string Lines(PlotAxis x, PlotAxis y, params ReadOnlySpan<PlotLine> lines)
    {
        var usable = Usable(x, y, lines);
        var svg = new StringBuilder(FormattableString.Invariant(
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WidthMm} {HeightMm}\" width=\"{WidthMm}mm\" height=\"{HeightMm}mm\" font-family=\"sans-serif\" font-size=\"2.9\">"));
        svg.Append(FormattableString.Invariant($"<rect width=\"{WidthMm}\" height=\"{HeightMm}\" fill=\"#fff\"/>"));
        if (usable.Count == 0)
        {
            return svg.Append("<text x=\"20\" y=\"40\">nothing to draw</text></svg>").ToString();
        }

        var across = Scale.Of(x, usable.SelectMany(l => l.X), LeftMm, WidthMm - RightMm);
        var up = Scale.Of(y, usable.SelectMany(l => l.Y), HeightMm - BottomMm, TopMm);
        Grid(svg, x, y, across, up);
        var labels = Spread([.. usable.Select(l => up.At(l.Y[^1]))]);
        for (var i = 0; i < usable.Count; i++)
        {
            Line(svg, usable[i], across, up, i);
            Label(svg, usable[i], i, labels[i]);
        }

        return svg.Append("</svg>").ToString();
    }

    private static List<PlotLine> Usable(PlotAxis x, PlotAxis y, ReadOnlySpan<PlotLine> lines)
    {
        var usable = new List<PlotLine>();
        foreach (var line in lines)
        {
            var kept = Enumerable.Range(0, Math.Min(line.X.Count, line.Y.Count))
                .Where(i => double.IsFinite(line.X[i]) && double.IsFinite(line.Y[i]) && (!x.Logarithmic || line.X[i] > 0) && (!y.Logarithmic || line.Y[i] > 0)).ToList();
            if (kept.Count > 1)
            {
                usable.Add(new(line.Name, [.. kept.Select(i => line.X[i])], [.. kept.Select(i => line.Y[i])]));
            }
        }

        return usable;
    }

    private static void Grid(StringBuilder svg, PlotAxis x, PlotAxis y, Scale across, Scale up)
    {
        const double rightMm = WidthMm - RightMm;
        const double floorMm = HeightMm - BottomMm;
        foreach (var tick in across.Ticks)
        {
            var at = across.At(tick);
            svg.Append(FormattableString.Invariant($"<line x1=\"{at:0.##}\" y1=\"{TopMm}\" x2=\"{at:0.##}\" y2=\"{floorMm}\" stroke=\"#ccc\" stroke-width=\"0.15\"/>"));
            svg.Append(FormattableString.Invariant($"<text x=\"{at:0.##}\" y=\"{floorMm + 4}\" text-anchor=\"middle\">{Number(tick)}</text>"));
        }

        foreach (var tick in up.Ticks)
        {
            var at = up.At(tick);
            svg.Append(FormattableString.Invariant($"<line x1=\"{LeftMm}\" y1=\"{at:0.##}\" x2=\"{rightMm}\" y2=\"{at:0.##}\" stroke=\"#ccc\" stroke-width=\"0.15\"/>"));
            svg.Append(FormattableString.Invariant($"<text x=\"{LeftMm - 1.2}\" y=\"{at + 1:0.##}\" text-anchor=\"end\">{Number(tick)}</text>"));
        }

        svg.Append(FormattableString.Invariant($"<rect x=\"{LeftMm}\" y=\"{TopMm}\" width=\"{rightMm - LeftMm}\" height=\"{floorMm - TopMm}\" fill=\"none\" stroke=\"#444\" stroke-width=\"0.25\"/>"));
        svg.Append(FormattableString.Invariant($"<text x=\"{(LeftMm + rightMm) / 2}\" y=\"{HeightMm - 3}\" text-anchor=\"middle\">{Escaped(x.Title)}</text>"));
        svg.Append(FormattableString.Invariant($"<text transform=\"translate(4 {(TopMm + floorMm) / 2}) rotate(-90)\" text-anchor=\"middle\">{Escaped(y.Title)}</text>"));
    }

    private static void Line(StringBuilder svg, PlotLine line, Scale across, Scale up, int index)
    {
        svg.Append(FormattableString.Invariant($"<polyline fill=\"none\" stroke=\"{Greys[index % Greys.Length]}\" stroke-width=\"{(index == 0 ? 0.5 : 0.4)}\" stroke-dasharray=\"{Dashes[index % Dashes.Length]}\" points=\""));
        for (var i = 0; i < line.X.Count; i++)
        {
            svg.Append(FormattableString.Invariant($"{across.At(line.X[i]):0.##},{up.At(line.Y[i]):0.##} "));
        }

        svg.Append("\"/>");
    }

    private static void Label(StringBuilder svg, PlotLine line, int index, double yMm)
    {
        const double fromMm = WidthMm - RightMm + 1;
        svg.Append(FormattableString.Invariant(
            $"<line x1=\"{fromMm}\" y1=\"{yMm:0.##}\" x2=\"{fromMm + 6}\" y2=\"{yMm:0.##}\" stroke=\"{Greys[index % Greys.Length]}\" stroke-width=\"{(index == 0 ? 0.5 : 0.4)}\" stroke-dasharray=\"{Dashes[index % Dashes.Length]}\"/>"));
        svg.Append(FormattableString.Invariant($"<text x=\"{fromMm + 7}\" y=\"{yMm + 1:0.##}\">{Escaped(line.Name)}</text>"));
    }

    // Labels stand at the ends of their lines, pushed apart where they would cover each other.
    private static double[] Spread(double[] at)
    {
        const double stepMm = 4;
        var order = Enumerable.Range(0, at.Length).OrderBy(i => at[i]).ToArray();
        var placed = (double[])at.Clone();
        for (var k = 1; k < order.Length; k++)
        {
            placed[order[k]] = Math.Max(placed[order[k]], placed[order[k - 1]] + stepMm);
        }

        var over = order.Length == 0 ? 0 : Math.Max(0, placed[order[^1]] - (HeightMm - BottomMm));
        for (var k = order.Length - 1; k >= 0 && over > 0; k--)
        {
            var limit = k == order.Length - 1 ? HeightMm - BottomMm : placed[order[k + 1]] - stepMm;
            placed[order[k]] = Math.Min(placed[order[k]], limit);
        }

        return placed;
    }

    private static string Number(double value) => Math.Abs(value) < 1e-12 ? "0"
        : Math.Abs(value) is >= 1e5 or < 1e-3 ? value.ToString("0.#e0", CultureInfo.InvariantCulture) : value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string Escaped(string text) => System.Security.SecurityElement.Escape(text);

    private sealed record Scale(bool Logarithmic, double Low, double High, double FromMm, double ToMm, ImmutableArray<double> Ticks)
    {
        public static Scale Of(PlotAxis axis, IEnumerable<double> values, double fromMm, double toMm)
        {
            var all = values.ToList();
            var (low, high) = (all.Min(), all.Max());
            if (axis.Logarithmic)
            {
                var (first, last) = ((int)Math.Floor(Math.Log10(low) + 1e-9), (int)Math.Ceiling(Math.Log10(high) - 1e-9));
                last = Math.Max(last, first + 1);
                return new(true, first, last, fromMm, toMm, [.. Enumerable.Range(first, last - first + 1).Select(d => Math.Pow(10, d))]);
            }

            low = Math.Min(low, 0);
            var step = Step(high > low ? (high - low) / 5 : 1);
            var bottom = Math.Floor((low / step) + 1e-9) * step;
            var top = Math.Max(Math.Ceiling((high / step) - 1e-9) * step, bottom + step);
            return new(false, bottom, top, fromMm, toMm, [.. Enumerable.Range(0, (int)Math.Round((top - bottom) / step) + 1).Select(k => bottom + (k * step))]);
        }

        public double At(double value) => FromMm + ((ToMm - FromMm) * ((Logarithmic ? Math.Log10(value) : value) - Low) / (High - Low));

        private static double Step(double rough)
        {
            var decade = Math.Pow(10, Math.Floor(Math.Log10(rough)));
            var lead = rough / decade;
            return decade * (lead <= 1 ? 1 : lead <= 2 ? 2 : lead <= 5 ? 5 : 10);
        }
    }
}
