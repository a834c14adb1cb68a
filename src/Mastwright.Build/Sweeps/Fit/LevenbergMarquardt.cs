using MathNet.Numerics.LinearAlgebra;

namespace Mastwright.Build.Sweeps.Fit;

/// <summary>Settings of the least squares search.</summary>
/// <param name="Group">Residuals that belong together (2 for real and imaginary part of one difference): the loss sees their length.</param>
/// <param name="SoftScale">Length from which a residual counts less than by its square; null: plain least squares.</param>
/// <param name="MostIterations">Iterations after which the search gives up.</param>
public sealed record LeastSquaresOptions(int Group = 1, double? SoftScale = null, int MostIterations = 200);

/// <summary>What the search found.</summary>
/// <param name="Parameters">Parameters at the end.</param>
/// <param name="Cost">½ Σ C² ρ(|r|²/C²), or ½ Σ r² without a scale.</param>
/// <param name="Residuals">Residuals at the end.</param>
/// <param name="Jacobian">Their derivatives, [residual, parameter].</param>
/// <param name="AtBound">Whether a parameter rests on a bound that the search would have left.</param>
/// <param name="Iterations">Iterations taken.</param>
/// <param name="Converged">Whether it came to rest.</param>
public sealed record LeastSquaresResult(double[] Parameters, double Cost, double[] Residuals, Matrix<double> Jacobian, bool[] AtBound, int Iterations, bool Converged);

/// <summary>
/// Least squares by Levenberg's and Marquardt's method with Nielsen's damping (Madsen, Nielsen, Tingleff, Methods for
/// Non-Linear Least Squares Problems, 2004, from memory), bounds by holding parameters that press against them, and the
/// soft loss ρ(z) = 2(√(1 + z) − 1), which grows like the square for small residuals and like the size for large ones.
/// </summary>
public static class LevenbergMarquardt
{
    private const double StepTolerance = 1e-11;
    private const double CostTolerance = 1e-15;
    private const double DifferenceStep = 1e-5;

    /// <summary>Searches for the least cost.</summary>
    /// <param name="residuals">Residuals at given parameters; always as many.</param>
    /// <param name="start">Where to start, inside the bounds.</param>
    /// <param name="lower">Lower bounds.</param>
    /// <param name="upper">Upper bounds.</param>
    /// <param name="scale">A size for each parameter that makes a difference, above 0.</param>
    /// <param name="options">Settings.</param>
    /// <param name="cancellation">Stops the search.</param>
    public static LeastSquaresResult Minimise(Func<double[], double[]> residuals, double[] start, double[] lower, double[] upper, double[] scale, LeastSquaresOptions? options = null, CancellationToken cancellation = default)
    {
        options ??= new();
        var n = start.Length;
        var p = start.Select((v, i) => Math.Clamp(v, lower[i], upper[i])).ToArray();
        var r = residuals(p);
        var cost = Cost(r, options);
        var damping = -1.0;
        var growth = 2.0;
        var converged = false;
        var iteration = 0;
        var jacobian = Derivatives(residuals, p, lower, upper, scale, r.Length);
        for (; iteration < options.MostIterations && !converged; iteration++)
        {
            cancellation.ThrowIfCancellationRequested();
            var (gradient, hessian) = Normal(jacobian, r, options);
            var free = Enumerable.Range(0, n).Where(i => !Presses(p[i], gradient[i], lower[i], upper[i])).ToArray();
            if (free.Length == 0)
            {
                converged = true;
                break;
            }
            if (damping < 0) damping = 1e-4;
            var accepted = false;
            for (var attempt = 0; attempt < 60 && !accepted; attempt++)
            {
                var step = Solve(gradient, hessian, free, damping);
                var next = p.Select((v, i) => Math.Clamp(v + step[i], lower[i], upper[i])).ToArray();
                var moved = next.Select((v, i) => v - p[i]).ToArray();
                var small = true;
                for (var i = 0; i < n; i++) small &= Math.Abs(moved[i]) <= StepTolerance * (Math.Abs(p[i]) + scale[i]);
                if (small)
                {
                    converged = true;
                    break;
                }
                var there = residuals(next);
                var nextCost = there.All(double.IsFinite) ? Cost(there, options) : double.PositiveInfinity;
                var foretold = 0.0;
                for (var i = 0; i < n; i++)
                {
                    foretold -= gradient[i] * moved[i];
                    for (var j = 0; j < n; j++) foretold -= 0.5 * hessian[i, j] * moved[i] * moved[j];
                }
                if (nextCost < cost)
                {
                    var gain = foretold > 0 ? (cost - nextCost) / foretold : 1;
                    converged = cost - nextCost <= CostTolerance * cost;
                    (p, r, cost) = (next, there, nextCost);
                    damping *= Math.Max(1.0 / 3, 1 - Math.Pow((2 * gain) - 1, 3));
                    damping = Math.Max(damping, 1e-14);
                    growth = 2;
                    accepted = true;
                }
                else
                {
                    damping *= growth;
                    growth *= 2;
                }
            }
            if (!accepted && !converged) converged = true; // no direction goes down any more
            jacobian = Derivatives(residuals, p, lower, upper, scale, r.Length);
        }
        var (last, _) = Normal(jacobian, r, options);
        return new(p, cost, r, jacobian, [.. Enumerable.Range(0, n).Select(i => Presses(p[i], last[i], lower[i], upper[i]))], iteration, converged);
    }

    /// <summary>Weight ρ′ of each group of residuals: 1 without a scale.</summary>
    public static double[] Weights(double[] residuals, LeastSquaresOptions options)
    {
        var weights = new double[residuals.Length / options.Group];
        for (var g = 0; g < weights.Length; g++)
            weights[g] = options.SoftScale is { } c ? 1 / Math.Sqrt(1 + (Square(residuals, g, options.Group) / (c * c))) : 1;
        return weights;
    }

    private static bool Presses(double p, double gradient, double lower, double upper) => (p <= lower && gradient > 0) || (p >= upper && gradient < 0);

    private static double Square(double[] r, int group, int size)
    {
        var sum = 0.0;
        for (var k = group * size; k < (group + 1) * size; k++) sum += r[k] * r[k];
        return sum;
    }

    private static double Cost(double[] r, LeastSquaresOptions options)
    {
        var sum = 0.0;
        for (var g = 0; g < r.Length / options.Group; g++)
        {
            var z = Square(r, g, options.Group);
            // 2(√(1 + z) − 1) without the loss of digits for small z.
            sum += options.SoftScale is { } c ? 2 * z / (Math.Sqrt(1 + (z / (c * c))) + 1) : z;
        }
        return 0.5 * sum;
    }

    private static (double[] Gradient, Matrix<double> Hessian) Normal(Matrix<double> jacobian, double[] r, LeastSquaresOptions options)
    {
        var weights = Weights(r, options);
        var n = jacobian.ColumnCount;
        var gradient = new double[n];
        var hessian = Matrix<double>.Build.Dense(n, n);
        for (var k = 0; k < r.Length; k++)
        {
            var w = weights[k / options.Group];
            for (var i = 0; i < n; i++)
            {
                gradient[i] += w * jacobian[k, i] * r[k];
                for (var j = 0; j <= i; j++) hessian[i, j] += w * jacobian[k, i] * jacobian[k, j];
            }
        }
        for (var i = 0; i < n; i++)
            for (var j = 0; j < i; j++) hessian[j, i] = hessian[i, j];
        return (gradient, hessian);
    }

    private static double[] Solve(double[] gradient, Matrix<double> hessian, int[] free, double damping)
    {
        var m = free.Length;
        // Scaled to ones on the diagonal, so that parameters in farads and in ohms weigh alike.
        var size = free.Select(i => Math.Sqrt(Math.Max(hessian[i, i], 1e-300))).ToArray();
        var a = Matrix<double>.Build.Dense(m, m, (i, j) => (hessian[free[i], free[j]] / (size[i] * size[j])) + (i == j ? damping : 0));
        var b = Vector<double>.Build.Dense(m, i => -gradient[free[i]] / size[i]);
        var x = a.Solve(b);
        var step = new double[gradient.Length];
        for (var i = 0; i < m; i++) step[free[i]] = double.IsFinite(x[i]) ? x[i] / size[i] : 0;
        return step;
    }

    private static Matrix<double> Derivatives(Func<double[], double[]> residuals, double[] p, double[] lower, double[] upper, double[] scale, int count)
    {
        var jacobian = Matrix<double>.Build.Dense(count, p.Length);
        for (var i = 0; i < p.Length; i++)
        {
            var h = DifferenceStep * Math.Max(Math.Abs(p[i]), scale[i]);
            var (a, b) = ((double[])p.Clone(), (double[])p.Clone());
            a[i] = Math.Max(p[i] - h, lower[i]);
            b[i] = Math.Min(p[i] + h, upper[i]);
            if (!(b[i] > a[i])) continue;
            var (ra, rb) = (residuals(a), residuals(b));
            for (var k = 0; k < count; k++) jacobian[k, i] = (rb[k] - ra[k]) / (b[i] - a[i]);
        }
        return jacobian;
    }
}
