using System.Globalization;
using Mastwright.Journal;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using NodaTime;

namespace Mastwright.Workbench.Keeping;

/// <summary>What came of an entry that was sent.</summary>
public enum KeptState
{
    /// <summary>It is in the journal now.</summary>
    Kept,

    /// <summary>It was in the journal already: a second sending changes nothing.</summary>
    Already,

    /// <summary>It was not taken; the finding says why.</summary>
    Refused,
}

/// <summary>
/// The journal beside the design on the desk. The file is opened for each piece of work and closed again, so that the
/// command line, a backup or another program can use it meanwhile.
/// </summary>
public sealed class JournalDesk(Desk desk, DeskOptions options)
{
    private readonly Lock gate = new();
    private (string Stamp, IReadOnlyList<JournalEntry> Entries)? known;
    private bool wroteWithoutName;

    /// <summary>Told after every change, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The journal's file.</summary>
    public string Path => desk.FilePath is { } file ? JournalPath.For(file) : Nameless;

    private string Nameless => System.IO.Path.Combine(options.SaveFolder, JournalPath.For(null));

    /// <summary>Now, with the offset of this machine's clock.</summary>
    public static OffsetDateTime Clock() =>
        SystemClock.Instance.GetCurrentInstant().InZone(NodaTime.TimeZones.BclDateTimeZone.ForSystemDefault()).ToOffsetDateTime().With(t => t.With(TimeAdjusters.TruncateToSecond));

    /// <summary>The entries in order of time; none when there is no journal yet.</summary>
    public Outcome<IReadOnlyList<JournalEntry>> Entries()
    {
        lock (gate)
        {
            var path = Follow();
            if (!File.Exists(path))
            {
                return new([], null);
            }

            var stamp = Stamp(path);
            if (known is { } k && k.Stamp == stamp)
            {
                return new(k.Entries, null);
            }

            var read = With(path, store => store.Entries());
            if (read.Value is { } entries)
            {
                known = (stamp, entries);
            }

            return read;
        }
    }

    /// <summary>Everything in the journal; an empty one when there is none yet.</summary>
    public Outcome<JournalContent> Content()
    {
        lock (gate)
        {
            var path = Follow();
            return File.Exists(path) ? With(path, store => store.Content()) : new JournalContent(desk.Now.Station?.Name ?? "", [], []);
        }
    }

    /// <summary>
    /// Adds an entry once: one whose key is known already is passed over when it says the same, or was struck out since.
    /// </summary>
    public (KeptState State, Finding? Problem) Keep(JournalEntry entry)
    {
        var state = KeptState.Refused;
        var outcome = Write(store =>
        {
            var knows = store.Knows(entry.Id);
            if (knows.Problem is { } unreadable)
            {
                return new Outcome(unreadable);
            }

            if (knows.Value is { Length: > 0 } where)
            {
                if (where == "here" && store.Find(entry.Id).Value is { } there && !Same(there, entry))
                {
                    return new Outcome(new Finding("entry-key-taken", Severity.Error, "Another entry has this key already.", new Place(store.Path, 0, 0, ""), entry.Id.ToString(), WayOut: "Enter it again as a new entry."));
                }

                state = KeptState.Already;
                return Outcome.Success;
            }

            state = KeptState.Kept;
            return store.Add(entry);
        });
        return outcome.Done ? (state, null) : (KeptState.Refused, outcome.Problem);
    }

    /// <summary>Strikes an entry out; what it said is kept with the reason.</summary>
    public Outcome StrikeOut(Guid id, string reason) => Write(store => store.StrikeOut(id, Clock(), reason));

    /// <summary>Takes in an export; what is here already is passed over.</summary>
    public Outcome Import(JournalContent content) => Write(store => store.Import(content));

    /// <summary>Whether two wordings are the same entry: moment, kind and words. A tension may come out otherwise once the design has changed.</summary>
    private static bool Same(JournalEntry a, JournalEntry b) => (a.Kind, a.At.ToInstant(), a.Mast, a.Author, a.Text) == (b.Kind, b.At.ToInstant(), b.Mast, b.Author, b.Text);

    private Outcome Write(Func<JournalStore, Outcome> work)
    {
        Outcome outcome;
        lock (gate)
        {
            var path = Follow();
            var isNew = !File.Exists(path);
            var opened = JournalStore.Open(path);
            if (opened.Value is not { } store)
            {
                return new Outcome(opened.Problem);
            }

            using (store)
            {
                outcome = isNew && desk.Now.Station is { } station ? store.NameStation(station.Name) : Outcome.Success;
                outcome = outcome.Done ? work(store) : outcome;
            }

            known = null;
            wroteWithoutName |= desk.FilePath is null;
        }

        Changed?.Invoke();
        return outcome;
    }

    private static Outcome<T> With<T>(string path, Func<JournalStore, Outcome<T>> work)
        where T : class
    {
        var opened = JournalStore.OpenReadOnly(path);
        if (opened.Value is not { } store)
        {
            return new(null, opened.Problem);
        }

        using (store)
        {
            return work(store);
        }
    }

    // A design that gets its name only now takes along what was noted before it had one. The lock is held.
    private string Follow()
    {
        var path = Path;
        if (wroteWithoutName && path != Nameless)
        {
            wroteWithoutName = false;
            if (!File.Exists(path) && JournalStore.OpenReadOnly(Nameless).Value is { } store)
            {
                using (store)
                {
                    store.Backup(path);
                }
            }
        }

        return path;
    }

    private static string Stamp(string path)
    {
        string Of(string file) => new FileInfo(file) is { Exists: true } info ? string.Create(CultureInfo.InvariantCulture, $"{info.Length}/{info.LastWriteTimeUtc.Ticks}") : "-";
        return string.Create(CultureInfo.InvariantCulture, $"{path}|{Of(path)}|{Of(path + "-wal")}");
    }
}
