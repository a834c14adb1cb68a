using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Stand;
using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>A mast from the side, to scale: guys turned into the paper, levels, insulators, sections, top wires, dimensions.</summary>
public static class Elevation
{
    private const double WidthMm = 170;
    private const double TallestMm = 190;

    /// <summary>The drawing of a mast.</summary>
    public static Figure Of(Station station, Mast mast)
    {
        var units = station.UnitSystem;
        var (right, left) = Sides(mast);
        var span = right.DistanceM + (left?.DistanceM ?? 0);
        var low = Math.Min(0, mast.Anchors.Min(a => a.RiseM));
        var height = mast.TopM - low;
        var byWidth = Scale.Fitting(Math.Max(span, 1), WidthMm - 44, units);
        var byHeight = Scale.Fitting(height, TallestMm - 34, units);
        var scale = byWidth.Denominator > byHeight.Denominator ? byWidth : byHeight;
        var k = scale.MmPerM;
        var sheet = (height * k) + 36;
        var drawing = new Drawing(WidthMm, sheet, $"Elevation of mast {mast.Name}");
        var foot = 28 + ((left?.DistanceM ?? 0) * k) + Math.Max(0, (WidthMm - 44 - (span * k)) / 2);
        double Y(double z) => 10 + ((mast.TopM - z) * k);
        string Show(double m) => QuantityFormat.Show(m, QuantityKind.Length, units);

        Ground(drawing, mast, right, left, foot, k, Y);
        TopWires(drawing, mast, foot, k, Y);
        foreach (var (level, n) in mast.Guys.Select((g, i) => (g, i + 1)))
        {
            foreach (var (anchor, side) in new[] { (right, 1), (left, -1) })
            {
                if (anchor is not null && StandModel.AnchorsOf(mast, level).Contains(anchor))
                {
                    GuyLine(drawing, mast, level, foot, foot + (side * anchor.DistanceM * k), Y(level.HeightM), Y(anchor.RiseM));
                }
            }

            drawing.Line(foot + 2, Y(level.HeightM), WidthMm - 4, Y(level.HeightM), Pen.Faint);
            drawing.Text(WidthMm - 4, Y(level.HeightM) - 0.8, $"level {n}: {level.Strand}", 2.3, Hold.End);
        }

        Shaft(drawing, mast, foot, k, Y);
        var x = Math.Max(8, foot - ((left?.DistanceM ?? 0) * k) - 12);
        var from = 0.0;
        foreach (var z in mast.Guys.Select(g => g.HeightM).Append(mast.TopM).Prepend(mast.Base.HeightM).Order())
        {
            if (z - from > 1e-6 && (z - from) * k > 2.2)
            {
                drawing.Dimension(x, Y(from), x, Y(z), 0.001, Show(z - from), 2.4);
                from = z;
            }
        }

        foreach (var z in mast.Guys.Select(g => g.HeightM).Append(mast.TopM).Append(0))
        {
            drawing.Line(x - 8, Y(z), foot - 1, Y(z), Pen.Faint);
        }

        if (x > 15)
        {
            drawing.Dimension(x - 8, Y(0), x - 8, Y(mast.TopM), -0.001, Show(mast.TopM), 2.4);
        }

        drawing.Dimension(foot, Y(low), foot + (right.DistanceM * k), Y(low), 9, $"{Show(right.DistanceM)} to {right.Name}", 2.4);
        if (left is not null)
        {
            drawing.Dimension(foot - (left.DistanceM * k), Y(low), foot, Y(low), 9, $"{Show(left.DistanceM)} to {left.Name}", 2.4);
        }

        scale.Bar(drawing, 6, sheet - 4, units);
        var joint = mast.Sections.Length > 1 ? " Short strokes across the mast are its joints between runs." : "";
        return new Figure($"Elevation of mast {mast.Name}, {scale.Name} when printed at full size. The guys to {right.Name}{(left is null ? "" : " and " + left.Name)} are turned into the plane of the paper; ovals are guy insulators.{joint} The mast's width is drawn at least half a millimetre wide.", drawing.ToSvg());
    }

    // The anchor farthest out goes to the right, the next that differs most in bearing to the left.
    private static (Anchor Right, Anchor? Left) Sides(Mast mast)
    {
        var right = mast.Anchors.MaxBy(a => a.DistanceM)!;
        var left = mast.Anchors.Where(a => a != right).MaxBy(a => Math.Round(1 - Math.Cos(a.BearingRad - right.BearingRad), 6));
        return (right, left);
    }

    private static void Ground(Drawing drawing, Mast mast, Anchor right, Anchor? left, double foot, double k, Func<double, double> y)
    {
        var points = new List<(double X, double Y)>();
        if (left is not null)
        {
            points.Add((foot - (left.DistanceM * k) - 6, y(left.RiseM)));
            points.Add((foot - (left.DistanceM * k), y(left.RiseM)));
        }
        else
        {
            points.Add((foot - 10, y(0)));
        }

        points.AddRange([(foot, y(0)), (foot + (right.DistanceM * k), y(right.RiseM)), (foot + (right.DistanceM * k) + 6, y(right.RiseM))]);
        drawing.Path(points, Pen.Bold);
        var (w, d) = (mast.Base.FootingWidthM * k, mast.Base.FootingDepthM * k);
        drawing.Box(foot - (w / 2), y(0), w, d, new Pen(0.2), "#ddd");
        foreach (var (anchor, side) in new[] { (right, 1), (left, -1) })
        {
            if (anchor is not null)
            {
                drawing.Box(foot + (side * anchor.DistanceM * k) - 1.2, y(anchor.RiseM) - 0.2, 2.4, 2.4, new Pen(0.2), "#000");
            }
        }
    }

    private static void GuyLine(Drawing drawing, Mast mast, GuyLevel level, double x1, double x2, double y1, double y2)
    {
        var conducts = Catalogue.Default.Strands.Find(level.Strand).Found;
        drawing.Line(x1, y1, x2, y2, conducts ? Pen.Plain : new Pen(0.3, "1.2 0.8"));
        var drawn = double.Hypot(x2 - x1, y2 - y1);
        foreach (var at in Sheets.GuyPlaces.InsulatorsM(mast, level))
        {
            var anchor = StandModel.AnchorsOf(mast, level).First();
            var chord = double.Hypot(anchor.DistanceM, level.HeightM - anchor.RiseM);
            var share = at / chord;
            if (share < 1)
            {
                drawing.Circle(x1 + (share * (x2 - x1)), y1 + (share * (y2 - y1)), drawn > 0 ? 0.8 : 0.4, new Pen(0.2), "#fff");
            }
        }
    }

    private static void TopWires(Drawing drawing, Mast mast, double foot, double k, Func<double, double> y)
    {
        if (mast.TopWires is not { PartOfGuys: false } wires)
        {
            return;
        }

        foreach (var side in new[] { 1, -1 })
        {
            var (x2, y2) = (foot + (side * wires.LengthM * Math.Cos(wires.SlopeRad) * k), y(mast.TopM - (wires.LengthM * Math.Sin(wires.SlopeRad))));
            drawing.Line(foot, y(mast.TopM), x2, y2, new Pen(0.5, "3 0.8"));
        }

        drawing.Text(foot + 4, y(mast.TopM) - 3.4, $"{wires.Count} top wires", 2.3);
    }

    private static void Shaft(Drawing drawing, Mast mast, double foot, double k, Func<double, double> y)
    {
        var at = mast.Base.HeightM;
        drawing.Line(foot, y(0), foot, y(at), new Pen(0.3));
        drawing.Circle(foot, y(at / 2), Math.Clamp(at * k / 3, 0.6, 1.6), new Pen(0.2), "#fff");
        foreach (var section in mast.Sections)
        {
            var wide = Math.Max(0.6, (WireModels.RadiusM(section) + WireModels.TopRadiusM(section)) * k);
            drawing.Box(foot - (wide / 2), y(at + section.LengthM), wide, section.LengthM * k, new Pen(0.25), section.Tube is null ? "#bbb" : "#eee");
            at += section.LengthM;
            drawing.Line(foot - 1.6, y(at), foot + 1.6, y(at), Pen.Plain);
        }
    }
}
