using System.Numerics;

namespace Mastwright.Numerics.Integration;

/// <summary>
/// Adaptive integration with an error estimate and an honest "did not converge". Math.NET's adaptive rules bound the depth,
/// not the work, say nothing about convergence, and take no vector integrands; hence our own.
/// </summary>
/// <remarks>
/// Smooth integrands, also with peaks and kinks: <see cref="Adaptive(Func{double,double},double,double,QuadratureOptions?)"/>.
/// Singular at the ends: <see cref="TanhSinh"/>. Known smoothness and cost: <see cref="GaussLegendre"/>.
/// </remarks>
public static class Quadrature
{
    /// <summary>The integral of a real function from <paramref name="a"/> to <paramref name="b"/>; either may be infinite.</summary>
    /// <param name="f">Integrand, finite at all inner points.</param>
    /// <param name="a">Start.</param>
    /// <param name="b">End.</param>
    /// <param name="options">When to stop; null for ten digits.</param>
    public static QuadratureResult<double> Adaptive(Func<double, double> f, double a, double b, QuadratureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(f);
        var r = Adaptive((x, v) => v[0] = f(x), 1, a, b, options);
        return new(r.Values[0].Real, r.ErrorEstimates[0], r.Evaluations, r.Converged);
    }

    /// <summary>The integral of a complex function of a real variable.</summary>
    /// <inheritdoc cref="Adaptive(Func{double,double},double,double,QuadratureOptions?)"/>
    public static QuadratureResult<Complex> Adaptive(Func<double, Complex> f, double a, double b, QuadratureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(f);
        var r = Adaptive((x, v) => v[0] = f(x), 1, a, b, options);
        return new(r.Values[0], r.ErrorEstimates[0], r.Evaluations, r.Converged);
    }

    /// <summary>
    /// Several integrals at once over the same points: the interval whose error is largest, measured against each integral's
    /// own tolerance, is halved until all are met (QUADPACK's qag strategy with the 10-21 point pair).
    /// </summary>
    /// <param name="f">Fills the integrands at a point.</param>
    /// <param name="count">Number of integrands.</param>
    /// <param name="a">Start; may be infinite.</param>
    /// <param name="b">End; may be infinite.</param>
    /// <param name="options">When to stop; null for ten digits.</param>
    public static VectorQuadratureResult Adaptive(VectorIntegrand f, int count, double a, double b, QuadratureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(f);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        if (double.IsNaN(a) || double.IsNaN(b))
            throw new ArgumentException("The ends of the interval must be numbers.");
        options ??= QuadratureOptions.Default;
        if (a == b)
            return new([.. new Complex[count]], [.. new double[count]], 0, true);
        if (double.IsInfinity(a) || double.IsInfinity(b))
            return OverInfinite(f, count, a, b, options);

        var open = new PriorityQueue<KronrodPanel, double>();
        var panels = new List<KronrodPanel>();
        var values = new Complex[count];
        var errors = new double[count];
        var evaluations = 0;
        Add(a, b);
        while (!Met() && open.TryDequeue(out var worst, out _))
        {
            if (evaluations + (2 * KronrodPanel.Points) > options.MostEvaluations)
                break;
            panels.Remove(worst);
            Count(worst, -1);
            var middle = (worst.A + worst.B) / 2;
            Add(worst.A, middle);
            Add(middle, worst.B);
        }

        // Summing afresh drops the rounding of all the additions and removals.
        Array.Clear(values);
        Array.Clear(errors);
        foreach (var panel in panels)
            Count(panel, +1);
        return new([.. values], [.. errors], evaluations, Met());

        void Add(double from, double to)
        {
            var panel = KronrodPanel.Over(f, count, from, to);
            evaluations += KronrodPanel.Points;
            panels.Add(panel);
            Count(panel, +1);
            if (panel.CanSplit)
                open.Enqueue(panel, -Enumerable.Range(0, count).Max(c => panel.Errors[c] / Math.Max(Tolerance(c), 1e-300)));
        }

        void Count(KronrodPanel panel, int sign)
        {
            for (var c = 0; c < count; c++)
            {
                values[c] += sign * panel.Values[c];
                errors[c] += sign * panel.Errors[c];
            }
        }

        bool Met()
        {
            for (var c = 0; c < count; c++)
            {
                if (!(errors[c] <= Tolerance(c)) && errors[c] != 0)
                    return false;
            }

            return true;
        }

        double Tolerance(int c) => Math.Max(options.AbsoluteTolerance, options.RelativeTolerance * Complex.Abs(values[c]));
    }

    /// <summary>
    /// The integral of a function that may be singular at the ends, by the double-exponential substitution x = tanh(π/2 sinh t)
    /// (H. Takahasi and M. Mori, Publ. RIMS Kyoto 9 (1974) 721-741). The integrand gets its distance to the nearer end as
    /// well, exact where x itself has rounded to the end.
    /// </summary>
    /// <param name="f">Integrand of x and of the distance: positive from <paramref name="a"/>, negative from <paramref name="b"/>.</param>
    /// <param name="a">Start, finite.</param>
    /// <param name="b">End, finite, above <paramref name="a"/>.</param>
    /// <param name="options">When to stop; null for ten digits.</param>
    public static QuadratureResult<Complex> TanhSinh(Func<double, double, Complex> f, double a, double b, QuadratureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(f);
        if (!double.IsFinite(a) || !double.IsFinite(b) || a >= b)
            throw new ArgumentException("The interval must be finite, and its start below its end.");
        options ??= QuadratureOptions.Default;
        const double Largest = 6.1;
        var half = (b - a) / 2;
        var evaluations = 0;
        var step = 1.0;
        var sum = Term(0);
        for (var t = step; t <= Largest; t += step)
            sum += Term(t) + Term(-t);
        var estimate = sum * step;
        var (change, before) = (double.PositiveInfinity, double.PositiveInfinity);
        while (evaluations < options.MostEvaluations)
        {
            step /= 2;
            for (var t = step; t <= Largest; t += 2 * step)
                sum += Term(t) + Term(-t);
            var next = sum * step;
            (before, change) = (change, Complex.Abs(next - estimate));
            estimate = next;

            // The error of each halving is about the square of the one before, so the change judges the older estimate.
            var tolerance = Math.Max(options.AbsoluteTolerance, options.RelativeTolerance * Complex.Abs(next));
            if (step < 0.2 && (change <= tolerance || change == 0))
                return new(estimate, change, evaluations, true);
            if (step < 1e-3 && change >= before)
                break;
        }

        return new(estimate, change, evaluations, false);

        Complex Term(double t)
        {
            // 1 - tanh(u) = 2 / (1 + exp 2u) keeps the distance to the end exact.
            var u = Math.PI / 2 * Math.Sinh(Math.Abs(t));
            var distance = half * 2 / (1 + Math.Exp(2 * u));
            var weight = half * (Math.PI / 2) * Math.Cosh(t) / (Math.Cosh(u) * Math.Cosh(u));
            if (distance == 0 || weight == 0 || !double.IsFinite(weight))
                return Complex.Zero;
            evaluations++;
            return weight * (t < 0 ? f(a + distance, distance) : f(b - distance, -distance));
        }
    }

    private static VectorQuadratureResult OverInfinite(VectorIntegrand f, int count, double a, double b, QuadratureOptions options)
    {
        if (a > b)
        {
            var turned = OverInfinite(f, count, b, a, options);
            return turned with { Values = [.. turned.Values.Select(v => -v)] };
        }

        // x = t / (1 - t²) over the whole axis, x = end ± t / (1 - t) from one end.
        if (double.IsInfinity(a) && double.IsInfinity(b))
            return Adaptive((t, v) => Map(t / (1 - (t * t)), (1 + (t * t)) / ((1 - (t * t)) * (1 - (t * t))), v), count, -1, 1, options);
        return double.IsInfinity(b)
            ? Adaptive((t, v) => Map(a + (t / (1 - t)), 1 / ((1 - t) * (1 - t)), v), count, 0, 1, options)
            : Adaptive((t, v) => Map(b - (t / (1 - t)), 1 / ((1 - t) * (1 - t)), v), count, 0, 1, options);

        void Map(double x, double slope, Span<Complex> values)
        {
            f(x, values);
            foreach (ref var value in values)
                value *= slope;
        }
    }
}
