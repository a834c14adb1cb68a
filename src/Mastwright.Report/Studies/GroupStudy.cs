using System.Globalization;
using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Groups of masts: drive impedances, patterns, tolerance and feeds.</summary>
public static class GroupStudy
{
    private const string Caution =
        "Relays, phasing boxes and every mast of a group carry lethal voltage while the transmitter is on, masts without current too: their neighbours excite them. Switch only with the transmitter locked out.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("group", "Drive impedances, patterns, tolerance and every feed of the groups, over the real soil", Make);

    private static Document Make(StudyInput input)
    {
        var station = input.Station;
        var document = new DocumentBuilder("Groups", station.Name, station.UnitSystem).Caution(Caution);
        if (station.Groups.IsEmpty)
        {
            return document.Text("The design has no group: add “groups” with a frequency, a power, and for each switch position the current of each mast.").Build();
        }

        var (groups, findings) = GroupPatternRun.Of(station, input.Progress, input.Cancellation);
        document.Findings(input.Placed(findings));
        foreach (var group in groups)
        {
            document.Section($"Group {group.Group.Name}, {document.Show(group.Group.FrequencyHz, QuantityKind.Frequency)}");
            var n = group.Masts.Length;
            document.Table("Self and mutual impedances at the feet over the real soil", ["Mast", .. group.Masts.Select(m => "#" + m)], Enumerable.Range(0, n).Select(i =>
                Enumerable.Range(0, n).Select(j => (Cell)StudyWords.Ohm(group.ImpedanceOhm[i, j])).Prepend(group.Masts[i]).ToArray()));
            foreach (var direction in group.Directions)
            {
                One(document, direction);
            }

            document.Add(Polar.Level($"Patterns of {group.Group.Name} round the compass", "Decibels below the strongest round the compass at the strongest elevation of each direction, over the real soil; north is up.", [.. group.Directions.Select(d => (d.Direction.Name, (IReadOnlyList<double>)d.Pattern.LevelDb))]));
            document.Add(Polar.Upright($"Upright patterns of {group.Group.Name}", "Decibels below the strongest from the wanted horizon (right) over the zenith to the horizon behind, over the real soil.", [.. group.Directions.Select(d => (d.Direction.Name, (IReadOnlyList<double>)d.Pattern.UprightDb))]));
        }

        return document.Build();
    }

    private static void One(DocumentBuilder document, SteeredDirection d)
    {
        document.Add(new Heading(3, $"{d.Direction.Name}, bearing {document.Show(d.Direction.BearingRad, QuantityKind.Angle, 3)}"));
        document.Text($"Gain {StudyWords.Dbi(d.Pattern.GainDbi)} at {document.Show(d.Pattern.ElevationRad, QuantityKind.Angle, 2)} above the horizon, {StudyWords.Db(d.GainOverOneDb)} over one mast, front to back {StudyWords.Db(d.Pattern.FrontToBackDb)}.");
        document.Table("Masts as driven at full power", ["Mast", "#Current RMS", "#Phase", "#Drive impedance", "#Power"], d.Drives.Select(m => new Cell[]
        {
            m.Mast, document.Show(m.CurrentRms.Magnitude, QuantityKind.RmsCurrent, 3), document.Show(m.CurrentRms.Phase, QuantityKind.Angle, 3), StudyWords.Ohm(m.DriveOhm), document.Show(m.PowerW, QuantityKind.Power, 3),
        }));
        document.Table("When the currents are off by at most", ["#Size", "#Phase", "#Gain lost, nine times of ten under", "#Front to back, nine of ten over", "#The worst", "#Seeded trials"], d.Tolerance.Select(t => new Cell[]
        {
            StudyWords.Share(t.SizeError), document.Show(t.PhaseErrorRad, QuantityKind.Angle, 2), StudyWords.Db(t.GainLossDb), StudyWords.Db(t.FrontToBackDb), StudyWords.Db(t.WorstFrontToBackDb), t.Trials.ToString(CultureInfo.InvariantCulture),
        }));
        document.Table("Ways to feed it, best first, with real parts and lines; insulators and strays across the bases counted", ["Feed", "#Worst drive error", "#Gain", "#Front to back", "#Loss", "#SWR", "Lines"], d.Feeds.Select(f => new Cell[]
        {
            f.Title, StudyWords.Share(f.Feed.WorstError), StudyWords.Dbi(f.Pattern.GainDbi), StudyWords.Db(f.Pattern.FrontToBackDb), QuantityFormat.Digits(f.Feed.Solution.LossDb, 2) + " dB", StudyWords.Swr(f.Feed.Swr),
            string.Join(", ", f.Feed.Lines.Select(l => $"{l.Name} {document.Show(l.LengthM, QuantityKind.Length, 4)}")),
        }));
        document.Findings(d.Findings.Where(f => f.Severity != Severity.Error));
    }

}
