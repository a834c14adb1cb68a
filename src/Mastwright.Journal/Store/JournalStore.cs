using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Export;
using Mastwright.Model.Trails;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.Journal.Store;

/// <summary>
/// The journal of one station: one SQLite file. Every write is one transaction, forced to the disk before it is reported
/// as done, so what was reported done survives a crash or a power cut. Safe to use from several threads; one write at a
/// time. Problems of disk and file come back as findings.
/// </summary>
public sealed class JournalStore : IDisposable
{
    private readonly SqliteConnection connection;
    private readonly Lock gate = new();

    private JournalStore(SqliteConnection connection, string path, bool isReadOnly)
    {
        this.connection = connection;
        Path = path;
        IsReadOnly = isReadOnly;
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>Whether it was opened for reading only.</summary>
    public bool IsReadOnly { get; }

    /// <summary>Number of the newest form of the file this program writes.</summary>
    public static int FormatVersion => Migrations.Latest;

    /// <summary>
    /// Opens a journal, or makes a new one where there is no file. An older journal is brought up to date after a copy of
    /// it has been put beside it; one from a newer program is refused and not touched.
    /// </summary>
    /// <param name="path">The file.</param>
    public static Outcome<JournalStore> Open(string path) => Open(path, readOnly: false);

    /// <summary>Opens a journal for reading; nothing about the file changes.</summary>
    /// <param name="path">The file, which must exist.</param>
    public static Outcome<JournalStore> OpenReadOnly(string path) => Open(path, readOnly: true);

    /// <summary>Adds an entry.</summary>
    public Outcome Add(JournalEntry entry) => AddAll([entry]);

    /// <summary>Adds entries, all or none.</summary>
    public Outcome AddAll(IReadOnlyList<JournalEntry> entries)
    {
        if (entries.Select(EntryChecks.Fault).FirstOrDefault(f => f is not null) is { } fault) return new(fault);
        return Write(transaction =>
        {
            foreach (var entry in entries)
            {
                if (Exists(transaction, entry.Id)) return Refused("entry-twice", $"An entry with the key {entry.Id} is in the journal already.", "Correct that one instead.");
                EntryRows.Insert(connection, transaction, entry);
            }
            return null;
        });
    }

    /// <summary>Corrects an entry; what it said before is kept.</summary>
    /// <param name="entry">The entry as it should be, with the key of the one it replaces.</param>
    /// <param name="at">When the correction is made.</param>
    /// <param name="reason">Why.</param>
    public Outcome Correct(JournalEntry entry, OffsetDateTime at, string reason)
    {
        if (EntryChecks.Fault(entry) is { } fault) return new(fault);
        return Write(transaction => Retire(transaction, entry.Id, at, reason, () => EntryRows.Insert(connection, transaction, entry)));
    }

    /// <summary>Strikes an entry out; what it said is kept.</summary>
    /// <param name="id">The entry.</param>
    /// <param name="at">When.</param>
    /// <param name="reason">Why.</param>
    public Outcome StrikeOut(Guid id, OffsetDateTime at, string reason) => Write(transaction => Retire(transaction, id, at, reason, () => { }));

    /// <summary>Entries in order of time.</summary>
    /// <param name="from">From this time on; null for all.</param>
    /// <param name="to">Before this time; null for all.</param>
    /// <param name="kind">Of this kind only (see <see cref="JournalEntry.Kind"/>).</param>
    public Outcome<IReadOnlyList<JournalEntry>> Entries(Instant? from = null, Instant? to = null, string? kind = null) =>
        Read<IReadOnlyList<JournalEntry>>(reader => reader.Read(from, to, kind, null));

    /// <summary>One entry; a problem when there is none with this key.</summary>
    public Outcome<JournalEntry> Find(Guid id)
    {
        var found = Read<IReadOnlyList<JournalEntry>>(reader => reader.Read(null, null, null, id));
        if (found.Value is not { } entries) return new(null, found.Problem);
        return entries.Count == 1 ? entries[0] : Refused("entry-none", $"There is no entry with the key {id}.", "Read the journal again; it may have been struck out.");
    }

    /// <summary>Whether a key was ever used here: by an entry, or by one that was struck out.</summary>
    public Outcome<string> Knows(Guid id) => Read(_ =>
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT CASE WHEN EXISTS (SELECT 1 FROM entry WHERE id = $0) THEN 'here' WHEN EXISTS (SELECT 1 FROM earlier WHERE entry_id = $0) THEN 'struck' ELSE '' END";
        command.Parameters.AddWithValue("$0", EntryRows.Key(id));
        return (string)command.ExecuteScalar()!;
    });

    /// <summary>Everything.</summary>
    public Outcome<JournalContent> Content() =>
        Read(reader => new JournalContent(reader.StationName(), reader.Read(null, null, null, null), reader.Earlier()));

    /// <summary>Names the station.</summary>
    public Outcome NameStation(string name) => Write(transaction =>
    {
        Execute(transaction, "UPDATE station SET name = $0 WHERE id = 1", name);
        return null;
    });

    /// <summary>
    /// Takes in an export. Entries that are here already, word for word, are passed over; one with the same key and other
    /// words stops the whole import, and nothing is written.
    /// </summary>
    public Outcome Import(JournalContent content)
    {
        if (content.Entries.Select(EntryChecks.Fault).FirstOrDefault(f => f is not null) is { } fault) return new(fault);
        return Write(transaction =>
        {
            foreach (var entry in content.Entries)
            {
                if (!Exists(transaction, entry.Id)) EntryRows.Insert(connection, transaction, entry);
                else if (JournalJson.Text(Single(transaction, entry.Id)!) != JournalJson.Text(entry))
                    return Refused("import-differs", $"The entry with the key {entry.Id} says something else here than in what is imported; nothing was imported.", "Correct one of the two first, or import into a new journal.");
            }
            if (content.Station.Length > 0) Execute(transaction, "UPDATE station SET name = $0 WHERE id = 1 AND name = ''", content.Station);
            foreach (var earlier in content.Earlier)
            {
                Execute(transaction, "INSERT INTO earlier(entry_id, changed_at, reason, content) SELECT $0, $1, $2, $3 WHERE NOT EXISTS (SELECT 1 FROM earlier WHERE entry_id = $0 AND changed_at = $1 AND reason = $2 AND content = $3)",
                    EntryRows.Key(earlier.EntryId), EntryRows.Time.Format(earlier.ChangedAt), earlier.Reason, earlier.Content);
            }
            return null;
        });
    }

    /// <summary>Reads the whole file for damage: the engine's own check and the links between tables.</summary>
    public Outcome CheckIntegrity()
    {
        lock (gate)
        {
            try
            {
                var words = JournalFile.Strings(connection, "PRAGMA integrity_check(5)");
                var links = JournalFile.Strings(connection, "PRAGMA foreign_key_check");
                if (words is ["ok"] && links.Count == 0) return Outcome.Success;
                return new(new Finding("journal-damaged", Severity.Error, "The journal is damaged: " + string.Join("; ", words.Where(w => w != "ok").Concat(links.Take(3).Select(l => "a line of " + l + " belongs to no entry"))), new(Path, 0, 0, ""), null, null, "Restore the newest backup; keep the damaged file until all is well."));
            }
            catch (SqliteException problem)
            {
                return new(SqliteProblems.Describe(problem, Path));
            }
        }
    }

    /// <summary>
    /// Copies the journal to another file while it stays in use. The copy is made under another name, checked, and only
    /// then takes its place, so an earlier backup is never lost to a failed one.
    /// </summary>
    /// <param name="path">The backup file.</param>
    public Outcome Backup(string path)
    {
        lock (gate) return JournalFile.Copy(connection, path);
    }

    /// <summary>
    /// Puts a backup in the place of everything in this journal, in one transaction. The journal as it was is first copied
    /// to <paramref name="keepAs"/>. A backup that is damaged, foreign or newer is refused.
    /// </summary>
    /// <param name="backupPath">The backup.</param>
    /// <param name="keepAs">Where the present journal is copied to before.</param>
    public Outcome Restore(string backupPath, string keepAs)
    {
        if (IsReadOnly) return new(SqliteProblems.Describe(new SqliteException("read only", 8), Path));
        var opened = OpenReadOnly(backupPath);
        if (opened.Value is not { } backup) return new(opened.Problem);
        using (backup)
        {
            if (backup.CheckIntegrity() is { Done: false } damaged) return damaged;
            lock (gate)
            {
                if (!JournalFile.Copy(connection, keepAs, mustBeWhole: false).Done && JournalFile.CopyRaw(Path, keepAs) is { Done: false } notKept) return notKept;
                try
                {
                    backup.connection.BackupDatabase(connection);
                    return JournalFile.Migrate(connection, Path, Migrations.Latest);
                }
                catch (SqliteException problem)
                {
                    return new(SqliteProblems.Describe(problem, Path));
                }
            }
        }
    }

    /// <summary>
    /// Puts a backup in the place of a journal, also of one so damaged that it does not open: that one is put aside as it
    /// is. Nothing is touched before the backup has passed its check.
    /// </summary>
    /// <param name="path">The journal.</param>
    /// <param name="backupPath">The backup.</param>
    /// <param name="keepAs">Where the journal as it was is kept.</param>
    public static Outcome RestoreAt(string path, string backupPath, string keepAs)
    {
        var opened = Open(path);
        if (opened.Value is { } present)
        {
            using (present) return present.Restore(backupPath, keepAs);
        }
        if (opened.Problem is not { Code: "journal-damaged" or "journal-foreign" }) return new(opened.Problem);
        var from = OpenReadOnly(backupPath);
        if (from.Value is not { } backup) return new(from.Problem);
        var anew = path + ".restored";
        using (backup)
        {
            if (backup.CheckIntegrity() is { Done: false } damaged) return damaged;
            if (JournalFile.Copy(backup.connection, anew) is { Done: false } notCopied) return notCopied;
        }
        if (JournalFile.Exchange(path, anew, keepAs) is { Done: false } notChanged)
        {
            JournalFile.Drop(anew);
            return notChanged;
        }
        var restored = Open(path);
        restored.Value?.Dispose();
        return new(restored.Problem);
    }

    /// <summary>Puts a journal that nobody has open aside under another name, with its log.</summary>
    /// <param name="path">The journal.</param>
    /// <param name="to">Its name from now on.</param>
    public static Outcome PutAside(string path, string to) => JournalFile.MoveAside(path, to);

    /// <summary>Closes the file.</summary>
    public void Dispose() => connection.Dispose();

    /// <summary>Lets a test make the disk full at a given number of pages.</summary>
    internal void LimitPages(long pages)
    {
        lock (gate) JournalFile.Execute(connection, string.Create(CultureInfo.InvariantCulture, $"PRAGMA max_page_count = {pages}"));
    }

    internal long PageCount()
    {
        lock (gate) return long.Parse(JournalFile.Strings(connection, "PRAGMA page_count")[0], CultureInfo.InvariantCulture);
    }

    private static Outcome<JournalStore> Open(string path, bool readOnly)
    {
        var opened = JournalFile.Open(path, readOnly);
        return opened.Value is { } connection ? new JournalStore(connection, path, readOnly) : new Outcome<JournalStore>(null, opened.Problem);
    }

    private Outcome<T> Read<T>(Func<EntryReader, T> work)
        where T : class
    {
        lock (gate)
        {
            try
            {
                return new(work(new(connection)), null);
            }
            catch (SqliteException problem)
            {
                return SqliteProblems.Describe(problem, Path);
            }
            catch (Exception problem) when (problem is UnparsableValueException or FormatException or InvalidCastException)
            {
                return SqliteProblems.Describe(new SqliteException(problem.Message, 11), Path);
            }
        }
    }

    private Outcome Write(Func<SqliteTransaction, Finding?> work)
    {
        lock (gate)
        {
            try
            {
                using var transaction = connection.BeginTransaction();
                if (work(transaction) is { } refused) return new(refused);
                transaction.Commit();
                return Outcome.Success;
            }
            catch (SqliteException problem)
            {
                return new(SqliteProblems.Describe(problem, Path));
            }
        }
    }

    private Finding? Retire(SqliteTransaction transaction, Guid id, OffsetDateTime at, string reason, Action replace)
    {
        if (Single(transaction, id) is not { } before) return Refused("entry-none", $"There is no entry with the key {id}.", "Read the journal again; it may have been struck out.");
        Execute(transaction, "INSERT INTO earlier(entry_id, changed_at, reason, content) VALUES ($0, $1, $2, $3)", EntryRows.Key(id), EntryRows.Time.Format(at), reason, JournalJson.Text(before));
        Execute(transaction, "DELETE FROM entry WHERE id = $0", EntryRows.Key(id));
        replace();
        return null;
    }

    private JournalEntry? Single(SqliteTransaction transaction, Guid id) => new EntryReader(connection).Read(transaction, id);

    private bool Exists(SqliteTransaction transaction, Guid id)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT 1 FROM entry WHERE id = $0";
        command.Parameters.AddWithValue("$0", EntryRows.Key(id));
        return command.ExecuteScalar() is not null;
    }

    private void Execute(SqliteTransaction transaction, string sql, params ReadOnlySpan<string> values)
    {
        using var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        for (var i = 0; i < values.Length; i++) command.Parameters.AddWithValue("$" + i.ToString(CultureInfo.InvariantCulture), values[i]);
        command.ExecuteNonQuery();
    }

    private Finding Refused(string code, string message, string wayOut) => new(code, Severity.Error, message, new(Path, 0, 0, ""), null, null, wayOut);
}
