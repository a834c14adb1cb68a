using Mastwright.Numerics.Sampling;

namespace Mastwright.Numerics.Search;

/// <summary>How to run a global search.</summary>
public sealed record EvolutionOptions
{
    /// <summary>Seed; the same seed gives the same search.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Points kept; 0 means ten a variable, at least 20.</summary>
    public int Population { get; init; }

    /// <summary>Generations after which to give up.</summary>
    public int MostGenerations { get; init; } = 500;

    /// <summary>Stop when the values of all points lie this close, relative to their mean.</summary>
    public double Tolerance { get; init; } = 1e-8;

    /// <summary>Polish the best point with <see cref="NelderMead"/> at the end.</summary>
    public bool Polish { get; init; } = true;
}

/// <summary>
/// Global search in a box, seeded. R. Storn and K. Price, "Differential evolution", J. Glob. Optim. 11 (1997) 341-359: best point, one
/// difference with a random factor between 0.5 and 1, binomial crossover 0.7. No library at hand has it.
/// </summary>
public static class DifferentialEvolution
{
    private const double Crossover = 0.7;

    /// <summary>Looks for the least value in a box.</summary>
    /// <param name="f">Objective.</param>
    /// <param name="lower">Lowest corner.</param>
    /// <param name="upper">Highest corner.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="progress">Told the best value after each generation; may be null.</param>
    /// <param name="cancellation">Stops between generations.</param>
    public static SearchResult Minimize(
        Objective f,
        IReadOnlyList<double> lower,
        IReadOnlyList<double> upper,
        EvolutionOptions? options = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(lower);
        ArgumentNullException.ThrowIfNull(upper);
        options ??= new();
        var n = lower.Count;
        if (n == 0 || upper.Count != n || lower.Zip(upper).Any(b => !(b.First <= b.Second) || !double.IsFinite(b.Second - b.First)))
            throw new ArgumentException("The box must be finite, its lower corner below its upper.", nameof(lower));
        var random = new SeededRandom(options.Seed);
        var size = options.Population > 0 ? Math.Max(4, options.Population) : Math.Max(20, 10 * n);
        var evaluations = 0;
        var points = Spread(random, lower, upper, size);
        var values = points.Select(Value).ToArray();
        var best = Array.IndexOf(values, values.Min());
        var converged = false;
        for (var generation = 0; generation < options.MostGenerations && !converged; generation++)
        {
            cancellation.ThrowIfCancellationRequested();
            var factor = random.NextUniform(0.5, 1);
            for (var i = 0; i < size; i++)
            {
                var (a, b) = TwoOthers(random, size, i);
                var kept = random.NextInt(n);
                var trial = (double[])points[i].Clone();
                for (var c = 0; c < n; c++)
                {
                    if (c == kept || random.NextDouble() < Crossover)
                    {
                        var x = points[best][c] + (factor * (points[a][c] - points[b][c]));
                        trial[c] = x >= lower[c] && x <= upper[c] ? x : random.NextUniform(lower[c], upper[c]);
                    }
                }

                var value = Value(trial);
                if (value <= values[i])
                {
                    (points[i], values[i]) = (trial, value);
                    if (value < values[best])
                        best = i;
                }
            }

            progress?.Report(values[best]);
            var mean = values.Average();
            converged = values.Max() - values[best] <= options.Tolerance * Math.Max(Math.Abs(mean), 1e-300);
        }

        if (!options.Polish)
            return new([.. points[best]], values[best], evaluations, converged);
        var step = lower.Zip(upper, (l, u) => Math.Max(1e-3 * (u - l), 1e-300)).ToArray();
        var polished = NelderMead.Minimize(f, points[best], new() { Lower = lower, Upper = upper, Step = step }, cancellation);
        return polished with { Evaluations = evaluations + polished.Evaluations, Converged = converged || polished.Converged };

        double Value(double[] x)
        {
            evaluations++;
            var value = f(x);
            return double.IsNaN(value) ? double.PositiveInfinity : value;
        }
    }

    /// <summary>One point in each slice of each axis, slices shuffled (Latin hypercube).</summary>
    private static double[][] Spread(SeededRandom random, IReadOnlyList<double> lower, IReadOnlyList<double> upper, int size)
    {
        var points = Enumerable.Range(0, size).Select(_ => new double[lower.Count]).ToArray();
        for (var c = 0; c < lower.Count; c++)
        {
            var slices = Enumerable.Range(0, size).ToArray();
            for (var i = size - 1; i > 0; i--)
            {
                var j = random.NextInt(i + 1);
                (slices[i], slices[j]) = (slices[j], slices[i]);
            }

            for (var i = 0; i < size; i++)
                points[i][c] = lower[c] + ((upper[c] - lower[c]) * (slices[i] + random.NextDouble()) / size);
        }

        return points;
    }

    private static (int A, int B) TwoOthers(SeededRandom random, int size, int not)
    {
        var a = random.NextInt(size - 1);
        a += a >= not ? 1 : 0;
        int b;
        do
        {
            b = random.NextInt(size);
        }
        while (b == a || b == not);
        return (a, b);
    }
}
