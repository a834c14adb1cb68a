using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Mastwright.Numerics.Dense;

/// <summary>Vector and matrix-vector operations on planar data. All are bound by memory, not arithmetic.</summary>
internal static unsafe class PlanarOps<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    // Below this many elements a second thread costs more than it brings.
    private const int LeastShared = 300_000;

    private static int W => Vector<T>.Count;

    /// <summary>y -= column * (xr + j xi), for rows <paramref name="from"/> to <paramref name="to"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void SubtractScaled(T* aRe, T* aIm, T xr, T xi, T* yRe, T* yIm, int from, int to)
    {
        var vr = new Vector<T>(xr);
        var vi = new Vector<T>(xi);
        var i = from;
        for (; i <= to - W; i += W)
        {
            var ar = Vector.Load(aRe + i);
            var ai = Vector.Load(aIm + i);
            (Vector.Load(yRe + i) - (ar * vr) + (ai * vi)).Store(yRe + i);
            (Vector.Load(yIm + i) - (ar * vi) - (ai * vr)).Store(yIm + i);
        }

        for (; i < to; i++)
        {
            var (ar, ai) = (aRe[i], aIm[i]);
            yRe[i] += (ai * xi) - (ar * xr);
            yIm[i] -= (ar * xi) + (ai * xr);
        }
    }

    /// <summary>y -= four neighbouring columns times four numbers: a quarter of the traffic on y.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void SubtractScaled4(T* aRe, T* aIm, long ld, T* xRe, T* xIm, T* yRe, T* yIm, int from, int to)
    {
        var (r0, r1, r2, r3) = (new Vector<T>(xRe[0]), new Vector<T>(xRe[1]), new Vector<T>(xRe[2]), new Vector<T>(xRe[3]));
        var (i0, i1, i2, i3) = (new Vector<T>(xIm[0]), new Vector<T>(xIm[1]), new Vector<T>(xIm[2]), new Vector<T>(xIm[3]));
        var i = from;
        for (; i <= to - W; i += W)
        {
            var yr = Vector.Load(yRe + i);
            var yi = Vector.Load(yIm + i);
            var ar = Vector.Load(aRe + i);
            var ai = Vector.Load(aIm + i);
            yr = yr - (ar * r0) + (ai * i0);
            yi = yi - (ar * i0) - (ai * r0);
            ar = Vector.Load(aRe + ld + i);
            ai = Vector.Load(aIm + ld + i);
            yr = yr - (ar * r1) + (ai * i1);
            yi = yi - (ar * i1) - (ai * r1);
            ar = Vector.Load(aRe + (2 * ld) + i);
            ai = Vector.Load(aIm + (2 * ld) + i);
            yr = yr - (ar * r2) + (ai * i2);
            yi = yi - (ar * i2) - (ai * r2);
            ar = Vector.Load(aRe + (3 * ld) + i);
            ai = Vector.Load(aIm + (3 * ld) + i);
            yr = yr - (ar * r3) + (ai * i3);
            yi = yi - (ar * i3) - (ai * r3);
            yr.Store(yRe + i);
            yi.Store(yIm + i);
        }

        for (var c = 0; c < 4; c++)
            SubtractScaled(aRe + (c * ld), aIm + (c * ld), xRe[c], xIm[c], yRe, yIm, i, to);
    }

    /// <summary>The sum of conj(a) * x for rows <paramref name="from"/> to <paramref name="to"/>.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static (T Re, T Im) ConjugateDot(T* aRe, T* aIm, T* xRe, T* xIm, int from, int to)
    {
        var sr = Vector<T>.Zero;
        var si = Vector<T>.Zero;
        var i = from;
        for (; i <= to - W; i += W)
        {
            var (ar, ai) = (Vector.Load(aRe + i), Vector.Load(aIm + i));
            var (xr, xi) = (Vector.Load(xRe + i), Vector.Load(xIm + i));
            sr += (ar * xr) + (ai * xi);
            si += (ar * xi) - (ai * xr);
        }

        var (re, im) = (Vector.Sum(sr), Vector.Sum(si));
        for (; i < to; i++)
        {
            re += (aRe[i] * xRe[i]) + (aIm[i] * xIm[i]);
            im += (aRe[i] * xIm[i]) - (aIm[i] * xRe[i]);
        }

        return (re, im);
    }

    /// <summary>y += A x, split by rows over threads.</summary>
    public static void MultiplyAdd(PlanarStorage<T> a, PlanarVector<T> x, PlanarVector<T> y, int threads)
    {
        const int Strip = 512;
        var strips = (a.Rows + Strip - 1) / Strip;
        var minusRe = Array.ConvertAll(x.Re, v => -v);
        var minusIm = Array.ConvertAll(x.Im, v => -v);
        Workers.For(strips, WorkersFor((long)a.Rows * a.Columns, threads), s =>
        {
            var (from, to) = (s * Strip, Math.Min(a.Rows, (s + 1) * Strip));
            fixed (T* yr = y.Re, yi = y.Im, xr = minusRe, xi = minusIm)
            {
                var j = 0;
                for (; j <= a.Columns - 4; j += 4)
                    SubtractScaled4(a.Re + ((long)j * a.Ld), a.Im + ((long)j * a.Ld), a.Ld, xr + j, xi + j, yr, yi, from, to);
                for (; j < a.Columns; j++)
                    SubtractScaled(a.Re + ((long)j * a.Ld), a.Im + ((long)j * a.Ld), xr[j], xi[j], yr, yi, from, to);
            }
        });
        GC.KeepAlive(a);
    }

    /// <summary>The largest column sum of absolute values; not-a-number wins over everything.</summary>
    public static T OneNorm(PlanarStorage<T> a, int threads) => ColumnSums(a, threads).Aggregate(T.Zero, (m, s) => s > m || T.IsNaN(s) ? s : m);

    /// <summary>The sum of absolute values of every column.</summary>
    public static T[] ColumnSums(PlanarStorage<T> a, int threads)
    {
        const int Chunk = 16;
        var sums = new T[a.Columns];
        var chunks = (a.Columns + Chunk - 1) / Chunk;
        Workers.For(chunks, WorkersFor((long)a.Rows * a.Columns, threads), c =>
        {
            for (var j = c * Chunk; j < Math.Min(a.Columns, (c + 1) * Chunk); j++)
                sums[j] = AbsSum(a.ReColumn(j), a.ImColumn(j));
        });
        return sums;
    }

    /// <summary>A copy in single precision, every element multiplied by <paramref name="scale"/>, and the column sums of the original.</summary>
    public static PlanarStorage<float> ToSingle(PlanarStorage<double> a, double scale, int threads, out double[] columnSums)
    {
        const int Chunk = 16;
        var copy = PlanarStorage<float>.Unwritten(a.Rows, a.Columns);
        var sums = new double[a.Columns];

        // Fresh memory makes each element dearer here than elsewhere.
        Workers.For((a.Columns + Chunk - 1) / Chunk, WorkersFor(4L * a.Rows * a.Columns, threads), c =>
        {
            for (var j = c * Chunk; j < Math.Min(a.Columns, (c + 1) * Chunk); j++)
            {
                sums[j] = PlanarOps<double>.AbsSum(a.ReColumn(j), a.ImColumn(j));
                Narrow(a.ReColumn(j), copy.ReColumn(j), scale);
                Narrow(a.ImColumn(j), copy.ImColumn(j), scale);
            }
        });
        columnSums = sums;
        return copy;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Narrow(ReadOnlySpan<double> from, Span<float> to, double scale)
    {
        var i = 0;
        for (; i <= from.Length - (2 * Vector<double>.Count); i += 2 * Vector<double>.Count)
        {
            var low = new Vector<double>(from[i..]) * scale;
            var high = new Vector<double>(from[(i + Vector<double>.Count)..]) * scale;
            Vector.Narrow(low, high).CopyTo(to[i..]);
        }

        for (; i < from.Length; i++)
            to[i] = (float)(from[i] * scale);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static T AbsSum(ReadOnlySpan<T> re, ReadOnlySpan<T> im)
    {
        var sum = Vector<T>.Zero;
        var vr = MemoryMarshal.Cast<T, Vector<T>>(re);
        var vi = MemoryMarshal.Cast<T, Vector<T>>(im);
        for (var i = 0; i < vr.Length; i++)
            sum += Vector.SquareRoot((vr[i] * vr[i]) + (vi[i] * vi[i]));
        var total = Vector.Sum(sum);
        for (var i = vr.Length * W; i < re.Length; i++)
            total += T.Sqrt((re[i] * re[i]) + (im[i] * im[i]));

        // Squares of very large elements overflow, of very small ones vanish; only then is the slow way worth its time.
        if (T.IsNaN(total) || (T.IsFinite(total) && total > T.CreateTruncating(1e-140)))
            return total;
        total = T.Zero;
        for (var i = 0; i < re.Length; i++)
            total += T.Hypot(re[i], im[i]);
        return total;
    }

    private static int WorkersFor(long elements, int threads) =>
        elements < LeastShared ? 1 : threads > 0 ? threads : Environment.ProcessorCount;
}
