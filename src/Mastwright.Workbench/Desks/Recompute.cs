using System.Collections.Immutable;
using System.Threading.Channels;
using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;

namespace Mastwright.Workbench.Desks;

/// <summary>The physics the desk asks, so that tests can put something quicker in its place.</summary>
public interface IStationSolver
{
    /// <summary>Solves a station; tells of the structure as soon as it is known.</summary>
    StationResult Solve(DesignReading reading, IProgress<AnalysisStep> progress, Action<StandStage> stood, CancellationToken cancellation);

    /// <summary>A first look at the structure, before anything else; null when there is none.</summary>
    StandStage? Look(DesignReading reading, CancellationToken cancellation) => null;

    /// <summary>Sweeps one band of one mast.</summary>
    BandSweepResult Sweep(StationResult result, int mast, int band, CancellationToken cancellation);
}

/// <summary>The real physics.</summary>
public sealed class StationSolver : IStationSolver
{
    /// <inheritdoc/>
    public StationResult Solve(DesignReading reading, IProgress<AnalysisStep> progress, Action<StandStage> stood, CancellationToken cancellation) =>
        StationAnalysis.Run(reading, progress, cancellation, stood);

    /// <inheritdoc/>
    public StandStage? Look(DesignReading reading, CancellationToken cancellation) => QuickLook.Stand(reading.Station!, cancellation);

    /// <inheritdoc/>
    public BandSweepResult Sweep(StationResult result, int mast, int band, CancellationToken cancellation) => BandSweep.Of(result, mast, band, cancellation);
}

/// <summary>Told how a computation goes. Called from the background, one call at a time.</summary>
public interface IRecomputeListener
{
    /// <summary>Work is being done.</summary>
    void Working(int version, AnalysisStep step);

    /// <summary>The structure is known.</summary>
    void Stood(int version, StandStage stage);

    /// <summary>The whole station is known.</summary>
    void Solved(int version, StationResult result, ImmutableArray<BandSweepResult> sweeps);

    /// <summary>Nothing more will come for this version.</summary>
    void Ended(int version);

    /// <summary>The program itself failed.</summary>
    void Failed(int version, Exception error);
}

/// <summary>Computes in the background, one station at a time; the newest question wins and stops the older one.</summary>
public sealed class Recompute : IAsyncDisposable
{
    private const int Remembered = 16;

    private readonly IStationSolver solver;
    private readonly IRecomputeListener listener;
    private readonly Channel<(int Version, DesignReading Reading)> questions =
        Channel.CreateBounded<(int, DesignReading)>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });

    private readonly CancellationTokenSource closing = new();
    private readonly Dictionary<string, (StationResult Result, ImmutableArray<BandSweepResult> Sweeps)> known = [];
    private readonly Queue<string> order = new();
    private readonly Lock gate = new();
    private readonly Task worker;
    private CancellationTokenSource? running;
    private int newest;

    /// <summary>Starts the worker.</summary>
    public Recompute(IStationSolver solver, IRecomputeListener listener)
    {
        (this.solver, this.listener) = (solver, listener);
        worker = Task.Run(Work);
    }

    /// <summary>Asks for a station; whatever is being computed stops.</summary>
    public void Ask(int version, DesignReading reading)
    {
        lock (gate)
        {
            newest = version;
            running?.Cancel();
            questions.Writer.TryWrite((version, reading));
        }
    }

    /// <summary>Stops whatever is being computed or waiting.</summary>
    public void Stop()
    {
        lock (gate)
        {
            newest = int.MaxValue;
            running?.Cancel();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        questions.Writer.TryComplete();
        await closing.CancelAsync().ConfigureAwait(false);
        Stop();
        await worker.ConfigureAwait(false);
        closing.Dispose();
    }

    private async Task Work()
    {
        while (await questions.Reader.WaitToReadAsync().ConfigureAwait(false))
        {
            while (questions.Reader.TryRead(out var question))
            {
                using var stop = CancellationTokenSource.CreateLinkedTokenSource(closing.Token);
                lock (gate)
                {
                    if (question.Version != newest)
                    {
                        continue;
                    }

                    running = stop;
                }

                Answer(question.Version, question.Reading, stop.Token);
                lock (gate)
                {
                    running = null;
                }
            }
        }
    }

    private void Answer(int version, DesignReading reading, CancellationToken cancellation)
    {
        try
        {
            var fingerprint = Fingerprint.Of(reading.Station!);
            if (known.TryGetValue(fingerprint, out var before))
            {
                listener.Solved(version, before.Result with { Station = reading.Station!, Assumptions = reading.Assumptions }, before.Sweeps);
                if (before.Sweeps.Length == reading.Station!.Masts.Length * reading.Station.Bands.Length)
                {
                    return;
                }
            }

            if (before.Result is null && solver.Look(reading, cancellation) is { } look)
            {
                listener.Stood(version, look);
            }

            var result = before.Result ?? solver.Solve(reading, new Steps(s => listener.Working(version, s)), s => listener.Stood(version, s), cancellation);
            Remember(fingerprint, result, []);
            listener.Solved(version, result, []);
            Sweep(version, fingerprint, result, cancellation);
        }
        catch (OperationCanceledException)
        {
            // A newer question, or the reader, stopped this one.
        }
        catch (Exception e)
        {
            // The worker must live on whatever happens: the failure is shown, and the next edit is computed again.
            listener.Failed(version, e);
        }
        finally
        {
            listener.Ended(version);
        }
    }

    private void Sweep(int version, string fingerprint, StationResult result, CancellationToken cancellation)
    {
        var sweeps = ImmutableArray<BandSweepResult>.Empty;
        var total = result.Masts.Sum(m => m.Bands.Length);
        for (var m = 0; m < result.Masts.Length; m++)
        {
            for (var b = 0; b < result.Masts[m].Bands.Length; b++)
            {
                cancellation.ThrowIfCancellationRequested();
                listener.Working(version, new AnalysisStep($"Sweeping {result.Masts[m].Bands[b].Name} of mast {result.Masts[m].Name}", (double)sweeps.Length / total));
                sweeps = sweeps.Add(solver.Sweep(result, m, b, cancellation));
                listener.Solved(version, result, sweeps);
            }
        }

        Remember(fingerprint, result, sweeps);
    }

    private void Remember(string fingerprint, StationResult result, ImmutableArray<BandSweepResult> sweeps)
    {
        if (!known.ContainsKey(fingerprint))
        {
            order.Enqueue(fingerprint);
            if (order.Count > Remembered)
            {
                known.Remove(order.Dequeue());
            }
        }

        known[fingerprint] = (result, sweeps);
    }

    private sealed class Steps(Action<AnalysisStep> tell) : IProgress<AnalysisStep>
    {
        public void Report(AnalysisStep value) => tell(value);
    }
}
