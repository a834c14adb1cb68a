using System.CommandLine;
using Mastwright.Report.Keep;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal strike</c>: takes an entry out; what it said is kept with the reason.</summary>
internal static class StrikeVerb
{
    private static readonly Option<string?> Key = new("--key") { Description = "Key of the entry, as the list shows it.", Required = true };
    private static readonly Option<string?> Why = new("--why") { Description = "Why it is struck out.", Required = true };

    public static Command Create() => JournalVerb.Reading("strike", "Strike an entry out; what it said is kept with the reason.", verb =>
    {
        var (entry, problem) = EntryKey.Find(verb, verb.Written.Text(Key)!);
        return entry is null
            ? JournalVerb.Refuse(problem!)
            : verb.Open(write: true, store => store.StrikeOut(entry.Id, Written.Now(), verb.Written.Text(Why)!) is { Problem: { } failed }
                ? JournalVerb.Refuse(failed)
                : JournalVerb.Say($"Struck out {EntryWords.Key(entry)}; the export still holds what it said."));
    }, Key, Why);
}
