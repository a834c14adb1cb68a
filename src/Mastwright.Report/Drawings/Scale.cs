using System.Globalization;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Report.Drawings;

/// <summary>A drawing scale of the usual series: 1:100 and the like, or one inch to so many feet.</summary>
/// <param name="Denominator">How many times smaller the drawing is.</param>
/// <param name="Name">How it is written.</param>
public sealed record Scale(double Denominator, string Name)
{
    private static readonly double[] Metric = [1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000, 10000, 20000, 50000, 100000];
    private static readonly double[] FeetToTheInch = [0.25, 0.5, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 16, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 1000, 2000, 5000, 10000];

    /// <summary>Millimetres on paper for a metre.</summary>
    public double MmPerM => 1000 / Denominator;

    /// <summary>The largest usual scale at which a length fits into a space on paper.</summary>
    public static Scale Fitting(double lengthM, double spaceMm, UnitSystem units)
    {
        var least = lengthM * 1000 / spaceMm;
        if (units == UnitSystem.Us)
        {
            var feet = FeetToTheInch.FirstOrDefault(f => f * 12 >= least, FeetToTheInch[^1]);
            return new Scale(feet * 12, string.Create(CultureInfo.InvariantCulture, $"1 in = {feet:0.##} ft (1:{feet * 12:0.#})"));
        }

        var times = Metric.FirstOrDefault(m => m >= least, Metric[^1]);
        return new Scale(times, string.Create(CultureInfo.InvariantCulture, $"1:{times:0}"));
    }

    /// <summary>Draws a bar of round length with its figure and the scale's name.</summary>
    public void Bar(Drawing drawing, double x, double y, UnitSystem units)
    {
        var unit = units == UnitSystem.Us ? 0.3048 : 1.0;
        var wanted = 40 / MmPerM / unit;
        var round = RoundSteps.AtMost(wanted);
        var length = round * unit * MmPerM;
        for (var i = 0; i < 4; i++)
        {
            drawing.Box(x + (i * length / 4), y, length / 4, 1.4, new Pen(0.15), i % 2 == 0 ? "#000" : "#fff");
        }

        drawing.Text(x, y - 0.8, "0", 2.2, Hold.Middle, ground: false);
        drawing.Text(x + length, y - 0.8, QuantityFormat.Show(round * unit, QuantityKind.Length, units, 3), 2.2, Hold.Middle, ground: false);
        drawing.Text(x + length + 8, y + 1.6, "scale " + Name, Drawing.Letter, ground: false);
    }
}
