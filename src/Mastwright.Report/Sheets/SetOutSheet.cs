using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Sheets;

/// <summary>Where the anchors go: offsets, bearings, tapes from the foot and from anchor to anchor.</summary>
public static class SetOutSheet
{
    /// <summary>The study.</summary>
    public static Study Study { get; } = new("setout", "Where the anchors go: offsets, bearings, and the tapes that check them", input =>
    {
        var document = new DocumentBuilder("Setting out", input.Station.Name, input.Station.UnitSystem);
        Write(document, input.Station);
        return document.Build();
    });

    /// <summary>Writes the sheet.</summary>
    public static void Write(DocumentBuilder document, Station station)
    {
        document.Text("Set a peg for each foot first and measure everything from it with a steel tape held level. Bearings count from true north through east: a compass shows magnetic north, so add your place's declination, or sight on the sun or a mapped line. " +
            "When all pegs stand, pull the tapes from anchor to anchor: they close only when bearings and distances are both right.");
        foreach (var mast in station.Masts)
        {
            One(document, station, mast);
        }

        Feet(document, station);
        document.Caution("Before the first hole is dug have buried cables and pipes marked, and look up: no rope, tape or mast may come near a power line while it is handled.");
    }

    private static void One(DocumentBuilder document, Station station, Mast mast)
    {
        document.Section($"Anchors of mast {mast.Name}").Add(SetOutPlan.Of(station, mast));
        string Tape(double m) => TapeText.Of(m, document.Units);
        var foot = StandModel.FootOf(mast) with { Z = 0 };
        document.Table("From the foot", ["Anchor", "#Bearing", "#Level distance", "#East (− west)", "#North (− south)", "#Eye above foot's ground", "#Tape along the slope"], mast.Anchors.Select(a =>
        {
            var d = StandModel.EyeOf(mast, a) - foot;
            return new Cell[] { a.Name, document.Show(a.BearingRad, QuantityKind.Angle, 5), Tape(a.DistanceM), Signed(Tape, d.X), Signed(Tape, d.Y), Signed(Tape, d.Z), Tape(d.Length) };
        }));
        var pairs = mast.Anchors.SelectMany((a, i) => mast.Anchors.Skip(i + 1).Select(b => (a, b))).ToList();
        document.Table("From anchor to anchor, eye to eye", ["From", "To", "#Tape", "#Angle between at the foot", "#Measured"], pairs.Select(p =>
        {
            var turn = Math.Abs(p.a.BearingRad - p.b.BearingRad);
            return new Cell[] { p.a.Name, p.b.Name, Tape((StandModel.EyeOf(mast, p.a) - StandModel.EyeOf(mast, p.b)).Length), document.Show(Math.Min(turn, (2 * Math.PI) - turn), QuantityKind.Angle, 5), "" };
        }));
        document.Table("Pull and slope of the guys at each anchor", ["Anchor", "Level", "#Straight length", "#Slope of the guy above level", "#Tape from the anchor's eye to the foot"], mast.Guys.SelectMany((level, n) => StandModel.AnchorsOf(mast, level).Select(a =>
        {
            var chord = StandModel.FootOf(mast) + ((level.HeightM - mast.Base.HeightM) * Numerics.Vec3.Up) - StandModel.EyeOf(mast, a);
            return new Cell[] { a.Name, $"{n + 1}", Tape(chord.Length), document.Show(Math.Atan2(chord.Z, double.Hypot(chord.X, chord.Y)), QuantityKind.Angle, 3), Tape((StandModel.EyeOf(mast, a) - foot).Length) };
        })));
    }

    private static void Feet(DocumentBuilder document, Station station)
    {
        if (station.Masts.Length < 2)
        {
            return;
        }

        document.Section("From foot to foot");
        document.Table("", ["From", "To", "#Distance", "#Bearing"], station.Masts.SelectMany((a, i) => station.Masts.Skip(i + 1).Select(b => (a, b))).Select(p =>
        {
            var (e, n) = (p.b.EastM - p.a.EastM, p.b.NorthM - p.a.NorthM);
            var bearing = Math.Atan2(e, n);
            return new Cell[] { p.a.Name, p.b.Name, TapeText.Of(double.Hypot(e, n), document.Units), document.Show(bearing < 0 ? bearing + (2 * Math.PI) : bearing, QuantityKind.Angle, 5) };
        }));
    }

    private static string Signed(Func<double, string> tape, double m) => Math.Abs(m) < 0.0005 ? tape(0) : m < 0 ? "−" + tape(-m) : tape(m);
}
