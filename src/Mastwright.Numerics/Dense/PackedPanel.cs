using System.Numerics;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>
/// A factored panel copied into the order the tiles read it. Row tile t holds for each step of depth the real parts of
/// its rows, then their imaginary parts. In the square part at the top, row tile t holds the columns of L to its left
/// and then minus the inverse of its own small unit triangle, so that the triangular solve is made of tiles as well
/// (J. J. Du Croz and N. J. Higham, "Stability of methods for matrix inversion", IMA J. Numer. Anal. 12 (1992) 1-19).
/// </summary>
internal sealed unsafe class PackedPanel<T, TTile>
    where T : unmanaged, IFloatingPointIeee754<T>
    where TTile : struct, ITile<T>
{
    private readonly AlignedBuffer<T> _memory;
    private readonly int _width;
    private readonly long _tile;

    /// <summary>Room for a panel of the given width (a multiple of the tile's rows) in a matrix of that many padded rows.</summary>
    public PackedPanel(int width, int paddedRows)
    {
        _width = width;
        _tile = 2L * TTile.Rows * width;
        _memory = new(_tile * (paddedRows / TTile.Rows));
    }

    /// <summary>Row tile t of the panel, counted from its first row.</summary>
    public T* Tile(int t) => _memory.Start + (t * _tile);

    /// <summary>Copies the panel that starts at row and column <paramref name="start"/>.</summary>
    public void Pack(PlanarStorage<T> a, int start)
    {
        var re = a.Re + ((long)start * a.Ld) + start;
        var im = a.Im + ((long)start * a.Ld) + start;
        var tiles = (PlanarStorage<T>.PaddedRows(a.Rows) - start) / TTile.Rows;
        var square = _width / TTile.Rows;
        for (var t = 0; t < tiles; t++)
        {
            var rows = t * TTile.Rows;
            TilePacking<T>.PackA(re + rows, im + rows, a.Ld, t < square ? rows : _width, TTile.Rows, Tile(t));
            if (t < square)
                MinusInverse(re + ((long)rows * a.Ld) + rows, im + ((long)rows * a.Ld) + rows, a.Ld, Tile(t) + (2L * TTile.Rows * rows));
        }
    }

    // Column c of the inverse of a unit lower triangle, by forward substitution, sign turned.
    private static void MinusInverse(T* lRe, T* lIm, int ld, T* to)
    {
        var m = TTile.Rows;
        for (var c = 0; c < m; c++)
        {
            var xr = to + (2 * m * c);
            var xi = xr + m;
            new Span<T>(xr, 2 * m).Clear();
            xr[c] = T.NegativeOne;
            for (var p = c; p < m; p++)
            {
                var (sr, si) = (xr[p], xi[p]);
                for (var i = p + 1; i < m; i++)
                {
                    var at = ((long)p * ld) + i;
                    xr[i] -= (lRe[at] * sr) - (lIm[at] * si);
                    xi[i] -= (lRe[at] * si) + (lIm[at] * sr);
                }
            }
        }
    }
}
