using System.Collections.Immutable;
using Mastwright.Journal.Drift;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Keeping;

/// <summary>
/// The verdict on how the station is kept, for the strip: worked out anew when the journal or the design changes. What is
/// due is said at once; the drift of the readings follows from the background, newest question first.
/// </summary>
public sealed partial class KeepWatch : IDisposable
{
    // As the page on drift has them when it is opened.
    private const double TensionShare = 0.15;
    private const double ResonanceShare = 0.01;

    private readonly Lock gate = new();
    private readonly Desk desk;
    private readonly JournalDesk journal;
    private readonly ILogger<KeepWatch> log;
    private (string? Fingerprint, IReadOnlyList<JournalEntry>? Entries) asked;
    private CancellationTokenSource? running;
    private bool closed;

    /// <summary>Begins to watch.</summary>
    public KeepWatch(Desk desk, JournalDesk journal, ILogger<KeepWatch> log)
    {
        (this.desk, this.journal, this.log) = (desk, journal, log);
        desk.Changed += Look;
        journal.Changed += Look;
        Look();
    }

    /// <summary>Told when the checks have changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The checks; empty while nothing is noted.</summary>
    public ImmutableArray<Check> Checks { get; private set; } = [];

    /// <summary>The tightest of them; null while nothing is noted.</summary>
    public Check? Worst => Parts.Trades.Sorted(Checks).FirstOrDefault();

    /// <inheritdoc/>
    public void Dispose()
    {
        desk.Changed -= Look;
        journal.Changed -= Look;
        lock (gate)
        {
            closed = true;
            running?.Cancel();
        }
    }

    private void Look()
    {
        if (desk.Now is not { Station: { } station } now || journal.Entries().Value is not { } entries)
        {
            return;
        }

        CancellationToken stop;
        lock (gate)
        {
            if (closed || (asked.Fingerprint == now.Fingerprint && ReferenceEquals(asked.Entries, entries)))
            {
                return;
            }

            asked = (now.Fingerprint, entries);
            running?.Cancel();
            running = new CancellationTokenSource();
            stop = running.Token;
        }

        Put(Judged(station, entries, []), stop);
        if (entries.Any(e => e is TensionEntry or SweepEntry))
        {
            _ = Task.Run(() => Drift(station, entries, stop), CancellationToken.None);
        }
    }

    private void Drift(Station station, IReadOnlyList<JournalEntry> entries, CancellationToken stop)
    {
        try
        {
            Put(Judged(station, entries, DriftStudy.Judge(station, entries, TensionShare, ResonanceShare, JournalDesk.Clock().ToInstant(), stop)), stop);
        }
        catch (OperationCanceledException)
        {
            // A newer question stopped this one.
        }
        catch (Exception e)
        {
            // The page on drift shows the same failure to whoever opens it; the strip keeps what is due.
            Failed(log, e);
        }
    }

    private static ImmutableArray<Check> Judged(Station station, IReadOnlyList<JournalEntry> entries, ImmutableArray<DriftReport> drift)
    {
        var today = JournalDesk.Clock().Date;
        var built = entries.Count > 0 ? entries[0].At.Date : today;
        return UpkeepChecks.Of(DueList.For(UpkeepParts.Checklist(station), entries, built), drift, entries, built, today);
    }

    private void Put(ImmutableArray<Check> checks, CancellationToken stop)
    {
        lock (gate)
        {
            if (stop.IsCancellationRequested)
            {
                return;
            }

            Checks = checks;
        }

        Changed?.Invoke();
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The readings could not be held against the design")]
    private static partial void Failed(ILogger log, Exception error);
}
