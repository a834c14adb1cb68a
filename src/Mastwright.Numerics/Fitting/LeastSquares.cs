using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Numerics.Fitting;

/// <summary>Fills <paramref name="residuals"/> with model minus measurement, each divided by its standard deviation if that is known.</summary>
/// <param name="parameters">The parameters to judge.</param>
/// <param name="residuals">One place for each measurement.</param>
public delegate void Residuals(ReadOnlySpan<double> parameters, Span<double> residuals);

/// <summary>How to fit.</summary>
public sealed record LeastSquaresOptions
{
    /// <summary>Lowest allowed parameters; null for no bound.</summary>
    public IReadOnlyList<double>? Lower { get; init; }

    /// <summary>Highest allowed parameters; null for no bound.</summary>
    public IReadOnlyList<double>? Upper { get; init; }

    /// <summary>A size for each parameter that makes a fair step; null takes the start's own magnitude, or 1 where it is zero.</summary>
    public IReadOnlyList<double>? Scale { get; init; }

    /// <summary>Whether residuals are in units of their known standard deviation. When false, the spread is estimated from the misfit.</summary>
    public bool KnownSpread { get; init; }

    /// <summary>Relative change of the sum of squares and of the parameters at which to stop.</summary>
    public double Tolerance { get; init; } = 1e-12;

    /// <summary>Steps after which to give up.</summary>
    public int MostIterations { get; init; } = 200;
}

/// <summary>
/// Non-linear least squares by the Levenberg-Marquardt method with simple bounds: D. W. Marquardt, J. SIAM 11 (1963)
/// 431-441, with J. J. Moré's scaling and the gain rule of H. B. Nielsen (IMM report 1999-05, Technical University of Denmark). Math.NET's
/// fitter wants a model of one variable; ours takes bare residuals, which may come from any number of measurements of any kind.
/// </summary>
public static class LeastSquares
{
    /// <summary>Fits parameters.</summary>
    /// <param name="residuals">The residuals.</param>
    /// <param name="count">Number of residuals, at least the number of parameters.</param>
    /// <param name="start">Where to begin; clamped into the bounds.</param>
    /// <param name="options">How; null for the default.</param>
    /// <param name="cancellation">Stops the work between steps.</param>
    /// <exception cref="ArgumentException">Sizes do not match, or the residuals at the start are not finite.</exception>
    public static LeastSquaresResult Fit(
        Residuals residuals, int count, IReadOnlyList<double> start, LeastSquaresOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(residuals);
        ArgumentNullException.ThrowIfNull(start);
        options ??= new();
        var problem = new Problem(residuals, count, start, options);
        var p = problem.Clamp(start);
        var r = problem.Evaluate(p);
        if (!r.All(double.IsFinite))
            throw new ArgumentException("The residuals at the start are not finite.", nameof(start));
        var (damping, growth) = (1e-3, 2.0);
        var converged = false;
        var iterations = 0;
        var jacobian = problem.Jacobian(p, r);
        while (!converged && iterations < options.MostIterations)
        {
            cancellation.ThrowIfCancellationRequested();
            iterations++;
            var free = problem.Free(p, jacobian, r);
            if (free.Length == 0)
            {
                converged = true;
                break;
            }

            var step = problem.Step(jacobian, r, free, damping);
            var next = problem.Clamp([.. p.Select((v, i) => v + step[i])]);
            var rNext = problem.Evaluate(next);
            var (cost, costNext) = (Problem.Cost(r), Problem.Cost(rNext));
            var moved = Enumerable.Range(0, p.Length).Max(i => Math.Abs(next[i] - p[i]) / (Math.Abs(p[i]) + problem.Scale[i]));
            if (costNext <= cost)
            {
                var predicted = problem.PredictedGain(jacobian, r, step, damping);
                var gain = predicted > 0 ? (cost - costNext) / predicted : 1;
                damping = Math.Max(1e-15, damping * Math.Max(1.0 / 3, 1 - Math.Pow((2 * gain) - 1, 3)));
                growth = 2;
                converged = cost - costNext <= options.Tolerance * cost && moved <= Math.Sqrt(options.Tolerance);
                (p, r) = (next, rNext);
                jacobian = problem.Jacobian(p, r);
            }
            else
            {
                // A failed step this small means that round-off is all that is left.
                converged = moved <= options.Tolerance;
                damping *= growth;
                growth *= 2;
            }
        }

        return LeastSquaresResult.From(p, r, jacobian, options.KnownSpread, iterations, converged);
    }

    private sealed class Problem
    {
        private readonly Residuals _residuals;
        private readonly int _count;
        private readonly double[] _lower;
        private readonly double[] _upper;

        public Problem(Residuals residuals, int count, IReadOnlyList<double> start, LeastSquaresOptions options)
        {
            var n = start.Count;
            if (n == 0 || count < n)
                throw new ArgumentException($"{count} residuals cannot settle {n} parameters.", nameof(count));
            _residuals = residuals;
            _count = count;
            _lower = Sized(options.Lower, n, double.NegativeInfinity);
            _upper = Sized(options.Upper, n, double.PositiveInfinity);
            if (_lower.Zip(_upper).Any(b => !(b.First <= b.Second)))
                throw new ArgumentException("A lower bound lies above its upper bound.", nameof(options));
            Scale = [.. Sized(options.Scale, n, 0).Select((s, i) => s > 0 ? s : start[i] != 0 ? Math.Abs(start[i]) : 1)];
        }

        public double[] Scale { get; }

        public static double Cost(double[] r) => r.Sum(v => v * v) is var sum && double.IsNaN(sum) ? double.PositiveInfinity : sum;

        public double[] Clamp(IReadOnlyList<double> p) => [.. p.Select((v, i) => Math.Clamp(v, _lower[i], _upper[i]))];

        public double[] Evaluate(double[] p)
        {
            var r = new double[_count];
            _residuals(p, r);
            return r;
        }

        public Matrix<double> Jacobian(double[] p, double[] r)
        {
            var j = Matrix<double>.Build.Dense(_count, p.Length);
            for (var c = 0; c < p.Length; c++)
            {
                // Central differences, one-sided where a bound is in the way.
                var h = Math.Cbrt(2.2e-16) * Math.Max(Math.Abs(p[c]), Scale[c] * 1e-2);
                var (up, down) = ((double[])p.Clone(), (double[])p.Clone());
                up[c] = Math.Min(p[c] + h, _upper[c]);
                down[c] = Math.Max(p[c] - h, _lower[c]);
                var width = up[c] - down[c];
                if (width == 0)
                    continue;
                var rUp = up[c] == p[c] ? r : Evaluate(up);
                var rDown = down[c] == p[c] ? r : Evaluate(down);
                for (var i = 0; i < _count; i++)
                    j[i, c] = (rUp[i] - rDown[i]) / width;
            }

            return j;
        }

        /// <summary>The parameters that are not held at a bound by the slope.</summary>
        public int[] Free(double[] p, Matrix<double> jacobian, double[] r)
        {
            var gradient = jacobian.TransposeThisAndMultiply(Vector<double>.Build.Dense(r));
            return [.. Enumerable.Range(0, p.Length).Where(i =>
                _lower[i] < _upper[i] && !(p[i] <= _lower[i] && gradient[i] > 0) && !(p[i] >= _upper[i] && gradient[i] < 0))];
        }

        public double[] Step(Matrix<double> jacobian, double[] r, int[] free, double damping)
        {
            // Rows below the Jacobian add the damping, so that nothing is squared.
            var a = Matrix<double>.Build.Dense(_count + free.Length, free.Length);
            var b = Vector<double>.Build.Dense(_count + free.Length);
            for (var i = 0; i < _count; i++)
                b[i] = -r[i];
            for (var c = 0; c < free.Length; c++)
            {
                a.SetSubMatrix(0, c, jacobian.SubMatrix(0, _count, free[c], 1));
                a[_count + c, c] = Math.Sqrt(damping) * Weight(jacobian, free[c]);
            }

            var solution = a.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Solve(b);
            var step = new double[Scale.Length];
            for (var c = 0; c < free.Length; c++)
                step[free[c]] = solution[c];
            return step;
        }

        public double PredictedGain(Matrix<double> jacobian, double[] r, double[] step, double damping)
        {
            var s = Vector<double>.Build.Dense(step);
            var linear = Vector<double>.Build.Dense(r) + (jacobian * s);
            return Cost(r) - linear.DotProduct(linear) - (damping * step.Select((v, i) => Math.Pow(v * Weight(jacobian, i), 2)).Sum());
        }

        private static double[] Sized(IReadOnlyList<double>? values, int count, double fallback) =>
            values is null ? [.. Enumerable.Repeat(fallback, count)]
            : values.Count == count ? [.. values]
            : throw new ArgumentException($"Expected {count} values, got {values.Count}.");

        private double Weight(Matrix<double> jacobian, int c) =>
            jacobian.Column(c).L2Norm() is var norm && norm > 0 ? norm : 1 / Scale[c];
    }
}
