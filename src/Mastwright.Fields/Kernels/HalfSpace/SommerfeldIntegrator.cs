using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Mastwright.Numerics.Special;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>
/// Evaluates the remainders of the half-space kernels on a tensor grid of horizontal distances and heights, by Gauss panels along
/// the real axis: λ = sin t below the branch point of the air (which takes the root out), λ = cosh t above it, panels graded towards
/// λ = 1 (where the Zenneck pole of a good conductor lies close) and around Re n, and beyond that panels of half a period of the
/// Bessel function whose partial sums are averaged repeatedly (Longman 1956; Mosig and Gardiol 1983, from memory).
/// </summary>
internal sealed class SommerfeldIntegrator(Region region, HalfSpaceMedium medium)
{
    private const int PanelPoints = 8;
    private const int TailPeriods = 15;
    private static readonly double[] Grading = [0, 0.003, 0.012, 0.04, 0.12, 0.3, 0.7];

    /// <summary>Number of values written for one place.</summary>
    public const int Functions = 4;

    /// <summary>
    /// Writes the four remainders for every (ρ, a, b) in that order, b fastest. In the air or in the soil a is the sum of both heights
    /// or depths and b is a single zero; across the interface a is the height and b the depth.
    /// </summary>
    public void Evaluate(ReadOnlySpan<double> rho, double[] a, double[] b, Span<Complex> values)
    {
        values.Clear();
        var places = a.Length * b.Length;
        var work = new Workspace(places, rho.Length, a, b);
        var top = 0.0;
        foreach (var r in rho)
            top = Math.Max(top, r);
        var tailStart = Math.Max(2.5, 1.4 * medium.Index.Magnitude);
        Body(rho, top, tailStart, work, values);
        for (var i = 0; i < rho.Length; i++)
            Tail(rho[i], tailStart, work, values.Slice(i * places * Functions, places * Functions));
    }

    private void Body(ReadOnlySpan<double> rho, double rhoMax, double end, Workspace work, Span<Complex> values)
    {
        var longest = rhoMax > 0 ? 5 / rhoMax : double.PositiveInfinity;

        // λ = sin t, counted backwards from the branch point so that the grading lies there.
        for (var g = 0; g + 1 <= Grading.Length; g++)
        {
            var from = Grading[g];
            var to = g + 1 < Grading.Length ? Grading[g + 1] : Math.PI / 2;
            Panels(from, to, longest, work, rho, values, static t => (Math.Cos(t), new Complex(0, Math.Sin(t)), Math.Sin(t)));
        }

        var reach = Math.Acosh(end);
        for (var g = 0; g + 1 <= Grading.Length; g++)
        {
            var from = Grading[g];
            var to = Math.Min(reach, g + 1 < Grading.Length ? Grading[g + 1] : 1.2);
            if (to > from)
                Panels(from, to, longest / 1.5, work, rho, values, static t => (Math.Cosh(t), new Complex(Math.Sinh(t), 0), Math.Sinh(t)));
        }

        // Onward in λ itself, with edges around Re n as near as its distance from the axis.
        var low = Math.Cosh(Math.Min(reach, 1.2));
        var edges = new SortedSet<double> { low, end };
        for (var x = 1.6 * low; x < end; x *= 1.6)
            edges.Add(x);
        double centre = medium.Index.Real, spread = Math.Max(-medium.Index.Imaginary, 1e-3 * centre);
        edges.Add(centre);
        for (var d = spread; d < centre; d *= 2.5)
        {
            edges.Add(centre - d);
            edges.Add(centre + d);
        }

        var last = low;
        foreach (var edge in edges.Where(e => e > low && e <= end))
        {
            Panels(last, edge, longest, work, rho, values, static x => (x, Complex.Sqrt((x * x) - 1), 1));
            last = edge;
        }
    }

    private void Panels(double from, double to, double longest, Workspace work, ReadOnlySpan<double> rho, Span<Complex> values, Func<double, (double Lambda, Complex U0, double Jacobian)> map)
    {
        var rule = GaussRule.Of(PanelPoints);
        var count = Math.Max(1, (int)Math.Ceiling((to - from) / longest));
        for (var panel = 0; panel < count; panel++)
        {
            for (var g = 0; g < PanelPoints; g++)
            {
                var (lambda, u0, jacobian) = map(from + ((to - from) * (panel + rule.Nodes[g]) / count));
                work.Prepare(region, medium.IndexSquared, lambda, u0, rule.Weights[g] * (to - from) / count * jacobian);
                for (var i = 0; i < rho.Length; i++)
                    work.Accumulate(lambda * rho[i], values.Slice(i * work.Places * Functions, work.Places * Functions));
            }
        }
    }

    private void Tail(double rho, double start, Workspace work, Span<Complex> values)
    {
        var half = rho > 0 ? Math.PI / rho : double.PositiveInfinity;
        var vanish = 40 / Math.Max(work.LowestHeight, 1e-12);
        var at = start;
        var sum = new Complex[values.Length];
        while (at < Math.Min(vanish, 1e9) && half > 0.6 * at)
        {
            var next = at + Math.Min(0.6 * at, half);
            OnePanel(rho, at, next, work, sum);
            at = next;
        }

        var partial = new List<Complex[]> { sum };
        for (var period = 0; period < TailPeriods && at < vanish && double.IsFinite(half); period++)
        {
            sum = (Complex[])sum.Clone();
            OnePanel(rho, at, at + half, work, sum);
            at += half;
            partial.Add(sum);
        }

        // Skip the first few, then halve the oscillation again and again.
        var skip = at >= vanish ? partial.Count - 1 : Math.Min(3, partial.Count - 1);
        Span<Complex> mean = stackalloc Complex[TailPeriods + 1];
        for (var f = 0; f < values.Length; f++)
        {
            var count = partial.Count - skip;
            for (var i = 0; i < count; i++)
                mean[i] = partial[skip + i][f];
            for (; count > 1; count--)
                for (var i = 0; i + 1 < count; i++)
                    mean[i] = 0.5 * (mean[i] + mean[i + 1]);
            values[f] += mean[0];
        }
    }

    private void OnePanel(double rho, double from, double to, Workspace work, Span<Complex> values)
    {
        var rule = GaussRule.Of(PanelPoints);
        for (var g = 0; g < PanelPoints; g++)
        {
            var lambda = from + ((to - from) * rule.Nodes[g]);
            work.Prepare(region, medium.IndexSquared, lambda, Math.Sqrt((lambda * lambda) - 1), rule.Weights[g] * (to - from));
            work.Accumulate(lambda * rho, values);
        }
    }

    /// <summary>The densities of one λ at all heights, reused for all distances.</summary>
    private sealed class Workspace(int places, int distances, double[] a, double[] b)
    {
        private readonly Complex[] _densities = new Complex[places * Functions];
        private readonly Complex[] _deepDecay = new Complex[b.Length];
        private readonly Complex[] _deepImage = new Complex[b.Length];

        public int Places => places;

        public int Distances => distances;

        public double LowestHeight { get; } = a.Min() + b.Min();

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Prepare(Region region, Complex n2, double lambda, Complex u0, double weight)
        {
            var spectrum = SommerfeldSpectrum.At(region, n2, lambda, u0, weight);
            var u = region == Region.Soil ? spectrum.U1 : spectrum.U0;
            for (var j = 0; j < b.Length; j++)
            {
                _deepDecay[j] = b[j] == 0 ? Complex.One : Complex.Exp(-spectrum.U1 * b[j]);
                _deepImage[j] = b[j] == 0 ? Complex.One : Complex.Exp(-spectrum.U0 * b[j]);
            }

            for (var i = 0; i < a.Length; i++)
            {
                var decay = Complex.Exp(-u * a[i]);
                for (var j = 0; j < b.Length; j++)
                {
                    var slot = _densities.AsSpan(((i * b.Length) + j) * Functions, Functions);
                    spectrum.Write(decay * _deepDecay[j], decay * _deepImage[j], Math.Exp(-lambda * (a[i] + b[j])), slot);
                }
            }
        }

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Accumulate(double argument, Span<Complex> values)
        {
            // Four complex values fill two vectors; the last value goes with J1, the others with J0.
            var (j0, j1) = Bessel.J0J1(argument);
            var first = Vector256.Create(j0);
            var second = Vector256.Create(j0, j0, j1, j1);
            var source = MemoryMarshal.Cast<Complex, Vector256<double>>(_densities.AsSpan());
            var target = MemoryMarshal.Cast<Complex, Vector256<double>>(values);
            for (var p = 0; p < target.Length; p += 2)
            {
                target[p] += first * source[p];
                target[p + 1] += second * source[p + 1];
            }
        }
    }
}
