using System.Globalization;
using Mastwright.Model.Trails;
using Microsoft.Data.Sqlite;

namespace Mastwright.Journal.Store;

/// <summary>The file itself: opening, bringing up to date, copying.</summary>
internal static class JournalFile
{
    private const int BusyMilliseconds = 5000;

    public static Outcome<SqliteConnection> Open(string path, bool readOnly)
    {
        SqliteConnection? connection = null;
        try
        {
            if (readOnly && !File.Exists(path)) return Problem("journal-none", path, "There is no journal here.", null, null, "Check the path.");
            var isNew = !File.Exists(path) || new FileInfo(path).Length == 0;
            connection = Connect(path, readOnly ? SqliteOpenMode.ReadOnly : SqliteOpenMode.ReadWriteCreate);
            if (!isNew && Refusal(connection, path) is { } refusal)
            {
                connection.Dispose();
                return refusal;
            }
            if (!readOnly)
            {
                if (!isNew && Version(connection) < Migrations.Latest && Copy(connection, KeptPath(path, Version(connection))) is { Done: false } notKept)
                {
                    connection.Dispose();
                    return notKept.Problem!;
                }
                Execute(connection, "PRAGMA journal_mode = WAL");
                // In WAL mode anything less than FULL may lose the last writes to a power cut.
                Execute(connection, "PRAGMA synchronous = FULL");
                if (Migrate(connection, path, Migrations.Latest) is { Done: false } failed)
                {
                    connection.Dispose();
                    return failed.Problem!;
                }
            }
            return connection;
        }
        catch (SqliteException problem)
        {
            connection?.Dispose();
            return SqliteProblems.Describe(problem, path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            connection?.Dispose();
            return Problem("journal-cannot-open", path, $"The journal cannot be opened: {problem.Message}", null, null, "Check that the folder exists and that you may read and write it.");
        }
    }

    /// <summary>Takes the steps up to <paramref name="target"/> that are missing, each in one transaction with its number.</summary>
    public static Outcome Migrate(SqliteConnection connection, string path, int target)
    {
        try
        {
            for (var version = Version(connection); version < target; version++)
            {
                using var transaction = connection.BeginTransaction();
                // Another program may have taken the step while this one waited for its turn.
                if (Version(connection, transaction) == version)
                {
                    Execute(connection, Migrations.Steps[version], transaction);
                    Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA application_id = {Migrations.ApplicationId}"), transaction);
                    Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {version + 1}"), transaction);
                }
                transaction.Commit();
            }
            return Outcome.Success;
        }
        catch (SqliteException problem)
        {
            return new(SqliteProblems.Describe(problem, path));
        }
    }

    /// <summary>Copies to a file beside the target, checks the copy, then lets it take the target's place.</summary>
    /// <param name="from">The journal.</param>
    /// <param name="path">The target.</param>
    /// <param name="mustBeWhole">Whether a copy that does not pass its check is refused; not where a damaged journal is put aside.</param>
    public static Outcome Copy(SqliteConnection from, string path, bool mustBeWhole = true)
    {
        var partial = path + ".partial";
        try
        {
            File.Delete(partial);
            using (var to = Connect(partial, SqliteOpenMode.ReadWriteCreate))
            {
                from.BackupDatabase(to);
                // The copy stands alone: one file, no log beside it.
                Execute(to, "PRAGMA journal_mode = DELETE");
                if (mustBeWhole && Strings(to, "PRAGMA integrity_check(1)") is not ["ok"])
                    return new(Problem("backup-damaged", path, "The copy did not pass its check; an earlier backup was left as it was.", null, null, "Check the journal and the disk."));
            }
            using (var stream = new FileStream(partial, FileMode.Open, FileAccess.ReadWrite)) stream.Flush(flushToDisk: true);
            File.Move(partial, path, overwrite: true);
            return Outcome.Success;
        }
        catch (SqliteException problem)
        {
            return new(SqliteProblems.Describe(problem, path));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return new(Problem("backup-failed", path, $"The copy could not be written: {problem.Message}", null, null, "Choose another place with room and the right to write."));
        }
    }

    /// <summary>Copies the file and its log as they are on the disk, whatever is in them.</summary>
    public static Outcome CopyRaw(string path, string to) => ByParts(path, to, ["", "-wal"], (a, b) => File.Copy(a, b), File.Delete);

    /// <summary>
    /// Lets a checked file take the place of one that does not open. That one is put aside whole, with its log; when any of
    /// it fails, everything stands where it stood.
    /// </summary>
    /// <param name="path">The journal.</param>
    /// <param name="anew">The file that takes its place.</param>
    /// <param name="keepAs">Where the former is put.</param>
    public static Outcome Exchange(string path, string anew, string keepAs)
    {
        // The log goes first: a log without its file is never taken for that of another.
        string[] parts = ["-wal", "-shm", ""];
        if (MoveAside(path, keepAs) is { Done: false } notKept)
        {
            return notKept;
        }

        var taken = ByParts(anew, path, [""], (a, b) => File.Move(a, b), _ => { });
        return taken.Done || ByParts(keepAs, path, parts, (a, b) => File.Move(a, b), _ => { }) is { Done: true } ? taken
            : new(Problem("backup-failed", keepAs, $"{taken.Problem!.Message} The journal as it was could not be put back either; it is kept whole under this name.", null, null, "Give it its name back by hand."));
    }

    /// <summary>Puts a file and its log aside under another name, all or nothing.</summary>
    public static Outcome MoveAside(string path, string to) => ByParts(path, to, ["-wal", "-shm", ""], (a, b) => File.Move(a, b), b => File.Move(b, path + b[to.Length..]));

    /// <summary>Takes away a file that nobody needs; where that cannot be done it stays.</summary>
    public static void Drop(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // A copy too many harms nothing.
        }
    }

    // All parts or none: what was done to the first is undone when a later one fails.
    private static Outcome ByParts(string path, string to, string[] endings, Action<string, string> act, Action<string> undo)
    {
        var done = new Stack<string>();
        try
        {
            foreach (var ending in endings.Where(e => e.Length == 0 || File.Exists(path + e)))
            {
                act(path + ending, to + ending);
                done.Push(to + ending);
            }

            return Outcome.Success;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            var words = problem.Message;
            try
            {
                while (done.TryPop(out var part)) undo(part);
            }
            catch (Exception again) when (again is IOException or UnauthorizedAccessException)
            {
                words += $" What was begun could not be undone: {again.Message} Part of the journal stands as {to}.";
            }

            return new(Problem("backup-failed", to, $"The journal as it was could not be kept: {words}", null, null, "Make room and see that you may write there; nothing was restored."));
        }
    }

    public static void Execute(SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    public static List<string> Strings(SqliteConnection connection, string sql, SqliteTransaction? transaction = null)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        var result = new List<string>();
        while (reader.Read()) result.Add(Convert.ToString(reader.GetValue(0), CultureInfo.InvariantCulture) ?? "");
        return result;
    }

    public static int Version(SqliteConnection connection, SqliteTransaction? transaction = null) =>
        int.Parse(Strings(connection, "PRAGMA user_version", transaction)[0], CultureInfo.InvariantCulture);

    /// <summary>Where an older journal is kept before it is brought up to date.</summary>
    public static string KeptPath(string path, int version) => string.Create(CultureInfo.InvariantCulture, $"{path}.version-{version}");

    internal static SqliteConnection Connect(string path, SqliteOpenMode mode)
    {
        // No pool: a closed journal must let go of its file at once.
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, ForeignKeys = true, Pooling = false, DefaultTimeout = BusyMilliseconds / 1000 }.ToString());
        try
        {
            connection.Open();
            Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA busy_timeout = {BusyMilliseconds}"));
        }
        catch
        {
            connection.Dispose();
            throw;
        }
        return connection;
    }

    private static Finding? Refusal(SqliteConnection connection, string path)
    {
        var application = int.Parse(Strings(connection, "PRAGMA application_id")[0], CultureInfo.InvariantCulture);
        var version = Version(connection);
        if (application != Migrations.ApplicationId)
            return Problem("journal-foreign", path, "This file is a database, but not a journal.", null, "a journal file", "Choose another file; this one was not touched. If it was your journal, restore the newest backup in its place.");
        if (version > Migrations.Latest)
            return Problem("journal-newer", path, $"This journal was written by a newer program: its form is number {version}, this program knows up to {Migrations.Latest}.", version.ToString(CultureInfo.InvariantCulture), $"up to {Migrations.Latest}", "Use the newer program, or export there to JSON and import here. The file was not touched.");
        return null;
    }

    private static Finding Problem(string code, string path, string message, string? value, string? allowed, string wayOut) =>
        new(code, Severity.Error, message, new(path, 0, 0, ""), value, allowed, wayOut);
}
