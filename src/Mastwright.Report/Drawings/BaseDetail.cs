using Mastwright.Catalog;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Gaps;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Drawings;

/// <summary>The foot of a mast with everything that belongs there, not to scale: footing, insulator, pivot, gap, earth plate, lead.</summary>
public static class BaseDetail
{
    /// <summary>The drawing.</summary>
    public static Figure Of(Station station, Mast mast, GapAnswer gap)
    {
        var units = station.UnitSystem;
        string Long(double m) => QuantityFormat.Show(m, QuantityKind.Length, units);
        string Fine(double m) => QuantityFormat.Show(m, QuantityKind.FineLength, units, 3);
        var insulator = Catalogue.Default.BaseInsulators[mast.Base.Insulator];
        var d = new Drawing(170, 128, $"Base detail of mast {mast.Name}");
        const double axis = 78, ground = 84, plate = 66, seat = 40;

        // Ground, footing, earth.
        d.Line(8, ground, 162, ground, Pen.Bold);
        for (var x = 10.0; x < 160; x += 5)
        {
            d.Line(x, ground, x - 2.5, ground + 2.5, Pen.Faint);
        }

        d.Box(axis - 20, plate + 4, 40, 50, new Pen(0.4), "#e4e4e4");
        foreach (var x in new[] { axis - 15, axis + 15 })
        {
            d.Line(x, plate + 8, x, plate + 50, new Pen(0.25, "2 1"));
        }

        // Earth plate and radial bus.
        d.Box(axis - 26, plate, 52, 4, new Pen(0.3), "#999");
        d.Line(axis - 26, plate + 3, axis - 34, ground - 1, new Pen(0.8)).Line(axis + 26, plate + 3, axis + 34, ground - 1, new Pen(0.8));
        d.Line(12, ground - 1, axis - 34, ground - 1, new Pen(0.4, "2 0.8")).Line(axis + 34, ground - 1, 158, ground - 1, new Pen(0.4, "2 0.8"));
        d.Line(axis - 34, ground - 1, axis - 34, ground + 26, new Pen(0.9));
        d.Path([(axis - 35, ground + 26), (axis - 33, ground + 26), (axis - 34, ground + 29)], new Pen(0.2), "#000");

        // Insulator with sheds, then the pivot, then the mast.
        d.Box(axis - 5, seat + 4, 10, plate - seat - 4, new Pen(0.3), "#fff");
        for (var y = seat + 7; y < plate - 2; y += 5)
        {
            d.Box(axis - 8, y, 16, 2, new Pen(0.25), "#fff");
        }

        Pivot(d, mast.Base.Pivot, axis, seat);
        d.Box(axis - 12, seat - 8, 24, 3, new Pen(0.3), "#999");
        d.Path([(axis - 10, seat - 8), (axis - 10, 6), (axis + 10, 6), (axis + 10, seat - 8)], Pen.Bold);
        d.Line(axis - 10, 18, axis + 10, 6, Pen.Plain).Line(axis - 10, 18, axis + 10, 30, Pen.Plain);

        // Gap balls on the right, lead on the left.
        d.Line(axis + 12, seat - 6.5, axis + 24, seat - 6.5, new Pen(0.6)).Line(axis + 24, seat - 6.5, axis + 24, seat + 3, new Pen(0.6));
        d.Line(axis + 24, plate, axis + 24, seat + 15, new Pen(0.6));
        d.Circle(axis + 24, seat + 5, 2.6, new Pen(0.3), "#ccc").Circle(axis + 24, seat + 12.6, 2.6, new Pen(0.3), "#ccc");
        d.Line(axis - 12, seat - 6.5, axis - 44, seat - 2, new Pen(0.9)).Line(axis - 44, seat - 2, axis - 58, seat - 2, new Pen(0.9));
        d.Box(axis - 74, seat - 8, 16, 26, new Pen(0.4), "#f4f4f4");
        d.Line(axis - 66, seat + 18, axis - 66, plate + 2, new Pen(0.9)).Line(axis - 66, plate + 2, axis - 26, plate + 2, new Pen(0.9));

        // Names.
        d.Text(axis - 66, seat - 10, "matching cabinet", 2.4, Hold.Middle);
        d.Text(axis - 32, seat - 9, $"lead {Fine(mast.Base.LeadDiameterM)}", 2.4, Hold.Middle);
        d.Leader(axis + 9, 12, axis + 34, 12, $"lower end of mast {mast.Name}");
        d.Leader(axis + 4, seat - 1.5, axis + 34, seat - 12, Words.Pivot(mast.Base.Pivot) + $", turns up to {QuantityFormat.Show(mast.Base.PivotRotationRad, QuantityKind.Angle, units, 3)}");
        var setting = gap switch
        {
            GapSetting g => $"gap: set {Fine(g.SpacingM.Value)} ({g.Feeler.InchText})",
            NoGapFits => "gap: none fits, see the gap's page",
            _ => "gap: cannot be set, see the findings",
        };
        d.Leader(axis + 26, seat + 8.8, axis + 34, seat + 2, setting);
        d.Text(axis + 34.8, seat + 6, $"{Words.Electrodes(station.Protection.Electrodes)}, {Fine(station.Protection.ElectrodeDiameterM)}", 2.4);
        d.Leader(axis + 7, seat + 17, axis + 34, seat + 17, $"{insulator.Name}, {Fine(insulator.HeightM)} high");
        d.Leader(axis + 20, plate + 2, axis + 40, plate - 2, "earth plate, all joined here");
        d.Leader(axis + 34, ground - 1, axis + 42, ground + 9, $"{mast.Radials.Count} radials of {Long(mast.Radials.LengthM)}" + (mast.Radials.DepthM > 0 ? $", {Fine(mast.Radials.DepthM)} deep" : ", on the surface"));
        d.Leader(axis - 34, ground + 12, axis - 37, ground + 20, "rod");
        d.Leader(axis + 15, ground + 18, axis + 40, ground + 20, "reinforcement as the engineer says");
        d.Dimension(axis - 20, plate + 54, axis + 20, plate + 54, 5, Long(mast.Base.FootingWidthM) + " square");
        d.Line(axis - 12, seat - 5, axis - 54, seat - 5, Pen.Faint).Line(axis - 20, plate + 54, axis - 54, plate + 54, Pen.Faint);
        d.Dimension(axis - 52, ground, axis - 52, plate + 54, 0.001, Long(mast.Base.FootingDepthM), 2.4);
        d.Dimension(axis - 52, seat - 5, axis - 52, ground, 0.001, Long(mast.Base.HeightM), 2.4);
        return new Figure($"Base of mast {mast.Name}, not to scale. The pivot keeps bending off the ceramic; the gap stands between the mast's foot and the earth plate in the shortest, straightest path. Drip hood, fence and locks are not drawn and belong there.", d.ToSvg());
    }

    private static void Pivot(Drawing d, Pivot pivot, double axis, double seat)
    {
        switch (pivot)
        {
            case Model.Design.Pivot.BallAndCone:
                d.Path([(axis - 7, seat + 4), (axis - 4, seat - 1), (axis, seat + 1.2), (axis + 4, seat - 1), (axis + 7, seat + 4)], new Pen(0.3), "#bbb");
                d.Circle(axis, seat - 2, 3, new Pen(0.3), "#fff");
                break;
            case Model.Design.Pivot.RockerAndPin:
                d.Box(axis - 8, seat + 1, 16, 3, new Pen(0.3), "#bbb");
                d.Path([(axis - 8, seat - 5), (axis + 8, seat - 5), (axis + 5, seat - 0.6), (axis, seat + 1), (axis - 5, seat - 0.6)], new Pen(0.3), "#fff");
                d.Line(axis, seat - 4, axis, seat + 3.5, new Pen(0.9));
                break;
            default:
                d.Box(axis - 8, seat + 1, 16, 3, new Pen(0.3), "#bbb");
                d.Circle(axis, seat - 2, 3, new Pen(0.5), "#fff").Circle(axis, seat - 2, 0.8, new Pen(0.2), "#000");
                break;
        }
    }
}
