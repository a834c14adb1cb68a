using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Parts;

namespace Mastwright.Workbench.Drawings;

/// <summary>One number of a part: in words, or with its trail where it was computed.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Words">Its value in words; empty when it has a trail.</param>
/// <param name="Trail">The number and its answer; null for words.</param>
internal sealed record PartFact(string Name, string Words, Trail? Trail = null);

/// <summary>What is known of a part.</summary>
internal static class PartFacts
{
    private const string TensioningDay = "still air, tensioning day";

    /// <summary>Its numbers, those of the case shown first.</summary>
    public static IReadOnlyList<PartFact> Of(StationPart part, Sheet sheet, View view, CaseResult? shown)
    {
        if (sheet.Station is not { } station || part.Mast >= station.Masts.Length)
        {
            return [];
        }

        var mast = station.Masts[part.Mast];
        var stand = sheet.StandOf(part.Mast);
        var result = sheet.Result is { } r && part.Mast < r.Masts.Length ? r.Masts[part.Mast] : null;
        return
        [
            .. part.Kind switch
            {
                StationPartKind.Guy => Guy(part, station, mast, stand, view, shown),
                StationPartKind.Anchor => Anchor(part, mast, stand, view, shown),
                StationPartKind.Foot => Foot(mast, stand, result, view),
                StationPartKind.Radials => Radials(mast, view),
                StationPartKind.TopWires => TopWires(mast, view),
                _ => MastFacts(mast, stand, result, view, shown),
            },
        ];
    }

    /// <summary>What the part carries or costs on each band.</summary>
    public static IReadOnlyList<PartFact> ByBand(StationPart part, Sheet sheet, View view) =>
        sheet.Station is { } station && sheet.Result is { } r && part.Mast < r.Masts.Length && part.Mast < station.Masts.Length ? [.. Currents(part, station, r.Masts[part.Mast], view)] : [];

    private static IEnumerable<PartFact> Guy(StationPart part, Station station, Mast mast, StandResult? stand, View view, CaseResult? shown)
    {
        var (level, anchor) = (mast.Guys[part.Index], mast.Anchors[part.Anchor]);
        GuyInCase? In(CaseResult? c) => c?.Guys.FirstOrDefault(g => g.Level == part.Index + 1 && g.Anchor == anchor.Name);
        string Tension(GuyInCase g) => $"{view.Show(g.TensionN, QuantityKind.Force, 3)}, {View.Percent(g.ShareOfBreaking * station.Limits.GuyFactor)} of the tension allowed";
        if (shown is not null && In(shown) is { } now)
        {
            yield return new("Tension in this case", Tension(now));
        }

        if (stand?.Cases.Select(c => (Case: c, Guy: In(c))).Where(x => x.Guy is not null).MaxBy(x => x.Guy!.TensionN) is { Guy: { } worst } governs)
        {
            yield return new("Largest tension", $"{Tension(worst)}; {governs.Case.Name}");
        }

        if (stand is not null && part.Index < stand.GuyTensions.Length)
        {
            yield return new($"Largest at level {part.Index + 1}", "", stand.GuyTensions[part.Index].Trail);
        }

        yield return new("Strand", level.Strand);
        yield return new("Attached at", view.Length(level.HeightM));
        yield return new("Straight length", view.Length(double.Hypot(anchor.DistanceM, level.HeightM - anchor.RiseM)));
        yield return new("Insulators", string.Create(CultureInfo.InvariantCulture, $"{level.InsulatorsAtM.Length} × {level.Insulator}"));
        if (stand is not null && GuyTargets.Of(station, mast, stand, TensioningDay).FirstOrDefault(t => t.Level == part.Index + 1 && t.Anchor == anchor.Name)?.Targets is { } targets)
        {
            yield return new("Gauge at the anchor, still air", "", targets.GaugeReading);
            yield return new("Sag at mid span", "", targets.MidSag);
        }
    }

    private static IEnumerable<PartFact> Anchor(StationPart part, Mast mast, StandResult? stand, View view, CaseResult? shown)
    {
        var anchor = mast.Anchors[part.Index];
        yield return new("Distance from the mast", view.Length(anchor.DistanceM));
        yield return new("Bearing", view.Show(anchor.BearingRad, QuantityKind.Angle, 3));
        yield return new("Height above the foot's ground", view.Length(anchor.RiseM));
        double Sum(CaseResult c) => c.Guys.Where(g => g.Anchor == anchor.Name).Sum(g => g.AnchorTensionN);
        if (shown is not null)
        {
            yield return new("Guy tensions here in this case, added up", view.Show(Sum(shown), QuantityKind.Force, 3));
        }

        if (stand?.Cases.Where(c => !c.Guys.IsEmpty).MaxBy(Sum) is { } worst)
        {
            yield return new("Largest sum of guy tensions", $"{view.Show(Sum(worst), QuantityKind.Force, 3)}; {worst.Name}");
        }
    }

    private static IEnumerable<PartFact> Foot(Mast mast, StandResult? stand, MastResult? result, View view)
    {
        if (stand is not null)
        {
            yield return new("Largest compression", "", stand.BaseCompressionN);
        }

        yield return new("Insulator", mast.Base.Insulator);
        if (result is { Bands: { IsEmpty: false } bands } && bands.MaxBy(b => b.BasePeakV.Value) is { } highest)
        {
            yield return new($"Highest working peak, {highest.Name}", "", highest.BasePeakV);
            yield return new($"Largest base current, {bands.MaxBy(b => b.BaseCurrentRms.Value)!.Name}", "", bands.MaxBy(b => b.BaseCurrentRms.Value)!.BaseCurrentRms);
        }

        if (result?.Gap is GapSetting gap)
        {
            yield return new("Gap", "", gap.SpacingM);
        }

        yield return new("Footing", $"{view.Length(mast.Base.FootingWidthM)} wide, {view.Length(mast.Base.FootingDepthM)} deep");
    }

    private static IEnumerable<PartFact> MastFacts(Mast mast, StandResult? stand, MastResult? result, View view, CaseResult? shown)
    {
        yield return new("Height of the top", view.Length(mast.TopM));
        foreach (var s in mast.Sections)
        {
            yield return new("Section", $"{view.Length(s.LengthM)} of {s.Lattice ?? $"tube {view.Show(s.Tube!.DiameterM, QuantityKind.FineLength, 3)} × {view.Show(s.Tube.WallM, QuantityKind.FineLength, 3)}"}");
        }

        if (shown is { Stable: true })
        {
            yield return new("Top moves in this case", view.Show(shown.TopDeflectionM, QuantityKind.FineLength, 3));
            yield return new("Largest bending moment in this case", view.Show(shown.LargestMomentNm, QuantityKind.Moment, 3));
        }

        if (stand?.BucklingFactor is { } buckling)
        {
            yield return new("Buckling factor", "", buckling);
        }

        foreach (var (f, i) in (stand?.MastFrequencies ?? []).Select((f, i) => (f, i)).Take(2))
        {
            yield return new($"Natural frequency {i + 1}", "", f);
        }

        if (result?.FirstResonanceHz is { } resonance)
        {
            yield return new("First resonance", "", resonance);
        }
    }

    private static IEnumerable<PartFact> Radials(Mast mast, View view)
    {
        yield return new("Radials", string.Create(CultureInfo.InvariantCulture, $"{mast.Radials.Count} × {view.Length(mast.Radials.LengthM)}"));
        yield return new("Wire", view.Show(mast.Radials.WireDiameterM, QuantityKind.FineLength, 3));
    }

    private static IEnumerable<PartFact> TopWires(Mast mast, View view)
    {
        if (mast.TopWires is { } wires)
        {
            yield return new("Top wires", string.Create(CultureInfo.InvariantCulture, $"{wires.Count} × {view.Length(wires.LengthM)}"));
            yield return new("Slope below level", view.Show(wires.SlopeRad, QuantityKind.Angle, 3));
        }
    }

    private static IEnumerable<PartFact> Currents(StationPart part, Station station, MastResult result, View view)
    {
        foreach (var band in result.Bands)
        {
            if (part.Kind == StationPartKind.Radials)
            {
                yield return new($"Earth loss, {band.Name}", "", band.EarthLossOhm);
                continue;
            }

            var most = band.Currents.Where(w => w.AmpsRms.Length > 0 && part.HasWire(w.Wire, station)).Select(w => w.AmpsRms.Max()).DefaultIfEmpty(0).Max();
            if (most > 0)
            {
                yield return new($"Largest current, {band.Name}", $"{view.Show(most, QuantityKind.RmsCurrent, 3)} RMS at {view.Show(band.PowerW, QuantityKind.Power, 3)}");
            }
        }
    }
}
