using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Numerics.Dense.Kernels;

namespace Mastwright.Numerics.Dense;

/// <summary>Copies between planar columns and the order the tiles read.</summary>
internal static unsafe class TilePacking<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    /// <summary>One row tile of A: for each column, <paramref name="rows"/> real parts, then as many imaginary parts.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void PackA(T* re, T* im, int ld, int depth, int rows, T* to)
    {
        var bytes = (uint)(rows * sizeof(T));
        for (var k = 0; k < depth; k++)
        {
            Unsafe.CopyBlockUnaligned(to, re, bytes);
            Unsafe.CopyBlockUnaligned(to + rows, im, bytes);
            to += 2 * rows;
            re += ld;
            im += ld;
        }
    }

    /// <summary>Six columns of B: for each row, six real parts, then six imaginary parts.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void PackB(T* re, T* im, int ld, int depth, T* to)
    {
        Interleave(re, ld, depth, to);
        Interleave(im, ld, depth, to + ITile<T>.Columns);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Interleave(T* column, nint ld, int depth, T* to)
    {
        var c1 = column + ld;
        var c2 = c1 + ld;
        var c3 = c2 + ld;
        var c4 = c3 + ld;
        var c5 = c4 + ld;
        for (var k = 0; k < depth; k++)
        {
            to[0] = column[k];
            to[1] = c1[k];
            to[2] = c2[k];
            to[3] = c3[k];
            to[4] = c4[k];
            to[5] = c5[k];
            to += 2 * ITile<T>.Columns;
        }
    }
}
