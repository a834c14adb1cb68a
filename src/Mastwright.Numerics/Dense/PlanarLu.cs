using System.Numerics;

namespace Mastwright.Numerics.Dense;

/// <summary>Sizes shared by all precisions.</summary>
internal static class PlanarLu
{
    public static long WorkBytes(int order, int threads, int elementSize) => 0;
}

/// <summary>P A = L U in planar storage, in one precision.</summary>
internal sealed unsafe class PlanarLu<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    private readonly PlanarStorage<T> _lu;
    private readonly int[] _pivots;

    private PlanarLu(PlanarStorage<T> lu, int[] pivots)
    {
        _lu = lu;
        _pivots = pivots;
    }

    public int Order => _lu.Rows;

    public ReadOnlySpan<int> Pivots => _pivots;

    public PlanarStorage<T> Storage => _lu;

    /// <summary>Factors in place. On failure the result is null and <paramref name="failedColumn"/> says where.</summary>
    public static PlanarLu<T>? Factor(PlanarStorage<T> a, LuOptions options, CancellationToken cancellation, out int failedColumn)
    {
        var n = a.Rows;
        var pivots = new int[n];
        failedColumn = -1;
        for (var k = 0; k < n; k++)
        {
            cancellation.ThrowIfCancellationRequested();
            var re = a.Re + ((long)k * a.Ld);
            var im = a.Im + ((long)k * a.Ld);
            var best = k;
            for (var i = k; i < n; i++)
            {
                if (T.Abs(re[i]) + T.Abs(im[i]) > T.Abs(re[best]) + T.Abs(im[best]))
                    best = i;
            }

            pivots[k] = best;
            for (var j = 0; j < n; j++)
            {
                var at = (long)j * a.Ld;
                (a.Re[at + k], a.Re[at + best]) = (a.Re[at + best], a.Re[at + k]);
                (a.Im[at + k], a.Im[at + best]) = (a.Im[at + best], a.Im[at + k]);
            }

            if (re[k] == T.Zero && im[k] == T.Zero)
            {
                failedColumn = k;
                return null;
            }

            var (pr, pi) = Reciprocal(re[k], im[k]);
            for (var i = k + 1; i < n; i++)
                (re[i], im[i]) = ((re[i] * pr) - (im[i] * pi), (re[i] * pi) + (im[i] * pr));
            for (var j = k + 1; j < n; j++)
            {
                var cr = a.Re + ((long)j * a.Ld);
                var ci = a.Im + ((long)j * a.Ld);
                PlanarOps<T>.SubtractScaled(re, im, cr[k], ci[k], cr, ci, k + 1, n);
            }
        }

        return new(a, pivots);
    }

    /// <summary>Solves A x = b in place of b.</summary>
    public void Solve(PlanarVector<T> b)
    {
        b.Permute(_pivots);
        var n = Order;
        fixed (T* br = b.Re, bi = b.Im)
        {
            for (var j = 0; j < n; j++)
                PlanarOps<T>.SubtractScaled(Re(j), Im(j), br[j], bi[j], br, bi, j + 1, n);
            for (var j = n - 1; j >= 0; j--)
            {
                var (rr, ri) = Reciprocal(Re(j)[j], Im(j)[j]);
                (br[j], bi[j]) = ((br[j] * rr) - (bi[j] * ri), (br[j] * ri) + (bi[j] * rr));
                PlanarOps<T>.SubtractScaled(Re(j), Im(j), br[j], bi[j], br, bi, 0, j);
            }
        }
    }

    /// <summary>Solves A X = B in place of B.</summary>
    public void SolveMany(PlanarStorage<T> b, LuOptions options) =>
        Workers.For(b.Columns, options.ThreadCount, j =>
        {
            var x = PlanarVector<T>.Zero(Order);
            b.ReColumn(j).CopyTo(x.Re);
            b.ImColumn(j).CopyTo(x.Im);
            Solve(x);
            x.Re.AsSpan(0, Order).CopyTo(b.ReColumn(j));
            x.Im.AsSpan(0, Order).CopyTo(b.ImColumn(j));
        });

    /// <summary>Solves A^H x = b in place of b, A^H the conjugate transpose.</summary>
    public void SolveAdjoint(PlanarVector<T> b)
    {
        var n = Order;
        fixed (T* br = b.Re, bi = b.Im)
        {
            for (var j = 0; j < n; j++)
            {
                var (sr, si) = PlanarOps<T>.ConjugateDot(Re(j), Im(j), br, bi, 0, j);
                var (rr, ri) = Reciprocal(Re(j)[j], -Im(j)[j]);
                var (tr, ti) = (br[j] - sr, bi[j] - si);
                (br[j], bi[j]) = ((tr * rr) - (ti * ri), (tr * ri) + (ti * rr));
            }

            for (var j = n - 1; j >= 0; j--)
            {
                var (sr, si) = PlanarOps<T>.ConjugateDot(Re(j), Im(j), br, bi, j + 1, n);
                (br[j], bi[j]) = (br[j] - sr, bi[j] - si);
            }
        }

        b.PermuteBack(_pivots);
    }

    /// <summary>1 / (re + j im) by Smith's scaling, which neither overflows nor underflows early.</summary>
    public static (T Re, T Im) Reciprocal(T re, T im)
    {
        if (T.Abs(re) >= T.Abs(im))
        {
            var ratio = im / re;
            var d = re + (im * ratio);
            return (T.One / d, -ratio / d);
        }
        else
        {
            var ratio = re / im;
            var d = (re * ratio) + im;
            return (ratio / d, -T.One / d);
        }
    }

    private T* Re(int j) => _lu.Re + ((long)j * _lu.Ld);

    private T* Im(int j) => _lu.Im + ((long)j * _lu.Ld);
}
