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
    private bool nameless = desk.FilePath is null;

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
            var (path, stuck) = Follow();
            if (stuck is not null)
            {
                return new(null, stuck);
            }

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
            var (path, stuck) = Follow();
            return stuck is not null ? new(null, stuck) : File.Exists(path) ? With(path, store => store.Content()) : new JournalContent(desk.Now.Station?.Name ?? "", [], []);
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
                    return new Outcome(new Finding("entry-key-taken", Severity.Error, "The journal has this entry already, and there it says something else.", new Place(store.Path, 0, 0, "id"), entry.Id.ToString(), WayOut: "Change it, which makes a new entry of it, or correct the one in the journal."));
                }

                state = KeptState.Already;
                return Outcome.Success;
            }

            state = KeptState.Kept;
            return store.Add(entry);
        });
        return outcome.Done ? (state, null) : (KeptState.Refused, outcome.Problem);
    }

    /// <summary>Whether the journal had this key at any time, with the entry when it still stands there; a journal that cannot be read knows nothing.</summary>
    public (bool Known, JournalEntry? Entry) Knows(Guid id)
    {
        lock (gate)
        {
            var (path, stuck) = Follow();
            if (stuck is not null || JournalStore.OpenReadOnly(path).Value is not { } store)
            {
                return (false, null);
            }

            using (store)
            {
                return store.Knows(id).Value switch
                {
                    "here" => store.Find(id).Value is { } entry ? (true, entry) : (false, null),
                    "struck" => (true, null),
                    _ => (false, null),
                };
            }
        }
    }

    /// <summary>Strikes an entry out; what it said is kept with the reason.</summary>
    public Outcome StrikeOut(Guid id, string reason) => Write(store => store.StrikeOut(id, Clock(), reason));

    /// <summary>Takes in an export; what is here already is passed over.</summary>
    public Outcome Import(JournalContent content) => Write(store => store.Import(content));

    /// <summary>Whether two wordings are the same entry: moment, kind, words and what was read. The tension it comes to may be another once the design has changed.</summary>
    private static bool Same(JournalEntry a, JournalEntry b) =>
        (a.Kind, a.At.ToInstant(), a.Mast, a.Author, a.Text, a.Weather) == (b.Kind, b.At.ToInstant(), b.Mast, b.Author, b.Text, b.Weather) && (a, b) switch
        {
            (TensionEntry x, TensionEntry y) => (x.Guy, x.Method, x.Raw) == (y.Guy, y.Method, y.Raw),
            (InspectionEntry x, InspectionEntry y) => x.Items.Select(i => (i.Key, i.State, i.Remark)).SequenceEqual(y.Items.Select(i => (i.Key, i.State, i.Remark))),
            (StormEntry x, StormEntry y) => (x.Ended, x.GustMs, x.IceM, x.Lightning) == (y.Ended, y.GustMs, y.IceM, y.Lightning),
            (PhotoEntry x, PhotoEntry y) => (x.Path, x.Sha256, x.About) == (y.Path, y.Sha256, y.About),
            _ => true,
        };

    private Outcome Write(Func<JournalStore, Outcome> work)
    {
        Outcome outcome;
        lock (gate)
        {
            var (path, stuck) = Follow();
            if (stuck is not null)
            {
                return new Outcome(stuck);
            }

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

    // A design that gets its name only now takes along what was noted before it had one; until that works nothing is read
    // or written under the new name, lest an empty journal take the place of the full one. The lock is held.
    private (string Path, Finding? Problem) Follow()
    {
        var path = Path;
        if (nameless && path != Nameless)
        {
            if (File.Exists(Nameless) && Taken(path) is { } problem)
            {
                return (path, problem);
            }

            nameless = false;
        }

        return (path, null);
    }

    // What was noted goes with its design and is put aside, lest the next design without a name take it for its own.
    private Finding? Taken(string path)
    {
        var opened = JournalStore.OpenReadOnly(Nameless);
        using (var store = opened.Value)
        {
            if ((store is null ? opened.Problem : File.Exists(path) ? Into(path, store.Content()) : store.Backup(path).Problem) is { } problem)
            {
                return problem;
            }
        }

        var aside = Enumerable.Range(1, int.MaxValue - 1).Select(i => string.Create(CultureInfo.InvariantCulture, $"{Nameless}.taken{i}")).First(f => !File.Exists(f));
        return JournalStore.PutAside(Nameless, aside).Problem;
    }

    // A journal of that name is there already, of a design that is gone: what was noted is added to it.
    private static Finding? Into(string path, Outcome<JournalContent> noted)
    {
        if (noted.Value is not { } content)
        {
            return noted.Problem;
        }

        var opened = JournalStore.Open(path);
        using var store = opened.Value;
        return store is null ? opened.Problem : store.Import(content).Problem;
    }

    private static string Stamp(string path)
    {
        string Of(string file) => new FileInfo(file) is { Exists: true } info ? string.Create(CultureInfo.InvariantCulture, $"{info.Length}/{info.LastWriteTimeUtc.Ticks}") : "-";
        return string.Create(CultureInfo.InvariantCulture, $"{path}|{Of(path)}|{Of(path + "-wal")}");
    }
}
