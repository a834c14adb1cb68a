using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Mastwright.Numerics.Dense.Kernels;

/// <summary>
/// A tile of two 512-bit vectors by six columns: 24 of the 32 registers hold sums, 4 hold A and 2 hold B, so that both
/// multiply-add units stay busy from registers and cache alone.
/// </summary>
internal readonly unsafe struct Tile512<T> : ITile<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    public static int Rows => 2 * Vector512<T>.Count;

    public static bool IsSupported => Avx512F.IsSupported;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Subtract(int depth, T* a, nint aStep, nint aIm, T* b, T* cRe, T* cIm, nint ldc)
    {
        for (var j = 0; j < 6; j++)
        {
            Sse.Prefetch0(cRe + (j * ldc));
            Sse.Prefetch0(cIm + (j * ldc));
            Sse.Prefetch0(cRe + (j * ldc) + Vector512<T>.Count);
            Sse.Prefetch0(cIm + (j * ldc) + Vector512<T>.Count);
        }

        var re0a = Vector512<T>.Zero;
        var re1a = Vector512<T>.Zero;
        var re2a = Vector512<T>.Zero;
        var re3a = Vector512<T>.Zero;
        var re4a = Vector512<T>.Zero;
        var re5a = Vector512<T>.Zero;
        var re0b = Vector512<T>.Zero;
        var re1b = Vector512<T>.Zero;
        var re2b = Vector512<T>.Zero;
        var re3b = Vector512<T>.Zero;
        var re4b = Vector512<T>.Zero;
        var re5b = Vector512<T>.Zero;
        var im0a = Vector512<T>.Zero;
        var im1a = Vector512<T>.Zero;
        var im2a = Vector512<T>.Zero;
        var im3a = Vector512<T>.Zero;
        var im4a = Vector512<T>.Zero;
        var im5a = Vector512<T>.Zero;
        var im0b = Vector512<T>.Zero;
        var im1b = Vector512<T>.Zero;
        var im2b = Vector512<T>.Zero;
        var im3b = Vector512<T>.Zero;
        var im4b = Vector512<T>.Zero;
        var im5b = Vector512<T>.Zero;
        for (var k = 0; k < depth; k++)
        {
            var ara = Vector512.Load(a);
            var aia = Vector512.Load(a + aIm);
            var arb = Vector512.Load(a + Vector512<T>.Count);
            var aib = Vector512.Load(a + aIm + Vector512<T>.Count);
            var br = Vector512.Create(b[0]);
            re0a = Add(ara, br, re0a);
            im0a = Add(aia, br, im0a);
            re0b = Add(arb, br, re0b);
            im0b = Add(aib, br, im0b);
            var bi = Vector512.Create(b[6]);
            re0a = Less(aia, bi, re0a);
            im0a = Add(ara, bi, im0a);
            re0b = Less(aib, bi, re0b);
            im0b = Add(arb, bi, im0b);
            br = Vector512.Create(b[1]);
            re1a = Add(ara, br, re1a);
            im1a = Add(aia, br, im1a);
            re1b = Add(arb, br, re1b);
            im1b = Add(aib, br, im1b);
            bi = Vector512.Create(b[7]);
            re1a = Less(aia, bi, re1a);
            im1a = Add(ara, bi, im1a);
            re1b = Less(aib, bi, re1b);
            im1b = Add(arb, bi, im1b);
            br = Vector512.Create(b[2]);
            re2a = Add(ara, br, re2a);
            im2a = Add(aia, br, im2a);
            re2b = Add(arb, br, re2b);
            im2b = Add(aib, br, im2b);
            bi = Vector512.Create(b[8]);
            re2a = Less(aia, bi, re2a);
            im2a = Add(ara, bi, im2a);
            re2b = Less(aib, bi, re2b);
            im2b = Add(arb, bi, im2b);
            br = Vector512.Create(b[3]);
            re3a = Add(ara, br, re3a);
            im3a = Add(aia, br, im3a);
            re3b = Add(arb, br, re3b);
            im3b = Add(aib, br, im3b);
            bi = Vector512.Create(b[9]);
            re3a = Less(aia, bi, re3a);
            im3a = Add(ara, bi, im3a);
            re3b = Less(aib, bi, re3b);
            im3b = Add(arb, bi, im3b);
            br = Vector512.Create(b[4]);
            re4a = Add(ara, br, re4a);
            im4a = Add(aia, br, im4a);
            re4b = Add(arb, br, re4b);
            im4b = Add(aib, br, im4b);
            bi = Vector512.Create(b[10]);
            re4a = Less(aia, bi, re4a);
            im4a = Add(ara, bi, im4a);
            re4b = Less(aib, bi, re4b);
            im4b = Add(arb, bi, im4b);
            br = Vector512.Create(b[5]);
            re5a = Add(ara, br, re5a);
            im5a = Add(aia, br, im5a);
            re5b = Add(arb, br, re5b);
            im5b = Add(aib, br, im5b);
            bi = Vector512.Create(b[11]);
            re5a = Less(aia, bi, re5a);
            im5a = Add(ara, bi, im5a);
            re5b = Less(aib, bi, re5b);
            im5b = Add(arb, bi, im5b);
            a += aStep;
            b += 12;
        }

        Store(cRe, re0a);
        Store(cRe + Vector512<T>.Count, re0b);
        Store(cIm, im0a);
        Store(cIm + Vector512<T>.Count, im0b);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re1a);
        Store(cRe + Vector512<T>.Count, re1b);
        Store(cIm, im1a);
        Store(cIm + Vector512<T>.Count, im1b);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re2a);
        Store(cRe + Vector512<T>.Count, re2b);
        Store(cIm, im2a);
        Store(cIm + Vector512<T>.Count, im2b);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re3a);
        Store(cRe + Vector512<T>.Count, re3b);
        Store(cIm, im3a);
        Store(cIm + Vector512<T>.Count, im3b);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re4a);
        Store(cRe + Vector512<T>.Count, re4b);
        Store(cIm, im4a);
        Store(cIm + Vector512<T>.Count, im4b);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re5a);
        Store(cRe + Vector512<T>.Count, re5b);
        Store(cIm, im5a);
        Store(cIm + Vector512<T>.Count, im5b);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(T* c, Vector512<T> product) => (Vector512.Load(c) - product).Store(c);

    /// <summary>c + a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<T> Add(Vector512<T> a, Vector512<T> b, Vector512<T> c) => typeof(T) == typeof(double)
        ? Avx512F.FusedMultiplyAdd(a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Avx512F.FusedMultiplyAdd(a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();

    /// <summary>c - a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<T> Less(Vector512<T> a, Vector512<T> b, Vector512<T> c) => typeof(T) == typeof(double)
        ? Avx512F.FusedMultiplyAddNegated(a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Avx512F.FusedMultiplyAddNegated(a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();
}
