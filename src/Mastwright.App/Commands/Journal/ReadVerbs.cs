using System.CommandLine;
using Mastwright.Journal;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal list</c>, <c>show</c> and <c>changes</c>.</summary>
internal static class ReadVerbs
{
    private static readonly Option<string?> Kind = new("--kind") { Description = "Only tension, sweep, inspection, photo, storm or note." };
    private static readonly Option<string?> From = new("--from") { Description = "From this date on." };
    private static readonly Option<string?> To = new("--to") { Description = "Up to this date; left out, now." };
    private static readonly Option<string?> Since = new("--from") { Description = "The first date: what was known at its end.", Required = true };
    private static readonly Option<string?> Key = new("--key") { Description = "Key of the entry, as the list shows it.", Required = true };

    public static Command List()
    {
        Kind.AcceptOnlyFromAmong("tension", "sweep", "inspection", "photo", "storm", "note");
        return JournalVerb.Reading("list", "List what is in the journal.", verb =>
        {
            var (from, to) = (verb.Written.MomentOrNull(From, endOfDay: false), verb.Written.MomentOrNull(To, endOfDay: true));
            if (verb.Written.Problems.Count > 0)
            {
                return JournalVerb.Refuse([.. verb.Written.Problems]);
            }

            return verb.Open(write: false, store =>
            {
                // A day alone means all of it.
                var first = from is { } f && verb.Written.Text(From)!.Length <= 10 ? f.Minus(NodaTime.Duration.FromHours(12)) : from;
                var entries = store.Entries(first?.ToInstant(), to?.ToInstant(), verb.Written.Text(Kind));
                return entries.Value is { } list ? JournalVerb.Show(JournalDocuments.List(verb.Station, list)) : JournalVerb.Refuse(entries.Problem!);
            });
        }, Kind, From, To);
    }

    public static Command Show() => JournalVerb.Reading("show", "Show one entry in full.", verb =>
    {
        var (entry, problem) = EntryKey.Find(verb, verb.Written.Text(Key)!);
        return entry is null ? JournalVerb.Refuse(problem!) : JournalVerb.Show(JournalDocuments.Show(verb.Station, entry));
    }, Key);

    public static Command Changes() => JournalVerb.Reading("changes", "Show what changed between two dates.", verb =>
    {
        var from = verb.Written.MomentOrNull(Since, endOfDay: true);
        var to = verb.Written.MomentOrNull(To, endOfDay: true) ?? Written.Now();
        if (from is { } f && to.ToInstant() < f.ToInstant())
        {
            verb.Written.Problems.Add(new Finding("dates-turned", Severity.Error, "The second date lies before the first.", Written.Place("--to"), verb.Written.Text(To), WayOut: "Turn them round."));
        }

        if (verb.Written.Problems.Count > 0)
        {
            return JournalVerb.Refuse([.. verb.Written.Problems]);
        }

        var (entries, problem) = verb.Entries();
        return entries is null
            ? JournalVerb.Refuse(problem!)
            : JournalVerb.Show(JournalDocuments.Changes(verb.Station, JournalChanges.Between(entries, from!.Value.ToInstant(), to.ToInstant())));
    }, Since, To);
}
