using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The window of a base gap between holding off the station and protecting the weakest part.</summary>
public static class GapBar
{
    /// <summary>The bar; null when the gap could not be looked at.</summary>
    public static Figure? Of(string mast, GapAnswer gap, UnitSystem units)
    {
        var (low, high, set) = gap switch
        {
            GapSetting s => (s.WindowLowM.Value, s.WindowHighM.Value, (double?)s.SpacingM.Value),
            NoGapFits n => (n.WindowLowM.Value, n.WindowHighM?.Value ?? 0, null),
            _ => (0, 0, null),
        };
        if (low <= 0)
        {
            return null;
        }

        var most = Math.Max(low, high) * 1.25;
        var d = new Drawing(170, 40, $"Gap window of mast {mast}");
        double X(double m) => 10 + (m / most * 150);
        string Show(double m) => QuantityFormat.Show(m, QuantityKind.FineLength, units, 3);
        d.Box(X(0), 14, X(low) - X(0), 8, new Pen(0.2), "#ddd");
        for (var x = X(0) + 2; x < X(low); x += 3)
        {
            d.Line(x, 14, Math.Max(X(0), x - 3), 22, Pen.Fine);
        }

        d.Box(X(high), 14, X(most) - X(high), 8, new Pen(0.3), "#777");
        if (high > low)
        {
            d.Box(X(low), 14, X(high) - X(low), 8, Pen.Bold, "#fff");
            d.Text((X(low) + X(high)) / 2, 19, "serves", 2.6, Hold.Middle);
        }

        d.Line(X(0), 22, X(most), 22, Pen.Plain);
        d.Text(X(low), 11.5, "smallest " + Show(low), 2.5, X(low) > 45 ? Hold.End : Hold.Start);
        d.Text(X(high), high > low ? 11.5 : 7.5, "largest " + Show(high), 2.5, X(high) < 125 ? Hold.Start : Hold.End);
        if (set is { } s1)
        {
            d.Line(X(s1), 13, X(s1), 27, new Pen(0.7)).Head(X(s1), 22, 0, -1, 2.6);
            d.Text(X(s1), 31, "set " + Show(s1), 3.2, Hold.Middle, bold: true);
        }

        d.Text(X(0), 37, "hatched: fires on the working voltage", 2.4, ground: false).Text(X(most), 37, "dark: fires too late for the weakest part", 2.4, Hold.End, ground: false);
        return new Figure(high > low
            ? $"Gap of mast {mast}: any spacing in the white window holds off the highest working peak and fires before the weakest part."
            : $"Gap of mast {mast}: the two demands cross, so no spacing serves.", d.ToSvg());
    }
}
