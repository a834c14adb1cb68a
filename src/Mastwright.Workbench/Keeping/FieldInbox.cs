using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.Workbench.Keeping;

/// <summary>Turns what was typed outdoors into entries of the journal. What cannot be used comes back as a finding that names its field.</summary>
public sealed partial class FieldInbox(Desk desk, JournalDesk journal)
{
    /// <summary>Most entries taken in one sending.</summary>
    public const int MostNotes = 200;

    private const int MostWords = 4000;
    private const int MostLooks = 2000;

    private readonly StandingMasts masts = new();

    /// <summary>Takes one entry.</summary>
    public FieldAnswer Take(FieldNote note, CancellationToken cancellation)
    {
        var answer = Answer(note, cancellation);

        // The answer to an earlier sending may have been lost, and the mast or the guy been renamed since: what the journal has is not refused.
        return answer is { State: "refused" or "later", Field: not "id" } && Has(note) ? new(note.Id, "already", "", "") : answer;
    }

    private FieldAnswer Answer(FieldNote note, CancellationToken cancellation)
    {
        if (note.Id == Guid.Empty)
        {
            return new(note.Id, "refused", "The entry has no key.", "id");
        }

        if (desk.Now.Station is not { } station)
        {
            return new(note.Id, "later", "The design on the desk has errors, so its masts are not known. Mend it there; the entry waits where it is and is sent again by itself.", "");
        }

        var written = new Written();
        var (entry, says) = Read(written, station, note, cancellation);
        if (written.Problem is { } problem)
        {
            return Refused(note.Id, problem);
        }

        var (state, refused) = journal.Keep(entry!);
        return refused is null ? new(note.Id, state == KeptState.Kept ? "kept" : "already", says, "")
            : IsOfTheJournal(refused) ? new(note.Id, "later", $"{refused.Message} The entry waits where it is and is sent again by itself.", "")
            : Refused(note.Id, refused);
    }

    // Busy, full, damaged or not there yet: nothing is wrong with what was entered.
    private static bool IsOfTheJournal(Finding problem) => problem.Code.StartsWith("journal-", StringComparison.Ordinal) || problem.Code.StartsWith("backup-", StringComparison.Ordinal);

    private bool Has(FieldNote n)
    {
        if (n.Id == Guid.Empty || journal.Knows(n.Id) is not (true, var there))
        {
            return false;
        }

        string Plain(string? text) => (text ?? "").Trim();
        var written = new Written();
        return there is null || (WeatherOf(written, n) == there.Weather && OffsetDateTimePattern.ExtendedIso.Parse(n.At ?? "") is { Success: true, Value: var at } && there.At.ToInstant() == at.ToInstant() && there.Kind == n.Kind
            && (Plain(n.Mast).Length == 0 || there is StormEntry || there.Mast == Plain(n.Mast)) && there.Author == Plain(n.Author) && there.Text == Plain(n.Text) && there switch
            {
                TensionEntry tension => tension.Raw == Plain(n.Reading) && TensionReadings.WayOf(tension.Method) == n.Way,
                InspectionEntry inspection => inspection.Items.Select(i => (i.Key, (ItemState?)i.State, i.Remark)).SequenceEqual((n.Items ?? []).Select(i => (Plain(i.Key), StateOf(i.State), Plain(i.Remark)))),
                StormEntry storm => StormOf(written, n, new EntryHead(n.Id, at, "", "", Weather.NotNoted)) is var told && (told.Ended?.ToInstant(), told.GustMs, told.IceM, told.Lightning) == (storm.Ended?.ToInstant(), storm.GustMs, storm.IceM, storm.Lightning),
                PhotoEntry photo => photo.Path == Plain(n.Path),
                _ => true,
            });
    }

    private static FieldAnswer Refused(Guid id, Finding f) => new(id, "refused",
        string.Join(" ", new[] { f.Message, f.Allowed is null ? null : $"Allowed: {f.Allowed}.", f.WayOut }.Where(s => !string.IsNullOrEmpty(s))), f.Place?.Path ?? "");

    private (JournalEntry? Entry, string Says) Read(Written w, Station station, FieldNote n, CancellationToken cancellation)
    {
        var at = w.Moment("at", n.At) ?? JournalDesk.Clock();
        var (author, text) = (w.Words("author", n.Author), w.Words("text", n.Text));
        var weather = WeatherOf(w, n);
        var mast = Mast(w, station, n.Mast, n.Kind is "tension" or "inspection");
        if (w.Problem is not null)
        {
            return (null, "");
        }

        switch (n.Kind)
        {
            case "tension":
                return Tension(w, station, mast!, n, new EntryHead(n.Id, at, author, text, weather), cancellation);
            case "inspection":
                var items = Items(w, station, mast!, n.Items ?? []);
                return (new InspectionEntry(n.Id, at, mast!.Name, author, text, weather, items), string.Join(", ", items.GroupBy(i => i.State).Select(g => $"{g.Count()} {EntryWords.Word(g.Key)}")));
            case "storm":
                var storm = StormOf(w, n, new EntryHead(n.Id, at, author, text, weather));
                w.Need(storm.GustMs is not null || storm.IceM is not null || storm.Lightning, "gust", "Nothing is said about the storm.", "Give gust, ice or lightning; for anything else write words.");
                return (storm, "See on the journal's page what is to be looked at after it.");
            case "photo":
                var path = w.Words("path", n.Path);
                w.Need(path.Length > 0, "path", "The photo has no name.", "Choose the photo again.");
                var digest = (n.Sha256 ?? "").ToLowerInvariant();
                w.Need(digest.Length == 0 || Digest().IsMatch(digest), "sha256", "This is not a digest.", "Leave it out.");
                return (new PhotoEntry(n.Id, at, mast?.Name ?? "", author, text, weather, path, digest, n.About), "");
            case "note":
                w.Need(text.Length > 0, "text", "The entry has no words.", "Write something.");
                return (new NoteEntry(n.Id, at, mast?.Name ?? "", author, text, weather), "");
            default:
                w.Need(false, "kind", "This kind of entry is not known here.", "tension, inspection, storm, photo or note.");
                return (null, "");
        }
    }

    private static Weather WeatherOf(Written w, FieldNote n) => new(
        w.Quantity("temperature", n.Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK), w.Quantity("wind", n.Wind, QuantityKind.Speed, 0, Weather.MostWindMPerS), w.Words("weather", n.Weather));

    private static StormEntry StormOf(Written w, FieldNote n, EntryHead head) => new(
        head.Id, head.At, "", head.Author, head.Text, head.Weather, w.Moment("ended", n.Ended),
        w.Quantity("gust", n.Gust, QuantityKind.Speed, 0, Analysis.Keep.StormReplay.GreatestGustMPerS), w.Quantity("ice", n.Ice, QuantityKind.FineLength, 0, 0.2), n.Lightning);

    private static ItemState? StateOf(string? word) => word switch { "good" => ItemState.Good, "watch" => ItemState.Watch, "bad" => ItemState.Bad, "not-seen" => ItemState.NotSeen, _ => null };

    private (JournalEntry? Entry, string Says) Tension(Written w, Station station, Mast mast, FieldNote n, EntryHead head, CancellationToken cancellation)
    {
        var (way, reading) = (n.Way ?? "", w.Words("reading", n.Reading));
        w.Need(TensionReadings.Ways.ContainsKey(way), "way", "This way to read a tension is not known here.", "Choose " + string.Join(", ", TensionReadings.Ways.Keys) + ".");
        w.Need(reading.Length > 0, "reading", "Nothing was read.", "Enter the reading.");
        if (w.Problem is not null)
        {
            return (null, "");
        }

        var (taken, problem) = GuyReading.Take(masts, station, mast, head.Weather.TemperatureK, n.Guy ?? "", way, reading, cancellation);
        if (taken is null)
        {
            w.Problem = problem;
            return (null, "");
        }

        var (guy, found) = (taken.Guy, taken.Found);
        string Show(double newtons) => QuantityFormat.Show(newtons, QuantityKind.Force, station.UnitSystem, 3);
        var off = (found.AtAnchor.Value / guy.AnchorTensionN) - 1;
        var says = $"{Show(found.AtAnchor.Value)} at the anchor, give or take {Show(found.UncertaintyN)}";
        says += head.Weather.TemperatureK is null
            ? ". Without a temperature it cannot be held against the table."
            : $"; the table says {Show(guy.AnchorTensionN)} at this temperature: {(100 * off).ToString("+0;−0;0", CultureInfo.InvariantCulture)} %, {(Math.Abs(off) <= TensionReadingDocument.CautionShare ? "near enough" : "off by more than a tenth")}.";
        return (taken.Entry(head), says);
    }

    private static ImmutableArray<InspectedItem> Items(Written w, Station station, Mast mast, IReadOnlyList<FieldLook> looks)
    {
        w.Need(looks.Count is > 0 and <= MostLooks, "items", "Nothing that was looked at is named.", "Look at one item at least.");
        var checklist = UpkeepParts.Checklist(station).Where(c => c.Mast == mast.Name).ToDictionary(c => c.Key);
        var items = ImmutableArray.CreateBuilder<InspectedItem>();
        foreach (var look in looks.Take(MostLooks))
        {
            var key = w.Words("items", look.Key);
            var state = StateOf(look.State);
            w.Need(state is not null, "items", $"“{look.State}” is no state an item can be in.", "good, watch, bad or not-seen.");
            w.Need(key.Length > 0 && items.All(i => i.Key != key), "items", $"“{key}” is named twice.", "Name each item once.");

            // An item the design has lost since the phone took its checklist along is kept under its own key: it was looked at.
            items.Add(new InspectedItem(key, checklist.TryGetValue(key, out var known) ? known.Label : key, state ?? ItemState.NotSeen, w.Words("items", look.Remark)));
        }

        return items.ToImmutable();
    }

    private static Mast? Mast(Written w, Station station, string? name, bool needed)
    {
        var named = w.Words("mast", name);
        if (named.Length == 0)
        {
            w.Need(!needed || station.Masts.Length == 1, "mast", "The mast is not named.", "Choose one of " + string.Join(", ", station.Masts.Select(m => m.Name)) + ".");
            return needed ? station.Masts[0] : null;
        }

        var mast = station.Masts.FirstOrDefault(m => m.Name == named);
        w.Need(mast is not null, "mast", $"The design has no mast “{named}”.", "It has " + string.Join(", ", station.Masts.Select(m => m.Name)) + ".");
        return mast;
    }

    [GeneratedRegex("^[0-9a-f]{64}$")]
    private static partial Regex Digest();

    /// <summary>Reads what was typed; the first thing that cannot be used is remembered.</summary>
    private sealed class Written
    {
        public Finding? Problem { get; set; }

        public void Need(bool holds, string field, string message, string wayOut)
        {
            if (!holds)
            {
                Problem ??= new Finding("note-bad", Severity.Error, message, new Place("", 0, 0, field), WayOut: wayOut);
            }
        }

        public string Words(string field, string? text)
        {
            var words = (text ?? "").Trim();
            Need(words.Length <= MostWords, field, $"This is longer than {MostWords} characters.", "Say it shorter, or make two entries.");
            return words.Length <= MostWords ? words : "";
        }

        public OffsetDateTime? Moment(string field, string? text)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            var read = OffsetDateTimePattern.ExtendedIso.Parse(text);
            Need(read.Success, field, "This is not a moment.", "Write it like 2026-05-01T14:30:00+02:00.");
            return read.Success ? read.Value : null;
        }

        public double? Quantity(string field, string? text, QuantityKind kind, double least, double most)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return null;
            }

            var read = QuantityText.Read(text, kind);
            string Show(double v) => QuantityFormat.Show(v, kind, UnitSystem.Metric);
            if (!read.Ok)
            {
                Need(false, field, $"“{text}” cannot be used: {read.Problem}.", read.WayOut ?? "Write number and unit.");
            }
            else
            {
                Need(read.ValueSi >= least && read.ValueSi <= most, field, $"“{text}” is out of range.", $"Between {Show(least)} and {Show(most)}.");
            }

            return read.Ok ? read.ValueSi : null;
        }
    }
}
