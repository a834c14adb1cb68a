using Mastwright.Model.Trails;
using Microsoft.Data.Sqlite;

namespace Mastwright.Journal.Store;

/// <summary>Turns what the database engine reports into one message a person can act on.</summary>
internal static class SqliteProblems
{
    // Result codes of https://www.sqlite.org/rescode.html.
    private const int Permission = 3;
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int Constraint = 19;
    private const int NotADatabase = 26;

    public static Finding Describe(SqliteException problem, string path)
    {
        var place = new Place(path, 0, 0, "");
        return problem.SqliteErrorCode switch
        {
            Full => new("journal-disk-full", Severity.Error, "The disk is full: nothing of this was written, and everything written before is safe.", place, null, null, "Free some space and save again, or move the journal to another disk."),
            ReadOnly or Permission => new("journal-read-only", Severity.Error, "The journal can be read but not written.", place, null, null, "Give yourself the right to write the file and its folder, or copy the journal to a place where you have it."),
            CannotOpen => new("journal-cannot-open", Severity.Error, "The journal cannot be opened or made here.", place, null, null, "Check that the folder exists and that you may read and write it."),
            Busy or Locked => new("journal-busy", Severity.Error, "Another program is writing the journal.", place, null, null, "Wait a moment and try again; close the other program if it hangs."),
            Corrupt => new("journal-damaged", Severity.Error, "The journal is damaged.", place, null, null, "Restore the newest backup; keep the damaged file until all is well."),
            NotADatabase => new("journal-foreign", Severity.Error, "This file is not a journal.", place, null, "a journal file", "Choose another file; this one was not touched. If it was your journal, restore the newest backup in its place."),
            InputOutput => new("journal-io", Severity.Error, "The disk reported an error: nothing of this was written.", place, null, null, "Check the disk and the connection to it, then try again."),
            Constraint => new("journal-constraint", Severity.Error, $"The journal refuses this: {problem.Message}", place, null, null, "Report this; nothing was written."),
            _ => new("journal-failed", Severity.Error, $"The journal could not do this: {problem.Message}", place, null, null, "Try again; if it stays so, restore the newest backup."),
        };
    }
}
