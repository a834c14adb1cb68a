using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace Mastwright.Numerics.Dense.Kernels;

/// <summary>A tile of one 256-bit vector by six columns: 12 of the 16 registers hold sums.</summary>
internal readonly unsafe struct Tile256<T> : ITile<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    public static int Rows => Vector256<T>.Count;

    public static bool IsSupported => Fma.IsSupported;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Subtract(int depth, T* a, nint aStep, nint aIm, T* b, T* cRe, T* cIm, nint ldc)
    {
        for (var j = 0; j < 6; j++)
        {
            Sse.Prefetch0(cRe + (j * ldc));
            Sse.Prefetch0(cIm + (j * ldc));
        }

        var re0 = Vector256<T>.Zero;
        var re1 = Vector256<T>.Zero;
        var re2 = Vector256<T>.Zero;
        var re3 = Vector256<T>.Zero;
        var re4 = Vector256<T>.Zero;
        var re5 = Vector256<T>.Zero;
        var im0 = Vector256<T>.Zero;
        var im1 = Vector256<T>.Zero;
        var im2 = Vector256<T>.Zero;
        var im3 = Vector256<T>.Zero;
        var im4 = Vector256<T>.Zero;
        var im5 = Vector256<T>.Zero;
        for (var k = 0; k < depth; k++)
        {
            var ar = Vector256.Load(a);
            var ai = Vector256.Load(a + aIm);
            var br = Vector256.Create(b[0]);
            re0 = Add(ar, br, re0);
            im0 = Add(ai, br, im0);
            var bi = Vector256.Create(b[6]);
            re0 = Less(ai, bi, re0);
            im0 = Add(ar, bi, im0);
            br = Vector256.Create(b[1]);
            re1 = Add(ar, br, re1);
            im1 = Add(ai, br, im1);
            bi = Vector256.Create(b[7]);
            re1 = Less(ai, bi, re1);
            im1 = Add(ar, bi, im1);
            br = Vector256.Create(b[2]);
            re2 = Add(ar, br, re2);
            im2 = Add(ai, br, im2);
            bi = Vector256.Create(b[8]);
            re2 = Less(ai, bi, re2);
            im2 = Add(ar, bi, im2);
            br = Vector256.Create(b[3]);
            re3 = Add(ar, br, re3);
            im3 = Add(ai, br, im3);
            bi = Vector256.Create(b[9]);
            re3 = Less(ai, bi, re3);
            im3 = Add(ar, bi, im3);
            br = Vector256.Create(b[4]);
            re4 = Add(ar, br, re4);
            im4 = Add(ai, br, im4);
            bi = Vector256.Create(b[10]);
            re4 = Less(ai, bi, re4);
            im4 = Add(ar, bi, im4);
            br = Vector256.Create(b[5]);
            re5 = Add(ar, br, re5);
            im5 = Add(ai, br, im5);
            bi = Vector256.Create(b[11]);
            re5 = Less(ai, bi, re5);
            im5 = Add(ar, bi, im5);
            a += aStep;
            b += 12;
        }

        Store(cRe, re0);
        Store(cIm, im0);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re1);
        Store(cIm, im1);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re2);
        Store(cIm, im2);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re3);
        Store(cIm, im3);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re4);
        Store(cIm, im4);
        cRe += ldc;
        cIm += ldc;
        Store(cRe, re5);
        Store(cIm, im5);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Store(T* c, Vector256<T> product) => (Vector256.Load(c) - product).Store(c);

    /// <summary>c + a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<T> Add(Vector256<T> a, Vector256<T> b, Vector256<T> c) => typeof(T) == typeof(double)
        ? Fma.MultiplyAdd(a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Fma.MultiplyAdd(a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();

    /// <summary>c - a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<T> Less(Vector256<T> a, Vector256<T> b, Vector256<T> c) => typeof(T) == typeof(double)
        ? Fma.MultiplyAddNegated(a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Fma.MultiplyAddNegated(a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();
}
