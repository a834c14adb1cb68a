using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Mastwright.Numerics.Dense;
using MathNet.Numerics.LinearAlgebra.Complex;

namespace Mastwright.Bench;

/// <summary>Dense complex factorisation and solve against OpenBLAS and plain managed Math.NET.</summary>
internal static unsafe class LuBench
{
    private const string OneThread = "--one-thread";
    private const int LeastRounds = 7;
    private const double SecondsPerSize = 15;
    private const int Many = 60;
    private const int MathNetLargest = 1000;

    public static int Run(string[] args)
    {
        var one = args.Contains(OneThread);
        args = [.. args.Where(a => a != OneThread)];
        var threads = one ? 1 : 2;
        var sizes = args.Length > 0 ? args.Select(a => int.Parse(a, CultureInfo.InvariantCulture)).ToArray() : [500, 2000, 4000];
        var blas = OpenBlas.TryLoad(threads, out var whyNot);
        Console.WriteLine(blas is null ? $"OpenBLAS skipped: {whyNot}." : $"Baseline: {blas.Version} (kernel {blas.Kernel}), {threads} thread(s).");
        var peak = Peak.Measure(threads);
        Console.WriteLine(FormattableString.Invariant($"Arithmetic peak (multiply-add units alone, one thread measured, times {threads}): {peak:F0} GFLOP/s double.\n"));
        if (one)
            Console.WriteLine("Times are processor time: they hold on a busy machine too.\n");
        Console.WriteLine("|    n | job                         |  best ms | median ms | GFLOP/s | of peak | ratio to OpenBLAS | backward error |");
        Console.WriteLine("|-----:|-----------------------------|---------:|----------:|--------:|--------:|------------------:|---------------:|");
        foreach (var n in sizes)
            Size(n, blas, peak, one);
        return 0;
    }

    private static void Size(int n, OpenBlas? blas, double peak, bool one)
    {
        var source = RandomMatrix(n);
        var options = new LuOptions(one ? 1 : 2);
        var rhs = Enumerable.Range(0, n).Select(i => new Complex(1, i % 7)).ToArray();
        var interleaved = (double*)System.Runtime.InteropServices.NativeMemory.AlignedAlloc((nuint)(16L * n * n), 64);
        var pivots = new int[n];
        var sinceStart = Stopwatch.StartNew();
        var timings = new Dictionary<string, List<double>>();
        var errors = new Dictionary<string, double>();
        void Time(string job, Action body)
        {
            var processor = Environment.CpuUsage.TotalTime;
            var clock = Stopwatch.StartNew();
            body();
            timings.TryAdd(job, []);
            timings[job].Add(one ? (Environment.CpuUsage.TotalTime - processor).TotalMilliseconds : clock.Elapsed.TotalMilliseconds);
        }

        for (var r = 0; r < LeastRounds || sinceStart.Elapsed.TotalSeconds < SecondsPerSize; r++)
        {
            // The first rounds only warm up.
            if (r == 2)
                timings.Clear();
            fixed (int* p = pivots)
            {
                var pointer = p;
                if (blas is not null)
                {
                    Interleave(source, interleaved);
                    Time("OpenBLAS zgetrf", () => blas.Factor(interleaved, n, pointer));
                    fixed (Complex* bp = new Complex[n * Many])
                    {
                        new Span<Complex>(bp, n * Many).Fill(Complex.One);
                        var right = (double*)bp;
                        Time("OpenBLAS zgetrs, 60 columns", () => blas.SolveMany(interleaved, n, pointer, right, Many));
                    }

                    Interleave(source, interleaved);
                    var b = rhs.ToArray();
                    fixed (Complex* bp = b)
                    {
                        var right = (double*)bp;
                        Time("OpenBLAS zgesv", () => blas.Solve(interleaved, n, pointer, right));
                        errors["OpenBLAS zgesv"] = BackwardError(source, b, rhs);
                    }
                }
            }

            var copy = source.Clone();
            ComplexLu lu = null!;
            Time("factor", () => lu = ComplexLu.Factor(copy, options with { Overwrite = true }).Require());
            var columns = ComplexMatrix.FromColumns([.. Enumerable.Repeat(rhs, Many)]);
            Time("solve many, 60 columns", () => lu.SolveMany(columns));
            SolveOutcome refined = null!;
            Time("solve, single + refined", () => refined = ComplexSolver.Solve(source, rhs, options));
            if (refined.Route != SolveRoute.SingleRefined)
                throw new InvalidOperationException("The benchmark matrix was meant to be well-conditioned.");
            Complex[] x = [];
            Time("solve, double", () => x = ComplexLu.Factor(source, options).Require().Solve(rhs));
            errors["solve, single + refined"] = BackwardError(source, refined.Require(), rhs);
            errors["solve, double"] = BackwardError(source, x, rhs);
        }

        System.Runtime.InteropServices.NativeMemory.AlignedFree(interleaved);
        if (n <= MathNetLargest)
        {
            var m = DenseMatrix.Create(n, n, (i, j) => source[i, j]);
            for (var r = 0; r < 3; r++)
                Time("Math.NET LU (managed)", () => m.LU());
        }

        var flops = 8.0 / 3 * n * n * n;
        foreach (var (job, times) in timings)
        {
            var best = times.Min();
            var median = times.Order().ElementAt(times.Count / 2);
            var many = job.Contains("columns", StringComparison.Ordinal);
            var baseline = many ? "OpenBLAS zgetrs, 60 columns" : job.StartsWith("solve", StringComparison.Ordinal) ? "OpenBLAS zgesv" : "OpenBLAS zgetrf";
            var ratio = timings.TryGetValue(baseline, out var t) ? (t.Min() / best).ToString("F2", CultureInfo.InvariantCulture) : "-";
            var rate = (many ? 8.0 * n * n * Many : flops) / best / 1e6;
            Console.WriteLine(FormattableString.Invariant(
                $"| {n,4} | {job,-27} | {best,8:F2} | {median,9:F2} | {rate,7:F0} | {rate / peak,7:P0} | {ratio,17} | {(errors.TryGetValue(job, out var e) ? e.ToString("E1", CultureInfo.InvariantCulture) : "-"),14} |"));
        }
    }

    internal static ComplexMatrix RandomMatrix(int n)
    {
        var random = new Random(1);
        var m = new ComplexMatrix(n, n);
        for (var j = 0; j < n; j++)
        {
            foreach (ref var x in m.RealColumn(j))
                x = (2 * random.NextDouble()) - 1;
            foreach (ref var x in m.ImaginaryColumn(j))
                x = (2 * random.NextDouble()) - 1;
        }

        return m;
    }

    /// <summary>||b - A x|| / (||A|| ||x|| + ||b||) in the 1-norm.</summary>
    private static double BackwardError(ComplexMatrix a, Complex[] x, Complex[] b)
    {
        var residual = a.Multiply(x).Zip(b, (p, q) => (p - q).Magnitude).Sum();
        return residual / ((a.OneNorm() * x.Sum(v => v.Magnitude)) + b.Sum(v => v.Magnitude));
    }

    private static void Interleave(ComplexMatrix m, double* to)
    {
        for (var j = 0; j < m.Columns; j++)
        {
            var (re, im) = (m.RealColumn(j).ToArray(), m.ImaginaryColumn(j).ToArray());
            for (var i = 0; i < re.Length; i++)
            {
                *to++ = re[i];
                *to++ = im[i];
            }
        }
    }
}
