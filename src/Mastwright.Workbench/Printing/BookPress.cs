using System.Text;
using System.Threading.Channels;
using Mastwright.Analysis;
using Mastwright.Build;
using Mastwright.Build.Materials;
using Mastwright.Model.Trails;
using Mastwright.Report.Book;
using Mastwright.Report.Documents;
using Mastwright.Report.Studies;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Printing;

/// <summary>Where a book stands.</summary>
public enum BookState
{
    /// <summary>Waits for its turn.</summary>
    Waiting,

    /// <summary>Being made.</summary>
    Making,

    /// <summary>Ready to be taken.</summary>
    Ready,

    /// <summary>Stopped by the reader.</summary>
    Stopped,

    /// <summary>Could not be made.</summary>
    Failed,
}

/// <summary>One book ordered. Never changes: a new state is a new record.</summary>
public sealed record BookOrder
{
    /// <summary>Its key.</summary>
    public required Guid Id { get; init; }

    /// <summary>Name of the station.</summary>
    public required string Station { get; init; }

    /// <summary>Fingerprint of the design it is made of.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>When it was ordered.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Where it stands.</summary>
    public BookState State { get; init; }

    /// <summary>What is being done; null before it begins.</summary>
    public AnalysisStep? Step { get; init; }

    /// <summary>The book as PDF.</summary>
    public byte[]? Pdf { get; init; }

    /// <summary>The book as one web page.</summary>
    public byte[]? Html { get; init; }

    /// <summary>The verdict it prints.</summary>
    public Verdict? Verdict { get; init; }

    /// <summary>Why it could not be made.</summary>
    public string? Problem { get; init; }

    /// <summary>Whether it still waits or is being made.</summary>
    public bool IsOpen => State is BookState.Waiting or BookState.Making;
}

/// <summary>What goes to the press: the order, the design and the prices.</summary>
internal sealed record PressJob(Guid Id, Sheet Sheet, Reading<PriceList>? Prices, CancellationTokenSource Stop);

/// <summary>
/// Makes station books in the background, one at a time, while the desk stays usable. The last few are kept to be taken;
/// older ones are let go.
/// </summary>
public sealed class BookPress : IAsyncDisposable
{
    /// <summary>Most books waiting.</summary>
    public const int MostWaiting = 4;

    private const int Kept = 3;
    private const double ShareOfDrawing = 0.85;

    private readonly Lock gate = new();
    private readonly Channel<PressJob> jobs = Channel.CreateBounded<PressJob>(MostWaiting);
    private readonly Dictionary<Guid, CancellationTokenSource> stops = [];
    private readonly Func<StudyInput, Reading<PriceList>?, Document> make;
    private readonly ILogger<BookPress> log;
    private readonly CancellationTokenSource closing = new();
    private readonly Task worker;

    /// <summary>Starts the worker.</summary>
    public BookPress(ILogger<BookPress> log)
        : this(log, StationBook.Of)
    {
    }

    /// <summary>Starts the worker with another way to make a book, for tests.</summary>
    internal BookPress(ILogger<BookPress> log, Func<StudyInput, Reading<PriceList>?, Document> make)
    {
        (this.log, this.make) = (log, make);
        worker = Task.Run(Work);
    }

    /// <summary>Told after every change, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The orders, newest first.</summary>
    public IReadOnlyList<BookOrder> Orders { get; private set; } = [];

    /// <summary>Orders a book of the design on the desk; null when too many wait already.</summary>
    public Guid? Order(Sheet sheet, Reading<PriceList>? prices = null)
    {
        var id = Guid.CreateVersion7();
        lock (gate)
        {
            var stop = CancellationTokenSource.CreateLinkedTokenSource(closing.Token);
            if (!jobs.Writer.TryWrite(new PressJob(id, sheet, prices, stop)))
            {
                stop.Dispose();
                return null;
            }

            stops[id] = stop;
            var order = new BookOrder { Id = id, Station = sheet.Reading.Station!.Name, Fingerprint = sheet.Fingerprint!, At = DateTimeOffset.Now };

            // Each finished book is held in memory: only the newest few are.
            var done = 0;
            Orders = [order, .. Orders.Where(o => o.IsOpen || ++done < Kept)];
        }

        Changed?.Invoke();
        return id;
    }

    /// <summary>Stops an order that waits or is being made.</summary>
    public void Stop(Guid id)
    {
        lock (gate)
        {
            if (stops.TryGetValue(id, out var stop))
            {
                stop.Cancel();
            }
        }

        Change(id, o => o.State == BookState.Waiting ? o with { State = BookState.Stopped } : o);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        jobs.Writer.TryComplete();
        await closing.CancelAsync().ConfigureAwait(false);
        await worker.ConfigureAwait(false);
        closing.Dispose();
    }

    private async Task Work()
    {
        await foreach (var job in jobs.Reader.ReadAllAsync().ConfigureAwait(false))
        {
            Make(job);
            lock (gate)
            {
                stops.Remove(job.Id);
            }

            job.Stop.Dispose();
        }
    }

    private void Make(PressJob job)
    {
        try
        {
            job.Stop.Token.ThrowIfCancellationRequested();
            Change(job.Id, o => o with { State = BookState.Making, Step = new AnalysisStep("Gathering the chapters", 0) });
            var progress = new Steps(s => Change(job.Id, o => o with { Step = s with { Done = s.Done * ShareOfDrawing } }));
            var known = job.Sheet.FieldState == Freshness.Fresh ? job.Sheet.Result : null;
            var document = make(new StudyInput(job.Sheet.Reading, progress, job.Stop.Token) { Known = known }, job.Prices);
            var today = DateOnly.FromDateTime(DateTime.Now);
            Change(job.Id, o => o with { Step = new AnalysisStep("Setting the pages", ShareOfDrawing) });
            var pdf = PdfDocument.Write(document, Paper.For(job.Sheet.Reading.Station!.UnitSystem), today, job.Stop.Token);
            Change(job.Id, o => o with { Step = new AnalysisStep("Writing the web page", 0.97) });
            var html = Encoding.UTF8.GetBytes(HtmlDocument.Write(document, today));
            job.Stop.Token.ThrowIfCancellationRequested();
            Change(job.Id, o => o with { State = BookState.Ready, Step = null, Pdf = pdf, Html = html, Verdict = document.Verdict });
        }
        catch (OperationCanceledException)
        {
            Change(job.Id, o => o with { State = BookState.Stopped, Step = null });
        }
        catch (Exception e)
        {
            // The press must live on: the failure is shown, and the next book is made again.
            log.LogError(e, "Making a book failed");
            Change(job.Id, o => o with { State = BookState.Failed, Step = null, Problem = e.Message });
        }
    }

    private void Change(Guid id, Func<BookOrder, BookOrder> change)
    {
        lock (gate)
        {
            Orders = [.. Orders.Select(o => o.Id == id ? change(o) : o)];
        }

        Changed?.Invoke();
    }

    private sealed class Steps(Action<AnalysisStep> tell) : IProgress<AnalysisStep>
    {
        public void Report(AnalysisStep value) => tell(value);
    }
}
