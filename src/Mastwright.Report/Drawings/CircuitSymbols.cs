using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Report.Drawings;

/// <summary>The symbols of circuit drawings, level or upright between two places.</summary>
internal static class CircuitSymbols
{
    private static readonly Pen Turn = new(0.5);

    /// <summary>Crest voltage, RMS current and heat of a part, a line each.</summary>
    public static string[] Stress(double peakV, double rmsA, double heatW, UnitSystem units) =>
    [
        $"{QuantityFormat.Show(peakV, QuantityKind.PeakVoltage, units, 3)} peak",
        $"{QuantityFormat.Show(rmsA, QuantityKind.RmsCurrent, units, 3)} RMS",
        $"{QuantityFormat.Show(heatW < 1e-4 ? 0 : heatW, QuantityKind.Power, units, 2)} heat",
    ];

    /// <summary>A coil.</summary>
    public static void Coil(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        if (Upright(a, b))
        {
            d.Line(a.X, a.Y, mx, my - 6, Pen.Plain).Line(mx, my + 6, b.X, b.Y, Pen.Plain);
            Turns(d, mx, my, 4);
            return;
        }

        d.Line(a.X, a.Y, mx - 6, my, Pen.Plain).Line(mx + 6, my, b.X, b.Y, Pen.Plain);
        for (var i = 0; i < 4; i++)
        {
            d.Arc(mx - 4.5 + (i * 3), my, 1.5, 180, 360, Turn);
        }
    }

    /// <summary>A capacitor.</summary>
    public static void Capacitor(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        if (Upright(a, b))
        {
            d.Line(a.X, a.Y, mx, my - 1, Pen.Plain).Line(mx, my + 1, b.X, b.Y, Pen.Plain);
            d.Line(mx - 3.5, my - 1, mx + 3.5, my - 1, Pen.Bold).Line(mx - 3.5, my + 1, mx + 3.5, my + 1, Pen.Bold);
            return;
        }

        d.Line(a.X, a.Y, mx - 1, my, Pen.Plain).Line(mx + 1, my, b.X, b.Y, Pen.Plain);
        d.Line(mx - 1, my - 3.5, mx - 1, my + 3.5, Pen.Bold).Line(mx + 1, my - 3.5, mx + 1, my + 3.5, Pen.Bold);
    }

    /// <summary>A resistor.</summary>
    public static void Resistor(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        var upright = Upright(a, b);
        d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
        d.Box(upright ? mx - 1.6 : mx - 4.5, upright ? my - 4.5 : my - 1.6, upright ? 3.2 : 9, upright ? 9 : 3.2, Pen.Plain, "#fff");
    }

    /// <summary>A length of coaxial line, its screen earthed.</summary>
    public static void Line(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        var half = Math.Min(8, Math.Abs(b.X - a.X) / 2 * 0.8);
        d.Box(mx - half, my - 1.8, 2 * half, 3.6, Pen.Plain, "#fff").Line(a.X, a.Y, b.X, b.Y, Pen.Plain);
    }

    /// <summary>A stub from the path to ground.</summary>
    public static void Stub(Drawing d, (double X, double Y) a, (double X, double Y) b, bool shorted)
    {
        var end = b.Y - 5;
        d.Box(a.X - 1.8, a.Y + 4, 3.6, end - a.Y - 4, Pen.Plain, "#fff").Line(a.X, a.Y, a.X, shorted ? end : end - 2, Pen.Plain);
        if (shorted)
        {
            d.Line(a.X - 1.8, end, a.X + 1.8, end, Pen.Bold);
        }

        // The screen goes to ground either way.
        d.Line(a.X - 1.8, end, a.X - 1.8, b.Y, Pen.Plain);
    }

    /// <summary>A coil to ground with a tap: one of line (left) and mast (right) hangs on its top, the other on its tap.</summary>
    public static void TappedCoil(Drawing d, (double X, double Y) a, (double X, double Y) b, bool lineOnTap)
    {
        var (mx, my) = Middle(a, b);
        var (top, tapped) = lineOnTap ? (b.X, a.X) : (a.X, b.X);
        d.Line(top, a.Y, mx, a.Y, Pen.Plain).Line(mx, a.Y, mx, my - 9, Pen.Plain).Line(mx, my + 9, mx, b.Y, Pen.Plain);
        Turns(d, mx, my, 6);
        var side = tapped < mx ? mx - 6 : mx + 6;
        d.Line(tapped, a.Y, side, a.Y, Pen.Plain).Line(side, a.Y, side, my + 3, Pen.Plain).Line(side, my + 3, mx, my + 3, Pen.Plain).Circle(mx, my + 3, 0.6, new Pen(0.1), "#000");
    }

    /// <summary>A transformer of two windings on ground.</summary>
    public static void Transformer(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        foreach (var (x, rail) in new[] { (mx - 3.5, a.X), (mx + 3.5, b.X) })
        {
            d.Line(rail, a.Y, x, a.Y, Pen.Plain).Line(x, a.Y, x, my - 6, Pen.Plain).Line(x, my + 6, x, b.Y, Pen.Plain);
            for (var i = 0; i < 4; i++)
            {
                d.Arc(x, my - 4.5 + (i * 3), 1.5, x < mx ? -90 : 90, x < mx ? 90 : 270, Turn);
            }
        }

        d.Line(mx - 0.5, my - 6, mx - 0.5, my + 6, Pen.Plain).Line(mx + 0.5, my - 6, mx + 0.5, my + 6, Pen.Plain);
    }

    /// <summary>The sign of ground under a place.</summary>
    public static void Ground(Drawing d, double x, double y) => d.Line(x, y, x, y + 3, Pen.Plain).Line(x - 3, y + 3, x + 3, y + 3, Pen.Bold);

    /// <summary>The transmitter.</summary>
    public static void Transmitter(Drawing d, (double X, double Y) a, (double X, double Y) b)
    {
        var (mx, my) = Middle(a, b);
        d.Line(a.X, a.Y, b.X, b.Y, Pen.Plain).Circle(mx, my, 4.5, Pen.Bold, "#fff").Text(mx, my + 0.9, "TX", 2.8, Hold.Middle, ground: false);
    }

    /// <summary>A mast on a place.</summary>
    public static void Antenna(Drawing d, double x, double y, string name)
    {
        d.Line(x, y, x, y - 10, Pen.Bold).Line(x - 2.5, y - 7, x, y - 10, Pen.Plain).Line(x + 2.5, y - 7, x, y - 10, Pen.Plain);
        d.Text(x + 3, y - 6, name, 2.4, ground: false);
    }

    private static void Turns(Drawing d, double x, double y, int count)
    {
        for (var i = 0; i < count; i++)
        {
            d.Arc(x, y - (1.5 * (count - 1)) + (i * 3), 1.5, -90, 90, Turn);
        }
    }

    private static bool Upright((double X, double Y) a, (double X, double Y) b) => Math.Abs(b.Y - a.Y) > Math.Abs(b.X - a.X);

    private static (double X, double Y) Middle((double X, double Y) a, (double X, double Y) b) => ((a.X + b.X) / 2, (a.Y + b.Y) / 2);
}
