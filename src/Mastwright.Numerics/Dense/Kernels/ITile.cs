namespace Mastwright.Numerics.Dense.Kernels;

/// <summary>
/// The one operation everything dense rests on: a small tile of C, held in registers, minus a thin product.
/// Arithmetic is 8 real operations for each row, column and step of depth.
/// </summary>
internal unsafe interface ITile<T>
    where T : unmanaged
{
    /// <summary>Columns of every tile.</summary>
    const int Columns = 6;

    /// <summary>Rows of the tile; divides <see cref="PlanarStorage{T}.RowPad"/>.</summary>
    static abstract int Rows { get; }

    /// <summary>C -= A B, C being Rows x 6, A Rows x depth, B depth x 6.</summary>
    /// <param name="depth">Steps.</param>
    /// <param name="a">Real parts of the first column of A, rows contiguous.</param>
    /// <param name="aStep">Distance from one column of A to the next.</param>
    /// <param name="aIm">Distance from a real part of A to its imaginary part.</param>
    /// <param name="b">B packed by rows: six real parts, then six imaginary parts.</param>
    /// <param name="cRe">Real parts of C, column-major.</param>
    /// <param name="cIm">Imaginary parts of C.</param>
    /// <param name="ldc">Distance from one column of C to the next.</param>
    static abstract void Subtract(int depth, T* a, nint aStep, nint aIm, T* b, T* cRe, T* cIm, nint ldc);
}
