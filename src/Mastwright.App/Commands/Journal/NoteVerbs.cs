using System.CommandLine;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;

namespace Mastwright.App.Commands.Journal;

/// <summary><c>journal note</c> and <c>journal photo</c>.</summary>
internal static class NoteVerbs
{
    private static readonly Option<string?> File = new Option<string?>("--photo") { Description = "The photo's file; it stays where it is.", Required = true }.NamesFile();
    private static readonly Option<string?> About = new("--about") { Description = "Key, as the list shows it, of the entry it belongs to." };

    public static Command Note() => JournalVerb.Adding("note", "Write words into the journal (with --note).", verb =>
    {
        var (id, at, author, text, weather) = verb.Common();
        var mast = verb.MastOrStation();
        return text.Length == 0 && verb.Written.Problems.Count == 0
            ? JournalVerb.Refuse(new Finding("note-empty", Severity.Error, "The note has no words.", Written.Place("--note"), WayOut: "Give them with --note \"...\"."))
            : verb.Add(() => new NoteEntry(id, at, mast, author, text, weather));
    });

    public static Command Photo() => JournalVerb.Adding("photo", "Note a photo by where it lies, with its digest.", Photo, File, About);

    private static int Photo(JournalVerb verb)
    {
        var (id, at, author, text, weather) = verb.Common();
        var mast = verb.MastOrStation();
        var path = verb.Written.Text(File)!;
        var (digest, relative, unreadable) = Referred(verb, path);
        if (unreadable is not null)
        {
            return JournalVerb.Refuse(unreadable);
        }

        Guid? about = null;
        if (verb.Written.Text(About) is { } key)
        {
            var (entry, problem) = EntryKey.Find(verb, key);
            if (problem is not null)
            {
                return JournalVerb.Refuse(problem);
            }

            about = entry!.Id;
        }

        return verb.Add(() => new PhotoEntry(id, at, mast, author, text, weather, relative, digest, about));
    }

    /// <summary>A photo's digest and its path as kept: relative to the journal, so that both can move together.</summary>
    public static (string Digest, string Path, Finding? Problem) Referred(JournalVerb verb, string path)
    {
        try
        {
            using var stream = System.IO.File.OpenRead(path);
            var folder = Path.GetDirectoryName(Path.GetFullPath(verb.Path))!;
            return (PhotoEntry.DigestOf(stream), Path.GetRelativePath(folder, Path.GetFullPath(path)).Replace('\\', '/'), null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return ("", path, new Finding("photo-unreadable", Severity.Error, "The photo cannot be read: " + e.Message, Written.Place("--photo"), path, WayOut: "Check the path."));
        }
    }
}
