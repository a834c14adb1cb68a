using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using Mastwright.Numerics.Dense;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Bench;

/// <summary>Where the time of a dense solve goes, for tuning: each part alone, best of several runs.</summary>
internal static class LuParts
{
    private static readonly int Threads = Environment.GetEnvironmentVariable("BENCH_THREADS") is { } t ? int.Parse(t, CultureInfo.InvariantCulture) : 2;

    public static int Run(string[] args)
    {
        var n = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000;
        var widths = args.Skip(1).Select(a => int.Parse(a, CultureInfo.InvariantCulture)).DefaultIfEmpty(0).ToArray();
        var source = LuBench.RandomMatrix(n);
        var options = new LuOptions(Threads);
        var b = PlanarVector<double>.From([.. Enumerable.Range(0, n).Select(i => new Complex(1, i % 7))], n);
        foreach (var depth in (int[])[24, 48, 96, 192])
            Kernel(depth);
        Best("column sums", () => PlanarOps<double>.ColumnSums(source.Storage, Threads));
        Best("copy", () => source.Storage.Clone());
        Best("copy to single", () => PlanarOps<double>.ToSingle(source.Storage, 1, Threads, out _));
        Best("matrix times vector", () => PlanarOps<double>.MultiplyAdd(source.Storage, b, PlanarVector<double>.Zero(n), Threads));
        Best("matrix times vector", () => PlanarOps<double>.MultiplyAdd(source.Storage, b, PlanarVector<double>.Zero(n), 1));
        foreach (var width in widths)
        {
            var tuned = options with { PanelWidth = width };
            var a = source.Storage.Clone();
            PlanarLu<double>? lu = null;
            Best($"factor double, panel {width}", () => lu = PlanarLu<double>.Factor(a, tuned, default, out _), () => a = source.Storage.Clone());
            Best("solve double", () => lu!.Solve(PlanarVector<double>.From([Complex.One], n)));
            if (width % 96 != 0)
                continue;
            var s = PlanarOps<double>.ToSingle(source.Storage, 1, Threads, out _);
            PlanarLu<float>? luSingle = null;
            Best($"factor single, panel {width}", () => luSingle = PlanarLu<float>.Factor(s, tuned, default, out _), () => s = PlanarOps<double>.ToSingle(source.Storage, 1, Threads, out _));
            Best("solve single", () => luSingle!.Solve(PlanarVector<float>.From([Complex.One], n)));
        }

        return 0;
    }

    private static unsafe void Kernel(int depth)
    {
        const int Calls = 4000;
        if (!Tile512<double>.IsSupported)
            return;
        var rows = Tile512<double>.Rows;
        var memory = new AlignedBuffer<double>((2 * rows * depth) + (12 * depth) + (12 * rows));
        var a = memory.Start;
        var b = a + (2 * rows * depth);
        var c = b + (12 * depth);
        Best(string.Create(CultureInfo.InvariantCulture, $"tile, {8e-9 * rows * 6 * depth * Calls:F3} GFLOP, depth {depth}"), () =>
        {
            for (var i = 0; i < Calls; i++)
                Tile512<double>.Subtract(depth, a, 2 * rows, rows, b, c, c + (6 * rows), rows);
        });
    }

    private static void Best(string part, Action body, Action? before = null)
    {
        var best = double.PositiveInfinity;
        var bestCpu = double.PositiveInfinity;
        var spent = Stopwatch.StartNew();
        for (var r = 0; r < 8 || (spent.ElapsedMilliseconds < 1500 && r < 100); r++)
        {
            before?.Invoke();
            var cpu = Environment.CpuUsage.TotalTime;
            var clock = Stopwatch.StartNew();
            body();
            bestCpu = Math.Min(bestCpu, (Environment.CpuUsage.TotalTime - cpu).TotalMilliseconds);
            best = Math.Min(best, clock.Elapsed.TotalMilliseconds);
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{part,-32} {best,9:F3} ms, {bestCpu,9:F3} ms of processor time"));
    }
}
