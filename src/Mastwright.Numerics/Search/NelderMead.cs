namespace Mastwright.Numerics.Search;

/// <summary>How to run a simplex search.</summary>
public sealed record NelderMeadOptions
{
    /// <summary>Lowest allowed point; null for no bound.</summary>
    public IReadOnlyList<double>? Lower { get; init; }

    /// <summary>Highest allowed point; null for no bound.</summary>
    public IReadOnlyList<double>? Upper { get; init; }

    /// <summary>First step along each axis; null takes a tenth of the start's magnitude, or 0.1 where it is zero.</summary>
    public IReadOnlyList<double>? Step { get; init; }

    /// <summary>Spread of the simplex, relative to its first steps, at which to stop.</summary>
    public double Tolerance { get; init; } = 1e-9;

    /// <summary>Evaluations after which to give up.</summary>
    public int MostEvaluations { get; init; } = 5000;
}

/// <summary>
/// Local search without derivatives, with bounds. J. A. Nelder and R. Mead, Comput. J. 7 (1965) 308-313, with the
/// dimension-dependent factors of F. Gao and L. Han, Comput. Optim. Appl. 51 (2012) 259-277, and restarts until one brings nothing.
/// Math.NET's has no bounds, and throws at its cap.
/// </summary>
public static class NelderMead
{
    private const int MostRestarts = 10;

    /// <summary>Looks for a minimum near a start.</summary>
    /// <param name="f">Objective.</param>
    /// <param name="start">Where to begin; clamped into the bounds.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="cancellation">Stops between evaluations.</param>
    public static SearchResult Minimize(Objective f, IReadOnlyList<double> start, NelderMeadOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentNullException.ThrowIfNull(start);
        options ??= new();
        var n = start.Count;
        if (n == 0 || (options.Lower ?? start).Count != n || (options.Upper ?? start).Count != n || (options.Step ?? start).Count != n)
            throw new ArgumentException("Start, bounds and steps must have one length, at least 1.", nameof(start));
        var step = start.Select((v, i) => options.Step?[i] ?? (v != 0 ? 0.1 * Math.Abs(v) : 0.1)).ToArray();
        var evaluations = 0;
        var best = new Corner(Clamped([.. start]), 0);
        best = best with { Value = Value(best.X) };
        for (var run = 0; run < MostRestarts; run++)
        {
            var before = best.Value;
            var settled = Run(run == 0 ? 1 : 0.1);
            if (!settled || before - best.Value <= options.Tolerance * Math.Max(Math.Abs(best.Value), 1e-300))
                return new([.. best.X], best.Value, evaluations, settled);
        }

        return new([.. best.X], best.Value, evaluations, true);

        bool Run(double size)
        {
            var corners = new Corner[n + 1];
            corners[0] = best;
            for (var i = 0; i < n; i++)
            {
                var x = (double[])best.X.Clone();
                x[i] += size * step[i];
                if (options.Upper is { } upper && x[i] > upper[i])
                    x[i] = best.X[i] - (size * step[i]);
                corners[i + 1] = At(x);
            }

            var (expand, contract, shrink) = (1 + (2.0 / n), 0.75 - (1 / (2.0 * n)), n > 1 ? 1 - (1.0 / n) : 0.5);
            while (true)
            {
                cancellation.ThrowIfCancellationRequested();
                Array.Sort(corners, (a, b) => a.Value.CompareTo(b.Value));
                best = corners[0];
                if (Enumerable.Range(0, n).All(i => corners.Max(c => Math.Abs(c.X[i] - best.X[i])) <= options.Tolerance * step[i]))
                    return true;
                if (evaluations >= options.MostEvaluations)
                    return false;
                var centre = Enumerable.Range(0, n).Select(i => corners.Take(n).Average(c => c.X[i])).ToArray();
                var worst = corners[n];
                var reflected = Along(1);
                if (reflected.Value < best.Value)
                {
                    var expanded = Along(expand);
                    corners[n] = expanded.Value < reflected.Value ? expanded : reflected;
                }
                else if (reflected.Value < corners[n - 1].Value)
                {
                    corners[n] = reflected;
                }
                else
                {
                    var contracted = Along(reflected.Value < worst.Value ? contract : -contract);
                    if (contracted.Value < Math.Min(reflected.Value, worst.Value))
                        corners[n] = contracted;
                    else
                    {
                        for (var k = 1; k <= n; k++)
                            corners[k] = At([.. corners[k].X.Select((v, i) => best.X[i] + (shrink * (v - best.X[i])))]);
                    }
                }

                Corner Along(double t) => At([.. centre.Select((c, i) => c + (t * (c - worst.X[i])))]);
            }
        }

        Corner At(double[] x)
        {
            var inside = Clamped(x);
            return new(inside, Value(inside));
        }

        double Value(double[] x)
        {
            evaluations++;
            var value = f(x);
            return double.IsNaN(value) ? double.PositiveInfinity : value;
        }

        double[] Clamped(double[] x) =>
            [.. x.Select((v, i) => Math.Clamp(v, options.Lower?[i] ?? double.NegativeInfinity, options.Upper?[i] ?? double.PositiveInfinity))];
    }

    private readonly record struct Corner(double[] X, double Value);
}
