using System.Globalization;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Cost against margin: the designs that no other beats in both, numbered as in their table, and the design as it is.</summary>
internal static class FrontPlot
{
    private const double LeftMm = 22;
    private const double RightMm = 130;
    private const double TopMm = 6;
    private const double FloorMm = 62;

    /// <summary>The plot.</summary>
    public static Figure Of(UnitSystem units, SearchResult result)
    {
        var unit = QuantityFormat.UnitFor(result.Front.Max(j => j.Cost), QuantityKind.Mass, units);
        var shown = result.Front.Append(result.Now).Where(j => double.IsFinite(j.Margin)).ToList();
        var (low, high, step) = Scale(shown.Select(j => unit.FromSi(j.Cost)));
        var (least, most, rise) = Scale(shown.Select(j => 100 * j.Margin));
        double X(Judgement j) => LeftMm + ((RightMm - LeftMm) * (unit.FromSi(j.Cost) - low) / (high - low));
        double Y(Judgement j) => FloorMm - ((FloorMm - TopMm) * ((100 * j.Margin) - least) / (most - least));
        var d = new Drawing(170, 76, "Cost against margin");
        for (var tick = low; tick <= high + (step / 2); tick += step)
        {
            var x = LeftMm + ((RightMm - LeftMm) * (tick - low) / (high - low));
            d.Line(x, TopMm, x, FloorMm, Pen.Faint).Text(x, FloorMm + 4, Number(tick), 2.4, Hold.Middle, ground: false);
        }

        for (var tick = least; tick <= most + (rise / 2); tick += rise)
        {
            var y = FloorMm - ((FloorMm - TopMm) * (tick - least) / (most - least));
            d.Line(LeftMm, y, RightMm, y, Pen.Faint).Text(LeftMm - 1.5, y + 0.9, Number(tick), 2.4, Hold.End, ground: false);
        }

        d.Box(LeftMm, TopMm, RightMm - LeftMm, FloorMm - TopMm, Pen.Plain);
        d.Text((LeftMm + RightMm) / 2, FloorMm + 9, $"cost, {unit.Symbol}", 2.6, Hold.Middle, ground: false).Text(8, (TopMm + FloorMm) / 2, "margin, %", 2.6, Hold.Middle, turnDeg: -90, ground: false);
        d.Path(result.Front.Select(j => (X(j), Y(j))), new Pen(0.3, "1.2 1"));
        foreach (var (j, n) in result.Front.Select((j, i) => (j, i + 1)))
        {
            d.Circle(X(j), Y(j), 0.9, Pen.Plain, "#000").Text(X(j) - 1.4, Y(j) - 1.4, $"{n}", 2.4, Hold.End);
        }

        if (double.IsFinite(result.Now.Margin))
        {
            d.Circle(X(result.Now), Y(result.Now), 1.5, Pen.Bold);
        }

        d.Text(RightMm + 4, TopMm + 4, "numbers as in the table", 2.4, ground: false).Text(RightMm + 4, TopMm + 8, "ring: as it is", 2.4, ground: false);
        return new Figure("Cost against margin: the designs of the table by number, and the design as it is (ring). Up and to the left is better.", d.ToSvg());
    }

    private static (double Low, double High, double Step) Scale(IEnumerable<double> values)
    {
        var all = values.ToList();
        var (low, high) = (all.Min(), all.Max());
        var marks = RoundSteps.Enclosing(low, Math.Max(high, low + Math.Max(1e-6, 0.02 * Math.Abs(high))), 4);
        return (marks[0], marks[^1], marks[1] - marks[0]);
    }

    private static string Number(double value) => (Math.Abs(value) < 1e-9 ? 0 : value).ToString("0.####", CultureInfo.InvariantCulture);
}
