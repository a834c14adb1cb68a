using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;

namespace Mastwright.Structure.Batch;

/// <summary>
/// Solves many cases of one mast. Cases that follow one another in the list should be alike (the same loads, the wind
/// turned a little), because each starts from its predecessor. Every answer is the same as that of a single solve; the share that a mast carries of a load that fells it may differ by the smallest load step, to which it is known. Neither depends on the number of threads.
/// </summary>
public static class CaseBatch
{
    private const int MostRuns = 8;

    /// <summary>Solves all cases.</summary>
    /// <param name="prepared">The mast, prepared with these cases.</param>
    /// <param name="cases">The cases.</param>
    /// <param name="threads">Threads to use; 0 for one a processor.</param>
    /// <param name="progress">Told the share done, from any thread.</param>
    /// <param name="cancellation">Honoured between Newton steps.</param>
    /// <returns>Solutions in the order of the cases.</returns>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
    public static IReadOnlyList<MastSolution> Run(
        PreparedMast prepared, IReadOnlyList<LoadCase> cases, int threads = 0, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        var answers = new MastSolution[cases.Count];
        var workers = threads > 0 ? threads : Environment.ProcessorCount;

        // Enough runs that few workers sit idle at the end while the starts stay warm; as many on every machine, so that every machine gives the same answers.
        var runs = Math.Max(1, Math.Min(cases.Count / 6, MostRuns));
        var done = 0;
        Parallel.For(0, runs, new ParallelOptions { MaxDegreeOfParallelism = workers, CancellationToken = cancellation }, run =>
        {
            int from = (int)((long)run * cases.Count / runs), to = (int)((long)(run + 1) * cases.Count / runs);
            MastSolution? previous = null;
            for (var i = from; i < to; i++)
            {
                var alike = previous is { Case: { } before } && before.AbsentGuys.SequenceEqual(cases[i].AbsentGuys);
                previous = prepared.Solve(cases[i], alike ? previous : null, cancellation);
                answers[i] = previous;
                progress?.Report(Interlocked.Increment(ref done) / (double)cases.Count);
            }
        });
        return answers;
    }
}
