using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The anchors of a mast from above with the tapes to pull: from the foot to each anchor and from anchor to anchor.</summary>
public static class SetOutPlan
{
    /// <summary>The drawing.</summary>
    public static Figure Of(Station station, Mast mast)
    {
        var units = station.UnitSystem;
        var reach = mast.Anchors.Max(a => a.DistanceM);
        var scale = Scale.Fitting(2 * reach, 112, units);
        var k = scale.MmPerM;
        var half = (reach * k) + 12;
        var d = new Drawing(170, (2 * half) + 8, $"Set-out of the anchors of mast {mast.Name}");
        double X(Anchor a) => 85 + (a.DistanceM * Math.Sin(a.BearingRad) * k);
        double Y(Anchor a) => half - (a.DistanceM * Math.Cos(a.BearingRad) * k);
        var ordered = mast.Anchors.OrderBy(a => a.BearingRad).ToList();
        for (var i = 0; i < ordered.Count; i++)
        {
            var (a, b) = (ordered[i], ordered[(i + 1) % ordered.Count]);
            if (a != b && (ordered.Count > 2 || i == 0))
            {
                d.Dimension(X(a), Y(a), X(b), Y(b), 0.001, QuantityFormat.Show((StandModel.EyeOf(mast, a) - StandModel.EyeOf(mast, b)).Length, QuantityKind.Length, units, 5), 2.4);
            }

            d.Dimension(85, half, X(a), Y(a), 0.001, QuantityFormat.Show(a.DistanceM, QuantityKind.Length, units, 5), 2.4);
        }

        foreach (var a in ordered)
        {
            var (sin, cos) = Math.SinCos(a.BearingRad);
            d.Box(X(a) - 1.2, Y(a) - 1.2, 2.4, 2.4, new Pen(0.2), "#000");
            d.Text(X(a) + (4 * sin), Y(a) - (4 * cos) + 0.9, $"{a.Name} {QuantityFormat.Show(a.BearingRad, QuantityKind.Angle, units, 5)}", 2.8, sin > 0.3 ? Hold.Start : sin < -0.3 ? Hold.End : Hold.Middle, bold: true);
        }

        d.Circle(85, half, 1.5, new Pen(0.3), "#fff").Circle(85, half, 0.6, new Pen(0.1), "#000");
        d.North(158, 14);
        scale.Bar(d, 6, (2 * half) + 5, units);
        return new Figure($"Set-out of the anchors of mast {mast.Name}, {scale.Name} when printed at full size: level distances from the foot, straight distances between the anchors' eyes.", d.ToSvg());
    }
}
