using System.Globalization;
using Mastwright.Analysis.Keep;
using Mastwright.Analysis.Tune;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Keep;

/// <summary>What a storm did by the model, and what is to be looked at after it.</summary>
public static class StormStudy
{
    private const int ChecksShown = 6;
    private const double IcyK = 271.15;

    /// <summary>The document.</summary>
    /// <param name="station">The station.</param>
    /// <param name="storm">The storm as noted.</param>
    /// <param name="fromAzimuthRad">Bearing the wind came from; null when not known.</param>
    /// <param name="checklist">The checklist of the station.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Document Of(Station station, StormEntry storm, double? fromAzimuthRad, IReadOnlyList<ChecklistItem> checklist, CancellationToken cancellation)
    {
        var document = new DocumentBuilder("After the storm", $"{station.Name}, {EntryWords.When(storm.At)}: {EntryWords.Summary(storm, station.UnitSystem)}", station.UnitSystem);
        document.Caution("Keep out of the fall circle until the guys and anchors were looked at from outside it. Broken strand and loose anchors kill. A licensed engineer and local codes come first.");
        if (storm.GustMs > 0 || storm.IceM > 0)
        {
            // Ice forms near freezing; a storm without a noted temperature is taken at the tensioning temperature.
            var temperature = storm.Weather.TemperatureK ?? (storm.IceM > 0 ? IcyK : station.Site.TensioningTemperatureK);
            var reported = new ReportedStorm(storm.GustMs, storm.IceM ?? 0, fromAzimuthRad, temperature);
            document.Add(new Note(NoteKind.Assumption, StormReplay.Assumes));
            if (storm.Weather.TemperatureK is null)
            {
                document.Add(new Note(NoteKind.Assumption, $"No temperature was noted: {document.Show(temperature, QuantityKind.Temperature, 3)} was taken."));
            }

            if (fromAzimuthRad is null && storm.GustMs > 0)
            {
                document.Add(new Note(NoteKind.Assumption, "The wind's direction was not noted: the worst of all directions is shown."));
            }

            if (storm.GustMs is > 0 and < StormReplay.LeastGustMPerS)
            {
                document.Add(new Note(NoteKind.Assumption, $"The gust was replayed as {document.Show(StormReplay.LeastGustMPerS, QuantityKind.Speed, 2)}, the least the wind method reads."));
            }

            foreach (var mast in station.Masts)
            {
                Replay(document, StormReplay.Of(station, mast, reported, cancellation));
            }
        }

        document.Section("To be looked at now");
        var due = DueList.ConcernedBy(storm, checklist);
        return due.IsEmpty
            ? document.Text("Nothing on the checklist asks for a look after a storm of this size.").Build()
            : document.Table("", ["Key", "What to look at", "Caution"], due.Select(i => new Cell[] { i.Key, i.Label, i.Caution })).Build();
    }

    private static void Replay(DocumentBuilder document, StormEffect effect)
    {
        document.Section($"Mast {effect.Mast}: what the model says");
        if (!effect.Stood)
        {
            document.Caution($"The model does not find mast {effect.Mast} standing under this storm. If it stands, the storm was less than reported or the mast has more in it than the model knows; treat it as damaged until looked at by someone competent.");
        }

        if (effect.Guys.IsEmpty)
        {
            return;
        }

        document.Table("Guys", ["Guy", "#Before", "#Largest", "#Of breaking strength", "Went slack", "Case"], effect.Guys.Select(g => new Cell[]
        {
            GuyNames.Short(g.Name), document.Show(g.BeforeN, QuantityKind.Force, 3), document.Show(g.Largest, 3), (100 * g.ShareOfBreaking).ToString("0", CultureInfo.InvariantCulture) + " %", g.WentSlack ? "yes" : "no", g.Governing,
        }));
        document.Text($"Largest compression at the foot {document.Show(effect.FootCompressionN, QuantityKind.Force, 3)}; the top moved by up to {document.Show(effect.TopDeflectionM, QuantityKind.FineLength, 3)}.");
        document.Checks("Against what the design allows, without load factors", effect.Checks.OrderByDescending(c => c.Ratio).DistinctBy(c => c.Title).Take(ChecksShown));
    }
}
