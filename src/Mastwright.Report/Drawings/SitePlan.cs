using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The site from above, to scale: masts, guys, anchors, radials, fall circles and what stands around.</summary>
public static class SitePlan
{
    private const double WidthMm = 170;
    private const double PlanMm = 150;
    private static readonly Pen Guy = new(0.25);
    private static readonly Pen Radial = new(0.15, "0.8 0.8", "#777");
    private static readonly Pen Fall = new(0.5, "4 1.5");
    private static readonly Pen Boundary = new(0.5, "6 1 1 1");
    private static readonly Pen People = new(0.35, "1.5 1.5");
    private static readonly Pen PowerLine = new(0.9, "0.9 2");

    /// <summary>The plan.</summary>
    public static Figure Of(Station station)
    {
        var units = station.UnitSystem;
        var ring = Rings(station).ToList();
        var core = station.Masts.Max(m => Math.Max(m.TopM, Math.Max(m.Radials.LengthM, m.Anchors.Select(a => a.DistanceM).DefaultIfEmpty(0).Max())));

        // What stands far away would make the masts too small to see: it is named in the key only.
        var near = ring.Where(r => r.RadiusM <= 2.2 * core).ToList();
        var reach = 1.04 * near.Select(r => r.RadiusM).Append(core).Max();
        var (east, north) = (Span(station.Masts.Select(m => m.EastM)), Span(station.Masts.Select(m => m.NorthM)));
        var scale = Scale.Fitting(Math.Max(east.High - east.Low, north.High - north.Low) + (2 * reach), PlanMm - 6, units);
        var k = scale.MmPerM;
        var heightMm = ((north.High - north.Low + (2 * reach)) * k) + 8;
        var rows = ring.Count + 4;
        var drawing = new Drawing(WidthMm, heightMm + 8 + (rows * 4.6), "Site plan of " + station.Name);
        var (cx, cy) = (WidthMm / 2, heightMm / 2);
        double X(double e) => cx + ((e - ((east.Low + east.High) / 2)) * k);
        double Y(double n) => cy - ((n - ((north.Low + north.High) / 2)) * k);

        foreach (var mast in station.Masts)
        {
            foreach (var r in RadialPlan.Of(station, mast).Radials)
            {
                drawing.Line(X(mast.EastM), Y(mast.NorthM), X(mast.EastM + (r.LengthM * Math.Cos(r.AzimuthRad))), Y(mast.NorthM + (r.LengthM * Math.Sin(r.AzimuthRad))), Radial);
            }

            if (mast.Radials.Screen is { } screen)
            {
                drawing.Box(X(mast.EastM - (screen.WidthM / 2)), Y(mast.NorthM + (screen.WidthM / 2)), screen.WidthM * k, screen.WidthM * k, new Pen(0.25));
            }
        }

        foreach (var metal in station.NearbyMetal)
        {
            var (atX, atY, endX, endY) = (X(metal.EastM), Y(metal.NorthM), X(metal.EndEastM ?? metal.EastM), Y(metal.EndNorthM ?? metal.NorthM));
            drawing.Line(atX, atY, endX, endY, new Pen(0.8)).Circle(atX, atY, 0.9, new Pen(0.1), "#000");
            drawing.Text(endX + 1.6, endY + 0.9, metal.Name);
        }

        foreach (var mast in station.Masts)
        {
            foreach (var r in near.Where(r => r.BearingRad is null))
            {
                drawing.Circle(X(mast.EastM), Y(mast.NorthM), (r.Fall ? mast.TopM : r.RadiusM) * k, r.Pen);
            }
        }

        foreach (var r in near.Where(r => r.BearingRad is not null))
        {
            Bounds(drawing, station, r, reach, X, Y);
        }

        foreach (var mast in station.Masts)
        {
            Mast(drawing, mast, X, Y);
        }

        drawing.North(WidthMm - 10, 12);
        var y = heightMm + 6;
        scale.Bar(drawing, 6, y, units);
        Key(drawing, ring, near, station, y + 7);
        var beyond = near.Count < ring.Count ? " What lies beyond the sheet is named in the key." : "";
        return new Figure($"Site plan, {scale.Name} when printed at full size. Distances of boundary, people and power line are from the nearest mast foot{(near.Any(r => r is { Fall: false, BearingRad: null }) ? "; where the file gives no bearing they are drawn all round" : "")}.{beyond}", drawing.ToSvg());
    }

    // What lies at a bearing: a line square to it, or the place itself, with its distance from the nearest foot.
    private static void Bounds(Drawing drawing, Station station, Ring ring, double reachM, Func<double, double> x, Func<double, double> y)
    {
        var (sin, cos) = Math.SinCos(ring.BearingRad!.Value);
        var foot = station.Masts.MaxBy(m => (m.EastM * sin) + (m.NorthM * cos))!;
        var (e, n) = (foot.EastM + (ring.RadiusM * sin), foot.NorthM + (ring.RadiusM * cos));
        if (ring.Place)
        {
            drawing.Circle(x(e) + (1.8 * sin), y(n) - (1.8 * cos), 1.8, new Pen(0.3), "#fff").Circle(x(e) + (1.8 * sin), y(n) - (1.8 * cos), 0.7, new Pen(0.1), "#000");
        }
        else
        {
            // As long as stays on the sheet: the half chord of the circle that the plan holds.
            var half = Math.Max(6, Math.Sqrt(Math.Max(0, (reachM * reachM) - (ring.RadiusM * ring.RadiusM))));
            drawing.Line(x(e - (half * cos)), y(n + (half * sin)), x(e + (half * cos)), y(n - (half * sin)), ring.Pen);
        }

        var off = ring.Place ? 6.5 : 3;
        drawing.Text(x(e) + (off * sin), y(n) - (off * cos) + 0.9, ring.What, 2.3, sin > 0.3 ? Hold.Start : sin < -0.3 ? Hold.End : Hold.Middle);
        drawing.Dimension(x(foot.EastM), y(foot.NorthM), x(e), y(n), 0.001, $"{QuantityFormat.Show(ring.RadiusM, QuantityKind.Length, station.UnitSystem)} at {QuantityFormat.Show(ring.BearingRad.Value, QuantityKind.Angle, station.UnitSystem, 3)}", 2.3);
    }

    private static void Mast(Drawing drawing, Mast mast, Func<double, double> x, Func<double, double> y)
    {
        foreach (var anchor in mast.Anchors.Where(a => mast.Guys.Any(g => StandModel.AnchorsOf(mast, g).Contains(a))))
        {
            var eye = StandModel.EyeOf(mast, anchor);
            drawing.Line(x(mast.EastM), y(mast.NorthM), x(eye.X), y(eye.Y), Guy);
            drawing.Box(x(eye.X) - 1, y(eye.Y) - 1, 2, 2, new Pen(0.2), "#000");
            var (sin, cos) = Math.SinCos(anchor.BearingRad);
            drawing.Text(x(eye.X) + (3.2 * sin), y(eye.Y) - (3.2 * cos) + 0.9, anchor.Name, Drawing.Letter, sin > 0.3 ? Hold.Start : sin < -0.3 ? Hold.End : Hold.Middle);
        }

        drawing.Circle(x(mast.EastM), y(mast.NorthM), 1.5, new Pen(0.3), "#fff").Circle(x(mast.EastM), y(mast.NorthM), 0.6, new Pen(0.1), "#000");
        drawing.Text(x(mast.EastM) + 2.4, y(mast.NorthM) - 2, mast.Name, 3.2, bold: true);
    }

    private sealed record Ring(string What, double RadiusM, Pen Pen, bool Fall, double? BearingRad = null, bool Place = false);

    private static IEnumerable<Ring> Rings(Station station)
    {
        yield return new Ring("fall circle: the mast's height", station.Masts.Max(m => m.TopM), Fall, true);
        if (station.Site.BoundaryDistanceM is { } boundary)
        {
            yield return new Ring("boundary", boundary, Boundary, false, station.Site.BoundaryBearingRad);
        }

        if (station.Site.PeopleDistanceM is { } people)
        {
            yield return new Ring("where people stay", people, People, false, station.Site.PeopleBearingRad, Place: true);
        }

        if (station.Site.PowerLineDistanceM is { } line)
        {
            yield return new Ring("nearest power line", line, PowerLine, false, station.Site.PowerLineBearingRad);
        }
    }

    private static void Key(Drawing drawing, List<Ring> rings, List<Ring> near, Station station, double y)
    {
        foreach (var r in rings)
        {
            drawing.Line(6, y, 24, y, r.Pen);
            drawing.Text(28, y + 0.9, $"{r.What}, {QuantityFormat.Show(r.RadiusM, QuantityKind.Length, station.UnitSystem)}{(r.BearingRad is { } b ? $" at {QuantityFormat.Show(b, QuantityKind.Angle, station.UnitSystem, 3)}" : "")}{(near.Contains(r) ? "" : " (beyond this sheet)")}", ground: false);
            y += 4.6;
        }

        drawing.Line(6, y, 24, y, Radial);
        drawing.Text(28, y + 0.9, "radials: " + string.Join("; ", station.Masts.Select(m => Radials(station, m)).Distinct()) + (station.Masts.Length > 1 ? " at each mast" : ""), ground: false);
        y += 4.6;
        drawing.Line(6, y, 24, y, Guy).Box(23, y - 1, 2, 2, new Pen(0.2), "#000");
        drawing.Text(28, y + 0.9, "guys with their anchor", ground: false);
    }

    // How many and how long as they really lie: cut short at a fence or by a neighbour's.
    private static string Radials(Station station, Mast mast)
    {
        var lengths = RadialPlan.Of(station, mast).Radials.Select(r => r.LengthM).ToList();
        string Show(double m) => QuantityFormat.Show(m, QuantityKind.Length, station.UnitSystem, 3);
        return lengths.Max() - lengths.Min() < 0.05 ? $"{lengths.Count} of {Show(lengths[0])}" : $"{lengths.Count} of {Show(lengths.Min())} to {Show(lengths.Max())}";
    }

    private static (double Low, double High) Span(IEnumerable<double> values) => (values.Min(), values.Max());
}
