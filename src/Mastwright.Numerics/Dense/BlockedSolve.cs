using System.Numerics;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// Solves for many right-hand sides: a few columns at a time go through the whole factor, so that every tile of the factor
/// fetched from memory serves them all.
/// </summary>
internal sealed unsafe class BlockedSolve<T, TTile>
    where T : unmanaged, IFloatingPointIeee754<T>
    where TTile : struct, ITile<T>
{
    private const int MostColumns = 96;
    private readonly PlanarStorage<T> _lu;
    private readonly int[] _pivots;
    private readonly PlanarStorage<T> _x;
    private readonly int _width;
    private readonly int _column;
    private readonly int _columns;
    private readonly int _groups;
    private readonly BlockedLu<T, TTile>.Workbench _bench;

    private BlockedSolve(PlanarStorage<T> lu, int[] pivots, int width, PlanarStorage<T> x, int column, int columns)
    {
        _lu = lu;
        _pivots = pivots;
        _width = width;
        _x = x;
        _column = column;
        _columns = columns;
        _groups = (columns + ITile<T>.Columns - 1) / ITile<T>.Columns;
        _bench = new(width, columns);
    }

    /// <summary>Replaces the columns of <paramref name="x"/> by the solutions.</summary>
    public static void Run(PlanarStorage<T> lu, int[] pivots, int width, PlanarStorage<T> x, int threads)
    {
        // Whole groups of six columns, so that no two workers share a tile.
        var share = (x.Columns + (threads * ITile<T>.Columns) - 1) / (threads * ITile<T>.Columns) * ITile<T>.Columns;
        var chunk = Math.Min(MostColumns, share);
        Workers.For((x.Columns + chunk - 1) / chunk, threads, c =>
            new BlockedSolve<T, TTile>(lu, pivots, width, x, c * chunk, Math.Min(chunk, x.Columns - (c * chunk))).Run());
    }

    private void Run()
    {
        var n = _lu.Rows;
        var end = PlanarStorage<T>.PaddedRows(n);
        for (var start = 0; start < n; start += _width)
        {
            var stop = Math.Min(n, start + _width);
            for (var c = _column; c < _column + _columns; c++)
            {
                var re = Re(_x, c);
                var im = Im(_x, c);
                PanelFactor<T, TTile>.Swap(re, im, _pivots, start, stop);
                for (var p = start; p < stop - 1; p++)
                    PlanarOps<T>.SubtractScaled(Re(_lu, p), Im(_lu, p), re[p], im[p], re, im, p + 1, stop);
            }

            if (stop < n)
                SubtractProduct(start, stop, stop, end);
        }

        for (var start = (n - 1) / _width * _width; start >= 0; start -= _width)
        {
            var stop = Math.Min(n, start + _width);
            for (var p = stop - 1; p >= start; p--)
            {
                var (rr, ri) = PlanarLu<T>.Reciprocal(Re(_lu, p)[p], Im(_lu, p)[p]);
                for (var c = _column; c < _column + _columns; c++)
                {
                    var re = Re(_x, c);
                    var im = Im(_x, c);
                    (re[p], im[p]) = ((re[p] * rr) - (im[p] * ri), (re[p] * ri) + (im[p] * rr));
                    PlanarOps<T>.SubtractScaled(Re(_lu, p), Im(_lu, p), re[p], im[p], re, im, start, p);
                }
            }

            SubtractProduct(start, stop, 0, start);
        }

        GC.KeepAlive(this);
    }

    /// <summary>Takes the solved rows <paramref name="start"/> to <paramref name="stop"/> out of the rows between <paramref name="from"/> and <paramref name="to"/>.</summary>
    private void SubtractProduct(int start, int stop, int from, int to)
    {
        var depth = stop - start;
        for (var g = 0; g < _groups; g++)
        {
            var c = _column + (g * ITile<T>.Columns);
            TilePacking<T>.PackB(Re(_x, c) + start, Im(_x, c) + start, _x.Ld, depth, Group(g));
        }

        var m = TTile.Rows;
        for (var row = from; row < to; row += m)
        {
            TilePacking<T>.PackA(Re(_lu, start) + row, Im(_lu, start) + row, _lu.Ld, depth, m, _bench.A);
            for (var g = 0; g < _groups; g++)
            {
                var c = _column + (g * ITile<T>.Columns);
                TTile.Subtract(depth, _bench.A, 2 * m, m, Group(g), Re(_x, c) + row, Im(_x, c) + row, _x.Ld);
            }
        }
    }

    private static T* Re(PlanarStorage<T> a, int column) => a.Re + ((long)column * a.Ld);

    private static T* Im(PlanarStorage<T> a, int column) => a.Im + ((long)column * a.Ld);

    private T* Group(int g) => _bench.B + ((long)g * 12 * _width);
}
