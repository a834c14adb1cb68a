using System.Numerics;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>Sizes shared by all precisions.</summary>
internal static class PlanarLu
{
    /// <summary>
    /// Columns a panel has: a multiple of the tile width and of the row padding, so that panels start on whole tiles.
    /// Wide panels move less memory, narrow ones leave less work outside the tiles.
    /// </summary>
    public static int BlockWidth<T>(int order)
        where T : unmanaged, INumberBase<T>
    {
        var unit = 3 * PlanarStorage<T>.RowPad;
        return Math.Max(unit, order < 1000 ? 48 : order < 3000 ? 96 : 192);
    }

    /// <summary>About what factoring takes for packed panels and scratch memory.</summary>
    public static long WorkBytes(int order, int threads, int elementSize)
    {
        var width = BlockWidth<double>(order);
        var panel = 2L * width * PlanarStorage<double>.PaddedRows(order) * elementSize;
        return ((threads + 1) * panel) + (2L * threads * width * width * elementSize);
    }
}

/// <summary>
/// P A = L U in planar storage, in one precision. The rows of each panel of L stand as they stood when that panel was done;
/// later swaps are made on the right-hand side when its turn comes.
/// </summary>
internal sealed unsafe class PlanarLu<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    private readonly PlanarStorage<T> _lu;
    private readonly int[] _pivots;
    private readonly int _width;

    private PlanarLu(PlanarStorage<T> lu, int[] pivots, int width)
    {
        _lu = lu;
        _pivots = pivots;
        _width = width;
    }

    public int Order => _lu.Rows;

    public ReadOnlySpan<int> Pivots => _pivots;

    public PlanarStorage<T> Storage => _lu;

    /// <summary>Factors in place. On failure the result is null and <paramref name="failedColumn"/> says where.</summary>
    public static PlanarLu<T>? Factor(PlanarStorage<T> a, LuOptions options, CancellationToken cancellation, out int failedColumn)
    {

        // Waking a helper costs as much as factoring an order of about a hundred.
        var threads = Math.Clamp(a.Rows / 128, 1, options.ThreadCount);
        var width = options.PanelWidth > 0 ? options.PanelWidth : PlanarLu.BlockWidth<T>(a.Rows);
        var pivots = Usable(options.Path) switch
        {
            VectorPath.Bits512 => BlockedLu<T, Tile512<T>>.Factor(a, width, threads, cancellation, out failedColumn),
            VectorPath.Bits256 => BlockedLu<T, Tile256<T>>.Factor(a, width, threads, cancellation, out failedColumn),
            _ => BlockedLu<T, TilePortable<T>>.Factor(a, width, threads, cancellation, out failedColumn),
        };
        return pivots is null ? null : new(a, pivots, width);
    }

    /// <summary>Solves A x = b in place of b.</summary>
    public void Solve(PlanarVector<T> b)
    {
        var n = Order;
        fixed (T* br = b.Re, bi = b.Im)
        {
            for (var j = 0; j < n; j += 4)
            {
                if (j % _width == 0)
                    b.Permute(_pivots, j, Math.Min(n, j + _width));
                var end = Math.Min(n, j + 4);
                for (var c = j; c < end; c++)
                    PlanarOps<T>.SubtractScaled(Re(c), Im(c), br[c], bi[c], br, bi, c + 1, end);
                if (end < n)
                    PlanarOps<T>.SubtractScaled4(Re(j), Im(j), _lu.Ld, br + j, bi + j, br, bi, end, n);
            }

            for (var end = n; end > 0; end -= 4)
            {
                var start = Math.Max(0, end - 4);
                for (var c = end - 1; c >= start; c--)
                {
                    var (rr, ri) = Reciprocal(Re(c)[c], Im(c)[c]);
                    (br[c], bi[c]) = ((br[c] * rr) - (bi[c] * ri), (br[c] * ri) + (bi[c] * rr));
                    PlanarOps<T>.SubtractScaled(Re(c), Im(c), br[c], bi[c], br, bi, start, c);
                }

                if (start > 0)
                    PlanarOps<T>.SubtractScaled4(Re(start), Im(start), _lu.Ld, br + start, bi + start, br, bi, 0, start);
            }

            GC.KeepAlive(this);
        }
    }

    /// <summary>Solves A X = B in place of B.</summary>
    public void SolveMany(PlanarStorage<T> b, LuOptions options)
    {
        switch (Usable(options.Path))
        {
            case VectorPath.Bits512:
                BlockedSolve<T, Tile512<T>>.Run(_lu, _pivots, _width, b, options.ThreadCount);
                break;
            case VectorPath.Bits256:
                BlockedSolve<T, Tile256<T>>.Run(_lu, _pivots, _width, b, options.ThreadCount);
                break;
            default:
                BlockedSolve<T, TilePortable<T>>.Run(_lu, _pivots, _width, b, options.ThreadCount);
                break;
        }
    }

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
                if (j % _width == 0)
                    b.PermuteBack(_pivots, j, Math.Min(n, j + _width));
            }

            GC.KeepAlive(this);
        }
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

    private static VectorPath Usable(VectorPath wanted) =>
        wanted is VectorPath.Widest or VectorPath.Bits512 && Tile512<T>.IsSupported ? VectorPath.Bits512
        : wanted != VectorPath.Portable && Tile256<T>.IsSupported ? VectorPath.Bits256
        : VectorPath.Portable;

    private T* Re(int j) => _lu.Re + ((long)j * _lu.Ld);

    private T* Im(int j) => _lu.Im + ((long)j * _lu.Ld);
}
