using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Mastwright.Bench;

/// <summary>What the multiply-add units do when nothing else is in their way.</summary>
internal static class Peak
{
    private const int Steps = 300_000;

    /// <summary>Double-precision GFLOP/s of one thread, best of many tries, times the number of threads; NaN where vectors are narrower than 256 bits.</summary>
    public static double Measure(int threads)
    {
        if (!Fma.IsSupported)
            return double.NaN;
        var best = 0.0;
        for (var attempt = 0; attempt < 200; attempt++)
        {
            var clock = Stopwatch.StartNew();
            if (Avx512F.IsSupported)
                Wide();
            else
                Narrow();
            var lanes = Avx512F.IsSupported ? 8 : 4;
            best = Math.Max(best, (double)Steps * 10 * lanes * 2 / clock.Elapsed.TotalSeconds / 1e9);
        }

        return threads * best;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static double Wide()
    {
        var x = Vector512.Create(0.5);
        Vector512<double> a = x, b = x, c = x, d = x, e = x, f = x, g = x, h = x, i = x, j = x;
        for (var k = 0; k < Steps; k++)
        {
            a = Avx512F.FusedMultiplyAdd(a, x, x);
            b = Avx512F.FusedMultiplyAdd(b, x, x);
            c = Avx512F.FusedMultiplyAdd(c, x, x);
            d = Avx512F.FusedMultiplyAdd(d, x, x);
            e = Avx512F.FusedMultiplyAdd(e, x, x);
            f = Avx512F.FusedMultiplyAdd(f, x, x);
            g = Avx512F.FusedMultiplyAdd(g, x, x);
            h = Avx512F.FusedMultiplyAdd(h, x, x);
            i = Avx512F.FusedMultiplyAdd(i, x, x);
            j = Avx512F.FusedMultiplyAdd(j, x, x);
        }

        return Vector512.Sum(a + b + c + d + e + f + g + h + i + j);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization | MethodImplOptions.NoInlining)]
    private static double Narrow()
    {
        var x = Vector256.Create(0.5);
        Vector256<double> a = x, b = x, c = x, d = x, e = x, f = x, g = x, h = x, i = x, j = x;
        for (var k = 0; k < Steps; k++)
        {
            a = Fma.MultiplyAdd(a, x, x);
            b = Fma.MultiplyAdd(b, x, x);
            c = Fma.MultiplyAdd(c, x, x);
            d = Fma.MultiplyAdd(d, x, x);
            e = Fma.MultiplyAdd(e, x, x);
            f = Fma.MultiplyAdd(f, x, x);
            g = Fma.MultiplyAdd(g, x, x);
            h = Fma.MultiplyAdd(h, x, x);
            i = Fma.MultiplyAdd(i, x, x);
            j = Fma.MultiplyAdd(j, x, x);
        }

        return Vector256.Sum(a + b + c + d + e + f + g + h + i + j);
    }
}
