using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// Factors a tall panel by halving its columns until six or fewer are left (S. Toledo, "Locality of reference in LU
/// decomposition with partial pivoting", SIAM J. Matrix Anal. Appl. 18 (1997) 1065-1081), so that nearly all of the
/// panel's arithmetic runs on tiles too.
/// </summary>
internal readonly unsafe struct PanelFactor<T, TTile>(PlanarStorage<T> a, int[] pivots, BlockedLu<T, TTile>.Workbench bench)
    where T : unmanaged, IFloatingPointIeee754<T>
    where TTile : struct, ITile<T>
{
    private readonly int _end = PlanarStorage<T>.PaddedRows(a.Rows);

    /// <summary>Factors columns <paramref name="start"/> to start + width - 1 below and on the diagonal.</summary>
    /// <returns>The first column without a usable pivot, or -1.</returns>
    public int Factor(int start, int width)
    {
        if (width <= ITile<T>.Columns)
            return FactorNarrow(start, width);
        var left = (width + 11) / 12 * ITile<T>.Columns;
        var right = width - left;
        var failed = Factor(start, left);
        if (failed >= 0)
            return failed;
        var middle = start + left;
        SwapColumns(middle, right, start, middle);
        SolveUnitLower(start, left, right);
        SubtractProduct(start, left, right);
        failed = Factor(middle, right);
        if (failed >= 0)
            return failed;
        SwapColumns(start, left, middle, middle + right);
        return -1;
    }

    /// <summary>Swaps the elements of one column as the pivots of some rows say.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Swap(T* re, T* im, int[] pivots, int fromRow, int toRow)
    {
        foreach (var p in pivots.AsSpan(fromRow..toRow))
        {
            var (upRe, upIm) = (re[p], im[p]);
            re[p] = re[fromRow];
            im[p] = im[fromRow];
            re[fromRow] = upRe;
            im[fromRow] = upIm;
            fromRow++;
        }
    }

    private void SwapColumns(int column, int columns, int fromRow, int toRow)
    {
        for (var c = column; c < column + columns; c++)
        {
            Swap(Re(c), Im(c), pivots, fromRow, toRow);
        }
    }

    private void SolveUnitLower(int start, int left, int right)
    {
        var middle = start + left;
        for (var c = middle; c < middle + right; c++)
        {
            var re = Re(c);
            var im = Im(c);
            for (var p = start; p < middle - 1; p++)
                PlanarOps<T>.SubtractScaled(Re(p), Im(p), re[p], im[p], re, im, p + 1, middle);
        }
    }

    private void SubtractProduct(int start, int left, int right)
    {
        var middle = start + left;
        var groups = (right + ITile<T>.Columns - 1) / ITile<T>.Columns;
        for (var g = 0; g < groups; g++)
        {
            var c = middle + (g * ITile<T>.Columns);
            TilePacking<T>.PackB(Re(c) + start, Im(c) + start, a.Ld, left, bench.B + ((long)g * 12 * left));
        }

        var m = TTile.Rows;
        for (var row = middle / m * m; row < _end; row += m)
        {
            TilePacking<T>.PackA(Re(start) + row, Im(start) + row, a.Ld, left, m, bench.A);

            // The first tile may begin above the rows to change: there the product must be nothing.
            for (var above = 0; above < middle - row; above++)
            {
                for (var k = 0; k < left; k++)
                    bench.A[(2 * m * k) + above] = bench.A[(2 * m * k) + m + above] = T.Zero;
            }

            for (var g = 0; g < groups; g++)
            {
                var c = middle + (g * ITile<T>.Columns);
                TTile.Subtract(left, bench.A, 2 * m, m, bench.B + ((long)g * 12 * left), Re(c) + row, Im(c) + row, a.Ld);
            }
        }
    }

    /// <summary>Left-looking elimination of at most six columns.</summary>
    private int FactorNarrow(int start, int width)
    {
        for (var j = start; j < start + width; j++)
        {
            var re = Re(j);
            var im = Im(j);
            for (var p = start; p < j; p++)
            {
                for (var i = p + 1; i < j; i++)
                {
                    re[i] -= (Re(p)[i] * re[p]) - (Im(p)[i] * im[p]);
                    im[i] -= (Re(p)[i] * im[p]) + (Im(p)[i] * re[p]);
                }
            }

            var pivot = SubtractAndFindPivot(start, j);
            if (!(T.Abs(re[pivot]) + T.Abs(im[pivot]) > T.Zero) || !T.IsFinite(re[pivot]) || !T.IsFinite(im[pivot]))
                return j;
            pivots[j] = pivot;
            if (pivot != j)
                SwapColumns(start, width, j, j + 1);
            Scale(re, im, re[j], im[j], j + 1);
        }

        return -1;
    }

    /// <summary>Column j, from the diagonal down, minus the columns to its left times what stands above; finds its largest element on the way.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int SubtractAndFindPivot(int start, int j)
    {
        var w = Vector<T>.Count;
        var re = Re(j);
        var im = Im(j);
        var count = j - start;
        var xr = stackalloc Vector<T>[ITile<T>.Columns];
        var xi = stackalloc Vector<T>[ITile<T>.Columns];
        for (var p = 0; p < count; p++)
        {
            xr[p] = new(re[start + p]);
            xi[p] = new(im[start + p]);
        }

        var best = j;
        var largest = T.NegativeOne;
        var aligned = Math.Min(_end, (j + w - 1) / w * w);
        for (var i = j; i < aligned; i++)
        {
            var (cr, ci) = (re[i], im[i]);
            for (var p = 0; p < count; p++)
            {
                var (lr, li) = (Re(start + p)[i], Im(start + p)[i]);
                cr -= (lr * re[start + p]) - (li * im[start + p]);
                ci -= (lr * im[start + p]) + (li * re[start + p]);
            }

            (re[i], im[i]) = (cr, ci);
            if (T.Abs(cr) + T.Abs(ci) > largest)
                (best, largest) = (i, T.Abs(cr) + T.Abs(ci));
        }

        var max = new Vector<T>(T.NegativeOne);
        var at = Vector<T>.Zero;
        var index = Vector.CreateSequence(T.CreateTruncating(aligned), T.One);
        var step = new Vector<T>(T.CreateTruncating(w));
        var lRe = Re(start);
        var lIm = Im(start);
        for (var i = aligned; i < _end; i += w)
        {
            var cr = Vector.Load(re + i);
            var ci = Vector.Load(im + i);
            var pr = lRe + i;
            var pi = lIm + i;
            for (var p = 0; p < count; p++)
            {
                var (lr, li) = (Vector.Load(pr), Vector.Load(pi));
                cr = cr - (lr * xr[p]) + (li * xi[p]);
                ci = ci - (lr * xi[p]) - (li * xr[p]);
                pr += a.Ld;
                pi += a.Ld;
            }

            cr.Store(re + i);
            ci.Store(im + i);
            var size = Vector.Abs(cr) + Vector.Abs(ci);
            var larger = Vector.GreaterThan(size, max);
            max = Vector.ConditionalSelect(larger, size, max);
            at = Vector.ConditionalSelect(larger, index, at);
            index += step;
        }

        for (var lane = 0; lane < w; lane++)
        {
            var candidate = int.CreateTruncating(at[lane]);
            if (max[lane] > largest || (max[lane] == largest && candidate < best))
                (best, largest) = (candidate, max[lane]);
        }

        return best;
    }

    /// <summary>Divides a column below the diagonal by the pivot.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Scale(T* re, T* im, T pivotRe, T pivotIm, int from)
    {
        var (pr, pi) = PlanarLu<T>.Reciprocal(pivotRe, pivotIm);
        var w = Vector<T>.Count;
        var aligned = Math.Min(_end, (from + w - 1) / w * w);
        for (var i = from; i < aligned; i++)
            (re[i], im[i]) = ((re[i] * pr) - (im[i] * pi), (re[i] * pi) + (im[i] * pr));
        var (vr, vi) = (new Vector<T>(pr), new Vector<T>(pi));
        for (var i = aligned; i < _end; i += w)
        {
            var (cr, ci) = (Vector.Load(re + i), Vector.Load(im + i));
            ((cr * vr) - (ci * vi)).Store(re + i);
            ((cr * vi) + (ci * vr)).Store(im + i);
        }
    }

    private T* Re(int column) => a.Re + ((long)column * a.Ld);

    private T* Im(int column) => a.Im + ((long)column * a.Ld);
}
