namespace Mastwright.Fields.Solving;

/// <summary>Counts finished steps from many threads and tells about every fiftieth part of them.</summary>
internal sealed class Steps(IProgress<double>? progress, int total)
{
    private int _done;

    /// <summary>One more step is done.</summary>
    public void Next()
    {
        var done = Interlocked.Increment(ref _done);
        if (progress is not null && (done == total || done % Math.Max(1, total / 50) == 0))
            progress.Report((double)done / total);
    }
}
