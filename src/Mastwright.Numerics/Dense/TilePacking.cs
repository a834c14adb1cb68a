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
        for (var c = 0; c < ITile<T>.Columns; c++)
        {
            for (var k = 0; k < depth; k++)
            {
                to[(12 * k) + c] = re[k];
                to[(12 * k) + 6 + c] = im[k];
            }

            re += ld;
            im += ld;
        }
    }
}
