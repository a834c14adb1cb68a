using System.Collections.Immutable;
using System.Threading.Channels;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging;
using NodaTime;

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
    private (string? Fingerprint, IReadOnlyList<JournalEntry>? Entries, LocalDate Day, bool Whole) judged;
    private string? asked;

    /// <summary>Begins to watch.</summary>
    public KeepWatch(Desk desk, JournalDesk journal, ILogger<KeepWatch> log)
    {
        (this.desk, this.journal, this.log) = (desk, journal, log);
        worker = Task.Run(Work);
        desk.Changed += Look;
        journal.Changed += Again;
        Look();
    }

    /// <summary>Told when the checks have changed, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The checks; empty while nothing is noted.</summary>
    public ImmutableArray<Check> Checks { get; private set; } = [];

    /// <summary>The tightest of them; null while nothing is noted, or the journal cannot be read.</summary>
    public Check? Worst => Problem is null ? Parts.Trades.Sorted(Checks).FirstOrDefault() : null;

    /// <summary>Why the journal cannot be read; null when it can.</summary>
    public Finding? Problem { get; private set; }

    /// <summary>Whether the checks belong to the design and the journal as they stand.</summary>
    public Freshness State => judged.Fingerprint == desk.Now.Fingerprint && judged.Whole ? Freshness.Fresh : Freshness.Computing;

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        desk.Changed -= Look;
        journal.Changed -= Again;
        questions.Writer.TryComplete();
        await newest.CancelAsync().ConfigureAwait(false);
        await worker.ConfigureAwait(false);
    }

    /// <summary>Looks whether anything is to be judged anew: the design, the journal, which another program may have written, or the day. Whoever asks does not wait.</summary>
    public void Look() => Ask(desk.Now.Fingerprint != asked);

    private void Again() => Ask(true);

    // The desk tells of every step of its own work: only another design stops what is being judged.
    private void Ask(bool anew)
    {
        lock (gate)
        {
            if (anew)
            {
                asked = desk.Now.Fingerprint;
                newest.Cancel();
                newest = new CancellationTokenSource();
            }

            questions.Writer.TryWrite(newest.Token);
        }
    }

    private async Task Work()
    {
        await foreach (var stop in questions.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            try
            {
                Judge(stop);
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

    private void Judge(CancellationToken stop)
    {
        var now = desk.Now;
        var read = journal.Entries();
        if (Problem != read.Problem)
        {
            Problem = read.Problem;
            Changed?.Invoke();
        }

        if (now.Station is not { } station || read.Value is not { } entries)
        {
            return;
        }

        var today = JournalDesk.Clock().Date;
        var same = judged.Fingerprint == now.Fingerprint && (ReferenceEquals(judged.Entries, entries) || (entries.Count == 0 && judged.Entries is { Count: 0 })) && judged.Day == today;
        if (same && judged.Whole)
        {
            return;
        }

        var measured = entries.Any(e => e is TensionEntry or SweepEntry);
        if (!same)
        {
            Put(Judged(station, entries, [.. measured ? Checks.Where(c => c.Id.StartsWith("keep.drift[", StringComparison.Ordinal)) : []], today), (now.Fingerprint, entries, today, !measured));
        }

        if (measured)
        {
            var drift = DriftStudy.Judge(station, entries, TensionShare, ResonanceShare, JournalDesk.Clock().ToInstant(), stop);
            Check?[] checks = [.. drift.Where(d => d.Deviation is not null).Select(UpkeepChecks.Drift), UpkeepChecks.Unjudged(entries, drift)];
            Put(Judged(station, entries, [.. checks.OfType<Check>()], today), (now.Fingerprint, entries, today, true));
        }
    }

    private static ImmutableArray<Check> Judged(Station station, IReadOnlyList<JournalEntry> entries, ImmutableArray<Check> drift, LocalDate today)
    {
        var built = entries.Count > 0 ? entries[0].At.Date : today;
        return entries.Count == 0 ? [] : [.. UpkeepChecks.Looks(DueList.For(UpkeepParts.Checklist(station), entries, built), built, today), .. drift];
    }

    private void Put(ImmutableArray<Check> checks, (string? Fingerprint, IReadOnlyList<JournalEntry> Entries, LocalDate Day, bool Whole) of)
    {
        (Checks, judged) = (checks, of);
        Changed?.Invoke();
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "How the station is kept could not be judged")]
    private static partial void Failed(ILogger log, Exception error);
}
