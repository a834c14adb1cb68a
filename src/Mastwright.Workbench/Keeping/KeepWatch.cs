using System.Collections.Immutable;
using System.Threading.Channels;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Keeping;

/// <summary>
/// The verdict on how the station is kept, for the strip: worked out anew in the background when the journal or the design
/// changes, the newest question first. What is due is known at once, the drift of the readings a moment later.
/// </summary>
public sealed partial class KeepWatch : IAsyncDisposable
{
    // As the page on drift has them when it is opened.
    private const double TensionShare = 0.15;
    private const double ResonanceShare = 0.01;

    private readonly Desk desk;
    private readonly JournalDesk journal;
    private readonly ILogger<KeepWatch> log;
    private readonly Channel<CancellationToken> questions = Channel.CreateBounded<CancellationToken>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
    private readonly Lock gate = new();
    private readonly Task worker;
    private CancellationTokenSource newest = new();
    private (string? Fingerprint, IReadOnlyList<JournalEntry>? Entries, bool Whole) judged;

    /// <summary>Begins to watch.</summary>
    public KeepWatch(Desk desk, JournalDesk journal, ILogger<KeepWatch> log)
    {
        (this.desk, this.journal, this.log) = (desk, journal, log);
        worker = Task.Run(Work);
        desk.Changed += Ask;
        journal.Changed += Ask;
        Ask();
    }

    /// <summary>Told when the checks have changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The checks; empty while nothing is noted.</summary>
    public ImmutableArray<Check> Checks { get; private set; } = [];

    /// <summary>The tightest of them; null while nothing is noted.</summary>
    public Check? Worst => Parts.Trades.Sorted(Checks).FirstOrDefault();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        desk.Changed -= Ask;
        journal.Changed -= Ask;
        questions.Writer.TryComplete();
        await newest.CancelAsync().ConfigureAwait(false);
        await worker.ConfigureAwait(false);
    }

    // Whoever changed the desk does not wait for this.
    private void Ask()
    {
        lock (gate)
        {
            newest.Cancel();
            newest = new CancellationTokenSource();
            questions.Writer.TryWrite(newest.Token);
        }
    }

    private async Task Work()
    {
        await foreach (var stop in questions.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            try
            {
                Look(stop);
            }
            catch (OperationCanceledException)
            {
                // A newer question stopped this one.
            }
            catch (Exception e)
            {
                // The pages on the journal show the same failure to whoever opens them; the next change is looked at again.
                Failed(log, e);
            }
        }
    }

    private void Look(CancellationToken stop)
    {
        var now = desk.Now;
        if (now.Station is not { } station || journal.Entries().Value is not { } entries)
        {
            return;
        }

        var same = judged.Fingerprint == now.Fingerprint && ReferenceEquals(judged.Entries, entries);
        if (same && judged.Whole)
        {
            return;
        }

        var measured = entries.Any(e => e is TensionEntry or SweepEntry);
        if (!same)
        {
            Put(Judged(station, entries, [.. measured ? Checks.Where(c => c.Id.StartsWith("keep.drift[", StringComparison.Ordinal)) : []]), (now.Fingerprint, entries, !measured));
        }

        if (measured)
        {
            Put(Judged(station, entries, [.. DriftStudy.Judge(station, entries, TensionShare, ResonanceShare, JournalDesk.Clock().ToInstant(), stop).Where(d => d.Deviation is not null).Select(UpkeepChecks.Drift)]), (now.Fingerprint, entries, true));
        }
    }

    private static ImmutableArray<Check> Judged(Station station, IReadOnlyList<JournalEntry> entries, ImmutableArray<Check> drift)
    {
        var today = JournalDesk.Clock().Date;
        var built = entries.Count > 0 ? entries[0].At.Date : today;
        return entries.Count == 0 ? [] : [.. UpkeepChecks.Looks(DueList.For(UpkeepParts.Checklist(station), entries, built), built, today), .. drift];
    }

    private void Put(ImmutableArray<Check> checks, (string? Fingerprint, IReadOnlyList<JournalEntry> Entries, bool Whole) of)
    {
        (Checks, judged) = (checks, of);
        Changed?.Invoke();
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "How the station is kept could not be judged")]
    private static partial void Failed(ILogger log, Exception error);
}
