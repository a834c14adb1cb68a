using Mastwright.Circuits.Drawing;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Drawings;

/// <summary>A matching network as a schematic with the values and stresses of its parts, and its path over the Smith chart.</summary>
public static class NetworkDrawing
{
    private const double Grid = 22;

    /// <summary>The schematic.</summary>
    public static Figure Of(string name, MatchCandidate match, UnitSystem units)
    {
        var plan = Schematic.Of(match);
        var k = Math.Min(Grid, 148 / Math.Max(plan.Width, 1));
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

        CircuitSymbols.Ground(d, left, 16 + (plan.Height * 16));
        return new Figure($"{name}: {match.Title}. Beside each part its value, the peak voltage across it, the RMS current through it and its heat at full power.", d.ToSvg());
    }

    /// <summary>The path over the Smith chart from the mast to the line.</summary>
    public static Figure Smith(string name, MatchCandidate match)
    {
        const double r = 38, cx = 48, cy = 42, key = 98;
        var d = new Drawing(170, 86, "Smith chart for " + name);
        foreach (var resistance in new[] { 0.2, 0.5, 1, 2, 5 })
        {
            d.Circle(cx + (r * resistance / (1 + resistance)), cy, r / (1 + resistance), Pen.Faint);
            var (mx, my) = Place(cx, cy, r, Reflection(resistance, 0));
            d.Text(mx + 0.4, my - 0.5, QuantityFormat.Digits(resistance, 2), 1.9, ground: false);
        }

        foreach (var x in new[] { 0.2, 0.5, 1, 2, 5 })
        {
            foreach (var sign in new[] { 1, -1 })
            {
                d.Path(Enumerable.Range(0, 60).Select(i => Math.Pow(10, -3 + (i * 6.0 / 59)) - 1e-3).Select(res => Place(cx, cy, r, Reflection(res, sign * x))), Pen.Faint);
                var (ex, ey) = Place(cx, cy, r * 1.05, Reflection(0, sign * x));
                d.Text(ex, ey + 0.7, (sign > 0 ? "+j" : "−j") + QuantityFormat.Digits(x, 2), 1.9, Hold.Middle, ground: false);
            }
        }

        d.Line(cx - r, cy, cx + r, cy, Pen.Faint).Circle(cx, cy, r, Pen.Plain);
        Fan(d, cx, cy, r);
        var arcs = SmithPath.Of(match);
        for (var i = 0; i < arcs.Length; i++)
        {
            var points = arcs[i].Points.Select(p => Place(cx, cy, r, p.Reflection)).ToList();
            d.Path(points, new Pen(0.8, Plots.Dash(i)));
            d.Circle(points[0].X, points[0].Y, 0.9, new Pen(0.2), i == 0 ? "#000" : "#fff");
            d.Line(key, 20 + (i * 10), key + 11, 20 + (i * 10), new Pen(0.8, Plots.Dash(i))).Text(key + 13, 20.9 + (i * 10), $"{arcs[i].Section}: {arcs[i].Title}", 2.2, ground: false);
            d.Text(key + 13, 24.4 + (i * 10), "to " + Ohm(arcs[i].Points[^1].ImpedanceOhm), 2.2, ground: false);
        }

        if (arcs.Length > 0)
        {
            var end = Place(cx, cy, r, arcs[^1].Points[^1].Reflection);
            d.Circle(end.X, end.Y, 1.2, new Pen(0.5), "#fff");
        }

        var mast = arcs.Length > 0 ? arcs[0].Points[0].ImpedanceOhm : match.InputImpedanceOhm;
        d.Text(key, 9, "black dot: the mast, " + Ohm(mast), 2.4, ground: false).Text(key, 13, $"ring: the line; circles over {QuantityFormat.Digits(match.Problem.LineOhm, 3)} Ω", 2.4, ground: false);
        return new Figure($"{name}: path of the match over the Smith chart, referred to the line's impedance; the ring near the middle is SWR 2.", d.ToSvg())
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

    // The circle of SWR 2 tells how near the middle is near enough.
    private static void Fan(Drawing d, double cx, double cy, double r) => d.Circle(cx, cy, r / 3, new Pen(0.2, "1 1", "#666"));

    private static string Ohm(System.Numerics.Complex z)
    {
        // What tuning leaves is no reactance.
        var x = Math.Abs(z.Imaginary) < 1e-3 * z.Magnitude ? 0 : z.Imaginary;
        return StudyWords.Ohm(new(z.Real, x));
    }

    private static void Symbol(Drawing d, Symbol s, (double X, double Y) a, (double X, double Y) b, UnitSystem units)
    {
        var upright = Math.Abs(b.Y - a.Y) > 1 && Math.Abs(b.X - a.X) < 1;
        var (mx, my) = ((a.X + b.X) / 2, (a.Y + b.Y) / 2);
        switch (s.Kind)
        {
            case SymbolKind.Transmitter:
                CircuitSymbols.Transmitter(d, a, b);
                return;
            case SymbolKind.Antenna:
                CircuitSymbols.Antenna(d, a.X, a.Y, "mast");
                return;
            case SymbolKind.Coil:
                CircuitSymbols.Coil(d, a, b);
                break;
            case SymbolKind.Capacitor:
                CircuitSymbols.Capacitor(d, a, b);
                break;
            case SymbolKind.Line:
                CircuitSymbols.Line(d, a, b);
                break;
            case SymbolKind.OpenStub or SymbolKind.ShortedStub:
                CircuitSymbols.Stub(d, a, b, s.Kind == SymbolKind.ShortedStub);
                break;
            case SymbolKind.TappedCoil:
                CircuitSymbols.TappedCoil(d, a, b, lineOnTap: s.Title.Contains("line on its tap", StringComparison.Ordinal));
                break;
            case SymbolKind.Transformer:
                CircuitSymbols.Transformer(d, a, b);
                break;
            default:
                CircuitSymbols.Resistor(d, a, b);
                break;
        }

        var value = double.IsNaN(s.Value) ? "" : s.ValueKind == QuantityKind.Ratio ? s.Title : QuantityFormat.Show(s.Value, s.ValueKind, units, 3);
        string[] lines = [$"{s.Name}  {value}", .. CircuitSymbols.Stress(s.Voltage.Value, s.Current.Value, s.HeatW, units)];
        var beside = upright || s.Kind is SymbolKind.TappedCoil or SymbolKind.Transformer;
        for (var i = 0; i < lines.Length; i++)
        {
            if (beside)
            {
                d.Text(mx + 4.5 + (upright ? 0 : 1.5), my - 1.4 + (i * 3), lines[i], 2.2, bold: i == 0);
            }
            else
            {
                d.Text(mx, i < 1 ? my - 4.6 : my + 6.2 + ((i - 1) * 3), lines[i], 2.2, Hold.Middle, bold: i == 0);
            }
        }
    }
}
