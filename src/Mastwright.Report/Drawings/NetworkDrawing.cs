using Mastwright.Circuits.Drawing;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>A matching network as a schematic with the values and stresses of its parts, and its path over the Smith chart.</summary>
public static class NetworkDrawing
{
    private const double Grid = 22;

    /// <summary>The schematic.</summary>
    public static Figure Of(string name, MatchCandidate match, UnitSystem units)
    {
        var plan = Schematic.Of(match);
        var k = Math.Min(Grid, 128 / Math.Max(plan.Width, 1));
        var d = new Drawing(170, 62, "Network for " + name);
        var left = (170 - (plan.Width * k)) / 2;
        (double X, double Y) At(GridPoint p) => (left + (p.X * k), 16 + (p.Y * 16));
        foreach (var w in plan.Wires)
        {
            var (a, b) = (At(w.From), At(w.To));
            d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
        }

        foreach (var p in plan.Dots)
        {
            d.Circle(At(p).X, At(p).Y, 0.6, new Pen(0.1), "#000");
        }

        foreach (var s in plan.Symbols)
        {
            Symbol(d, s, At(s.From), At(s.To), units);
        }

        d.Line(left, 16 + (plan.Height * 16), left, 20 + (plan.Height * 16), Pen.Plain).Line(left - 3, 20 + (plan.Height * 16), left + 3, 20 + (plan.Height * 16), Pen.Bold);
        return new Figure($"{name}: {match.Title}. Beside each part its value, the peak voltage across it, the RMS current through it and its heat at full power.", d.ToSvg());
    }

    /// <summary>The path over the Smith chart from the mast to the line.</summary>
    public static Figure Smith(string name, MatchCandidate match)
    {
        const double r = 38, cx = 60, cy = 42;
        var d = new Drawing(170, 86, "Smith chart for " + name);
        foreach (var resistance in new[] { 0.2, 0.5, 1, 2, 5 })
        {
            d.Circle(cx + (r * resistance / (1 + resistance)), cy, r / (1 + resistance), Pen.Faint);
        }

        foreach (var x in new[] { 0.2, 0.5, 1, 2, 5 })
        {
            foreach (var sign in new[] { 1, -1 })
            {
                d.Path(Enumerable.Range(0, 60).Select(i => Math.Pow(10, -3 + (i * 6.0 / 59)) - 1e-3).Select(res => Place(cx, cy, r, Reflection(res, sign * x))), Pen.Faint);
            }
        }

        d.Line(cx - r, cy, cx + r, cy, Pen.Faint).Circle(cx, cy, r, Pen.Plain);
        var arcs = SmithPath.Of(match);
        for (var i = 0; i < arcs.Length; i++)
        {
            var points = arcs[i].Points.Select(p => Place(cx, cy, r, p.Reflection)).ToList();
            d.Path(points, new Pen(0.8, Plots.Dash(i)));
            d.Circle(points[0].X, points[0].Y, 0.9, new Pen(0.2), i == 0 ? "#000" : "#fff");
            d.Line(112, 20 + (i * 5.5), 124, 20 + (i * 5.5), new Pen(0.8, Plots.Dash(i))).Text(126, 20.9 + (i * 5.5), $"{arcs[i].Section}: {arcs[i].Title}", 2.4, ground: false);
        }

        if (arcs.Length > 0)
        {
            var end = Place(cx, cy, r, arcs[^1].Points[^1].Reflection);
            d.Circle(end.X, end.Y, 1.2, new Pen(0.5), "#fff");
        }

        d.Text(112, 14, "black dot: the mast; ring: the line", 2.4, ground: false);
        return new Figure($"{name}: path of the match over the Smith chart, referred to the line's impedance.", d.ToSvg())
        {
            Data = new FigureData("resistance, Ω", "reactance, Ω", [.. arcs.Select(a => new FigureSeries($"{a.Section}: {a.Title}", [.. a.Points.Select(p =>
            {
                var (x, y) = Place(cx, cy, r, p.Reflection);
                return new FigurePoint(p.ImpedanceOhm.Real, p.ImpedanceOhm.Imaginary, x, y, $"reflection {QuantityFormat.Digits(p.Reflection.Magnitude, 3)}");
            })]))]),
        };
    }

    private static System.Numerics.Complex Reflection(double resistance, double reactance)
    {
        var z = new System.Numerics.Complex(resistance, reactance);
        return (z - 1) / (z + 1);
    }

    private static (double X, double Y) Place(double cx, double cy, double r, System.Numerics.Complex g) => (cx + (r * g.Real), cy - (r * g.Imaginary));

    private static void Symbol(Drawing d, Symbol s, (double X, double Y) a, (double X, double Y) b, UnitSystem units)
    {
        var upright = Math.Abs(b.Y - a.Y) > Math.Abs(b.X - a.X);
        var (mx, my) = ((a.X + b.X) / 2, (a.Y + b.Y) / 2);
        switch (s.Kind)
        {
            case SymbolKind.Transmitter:
                d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain).Circle(mx, my, 4.5, Pen.Bold, "#fff").Text(mx, my + 0.9, "TX", 2.8, Hold.Middle, ground: false);
                return;
            case SymbolKind.Antenna:
                d.Line(a.X, a.Y, a.X, a.Y - 10, Pen.Bold).Line(a.X - 2.5, a.Y - 7, a.X, a.Y - 10, Pen.Plain).Line(a.X + 2.5, a.Y - 7, a.X, a.Y - 10, Pen.Plain);
                d.Text(a.X + 3, a.Y - 6, "mast", 2.4, ground: false);
                return;
            case SymbolKind.Coil:
                Coil(d, a, b, mx, my, upright);
                break;
            case SymbolKind.Capacitor:
                Capacitor(d, a, b, mx, my, upright);
                break;
            default:
                d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
                d.Box(upright ? mx - 2 : mx - 5, upright ? my - 5 : my - 2, upright ? 4 : 10, upright ? 10 : 4, Pen.Plain, "#fff");
                break;
        }

        var value = double.IsNaN(s.Value) ? "" : QuantityFormat.Show(s.Value, s.ValueKind, units, 3);
        string[] lines = [$"{s.Name}  {value}", $"{QuantityFormat.Show(s.Voltage.Value, QuantityKind.PeakVoltage, units, 3)} peak", $"{QuantityFormat.Show(s.Current.Value, QuantityKind.RmsCurrent, units, 3)} RMS", $"{QuantityFormat.Show(s.HeatW < 1e-4 ? 0 : s.HeatW, QuantityKind.Power, units, 2)} heat"];
        for (var i = 0; i < lines.Length; i++)
        {
            if (upright)
            {
                d.Text(mx + 4.5, my - 3.4 + (i * 3), lines[i], 2.2, bold: i == 0);
            }
            else
            {
                d.Text(mx, i < 1 ? my - 4.6 : my + 6.2 + ((i - 1) * 3), lines[i], 2.2, Hold.Middle, bold: i == 0);
            }
        }
    }

    private static void Coil(Drawing d, (double X, double Y) a, (double X, double Y) b, double mx, double my, bool upright)
    {
        if (upright)
        {
            d.Line(a.X, a.Y, mx, my - 6, Pen.Plain).Line(mx, my + 6, b.X, b.Y, Pen.Plain);
            for (var i = 0; i < 4; i++)
            {
                d.Arc(mx, my - 4.5 + (i * 3), 1.5, -90, 90, new Pen(0.5));
            }

            return;
        }

        d.Line(a.X, a.Y, mx - 6, my, Pen.Plain).Line(mx + 6, my, b.X, b.Y, Pen.Plain);
        for (var i = 0; i < 4; i++)
        {
            d.Arc(mx - 4.5 + (i * 3), my, 1.5, 180, 360, new Pen(0.5));
        }
    }

    private static void Capacitor(Drawing d, (double X, double Y) a, (double X, double Y) b, double mx, double my, bool upright)
    {
        if (upright)
        {
            d.Line(a.X, a.Y, mx, my - 1, Pen.Plain).Line(mx, my + 1, b.X, b.Y, Pen.Plain);
            d.Line(mx - 3.5, my - 1, mx + 3.5, my - 1, Pen.Bold).Line(mx - 3.5, my + 1, mx + 3.5, my + 1, Pen.Bold);
            return;
        }

        d.Line(a.X, a.Y, mx - 1, my, Pen.Plain).Line(mx + 1, my, b.X, b.Y, Pen.Plain);
        d.Line(mx - 1, my - 3.5, mx - 1, my + 3.5, Pen.Bold).Line(mx + 1, my - 3.5, mx + 1, my + 3.5, Pen.Bold);
    }
}
