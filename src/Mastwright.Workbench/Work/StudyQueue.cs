using Mastwright.Analysis;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Microsoft.Extensions.Logging;

namespace Mastwright.Workbench.Work;

/// <summary>What a piece of work may say while it is done.</summary>
/// <param name="Progress">Told what is being done.</param>
/// <param name="Found">Told what is known so far.</param>
/// <param name="Cancellation">Stops it.</param>
public sealed record StudyTalk(IProgress<AnalysisStep> Progress, Action<object> Found, CancellationToken Cancellation);

/// <summary>
/// Long work in the background, one piece at a time, so that the desk stays quick. A newer question of the same kind stops
/// the older one; others wait their turn. What was worked out stays until it is asked anew, whichever page looks at it.
/// </summary>
public sealed class StudyQueue(ILogger<StudyQueue> log) : IAsyncDisposable
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, StudyJob> jobs = [];
    private readonly Queue<(int Number, string Key, Func<StudyTalk, object> Work)> waiting = new();
    private readonly CancellationTokenSource closing = new();
    private (int Number, CancellationTokenSource Stop)? running;
    private Task worker = Task.CompletedTask;
    private int newest;

    /// <summary>Told after every change, from any thread.</summary>
    public event Action? Changed;

    /// <summary>The newest piece of work of a kind; null when there was none.</summary>
    public StudyJob? Of(string key)
    {
        lock (gate)
        {
            return jobs.GetValueOrDefault(key);
        }
    }

    /// <summary>Asks for work; an older question with the same key stops.</summary>
    /// <param name="key">What kind of work it is.</param>
    /// <param name="title">The same in words.</param>
    /// <param name="fingerprint">Fingerprint of the design it is for.</param>
    /// <param name="work">The work; gives a document or something else.</param>
    public void Ask(string key, string title, string fingerprint, Func<StudyTalk, object> work)
    {
        lock (gate)
        {
            Stop(key);
            var before = jobs.GetValueOrDefault(key);

            // What was known stays to be looked at, marked as older, until the new answer is there.
            var job = new StudyJob(key, title, fingerprint) { Number = ++newest, Document = before?.Document };
            jobs[key] = job;
            waiting.Enqueue((job.Number, key, work));
            worker = worker.IsCompleted ? Task.Run(Work) : worker;
        }

        Changed?.Invoke();
    }

    /// <summary>Stops the work of a kind, waiting or running.</summary>
    public void Cancel(string key)
    {
        lock (gate)
        {
            Stop(key);
        }

        Changed?.Invoke();
    }

    /// <summary>Stops the work of a kind and lets go of what it found.</summary>
    public void Forget(string key)
    {
        lock (gate)
        {
            Stop(key);
            jobs.Remove(key);
        }

        Changed?.Invoke();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await closing.CancelAsync().ConfigureAwait(false);
        Task last;
        lock (gate)
        {
            waiting.Clear();
            last = worker;
        }

        await last.ConfigureAwait(false);
        closing.Dispose();
    }

    // The lock is held.
    private void Stop(string key)
    {
        if (jobs.GetValueOrDefault(key) is { Open: true } job)
        {
            jobs[key] = job with { State = JobState.Stopped, Step = null };
            if (running is { } now && now.Number == job.Number)
            {
                now.Stop.Cancel();
            }
        }
    }

    private void Work()
    {
        while (true)
        {
            using var stop = CancellationTokenSource.CreateLinkedTokenSource(closing.Token);
            int number;
            string key;
            Func<StudyTalk, object> work;
            lock (gate)
            {
                if (!waiting.TryDequeue(out var next))
                {
                    // The next question starts a worker of its own.
                    worker = Task.CompletedTask;
                    return;
                }

                (number, key, work) = next;
                if (jobs.GetValueOrDefault(key) is not { State: JobState.Waiting } job || job.Number != number)
                {
                    continue;
                }

                running = (number, stop);
                jobs[key] = job with { State = JobState.Running };
            }

            Changed?.Invoke();
            Do(number, key, work, stop.Token);
            lock (gate)
            {
                running = null;
            }
        }
    }

    private void Do(int number, string key, Func<StudyTalk, object> work, CancellationToken cancellation)
    {
        try
        {
            var answer = work(new StudyTalk(new Steps(s => Change(number, key, j => j with { Step = s })), found => Change(number, key, j => j with { Found = found }), cancellation));
            Change(number, key, j => answer is Document document ? j with { State = JobState.Done, Step = null, Document = document } : j with { State = JobState.Done, Step = null, Found = answer });
        }
        catch (OperationCanceledException)
        {
            Change(number, key, j => j with { State = JobState.Stopped, Step = null });
        }
        catch (Exception e)
        {
            // The queue must live on whatever happens; the failure is shown on the page that asked.
            log.LogError(e, "{Work} failed", key);
            Change(number, key, j => j with
            {
                State = JobState.Failed,
                Step = null,
                Failure = new Finding("study-failed", Severity.Error, "The program failed while working this out.", Value: e.Message, WayOut: "Save the file and report it with this message."),
            });
        }
    }

    private void Change(int number, string key, Func<StudyJob, StudyJob> change)
    {
        lock (gate)
        {
            if (jobs.GetValueOrDefault(key) is not { } job || job.Number != number || !job.Open)
            {
                return;
            }

            jobs[key] = change(job);
        }

        Changed?.Invoke();
    }

    private sealed class Steps(Action<AnalysisStep> tell) : IProgress<AnalysisStep>
    {
        public void Report(AnalysisStep value) => tell(value);
    }
}
