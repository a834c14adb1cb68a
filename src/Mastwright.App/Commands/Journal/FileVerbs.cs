using System.CommandLine;
using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal backup</c>, <c>restore</c> and <c>check</c>.</summary>
internal static class FileVerbs
{
    private static readonly Option<string?> To = new Option<string?>("--to") { Description = "The backup's file; an earlier one of that name is replaced only by a good one.", Required = true }.NamesFile();
    private static readonly Option<string?> From = new Option<string?>("--from") { Description = "The backup.", Required = true }.NamesFile();

    public static Command Backup() => JournalVerb.Reading("backup", "Copy the journal while it is in use; the copy is checked before it takes its place.", verb =>
        verb.Open(write: false, store => store.Backup(verb.Written.Text(To)!) is { Problem: { } problem } ? JournalVerb.Refuse(problem) : JournalVerb.Say($"Backed up to {verb.Written.Text(To)}.")), To);

    public static Command Restore() => JournalVerb.Reading("restore", "Put a backup in the journal's place; the journal as it was is kept beside it.", verb =>
    {
        var keep = string.Create(CultureInfo.InvariantCulture, $"{verb.Path}.before-restore-{DateTime.Now:yyyyMMdd-HHmmss}");
        return JournalStore.RestoreAt(verb.Path, verb.Written.Text(From)!, keep) is { Problem: { } problem }
            ? JournalVerb.Refuse(problem)
            : JournalVerb.Say($"Restored from {verb.Written.Text(From)}; the journal as it was is kept as {keep}.");
    }, From);

    public static Command Check() => JournalVerb.Reading("check", "Read the whole journal for damage.", verb =>
        verb.Open(write: false, store =>
        {
            if (store.CheckIntegrity() is { Problem: { } damage })
            {
                return JournalVerb.Refuse(damage);
            }

            var content = store.Content();
            if (content.Value is not { } all)
            {
                return JournalVerb.Refuse(content.Problem!);
            }

            JournalVerb.Say($"{verb.Path} is whole: {all.Entries.Length} entries, {all.Earlier.Length} earlier wordings, station “{all.Station}”.");
            var lost = all.Entries.OfType<PhotoEntry>().Select(p => Photo(verb, p)).OfType<Finding>().ToArray();
            FindingsView.Write(Shared.Messages(), lost);
            return lost.Length == 0 ? ExitCode.Pass : ExitCode.CheckFails;
        }));

    // A photo lies outside the journal: it may have been moved or changed since.
    private static Finding? Photo(JournalVerb verb, PhotoEntry photo)
    {
        var place = System.IO.Path.Combine(System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(verb.Path))!, photo.Path);
        var (digest, _, problem) = NoteVerbs.Referred(verb, place);
        return problem is null && (photo.Sha256.Length == 0 || digest == photo.Sha256) ? null : new Finding(
            "photo-lost", Severity.Warning, problem is null ? $"The photo of entry {EntryWords.Key(photo)} is not the one that was noted." : $"The photo of entry {EntryWords.Key(photo)} is not where it was.",
            new Place(verb.Path, 0, 0, ""), photo.Path, WayOut: $"Put it back, or say where it is: mastwright journal correct --key {EntryWords.Key(photo)} --photo FILE --why moved.");
    }
}
