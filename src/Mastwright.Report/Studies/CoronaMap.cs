using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Statics;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>A side view of mast and guys with the weather in which each piece begins to spray.</summary>
internal static class CoronaMap
{
    private const double HighMm = 92;
    private const double TopMm = 8;
    private const double MiddleMm = 66;
    private const double WideMm = 112;

    // The view looks along this bearing, off any usual line of guys, so that guys do not cover each other.
    private const double ViewRad = 0.35;

    // From pieces that stay quiet in a storm to those that spray in fair weather.
    private static readonly Pen[] Pens = [new(0.3, Colour: "#999"), new(0.7, "2 1", "#555"), new(1.1, "0.6 0.8"), new(1.8)];

    /// <summary>The map; null when nothing was solved.</summary>
    public static Figure? Of(Mast mast, StaticsReport report, UnitSystem units)
    {
        if (report.Static is not { } still)
        {
            return null;
        }

        var pieces = Pieces(mast, report).ToList();
        var reach = Math.Max(1, mast.Anchors.Max(a => Math.Abs(Across(a, a.DistanceM))));
        var k = Math.Min(HighMm / Math.Max(mast.TopM, still.Places.Max(p => p.HeightM)), WideMm / 2 / reach);
        var unit = QuantityFormat.UnitFor(1, QuantityKind.Length, units);
        var d = new Drawing(170, TopMm + HighMm + 12, $"Corona map of mast {mast.Name}");
        (double X, double Y) At(double across, double height) => (MiddleMm + (across * k), TopMm + HighMm - (height * k));
        d.Line(MiddleMm - (WideMm / 2), TopMm + HighMm, MiddleMm + (WideMm / 2), TopMm + HighMm, Pen.Plain);
        var (foot, top) = (At(0, mast.Base.HeightM), At(0, mast.TopM));
        d.Line(foot.X, foot.Y, top.X, top.Y, new Pen(0.9, Colour: "#bbb"));
        foreach (var p in pieces)
        {
            var (a, b) = (At(p.From.Across, p.From.Height), At(p.To.Across, p.To.Height));
            d.Line(a.X, a.Y, b.X, b.Y, Pens[Grade(p.Static.OnsetField.Value)]);
        }

        foreach (var place in still.Places)
        {
            var at = At(0, place.HeightM);
            var grade = Grade(place.OnsetField.Value);
            d.Circle(at.X, at.Y, 0.9 + (0.5 * grade), new Pen(0.4), grade > 0 ? "#000" : "#fff");
        }

        for (var g = 0; g < Pens.Length; g++)
        {
            d.Line(128, 16 + (g * 6), 138, 16 + (g * 6), Pens[g]);
            d.Text(140, 16.9 + (g * 6), g == 0 ? "quiet in a storm" : "sprays " + (Pens.Length - 1 - g) switch { 0 => "in fair weather", 1 => "under cloud", _ => "in a storm" }, 2.3, ground: false);
        }

        d.Text(128, 44, "dot: a place on the mast,", 2.3, ground: false).Text(128, 47.2, "filled where it sprays", 2.3, ground: false);
        FigurePoint Point(double across, double height, double onset, string note)
        {
            var at = At(across, height);
            return new FigurePoint(unit.FromSi(height), onset / 1e3, at.X, at.Y, note);
        }

        return new Figure($"Corona map of mast {mast.Name} from the side: the heavier a piece is drawn, the weaker the atmospheric field at which it begins to spray. {Fields()}", d.ToSvg())
        {
            Data = new FigureData($"height, {unit.Symbol}", "atmospheric field at onset, kV/m",
            [
                new FigureSeries("mast", [.. still.Places.Select(p => Point(0, p.HeightM, p.OnsetField.Value, p.Part))]),
                .. pieces.GroupBy(p => p.Static.Guy).Select(g => new FigureSeries(g.Key, [.. g.Select(p => Point((p.From.Across + p.To.Across) / 2, (p.From.Height + p.To.Height) / 2, p.Static.OnsetField.Value, $"piece {p.Static.Section} from the top"))])),
            ]),
        };
    }

    private static IEnumerable<((double Across, double Height) From, (double Across, double Height) To, GuySectionStatic Static)> Pieces(Mast mast, StaticsReport report)
    {
        foreach (var (level, l) in mast.Guys.Select((g, l) => (g, l + 1)))
        {
            foreach (var anchor in StandModel.AnchorsOf(mast, level))
            {
                var length = double.Hypot(anchor.DistanceM, level.HeightM - anchor.RiseM);
                var solved = (report.Guys?.Sections ?? []).Where(s => s.Guy == string.Create(CultureInfo.InvariantCulture, $"guy {l} to {anchor.Name}")).OrderBy(s => s.Section).ToList();
                var starts = (level.InsulatorsAtM.IsEmpty ? [0.0] : level.InsulatorsAtM.AsEnumerable()).Where(m => m < length - 0.5).Distinct().Order().ToImmutableArray();
                if (solved.Count != starts.Length)
                {
                    continue;
                }

                (double, double) At(double m) => (Across(anchor, anchor.DistanceM * m / length), level.HeightM + ((anchor.RiseM - level.HeightM) * m / length));
                for (var s = 0; s < solved.Count; s++)
                {
                    yield return (At(starts[s]), At(s + 1 < starts.Length ? starts[s + 1] : length), solved[s]);
                }
            }
        }
    }

    private static double Across(Anchor anchor, double distanceM) => distanceM * Math.Sin(anchor.BearingRad + ViewRad);

    // In how many of the usual weathers it sprays.
    private static int Grade(double onsetVPerM) => Math.Min(Pens.Length - 1, Weather.Usual.Count(w => w.FieldVPerM.Value > onsetVPerM));

    private static string Fields() => string.Join(", ", Weather.Usual.Select(w => $"{w.Name} {w.FieldVPerM.Value.ToString("0", CultureInfo.InvariantCulture)} V/m")) + ".";
}
