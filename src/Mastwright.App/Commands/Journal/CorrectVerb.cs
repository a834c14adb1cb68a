using System.Collections.Immutable;
using System.CommandLine;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal correct</c>: an entry said anew; what it said before is kept with the reason.</summary>
internal static class CorrectVerb
{
    private static readonly Option<string?> Key = new("--key") { Description = "Key of the entry, as the list shows it.", Required = true };
    private static readonly Option<string?> Why = new("--why") { Description = "Why it is corrected.", Required = true };
    private static readonly Option<string?> Guy = new("--guy") { Description = "Of a tension: the guy it was." };
    private static readonly Option<string?> Reading = new("--reading") { Description = "Of a tension: the reading as it should be, way first, e.g. \"pulse 10 in 2.79 s\"." };
    private static readonly Option<string[]> Seen = new("--seen") { Description = "Of an inspection: items as they were found, as for inspect.", AllowMultipleArgumentsPerToken = true, DefaultValueFactory = _ => [] };
    private static readonly Option<string?> Gust = new("--gust") { Description = "Of a storm: strongest gust." };
    private static readonly Option<string?> Ice = new("--ice") { Description = "Of a storm: radial ice." };
    private static readonly Option<string?> Lightning = new("--lightning") { Description = "Of a storm: yes or no." };
    private static readonly Option<string?> Photo = new Option<string?>("--photo") { Description = "Of a photo: where it lies now." }.NamesFile();

    public static Command Create()
    {
        Lightning.AcceptOnlyFromAmong("yes", "no");
        return JournalVerb.Adding("correct", "Say an entry anew: what is given replaces what it said, the rest stands; the earlier wording is kept with the reason.", Run, Key, Why, Guy, Reading, Seen, Gust, Ice, Lightning, Photo);
    }

    private static int Run(JournalVerb verb)
    {
        var (entry, problem) = EntryKey.Find(verb, verb.Written.Text(Key)!);
        if (entry is null)
        {
            return JournalVerb.Refuse(problem!);
        }

        var corrected = Own(verb, entry, verb.Corrected(entry));
        if (verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        if (corrected.Equals(entry))
        {
            return JournalVerb.Refuse(new Finding("correct-nothing", Severity.Error, $"Nothing that this {entry.Kind} entry says would change.", Written.Place("--key"), verb.Written.Text(Key), WayOut: "Give what it should say; `journal show` shows what it says now."));
        }

        return verb.Open(write: true, store => store.Correct(corrected, Written.Now(), verb.Written.Text(Why)!) is { Problem: { } failed }
            ? JournalVerb.Refuse(failed)
            : JournalVerb.Say($"Corrected {EntryWords.Key(entry)}: {EntryWords.Summary(corrected, verb.Station.UnitSystem)}. What it said before is kept."));
    }

    private static JournalEntry Own(JournalVerb verb, JournalEntry was, JournalEntry entry)
    {
        var given = new[] { Guy, Reading, Gust, Ice, Lightning, Photo }.Where(o => verb.Written.Text(o) is not null).Select(o => o.Name).Concat(verb.Parsed.GetValue(Seen)!.Length > 0 ? [Seen.Name] : []);
        string[] fits = entry switch { TensionEntry => [Guy.Name, Reading.Name], InspectionEntry => [Seen.Name], StormEntry => [Gust.Name, Ice.Name, Lightning.Name], PhotoEntry => [Photo.Name], _ => [] };
        foreach (var alien in given.Except(fits))
        {
            verb.Written.Problems.Add(new Finding("correct-other", Severity.Error, $"A {entry.Kind} entry has nothing like {alien}.", Written.Place(alien), Allowed: string.Join(", ", fits.Append("--at, --mast, --by, --note, --temperature, --wind, --weather")), WayOut: "Leave it out."));
        }

        return entry switch
        {
            TensionEntry t => Tension(verb, (TensionEntry)was, t),
            InspectionEntry i => Inspection(verb, i),
            StormEntry s => s with
            {
                GustMs = verb.Written.Quantity(Gust, QuantityKind.Speed, 0, Analysis.Keep.StormReplay.GreatestGustMPerS) ?? s.GustMs,
                IceM = verb.Written.Quantity(Ice, QuantityKind.FineLength, 0, 0.2) ?? s.IceM,
                Lightning = verb.Written.Text(Lightning) is { } word ? word == "yes" : s.Lightning,
            },
            PhotoEntry p when verb.Written.Text(Photo) is { } path => NoteVerbs.Referred(verb, path) is var photo && photo.Problem is { } unreadable ? Refused(verb, p, unreadable) : p with { Path = photo.Path, Sha256 = photo.Digest },
            _ => entry,
        };
    }

    // The tension follows from reading, guy, mast and temperature together: whichever of them is corrected, it is found anew.
    private static TensionEntry Tension(JournalVerb verb, TensionEntry was, TensionEntry entry)
    {
        var (guy, reading) = (verb.Written.Text(Guy), verb.Written.Text(Reading));
        if (guy is null && reading is null && entry.Mast == was.Mast && entry.Weather.TemperatureK == was.Weather.TemperatureK)
        {
            return entry;
        }

        if (MastOf(verb, entry) is not { } mast)
        {
            return entry;
        }

        var way = reading is null ? TensionReadings.WayOf(entry.Method) : TensionReadings.Ways.Keys.FirstOrDefault(w => reading.StartsWith(w + " ", StringComparison.OrdinalIgnoreCase));
        if (way is null)
        {
            return Refused(verb, entry, new Finding("reading-bad", Severity.Error, "It is not said how the guy was read.", Written.Place("--reading"), reading ?? entry.Method, string.Join(", ", TensionReadings.Ways.Keys), "Write it like “pulse 10 in 2.79 s”."));
        }

        var raw = reading is null ? entry.Raw : reading[(way.Length + 1)..].Trim();
        var (found, problem) = verb.Take(mast, entry.Weather.TemperatureK, guy ?? entry.Guy, way, raw, "--reading");
        return found is null ? Refused(verb, entry, problem!) : found.Entry(new EntryHead(entry.Id, entry.At, entry.Author, entry.Text, entry.Weather));
    }

    private static InspectionEntry Inspection(JournalVerb verb, InspectionEntry entry)
    {
        if (verb.Parsed.GetValue(Seen) is not { Length: > 0 } seen || MastOf(verb, entry) is not { } mast)
        {
            return entry;
        }

        var found = InspectVerb.Named(verb, mast, [.. UpkeepParts.Checklist(verb.Station).Where(c => c.Mast == mast.Name)], seen);
        ImmutableArray<InspectedItem> items = [.. entry.Items.Select(i => found.Remove(i.Key, out var anew) ? anew : i)];
        return entry with { Items = [.. items, .. found.Values] };
    }

    // A mast that was renamed since is named by its new name.
    private static Mast? MastOf(JournalVerb verb, JournalEntry entry)
    {
        var mast = verb.Station.Masts.FirstOrDefault(m => m.Name == entry.Mast);
        if (mast is null && verb.Written.Problems.Count == 0)
        {
            verb.Written.Problems.Add(new Finding("mast-unknown", Severity.Error, $"The design has no mast “{entry.Mast}” any more, so this cannot be corrected.", Written.Place("--mast"), entry.Mast,
                string.Join(", ", verb.Station.Masts.Select(m => m.Name)), "Name the mast it is now with --mast."));
        }

        return mast;
    }

    private static T Refused<T>(JournalVerb verb, T entry, Finding finding)
    {
        verb.Written.Problems.Add(finding);
        return entry;
    }
}
