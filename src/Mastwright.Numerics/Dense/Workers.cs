using System.Runtime.ExceptionServices;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// A handful of workers on the thread pool. The calling thread is always one of them and never waits for a helper that
/// has not started, so a busy pool costs speed and nothing else.
/// </summary>
internal static class Workers
{
    /// <summary>Runs <paramref name="body"/> for 0 to <paramref name="count"/> - 1 on up to <paramref name="threads"/> threads.</summary>
    public static void For(int count, int threads, Action<int> body)
    {
        if (threads <= 1 || count <= 1)
        {
            for (var i = 0; i < count; i++)
                body(i);
            return;
        }

        var next = -1;
        Run(Math.Min(threads, count), () =>
        {
            for (var i = Interlocked.Increment(ref next); i < count; i = Interlocked.Increment(ref next))
                body(i);
        });
    }

    /// <summary>Runs the same body on up to <paramref name="threads"/> threads at once; returns when all that started are done.</summary>
    public static void Run(int threads, Action body)
    {
        if (threads <= 1)
        {
            body();
            return;
        }

        var team = new Team(body);
        for (var i = 1; i < threads; i++)
            ThreadPool.UnsafeQueueUserWorkItem(static t => t.Help(), team, preferLocal: false);
        try
        {
            body();
        }
        finally
        {
            team.Close();
        }

        team.Failure?.Throw();
    }

    private sealed class Team(Action body)
    {
        private readonly Lock _gate = new();
        private volatile int _active;
        private bool _closed;

        public ExceptionDispatchInfo? Failure { get; private set; }

        public void Help()
        {
            lock (_gate)
            {
                if (_closed)
                    return;
                _active++;
            }

            try
            {
                body();
            }
            catch (Exception e)
            {
                Failure = ExceptionDispatchInfo.Capture(e);
            }
            finally
            {
                lock (_gate)
                    _active--;
            }
        }

        public void Close()
        {
            lock (_gate)
                _closed = true;
            var spin = default(SpinWait);
            while (_active > 0)
                spin.SpinOnce(sleep1Threshold: -1);
        }
    }
}
