using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The masts of a group from above, to scale: distances and bearings from foot to foot, and where each switch position sends.</summary>
public static class GroupPlan
{
    private const double PlanMm = 56;
    private const double ArrowMm = 14;
    private const double ClearMm = 9;

    /// <summary>The plan.</summary>
    public static Figure Of(Station station, Group group)
    {
        var units = station.UnitSystem;
        var names = group.Directions.SelectMany(d => d.Currents).Select(c => c.Mast).ToHashSet();
        var masts = station.Masts.Where(m => names.Contains(m.Name)).ToList();
        var (east, north) = ((Low: masts.Min(m => m.EastM), High: masts.Max(m => m.EastM)), (Low: masts.Min(m => m.NorthM), High: masts.Max(m => m.NorthM)));
        var scale = Scale.Fitting(Math.Max(1, Math.Max(east.High - east.Low, north.High - north.Low)), PlanMm, units);
        var k = scale.MmPerM;
        var height = ((north.High - north.Low) * k) + (2 * (ArrowMm + ClearMm)) + 18;
        var d = new Drawing(170, height + 10, "Plan of group " + group.Name);
        var (cx, cy) = (85.0, height / 2);
        double X(Mast m) => cx + ((m.EastM - ((east.Low + east.High) / 2)) * k);
        double Y(Mast m) => cy - ((m.NorthM - ((north.Low + north.High) / 2)) * k);

        foreach (var direction in group.Directions)
        {
            // The arrow begins outside the masts, so that it crosses neither them nor their distances.
            var (sin, cos) = Math.SinCos(direction.BearingRad);
            var from = masts.Max(m => ((X(m) - cx) * sin) - ((Y(m) - cy) * cos)) + ClearMm;
            var to = from + ArrowMm;
            d.Line(cx + (from * sin), cy - (from * cos), cx + (to * sin), cy - (to * cos), new Pen(0.5)).Head(cx + (to * sin), cy - (to * cos), sin, -cos, 2.6);
            d.Text(cx + ((to + 2.5) * sin), cy - ((to + 2.5) * cos) + 0.9, $"{direction.Name}, {QuantityFormat.Show(direction.BearingRad, QuantityKind.Angle, units, 3)}", 2.6, sin > 0.3 ? Hold.Start : sin < -0.3 ? Hold.End : Hold.Middle, bold: true);
        }

        // From each mast to the next in the file, and round again when they enclose a ground: more lines than that hide it.
        var sides = masts.Zip(masts.Skip(1)).Concat(masts.Count > 2 ? [(masts[^1], masts[0])] : []);
        foreach (var (a, b) in sides)
        {
            var (e, n) = (b.EastM - a.EastM, b.NorthM - a.NorthM);
            var bearing = Math.Atan2(e, n);
            d.Dimension(X(a), Y(a), X(b), Y(b), 10, $"{QuantityFormat.Show(double.Hypot(e, n), QuantityKind.Length, units)} at {QuantityFormat.Show(bearing < 0 ? bearing + (2 * Math.PI) : bearing, QuantityKind.Angle, units, 4)}", 2.4);
        }

        foreach (var mast in masts)
        {
            d.Circle(X(mast), Y(mast), 2, Pen.Bold, "#fff").Circle(X(mast), Y(mast), 0.7, new Pen(0.1), "#000");
            d.Text(X(mast), Y(mast) - 3.4, mast.Name, 3, Hold.Middle, bold: true);
        }

        d.North(160, 12);
        scale.Bar(d, 6, height + 5, units);
        return new Figure($"Group {group.Name} on {QuantityFormat.Show(group.FrequencyHz, QuantityKind.Frequency, units)}, {scale.Name} when printed at full size: feet of the masts with distance and bearing from one to the next, and the bearing each switch position sends to.", d.ToSvg());
    }
}
