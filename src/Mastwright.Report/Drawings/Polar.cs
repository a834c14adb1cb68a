using System.Globalization;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>Patterns on round paper: decibels below the strongest direction.</summary>
public static class Polar
{
    private const double FloorDb = -30;
    private const double RadiusMm = 34;

    /// <summary>Cuts from the horizon over the zenith to the horizon behind, as half circles, several over each other.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="caption">The words under it.</param>
    /// <param name="cuts">Name and decibels below the strongest, evenly spaced over 180°.</param>
    public static Figure Upright(string title, string caption, IReadOnlyList<(string Name, IReadOnlyList<double> Db)> cuts)
    {
        const double radius = 62, cx = 85, cy = 70;
        var d = new Drawing(170, 84 + ((cuts.Count + 2) / 3 * 4.4), title);
        foreach (var db in new[] { 0.0, -3, -10, -20 })
        {
            var r = R(db, radius);
            d.Arc(cx, cy, r, 180, 360, db == 0 ? Pen.Plain : Pen.Faint);
            d.Text(cx + r + (db == 0 ? 0.5 : 0), cy + 3.4, Db(db), 2.2, db == 0 ? Hold.Start : Hold.Middle, ground: false);
        }

        for (var a = 0; a <= 180; a += 15)
        {
            var (s, c) = Math.SinCos(a * Math.PI / 180);
            d.Line(cx, cy, cx + (radius * c), cy - (radius * s), Pen.Faint);
            if (a % 30 == 0)
            {
                d.Text(cx + ((radius + 3) * c), cy - ((radius + 3) * s) + 0.8, $"{Math.Min(a, 180 - a)}°", 2.3, c > 0.2 ? Hold.Start : c < -0.2 ? Hold.End : Hold.Middle, ground: false);
            }
        }

        d.Line(cx - radius, cy, cx + radius, cy, Pen.Bold);
        for (var i = 0; i < cuts.Count; i++)
        {
            var n = cuts[i].Db.Count - 1;
            d.Path(cuts[i].Db.Select((db, j) => Point(cx, cy, R(db, radius), Math.PI * j / n)), new Pen(0.55, Plots.Dash(i)));
            var (kx, ky) = (12 + (i % 3 * 54.0), 79.0 + (i / 3 * 4.4));
            d.Line(kx, ky, kx + 12, ky, new Pen(0.55, Plots.Dash(i))).Text(kx + 14, ky + 0.9, cuts[i].Name, 2.5, ground: false);
        }

        return new Figure(caption, d.ToSvg())
        {
            Data = new FigureData("angle from the horizon ahead over the zenith, °", "below the strongest, dB", [.. cuts.Select(c => new FigureSeries(c.Name, [.. c.Db.Select((db, j) =>
            {
                var (x, y) = Point(cx, cy, R(db, radius), Math.PI * j / (c.Db.Count - 1));
                return new FigurePoint(180.0 * j / (c.Db.Count - 1), db, x, y);
            })]))]),
        };
    }

    /// <summary>Cuts round the compass, north up, side by side.</summary>
    /// <param name="title">What it shows.</param>
    /// <param name="caption">The words under it.</param>
    /// <param name="cuts">Name and decibels below the strongest, evenly spaced from north through east.</param>
    public static Figure Level(string title, string caption, IReadOnlyList<(string Name, IReadOnlyList<double> Db)> cuts)
    {
        var rows = (cuts.Count + 1) / 2;
        var d = new Drawing(170, rows * 90.0, title);
        for (var i = 0; i < cuts.Count; i++)
        {
            var (cx, cy) = (44 + (i % 2 * 84.0), 44 + (i / 2 * 90.0));
            foreach (var db in new[] { 0.0, -3, -10, -20 })
            {
                d.Circle(cx, cy, R(db, RadiusMm), db == 0 ? Pen.Plain : Pen.Faint);
                d.Text(cx, cy - R(db, RadiusMm) + 2.4, db == 0 ? "" : Db(db), 1.9, Hold.Middle, ground: false);
            }

            foreach (var (a, word) in new[] { (0, "N"), (30, "30°"), (60, "60°"), (90, "E"), (120, "120°"), (150, "150°"), (180, "S"), (210, "210°"), (240, "240°"), (270, "W"), (300, "300°"), (330, "330°") })
            {
                var (s, c) = Math.SinCos(a * Math.PI / 180);
                d.Line(cx, cy, cx + (RadiusMm * s), cy - (RadiusMm * c), Pen.Faint);
                d.Text(cx + ((RadiusMm + 2) * s), cy - ((RadiusMm + 2.2) * c) + 0.8, word, 2.2, s > 0.2 ? Hold.Start : s < -0.2 ? Hold.End : Hold.Middle, ground: false);
            }

            var n = cuts[i].Db.Count;
            d.Path(Enumerable.Range(0, n + 1).Select(j => Point(cx, cy, R(cuts[i].Db[j % n], RadiusMm), (Math.PI / 2) - (2 * Math.PI * j / n))), new Pen(0.6));
            d.Text(cx, cy + RadiusMm + 8.4, cuts[i].Name, 2.8, Hold.Middle, bold: true, ground: false);
        }

        return new Figure(caption, d.ToSvg())
        {
            Data = new FigureData("bearing, °", "below the strongest, dB", [.. cuts.Select((c, i) => new FigureSeries(c.Name, [.. c.Db.Select((db, j) =>
            {
                var (x, y) = Point(44 + (i % 2 * 84.0), 44 + (i / 2 * 90.0), R(db, RadiusMm), (Math.PI / 2) - (2 * Math.PI * j / c.Db.Count));
                return new FigurePoint(360.0 * j / c.Db.Count, db, x, y);
            })]))]),
        };
    }

    private static double R(double db, double radius) => radius * Math.Max(0, 1 - (db / FloorDb));

    private static string Db(double db) => db == 0 ? "0 dB" : "−" + (-db).ToString("0", CultureInfo.InvariantCulture);

    private static (double X, double Y) Point(double cx, double cy, double r, double angle) => (cx + (r * Math.Cos(angle)), cy - (r * Math.Sin(angle)));
}
