using System.Collections.Immutable;
using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Mastwright.Numerics.Approximation;

/// <summary>
/// Several complex functions of one variable as rational functions with common poles, in barycentric form:
/// r(z) = Σ w f / (z - s) over Σ w / (z - s), s the support points.
/// </summary>
/// <remarks>
/// Found by the AAA algorithm: Y. Nakatsukasa, O. Sète and L. N. Trefethen, "The AAA algorithm for rational approximation",
/// SIAM J. Sci. Comput. 40 (2018) A1494-A1522; for several functions at once P. Lietaert et al., "Automatic rational
/// approximation and linearization of nonlinear eigenvalue problems", IMA J. Numer. Anal. 42 (2022) 1087-1115. No library at hand has it.
/// </remarks>
public sealed class RationalFit
{
    private readonly Complex[] _support;
    private readonly Complex[][] _values;
    private readonly Complex[] _weights;

    private RationalFit(Complex[] support, Complex[][] values, Complex[] weights, double sampleError)
    {
        _support = support;
        _values = values;
        _weights = weights;
        SampleError = sampleError;
    }

    /// <summary>The support points, where the fit takes the sampled values exactly.</summary>
    public ImmutableArray<Complex> Support => [.. _support];

    /// <summary>Number of functions.</summary>
    public int Count => _values[0].Length;

    /// <summary>Largest misfit at the samples that are no support points, each function relative to its largest sample.</summary>
    public double SampleError { get; }

    /// <summary>Fits samples.</summary>
    /// <param name="points">Where the samples were taken; all different, at least two.</param>
    /// <param name="samples">For each point, one value for each function.</param>
    /// <param name="tolerance">Wanted largest misfit at the samples, relative to the largest sample of each function.</param>
    /// <param name="mostSupport">Most support points; 0 leaves as many as the samples can determine.</param>
    public static RationalFit To(IReadOnlyList<Complex> points, IReadOnlyList<Complex[]> samples, double tolerance = 1e-12, int mostSupport = 0)
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(samples);
        if (points.Count < 2 || points.Count != samples.Count || points.Distinct().Count() != points.Count)
            throw new ArgumentException("A rational fit needs at least two different points and as many samples.", nameof(points));
        var count = samples[0].Length;
        if (count == 0 || samples.Any(s => s.Length != count))
            throw new ArgumentException("Every sample needs the same number of values, at least one.", nameof(samples));
        if (samples.Any(s => s.Any(v => !Complex.IsFinite(v))))
            throw new ArgumentException("Every sample must be finite.", nameof(samples));

        // With m functions, k support points leave (n - k) m misfits to settle k - 1 free weights.
        var determined = ((points.Count * count) + 1) / (count + 1);
        var most = Math.Min(mostSupport > 0 ? mostSupport : determined, Math.Max(1, determined));
        var scale = Enumerable.Range(0, count).Select(c => samples.Max(s => s[c].Magnitude)).Select(m => m > 0 ? m : 1).ToArray();
        var rest = Enumerable.Range(0, points.Count).ToList();
        var chosen = new List<int>();
        var mean = Enumerable.Range(0, count).Select(c => samples.Aggregate(Complex.Zero, (sum, s) => sum + s[c]) / samples.Count).ToArray();
        Func<int, Complex[]> current = _ => mean;
        RationalFit? fit = null;
        while (chosen.Count < most && rest.Count > 1)
        {
            var worst = rest.MaxBy(i => Misfit(current(i), samples[i], scale));
            rest.Remove(worst);
            chosen.Add(worst);
            var weights = Weights(points, samples, scale, chosen, rest);
            var support = chosen.Select(i => points[i]).ToArray();
            fit = new(support, [.. chosen.Select(i => samples[i])], weights, 0);
            var now = fit;
            current = i => now.Evaluate(points[i]);
            var error = rest.Max(i => Misfit(current(i), samples[i], scale));
            fit = new(support, fit._values, weights, error);
            if (error <= tolerance)
                break;
        }

        return fit!;
    }

    /// <summary>The values of all functions at a point.</summary>
    public Complex[] Evaluate(Complex z)
    {
        var result = new Complex[Count];
        var below = Complex.Zero;
        for (var j = 0; j < _support.Length; j++)
        {
            if (z == _support[j])
                return (Complex[])_values[j].Clone();
            var term = _weights[j] / (z - _support[j]);
            below += term;
            for (var c = 0; c < result.Length; c++)
                result[c] += term * _values[j][c];
        }

        for (var c = 0; c < result.Length; c++)
            result[c] /= below;
        return result;
    }

    /// <summary>
    /// The poles common to all functions: resonances, with their damping in the imaginary part when the variable is frequency. Poles far
    /// outside the sampled range, or with a tiny residue, are there to make the fit good and mean nothing by themselves.
    /// </summary>
    public ImmutableArray<Complex> Poles()
    {
        var k = _support.Length;
        if (k < 2)
            return [];

        // Zeros of Σ w / (z - s) are the finite eigenvalues of the arrowhead pencil (AAA paper, equation 3.11), turned about a point
        // away from the support so that they come out as ordinary ones: λ = shift + 1/μ.
        var spread = _support.Max(s => (s - _support[0]).Magnitude);
        var shift = _support.Aggregate(Complex.Zero, (sum, s) => sum + s) / k + new Complex(0.123, 0.456) * spread;
        var pencil = Matrix<Complex>.Build.Dense(k + 1, k + 1);
        var right = Matrix<Complex>.Build.Dense(k + 1, k + 1);
        for (var j = 0; j < k; j++)
        {
            pencil[0, j + 1] = _weights[j];
            pencil[j + 1, 0] = 1;
            pencil[j + 1, j + 1] = _support[j] - shift;
            right[j + 1, j + 1] = 1;
        }

        var turned = pencil.Solve(right).Evd().EigenValues;

        // Two eigenvalues of the pencil are infinite; k - 1 are the poles.
        return [.. turned.OrderByDescending(mu => mu.Magnitude).Take(k - 1).Where(mu => mu.Magnitude * spread > 1e-8).Select(mu => shift + (1 / mu))];
    }

    private static double Misfit(Complex[] got, Complex[] wanted, double[] scale)
    {
        var largest = 0.0;
        for (var c = 0; c < got.Length; c++)
        {
            var misfit = (got[c] - wanted[c]).Magnitude / scale[c];
            if (!(misfit <= largest))
                largest = misfit;
        }

        return double.IsNaN(largest) ? double.PositiveInfinity : largest;
    }

    /// <summary>The weights that make the linearised misfit least: the last right singular vector of the Loewner matrix.</summary>
    private static Complex[] Weights(
        IReadOnlyList<Complex> points, IReadOnlyList<Complex[]> samples, double[] scale, List<int> chosen, List<int> rest)
    {
        var (k, count) = (chosen.Count, scale.Length);
        var loewner = Matrix<Complex>.Build.Dense(Math.Max(rest.Count * count, k), k);
        for (var i = 0; i < rest.Count; i++)
        {
            for (var c = 0; c < count; c++)
            {
                for (var j = 0; j < k; j++)
                {
                    loewner[(i * count) + c, j] =
                        (samples[rest[i]][c] - samples[chosen[j]][c]) / scale[c] / (points[rest[i]] - points[chosen[j]]);
                }
            }
        }

        // Only the small triangle of the QR factors needs the costly decomposition.
        var small = k > 1 ? loewner.QR(QRMethod.Thin).R : loewner.SubMatrix(0, 1, 0, 1);
        return [.. small.Svd().VT.Row(k - 1).Select(Complex.Conjugate)];
    }
}
