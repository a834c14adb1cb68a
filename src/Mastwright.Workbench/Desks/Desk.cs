using System.Collections.Immutable;
using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Workbench.Edits;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Desks;

/// <summary>What the desk opens with.</summary>
/// <param name="File">The design file; null for the built-in station.</param>
/// <param name="SampleText">Text of the built-in station.</param>
/// <param name="SaveFolder">Folder a design without file is saved into.</param>
/// <param name="SpareFolder">Folder for unsaved text of a design without file.</param>
public sealed record DeskOptions(string? File, string SampleText, string SaveFolder, string SpareFolder);

/// <summary>
/// The one design being worked on: its text, what is known about it, undo and redo, saving and recovery. All browser
/// pages of this process look at the same desk, so they stay in step.
/// </summary>
public sealed class Desk : IRecomputeListener, IAsyncDisposable
{
    private static readonly TimeSpan QuietBeforeKeeping = TimeSpan.FromMilliseconds(400);

    private readonly Lock gate = new();
    private readonly DeskOptions options;
    private readonly DeskFile file;
    private readonly Recompute recompute;
    private readonly History history;
    private readonly Timer keeping;
    private readonly ILogger<Desk> log;
    private string saved;

    /// <summary>Opens the file, or the built-in station, and begins to compute.</summary>
    public Desk(DeskOptions options, IStationSolver solver, ILogger<Desk> log)
    {
        (this.options, this.log) = (options, log);
        file = new DeskFile(options.File, options.SpareFolder);
        var (text, finding) = file.Path is null ? (options.SampleText, null) : file.Read();
        saved = text ?? "";
        Notice = finding;
        LeftBehind = file.LeftBehind() is { } left && left.Text != saved ? left : null;
        history = new History(saved);
        keeping = new Timer(_ => KeepNow());
        recompute = new Recompute(solver, this);
        Now = SheetOf(saved, 1, null);
        if (Now.Reading.Ok)
        {
            recompute.Ask(Now.Version, Now.Reading);
        }
    }

    /// <summary>Told after every change, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The desk at this moment.</summary>
    public Sheet Now { get; private set; }

    /// <summary>Name of the file without folders; null while there is none.</summary>
    public string? FileName => file.Path is null ? null : Path.GetFileName(file.Path);

    /// <summary>Full path of the file; null while there is none.</summary>
    public string? FilePath => file.Path;

    /// <summary>Where variants of this design are kept.</summary>
    public string VariantsPath => Path.ChangeExtension(file.Spare, ".variants");

    /// <summary>Whether the text differs from the file.</summary>
    public bool Unsaved => Now.Text != saved;

    /// <summary>Unsaved text of an earlier run; null when there is none.</summary>
    public (string Text, DateTimeOffset At)? LeftBehind { get; private set; }

    /// <summary>Whether the file was changed by someone else and the reader must choose.</summary>
    public bool Conflict { get; private set; }

    /// <summary>Something the reader must know about the file; null when nothing is.</summary>
    public Finding? Notice { get; private set; }

    /// <summary>What undo would take back; null when there is nothing.</summary>
    public string? UndoWords => history.UndoWords;

    /// <summary>What redo would do again; null when there is nothing.</summary>
    public string? RedoWords => history.RedoWords;

    /// <summary>Puts another text on the desk.</summary>
    /// <param name="text">The text.</param>
    /// <param name="why">The change in words, for undo.</param>
    public void Edit(string text, string why)
    {
        lock (gate)
        {
            if (text == Now.Text)
            {
                return;
            }

            history.Add(text, why, DateTimeOffset.UtcNow);
            Take(text);
        }

        Changed?.Invoke();
    }

    /// <summary>Writes one value at its path; false when the text has no such place.</summary>
    public bool Set(string path, string value, string why) => Apply(text => TextEdits.Set(text, path, value), why);

    /// <summary>Takes one field out so that its default holds; false when that cannot be done.</summary>
    public bool Clear(string path, string why) => Apply(text => TextEdits.Remove(text, path), why);

    /// <summary>Adds an item to a list; false when the text has no such list.</summary>
    public bool Add(string path, string item, string why) => Apply(text => TextEdits.Add(text, path, item), why);

    /// <summary>One change back.</summary>
    public void Undo() => Step(history.Undo);

    /// <summary>One change forth.</summary>
    public void Redo() => Step(history.Redo);

    /// <summary>Stops the computing.</summary>
    public void StopComputing()
    {
        recompute.Stop();
        Change(s => s with { WasStopped = true, Step = null });
    }

    /// <summary>Computes again after it was stopped.</summary>
    public void ComputeAgain()
    {
        Change(s => s with { WasStopped = false, Failure = null });
        if (Now.Reading.Ok)
        {
            recompute.Ask(Now.Version, Now.Reading);
        }
    }

    /// <summary>Saves to the file.</summary>
    public SaveOutcome Save(bool overwrite = false)
    {
        SaveOutcome outcome;
        lock (gate)
        {
            var text = Now.Text;
            MakeRoom();
            outcome = file.Save(text, overwrite);
            Conflict = outcome.Conflict;
            Notice = outcome.Conflict ? null : outcome.Finding;
            if (outcome.Saved)
            {
                saved = text;
                keeping.Change(Timeout.Infinite, Timeout.Infinite);
            }
        }

        Changed?.Invoke();
        return outcome;
    }

    /// <summary>Gives a design without file a name and saves it.</summary>
    public SaveOutcome SaveAs(string name)
    {
        lock (gate)
        {
            MakeRoom();
            if (file.TakeName(options.SaveFolder, name) is { } finding)
            {
                return new SaveOutcome(false, false, finding);
            }
        }

        return Save();
    }

    /// <summary>Takes the text from the disk, dropping that of the desk (undo brings it back).</summary>
    public void TakeFromDisk()
    {
        var (text, finding) = file.Read();
        Notice = finding;
        Conflict = false;
        if (text is not null)
        {
            saved = text;
            Edit(text, "taking the file from the disk");
        }

        Changed?.Invoke();
    }

    /// <summary>Takes up what an earlier run left unsaved.</summary>
    public void TakeLeftBehind()
    {
        if (LeftBehind is { } left)
        {
            LeftBehind = null;
            Edit(left.Text, "taking up the unsaved text");
            Answered();
        }
    }

    /// <summary>Drops what an earlier run left unsaved.</summary>
    public void DropLeftBehind()
    {
        LeftBehind = null;
        Answered();
    }

    // What is on the desk is kept first: by now the copy may hold what was typed since. Then comes what an even earlier run left.
    private void Answered()
    {
        // Where it cannot be kept, what was offered stays on the disk and is offered again by the next run.
        if (KeepNow())
        {
            file.Answered();
        }

        LeftBehind = file.LeftBehind() is { } next && next.Text != Now.Text ? next : null;
        Changed?.Invoke();
    }

    // Text that is still offered must not be written over by what is typed meanwhile.
    private void MakeRoom()
    {
        if (LeftBehind is not null)
        {
            file.SetAside();
        }
    }

    /// <summary>Looks whether the file was changed outside: takes it when nothing here is unsaved, else asks.</summary>
    public void LookAtDisk()
    {
        if (Conflict || !file.ChangedOnDisk())
        {
            return;
        }

        if (Unsaved)
        {
            Conflict = true;
            Changed?.Invoke();
        }
        else
        {
            TakeFromDisk();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await recompute.DisposeAsync().ConfigureAwait(false);
        await keeping.DisposeAsync().ConfigureAwait(false);
        if (Unsaved)
        {
            MakeRoom();
            file.Keep(Now.Text);
        }
    }

    void IRecomputeListener.Working(int version, AnalysisStep step) => Change(s => s.Version == version ? s with { Step = step } : s);

    void IRecomputeListener.Stood(int version, StandStage stage) => Change(s => s.Version == version ? s with { Stand = stage.FirstLook && s.Stand is { } before ? Onto(before, stage) : stage } : s);

    void IRecomputeListener.Solved(int version, StationResult result, ImmutableArray<BandSweepResult> sweeps) =>
        Change(s => s.Version == version ? s with { Result = result, Stand = StageOf(result), Sweeps = sweeps } : s);

    void IRecomputeListener.Ended(int version) => Change(s => s.Version == version ? s with { Step = null } : s);

    void IRecomputeListener.Failed(int version, Exception error)
    {
        log.LogError(error, "Computing version {Version} failed", version);
        Change(s => s.Version == version
            ? s with
            {
                WasStopped = true,
                Failure = new Finding("computing-failed", Severity.Error, "The program failed while computing this design; what is shown belongs to an earlier one.", Value: error.Message,
                    WayOut: "Undo the last change, or save the file and report it with this message."),
            }
            : s);
    }

    // A first look says nothing of lost guys and vibration, and would turn the drawings to other winds: there the older figures stay until the whole is known.
    private static StandStage Onto(StandStage before, StandStage look)
    {
        var kinds = look.Checks.Select(c => StationResult.KindOf(c.Id)).ToHashSet();
        return look with
        {
            Stands = before.Stands.Length == look.Stands.Length ? before.Stands : look.Stands,
            Checks = [.. look.Checks, .. before.Checks.Where(c => !kinds.Contains(StationResult.KindOf(c.Id)))],
        };
    }

    private static StandStage StageOf(StationResult result) => new(
        result.Station, result.Fingerprint, [.. result.Masts.Select(m => m.Stand)], [.. result.Checks.Where(c => Sheet.OfTheStructure(c.Trade))]);

    // The change is made on the text as it is under the lock: two pages that edit at once both keep what they wrote.
    private bool Apply(Func<string, string?> change, string why)
    {
        lock (gate)
        {
            if (change(Now.Text) is not { } text)
            {
                return false;
            }

            if (text == Now.Text)
            {
                return true;
            }

            history.Add(text, why, DateTimeOffset.UtcNow);
            Take(text);
        }

        Changed?.Invoke();
        return true;
    }

    private void Step(Func<string?> move)
    {
        lock (gate)
        {
            if (move() is { } text)
            {
                Take(text);
            }
        }

        Changed?.Invoke();
    }

    // The lock is held.
    private void Take(string text)
    {
        Now = SheetOf(text, Now.Version + 1, Now);
        keeping.Change(QuietBeforeKeeping, Timeout.InfiniteTimeSpan);
        if (Now.Reading.Ok)
        {
            recompute.Ask(Now.Version, Now.Reading);
        }
        else
        {
            recompute.Stop();
        }
    }

    private Sheet SheetOf(string text, int version, Sheet? before)
    {
        var reading = DesignReader.Read(text, FileName ?? "design", CatalogueNames.Of);
        return new Sheet
        {
            Version = version,
            Text = text,
            Reading = reading,
            Fingerprint = reading.Station is { } station ? Fingerprint.Of(station) : null,
            Site = reading.Station is { } known ? QuickLook.Site(known) : before?.Site ?? [],
            Stand = before?.Stand,
            Result = before?.Result,
            Sweeps = before?.Sweeps ?? [],
        };
    }

    private void Change(Func<Sheet, Sheet> change)
    {
        lock (gate)
        {
            var next = change(Now);
            if (ReferenceEquals(next, Now))
            {
                return;
            }

            Now = next;
        }

        Changed?.Invoke();
    }

    private bool KeepNow()
    {
        MakeRoom();
        if (!Unsaved)
        {
            file.Forget();
        }
        else if (file.Keep(Now.Text) is { } finding)
        {
            Notice = finding;
            Changed?.Invoke();
            return false;
        }

        return true;
    }
}
