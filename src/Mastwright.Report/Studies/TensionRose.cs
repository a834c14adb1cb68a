using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Guy tensions on round paper: how hard each guy of a level pulls, by where the wind comes from.</summary>
internal static class TensionRose
{
    private const double RadiusMm = 40;
    private const double MiddleXMm = 60;
    private const double MiddleYMm = 50;

    /// <summary>The rose of one level and one kind of combination.</summary>
    /// <param name="units">The reader's units.</param>
    /// <param name="title">What it shows.</param>
    /// <param name="level">The level.</param>
    /// <param name="cases">Cases of one kind, wind from north round.</param>
    /// <param name="guyFactor">Factor on breaking strength; its limit is drawn when it lies on the paper.</param>
    public static Figure Of(UnitSystem units, string title, int level, ImmutableArray<CaseResult> cases, double guyFactor)
    {
        var guys = cases[0].Guys.Where(g => g.Level == level).ToList();
        var largest = cases.SelectMany(c => c.Guys).Where(g => g.Level == level).Max(g => g.TensionN);
        var unit = QuantityFormat.UnitFor(largest, QuantityKind.Force, units);
        var rings = RoundSteps.Enclosing(0, unit.FromSi(largest));
        var (step, full) = (rings[1], rings[^1]);
        double R(double valueSi) => RadiusMm * unit.FromSi(valueSi) / full;
        var d = new Drawing(170, 100, title);
        for (var ring = step; ring < full + (step / 2); ring += step)
        {
            d.Circle(MiddleXMm, MiddleYMm, RadiusMm * ring / full, ring > full - (step / 2) ? Pen.Plain : Pen.Faint);
            d.Text(MiddleXMm + 0.6, MiddleYMm - (RadiusMm * ring / full) + 2.4, ring.ToString("0.####", CultureInfo.InvariantCulture), 2);
        }

        foreach (var (degrees, word) in Enumerable.Range(0, 12).Select(i => (30 * i, i switch { 0 => "N", 3 => "E", 6 => "S", 9 => "W", _ => $"{30 * i}°" })))
        {
            var (s, c) = Math.SinCos(degrees * Math.PI / 180);
            d.Line(MiddleXMm, MiddleYMm, MiddleXMm + (RadiusMm * s), MiddleYMm - (RadiusMm * c), Pen.Faint);
            d.Text(MiddleXMm + ((RadiusMm + 2) * s), MiddleYMm - ((RadiusMm + 2.4) * c) + 0.8, word, 2.3, s > 0.2 ? Hold.Start : s < -0.2 ? Hold.End : Hold.Middle, ground: false);
        }

        for (var i = 0; i < guys.Count; i++)
        {
            var pen = new Pen(0.5, Plots.Dash(i));
            var points = cases.Append(cases[0]).Select(c => (From: c.WindFromRad!.Value, Guy: c.Guys.First(g => g.Level == level && g.Anchor == guys[i].Anchor)))
                .Select(p => (MiddleXMm + (R(p.Guy.TensionN) * Math.Sin(p.From)), MiddleYMm - (R(p.Guy.TensionN) * Math.Cos(p.From))));
            d.Path(points, pen);
            var y = 14 + (6 * i);
            d.Line(118, y, 130, y, pen).Text(132, y + 0.9, $"guy to {guys[i].Anchor}", 2.6, ground: false);
        }

        var notes = 14 + (6 * guys.Count);
        d.Text(118, notes + 0.9, $"rings in {unit.Symbol}", 2.6, ground: false);
        var limit = guys[0].BreakingN / guyFactor;
        if (unit.FromSi(limit) <= full)
        {
            d.Circle(MiddleXMm, MiddleYMm, R(limit), new Pen(0.8));
            d.Text(118, notes + 5.9, "bold circle: tension allowed", 2.6, ground: false);
        }
        else
        {
            d.Text(118, notes + 5.9, $"allowed: {QuantityFormat.Show(limit, QuantityKind.Force, units, 3)}, outside", 2.6, ground: false);
        }

        return new Figure($"{title}. Distance from the middle is a guy's largest tension while the wind comes from that side.", d.ToSvg());
    }
}
