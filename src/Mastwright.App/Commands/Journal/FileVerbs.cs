using System.CommandLine;
using System.Globalization;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal backup</c>, <c>restore</c> and <c>check</c>.</summary>
internal static class FileVerbs
{
    private static readonly Option<string?> To = new("--to") { Description = "The backup's file; an earlier one of that name is replaced only by a good one.", Required = true };
    private static readonly Option<string?> From = new("--from") { Description = "The backup.", Required = true };

    public static Command Backup() => JournalVerb.Reading("backup", "Copy the journal while it is in use; the copy is checked before it takes its place.", verb =>
        verb.Open(write: false, store => store.Backup(verb.Written.Text(To)!) is { Problem: { } problem } ? JournalVerb.Refuse(problem) : JournalVerb.Say($"Backed up to {verb.Written.Text(To)}.")), To);

    public static Command Restore() => JournalVerb.Reading("restore", "Put a backup in the journal's place; the journal as it was is kept beside it.", verb =>
    {
        var keep = string.Create(CultureInfo.InvariantCulture, $"{verb.Path}.before-restore-{DateTime.Now:yyyyMMdd-HHmmss}");
        return verb.Open(write: true, store => store.Restore(verb.Written.Text(From)!, keep) is { Problem: { } problem }
            ? JournalVerb.Refuse(problem)
            : JournalVerb.Say($"Restored from {verb.Written.Text(From)}; the journal as it was is kept as {keep}."));
    }, From);

    public static Command Check() => JournalVerb.Reading("check", "Read the whole journal for damage.", verb =>
        verb.Open(write: false, store =>
        {
            if (store.CheckIntegrity() is { Problem: { } damage })
            {
                return JournalVerb.Refuse(damage);
            }

            var content = store.Content();
            return content.Value is { } all
                ? JournalVerb.Say($"{verb.Path} is whole: {all.Entries.Length} entries, {all.Earlier.Length} earlier wordings, station “{all.Station}”.")
                : JournalVerb.Refuse(content.Problem!);
        }));
}
