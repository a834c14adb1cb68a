namespace Mastwright.Numerics.Dense;

/// <summary>
/// A handful of workers that share work by a counter. The calling thread is always one of them and never waits for a
/// helper that has not started, so it also works inside a busy thread pool.
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

        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Math.Min(threads, count) }, body);
    }
}
