using System.Globalization;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>A curve of a plot.</summary>
/// <param name="Name">Shown at its end.</param>
/// <param name="Points">Its points.</param>
/// <param name="Dash">Its dashes.</param>
/// <param name="WidthMm">Its width, mm.</param>
/// <param name="Colour">Its colour, a step of grey.</param>
public sealed record Curve(string Name, IReadOnlyList<(double X, double Y)> Points, string Dash = "", double WidthMm = 0.5, string Colour = "#000")
{
    /// <summary>What it is drawn with.</summary>
    internal Pen Pen => new(WidthMm, Dash, Colour);

    /// <summary>A curve from two lists.</summary>
    /// <param name="name">Its name in the key.</param>
    /// <param name="x">Abscissae.</param>
    /// <param name="y">Ordinates, as many.</param>
    public static Curve Of(string name, IEnumerable<double> x, IEnumerable<double> y) => new(name, [.. x.Zip(y)]);
}

/// <summary>An axis.</summary>
/// <param name="Title">Name and unit.</param>
/// <param name="Decades">Whether it is divided by decades; what is not above zero is then left out.</param>
public sealed record PlotAxis(string Title, bool Decades = false)
{
    /// <summary>Marks that enclose the values.</summary>
    internal double[] Ticks(IEnumerable<double> values)
    {
        var all = values.ToList();
        if (!Decades)
        {
            return RoundSteps.Enclosing(all.Min(), all.Max());
        }

        var first = (int)Math.Floor(Math.Log10(all.Min()) + 1e-9);
        var last = Math.Max(first + 1, (int)Math.Ceiling(Math.Log10(all.Max()) - 1e-9));
        return [.. Enumerable.Range(first, last - first + 1).Select(p => Math.Pow(10, p))];
    }

    /// <summary>How far along the axis a value lies, 0 to 1.</summary>
    internal double Share(double value, double[] ticks) => Decades
        ? Math.Log10(value / ticks[0]) / Math.Log10(ticks[^1] / ticks[0])
        : (value - ticks[0]) / (ticks[^1] - ticks[0]);
}

/// <summary>Plots with straight axes: curves, and bars from a common foot.</summary>
public static class Plots
{
    private static readonly string[] Dashes = ["", "3 1", "1 1", "5 1 1 1", "0.4 1", "6 2", "2 0.6", "4 1 0.5 1 0.5 1"];

    /// <summary>The dashes of the nth curve.</summary>
    public static string Dash(int n) => Dashes[n % Dashes.Length];

    /// <summary>Curves over a common axis, named in a key below.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="caption">The words under it.</param>
    /// <param name="x">Name and unit of the axis to the right.</param>
    /// <param name="y">Name and unit of the axis up.</param>
    /// <param name="curves">The curves.</param>
    public static Figure Curves(string title, string caption, string x, string y, IReadOnlyList<Curve> curves) => Curves(title, caption, new PlotAxis(x), new PlotAxis(y), curves);

    /// <summary>Curves over axes that may be divided by decades.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="caption">The words under it.</param>
    /// <param name="x">The axis to the right.</param>
    /// <param name="y">The axis up; an evenly divided one holds zero.</param>
    /// <param name="curves">The curves; points that a decade axis cannot show and curves with fewer than two points are left out. Curves that all come undashed are given dashes.</param>
    public static Figure Curves(string title, string caption, PlotAxis x, PlotAxis y, IReadOnlyList<Curve> curves)
    {
        const double left = 20, top = 8, width = 140, height = 70;
        bool Shown((double X, double Y) p) => double.IsFinite(p.X) && double.IsFinite(p.Y) && (!x.Decades || p.X > 0) && (!y.Decades || p.Y > 0);
        curves = [.. curves.Select(c => c with { Points = [.. c.Points.Where(Shown)] }).Where(c => c.Points.Count > 1)];
        if (curves.All(c => c.Dash.Length == 0))
        {
            curves = [.. curves.Select((c, i) => c with { Dash = Dash(i) })];
        }

        if (curves.Count == 0)
        {
            return new Figure(caption, new Drawing(170, 14, title).Text(20, 8, "nothing to draw").ToSvg());
        }

        var all = curves.SelectMany(c => c.Points).ToList();
        var (xs, ys) = (x.Ticks(all.Select(p => p.X)), y.Ticks(all.Select(p => p.Y).Concat(y.Decades ? [] : [0.0])));
        var keyRows = (curves.Count + 1) / 2;
        var d = new Drawing(170, top + height + 16 + (keyRows * 4.4), title);
        double X(double v) => left + (x.Share(v, xs) * width);
        double Y(double v) => top + height - (y.Share(v, ys) * height);
        foreach (var t in xs)
        {
            d.Line(X(t), top, X(t), top + height, Pen.Faint).Text(X(t), top + height + 4, Number(t), 2.3, Hold.Middle);
        }

        foreach (var t in ys)
        {
            d.Line(left, Y(t), left + width, Y(t), Pen.Faint).Text(left - 1.5, Y(t) + 0.8, Number(t), 2.3, Hold.End);
        }

        d.Box(left, top, width, height, Pen.Plain);
        d.Text(left + (width / 2), top + height + 8.4, x.Title, 2.6, Hold.Middle).Text(6, top + (height / 2), y.Title, 2.6, Hold.Middle, turnDeg: -90);
        for (var i = 0; i < curves.Count; i++)
        {
            d.Path(curves[i].Points.Select(p => (X(p.X), Y(p.Y))), curves[i].Pen);
            var (kx, ky) = (left + (i % 2 * 72), top + height + 13 + (i / 2 * 4.4));
            d.Line(kx, ky, kx + 12, ky, curves[i].Pen).Text(kx + 14, ky + 0.9, curves[i].Name, 2.5, ground: false);
        }

        return new Figure(caption, d.ToSvg())
        {
            Data = new FigureData(x.Title, y.Title, [.. curves.Select(c => new FigureSeries(c.Name, [.. c.Points.Select(p => new FigurePoint(p.X, p.Y, X(p.X), Y(p.Y)))]))]),
        };
    }

    /// <summary>Pairs of bars on a scale of powers of ten: one filled, one open.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="caption">The words under it.</param>
    /// <param name="axis">Name and unit of the axis.</param>
    /// <param name="rows">For each row its name, the filled and the open bar, each with its lettering.</param>
    public static Figure LogBars(string title, string caption, string axis, IReadOnlyList<(string Name, double Full, string FullText, double Open, string OpenText)> rows)
    {
        const double left = 26, width = 116, row = 9;
        var values = rows.SelectMany(r => new[] { r.Full, r.Open }).Where(v => v > 0).ToList();
        var (low, high) = (Math.Floor(Math.Log10(values.Min())), Math.Ceiling(Math.Log10(values.Max()) + 1e-9));
        high = high <= low ? low + 1 : high;
        var d = new Drawing(170, (rows.Count * row) + 18, title);
        double X(double v) => left + (Math.Clamp((Math.Log10(Math.Max(v, 1e-12)) - low) / (high - low), 0, 1) * width);
        for (var p = low; p <= high; p++)
        {
            d.Line(X(Math.Pow(10, p)), 4, X(Math.Pow(10, p)), 4 + (rows.Count * row), Pen.Faint);
            d.Text(X(Math.Pow(10, p)), 8 + (rows.Count * row), Number(Math.Pow(10, p)), 2.3, Hold.Middle);
        }

        for (var i = 0; i < rows.Count; i++)
        {
            var y = 5 + (i * row);
            d.Text(left - 2, y + 4.4, rows[i].Name, 2.8, Hold.End);
            d.Box(left, y, Math.Max(0.2, X(rows[i].Full) - left), 3, new Pen(0.2), "#555").Text(X(rows[i].Full) + 1, y + 2.5, rows[i].FullText, 2.3);
            d.Box(left, y + 3.6, Math.Max(0.2, X(rows[i].Open) - left), 3, new Pen(0.25), "#fff").Text(X(rows[i].Open) + 1, y + 6.1, rows[i].OpenText, 2.3);
        }

        d.Line(left, 4, left, 4 + (rows.Count * row), Pen.Bold);
        d.Text(left + (width / 2), 13 + (rows.Count * row), axis, 2.6, Hold.Middle);
        return new Figure(caption, d.ToSvg())
        {
            Data = new FigureData("row", axis,
            [
                new FigureSeries("filled bar", [.. rows.Select((r, i) => new FigurePoint(i + 1, r.Full, X(r.Full), 6.5 + (i * row), $"{r.Name}: {r.FullText}"))]),
                new FigureSeries("open bar", [.. rows.Select((r, i) => new FigurePoint(i + 1, r.Open, X(r.Open), 10.1 + (i * row), $"{r.Name}: {r.OpenText}"))]),
            ]),
        };
    }

    private static string Number(double value) => Math.Abs(value) is >= 1e6 or (< 1e-4 and > 0) ? value.ToString("0.#e0", CultureInfo.InvariantCulture) : Math.Round(value, 6).ToString("0.####", CultureInfo.InvariantCulture);
}
