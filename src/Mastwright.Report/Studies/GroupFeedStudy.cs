using System.Globalization;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Groups;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Feeds of groups in real parts, with their switching.</summary>
public static class GroupFeedStudy
{
    private const string Caution =
        "A phasing box holds lethal voltage and burns on touch while the transmitter is on; masts without current carry voltage too. Switch and open only with the transmitter locked out. Parts are to be held against their makers' data.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("group-feed", "Every way to feed the groups in real parts: lines, networks, dump power, switching table, drive errors and the pattern that results", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Feeds of the groups", station.Name, station.UnitSystem).Caution(Caution);
        if (station.Groups.IsEmpty)
        {
            return document.Text("The design has no group: add “groups” with a frequency, a power, and for each switch position the current of each mast.").Build();
        }

        var (groups, findings) = GroupFeedRun.Of(station, input.Progress, input.Cancellation);
        document.Findings(input.Placed(findings));
        foreach (var group in groups)
        {
            document.Section($"Group {group.Group.Name}, {document.Show(group.Group.FrequencyHz, QuantityKind.Frequency)}, {document.Show(group.Group.PowerW, QuantityKind.Power)}");
            One(document, group);
        }

        return document.Build();
    }

    private static void One(DocumentBuilder document, FedGroup group)
    {
        document.Findings(group.Findings);
        if (group.Offers.IsEmpty)
        {
            return;
        }

        var best = group.Offers[0];
        document.Table("Ways to feed it in real parts, best first; insulators and strays across the bases counted", ["Way", "#Worst drive error", "#At the band's edges", "#Gain", "#Front to back", "#Loss", "#Dump", "#SWR", "#SWR at the edges", "#Coils and capacitors", "Can be built"], group.Offers.Select((o, i) => new Cell[]
        {
            (i == 0 ? "▶ " : "") + o.Real.Feed.Title, StudyWords.Share(o.Real.Feed.WorstError), string.Join(", ", o.Edges.Select(e => StudyWords.Share(e.WorstError))), StudyWords.Dbi(o.Pattern.GainDbi), StudyWords.Db(o.Pattern.FrontToBackDb),
            QuantityFormat.Digits(o.Real.Feed.Solution.LossDb, 2) + " dB", document.Show(o.Real.Feed.DumpPowerW, QuantityKind.Power, 2), StudyWords.Swr(o.Real.Feed.Swr), string.Join(", ", o.Edges.Select(e => StudyWords.Swr(e.Swr))),
            QuantityFormat.Digits(o.Real.Coils.Length + o.Real.Capacitors.Length), o.Real.IsComplete ? "yes" : "not from what is at hand",
        }));
        document.Text("Name the way you take as “way” under the group's “feed”; name the line to the masts as “feeder”, and its lengths where they are laid.");
        foreach (var (offer, i) in group.Offers.Select((o, i) => (o, i)))
        {
            document.Add(new Heading(3, (i == 0 ? "" : "Also: ") + offer.Real.Feed.Title));
            document.Add(GroupDrawing.Of(group.Group.Name, offer.Real.Feed, group.Masts, document.Units));
            Lines(document, offer.Real.Feed);
            if (i == 0)
            {
                Masts(document, group, offer.Real.Feed);
            }

            NetworkParts.Write(document, offer.Real.Coils, offer.Real.Capacitors);
            if (i == 0 && !offer.Real.Lines.IsEmpty)
            {
                document.Checks("Lines against their working voltages", offer.Real.Lines);
            }

            document.Findings(offer.Real.Findings.Where(f => f.Severity != Severity.Error || !offer.Real.IsComplete).Select(f => i == 0 ? f : f with { Severity = f.Severity == Severity.Error ? Severity.Warning : f.Severity }));
        }

        Switching(document, group, best);
    }

    private static void Lines(DocumentBuilder document, GroupFeed feed)
    {
        var lines = feed.Network.Parts.OfType<Line>().ToList();
        if (lines.Count == 0)
        {
            return;
        }

        document.Table("Lines to cut", ["Line", "Kind", "#Length", "#Electrical", "#Velocity factor", "#Matched loss", "#Heat", "#Highest voltage", "#Highest current"], lines.Select(l =>
        {
            var state = feed.Solution.Part(l.Name);
            return new Cell[]
            {
                l.Name, l.Type.Name, document.Show(l.LengthM, QuantityKind.Length, 4), document.Show(2 * Math.PI * l.LengthM / l.Type.WavelengthM(feed.Problem.FrequencyHz), QuantityKind.Angle, 4), QuantityFormat.Digits(l.Type.VelocityFactor, 2),
                QuantityFormat.Digits(l.Type.LossDbPerM(feed.Problem.FrequencyHz) * l.LengthM, 2) + " dB", document.Show(state.DissipationW, QuantityKind.Power, 2), document.Show(state.PeakVoltage.Value, QuantityKind.PeakVoltage, 3), document.Show(state.HighestCurrent.Value, QuantityKind.RmsCurrent, 3),
            };
        }));
    }

    private static void Masts(DocumentBuilder document, FedGroup group, GroupFeed feed) => document.Table(
        "Terminals of the masts as driven, first switch position", ["Mast", "#Current", "#Phase", "#Impedance", "#Peak voltage", "#Power"], feed.Drives.Select(d => new Cell[]
        {
            group.Masts[d.Mast], document.Show(d.Current.Value, QuantityKind.RmsCurrent, 3), document.Show(d.CurrentPhasor.Phase - feed.Drives[feed.Problem.Reference].CurrentPhasor.Phase, QuantityKind.Angle, 3), StudyWords.Ohm(d.ImpedanceOhm),
            document.Show(d.Voltage.Value, QuantityKind.PeakVoltage, 3), document.Show(d.PowerW, QuantityKind.Power, 3),
        }));

    private static void Switching(DocumentBuilder document, FedGroup group, GroupOffer best)
    {
        if (group.Table is not { } table)
        {
            return;
        }

        document.Add(new Heading(3, "Switch positions on one box"));
        document.Table("Which port of the box each mast hangs on; the first position holds with all relays released", ["Position", .. group.Masts, "At drop-off"], table.Directions.Select(d =>
            new Cell[] { d.Name }.Concat(d.PortOfMast.Select(p => (Cell)$"port of {group.Masts[p]}")).Append(d.Name == table.DropOff ? "yes" : "").ToArray()));
        document.Table("Contacts", ["Mast", "Port", "Made in"], table.Relays.Select(r => new Cell[] { group.Masts[r.Mast], $"port of {group.Masts[r.Port]}", string.Join(", ", r.MadeIn) }));
        if (best.Real.Feed.Lines.Select(l => Math.Round(l.LengthM, 3)).Distinct().Count() > 1)
        {
            document.Text("The lines differ in length, so the contacts sit at the masts' ends of them, or the extra length sits coiled in the box and only like feeders run to the masts.");
        }

        document.Table("Drive errors and pattern in every position, with the parts above", ["Position", "Mast", "#Asked", "#Achieved", "#Error of size", "#Error of phase", "#Gain asked", "#Gain", "#Front to back asked", "#Front to back", "#SWR", "#Dump"],
            group.Directions.SelectMany(d => d.Errors.Select((e, i) => new Cell[]
            {
                i == 0 ? d.Direction.Name : "", e.Mast, Ratio(document, e.Asked), Ratio(document, e.Achieved), (20 * Math.Log10(e.Achieved.Magnitude / e.Asked.Magnitude)).ToString("+0.00;−0.00;0.00", CultureInfo.InvariantCulture) + " dB",
                ((e.Achieved / e.Asked).Phase * 180 / Math.PI).ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture) + "°",
                i == 0 ? StudyWords.Dbi(d.Wanted.GainDbi) : "", i == 0 ? StudyWords.Dbi(d.Given.GainDbi) : "", i == 0 ? StudyWords.Db(d.Wanted.FrontToBackDb) : "", i == 0 ? StudyWords.Db(d.Given.FrontToBackDb) : "", i == 0 ? StudyWords.Swr(d.Swr) : "", i == 0 ? document.Show(d.DumpW, QuantityKind.Power, 2) : "",
            })));
        var first = group.Directions[0];
        document.Add(Polar.Level($"{first.Direction.Name}: asked and fed", $"{group.Group.Name}, {first.Direction.Name}: pattern round the compass of the asked currents and of those the feed gives, decibels below the strongest, over the real soil; north is up.",
            [("currents as asked", first.Wanted.LevelDb), ("currents as fed", first.Given.LevelDb)]));
    }

    private static string Ratio(DocumentBuilder document, Complex z) => $"{QuantityFormat.Digits(z.Magnitude, 3)} at {document.Show(z.Phase, QuantityKind.Angle, 3)}";

}
