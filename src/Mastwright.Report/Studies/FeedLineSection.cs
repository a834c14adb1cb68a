using Mastwright.Analysis.Feed;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>The feed line of a mast on all bands: loss, standing wave, voltage, the way of the power to the sky, the choke.</summary>
internal static class FeedLineSection
{
    private const double HighestSwrDrawn = 10;

    public static void Write(DocumentBuilder document, MastFeed mast)
    {
        var lines = mast.Bands.Where(b => b.Line is not null).Select(b => (b.Band, Line: b.Line!)).ToList();
        if (lines.Count == 0)
        {
            document.Section($"Mast {mast.Mast}: feed line").Text("No feed line is described: add “cable” and “cable-length” under “feed”. The choke below does not need it.");
        }
        else
        {
            document.Section($"Mast {mast.Mast}: feed line, {document.Show(lines[0].Line.LengthM, QuantityKind.Length)} of {lines[0].Line.Type.Name}");
            document.Table("Feed line at full power, the network at the mast", ["Band", "#Matched loss", "#Loss as fed", "#SWR at the network", "#At the worse edge", "#SWR at the transmitter there", "#Highest voltage", "#Of its rating", "#Highest current", "#Loss without a network", "#Highest voltage without"],
                lines.Select(l => new Cell[]
                {
                    l.Band.Title, document.Show(l.Line.Centre.MatchedLoss, 2), document.Show(l.Line.Centre.TotalLoss, 2), StudyWords.Swr(l.Line.Centre.SwrAtLoad.Value), StudyWords.Swr(l.Line.Edge.SwrAtLoad.Value), StudyWords.Swr(l.Line.Edge.SwrAtInput.Value),
                    document.Show(l.Line.Check.Demand, 3), new(DocumentBuilder.Use(l.Line.Check), l.Line.Check.Verdict), document.Show(l.Line.Edge.HighestCurrent, 3), document.Show(l.Line.Bare.TotalLoss, 2), document.Show(l.Line.Bare.HighestVoltage, 3),
                }));
            document.Checks("Voltage on the feed line against its rating", lines.Select(l => l.Line.Check).OrderByDescending(c => c.Ratio).Take(1));
            Along(document, mast.Mast, lines);
            document.Table("Where the transmitter's power goes", ["Band", "#Transmitter", "#Line", "#Network", "#Earth and mast", "#Radiated", "#Transmitter to sky"], lines.Select(l => new Cell[]
            {
                l.Band.Title, document.Show(l.Band.PowerW, QuantityKind.Power, 4), document.Show(l.Line.Budget.Stages[0], 3), document.Show(l.Line.Budget.Stages[1], 3), document.Show(l.Line.Budget.Stages[2], 3),
                document.Show(l.Line.Budget.Radiated, 3), document.Show(l.Line.Budget.Efficiency, 3),
            }));
        }

        Choke(document, mast);
    }

    // The band whose edge is worst tells most.
    private static void Along(DocumentBuilder document, string mast, List<(Model.Design.Band Band, BandLine Line)> lines)
    {
        var (band, line) = lines.MaxBy(l => l.Line.Edge.SwrAtLoad.Value);
        var unit = QuantityFormat.UnitFor(line.LengthM, QuantityKind.Length, document.Units);
        Curve Of(string name, Func<Circuits.Lines.FeedLinePoint, double> value, Circuits.Lines.FeedLine feed, int n) =>
            new(name, [.. feed.Profile.Select(p => (unit.FromSi(p.FromLoadM), Math.Min(HighestSwrDrawn, value(p))))], Plots.Dash(n));
        document.Add(Plots.Curves($"Standing wave ratio along the line, {band.Title}",
            $"{band.Title}, mast {mast}: standing wave ratio along the feed line from the network (left) to the transmitter, at the band's frequency and at its worse edge{(line.Bare.SwrAtLoad.Value > HighestSwrDrawn ? $"; without a network the ratio at the mast would be {StudyWords.Swr(line.Bare.SwrAtLoad.Value)}, drawn up to {HighestSwrDrawn:0}" : "")}.",
            $"distance from the network, {unit.Symbol}", "standing wave ratio",
            [Of("at the frequency", p => p.Swr, line.Centre, 0), Of("at the worse edge", p => p.Swr, line.Edge, 1), Of("without a network", p => p.Swr, line.Bare, 2)]));
        document.Add(Plots.Curves($"Voltage along the line, {band.Title}", $"{band.Title}, mast {mast}: peak voltage along the feed line at full power.", $"distance from the network, {unit.Symbol}", "peak volts",
        [
            new("at the frequency", [.. line.Centre.Profile.Select(p => (unit.FromSi(p.FromLoadM), p.Voltage.Value))], Plots.Dash(0)),
            new("at the worse edge", [.. line.Edge.Profile.Select(p => (unit.FromSi(p.FromLoadM), p.Voltage.Value))], Plots.Dash(1)),
        ]));
    }

    private static void Choke(DocumentBuilder document, MastFeed mast)
    {
        var choke = mast.Choke;
        document.Add(new Heading(3, "Current on the outside of the cable"));
        if (choke.Choke is null)
        {
            document.Findings(choke.Findings);
            if (choke.Findings.IsEmpty)
            {
                document.Text("The earth under the mast is so good that no choke is needed to keep current off the cable.");
            }
        }
        else
        {
            document.Text($"Wind {choke.Choke.Turns} turns of the cable on {(choke.Choke.Rings == 1 ? "one" : choke.Choke.Rings + " stacked")} {choke.Choke.Ring.Name}, where the cable leaves the radial field; hold the curve of your core against the resistance asked.");
            document.Findings(choke.Findings);
        }

        document.Table("The choke", ["Band", "#Voltage driving the outside", "#Current without a choke", "#Resistance needed", "#Choke shows", "#Current left", "#Heat", "#Warmer by"], choke.Duties.Select((d, i) =>
        {
            var own = choke.Choke?.Bands[i];
            return new Cell[]
            {
                d.Band, document.Show(d.Need.DriveVoltage, 3), document.Show(d.Need.BareCurrent, 3), document.Show(d.Need.NeededOhm, 3),
                own is null ? "" : StudyWords.Ohm(own.ImpedanceOhm), own is null ? "" : document.Show(own.Current, 2), own is null ? "" : document.Show(own.Heat, 2), own is null ? "" : document.Show(own.TemperatureRise, 2),
            };
        }));
    }

}
