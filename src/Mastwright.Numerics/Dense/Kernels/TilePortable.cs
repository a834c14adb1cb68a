using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Numerics.Dense.Kernels;

/// <summary>A tile of one 128-bit vector by six columns, for any machine; fused multiply-add where the machine has it.</summary>
internal readonly unsafe struct TilePortable<T> : ITile<T>
    where T : unmanaged, IFloatingPointIeee754<T>
{
    public static int Rows => Vector128<T>.Count;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Subtract(int depth, T* a, nint aStep, nint aIm, T* b, T* cRe, T* cIm, nint ldc)
    {
        var re0 = Vector128<T>.Zero;
        var re1 = Vector128<T>.Zero;
        var re2 = Vector128<T>.Zero;
        var re3 = Vector128<T>.Zero;
        var re4 = Vector128<T>.Zero;
        var re5 = Vector128<T>.Zero;
        var im0 = Vector128<T>.Zero;
        var im1 = Vector128<T>.Zero;
        var im2 = Vector128<T>.Zero;
        var im3 = Vector128<T>.Zero;
        var im4 = Vector128<T>.Zero;
        var im5 = Vector128<T>.Zero;
        for (var k = 0; k < depth; k++)
        {
            var ar = Vector128.Load(a);
            var ai = Vector128.Load(a + aIm);
            var br = Vector128.Create(b[0]);
            re0 = Add(ar, br, re0);
            im0 = Add(ai, br, im0);
            var bi = Vector128.Create(b[6]);
            re0 = Less(ai, bi, re0);
            im0 = Add(ar, bi, im0);
            br = Vector128.Create(b[1]);
            re1 = Add(ar, br, re1);
            im1 = Add(ai, br, im1);
            bi = Vector128.Create(b[7]);
            re1 = Less(ai, bi, re1);
            im1 = Add(ar, bi, im1);
            br = Vector128.Create(b[2]);
            re2 = Add(ar, br, re2);
            im2 = Add(ai, br, im2);
            bi = Vector128.Create(b[8]);
            re2 = Less(ai, bi, re2);
            im2 = Add(ar, bi, im2);
            br = Vector128.Create(b[3]);
            re3 = Add(ar, br, re3);
            im3 = Add(ai, br, im3);
            bi = Vector128.Create(b[9]);
            re3 = Less(ai, bi, re3);
            im3 = Add(ar, bi, im3);
            br = Vector128.Create(b[4]);
            re4 = Add(ar, br, re4);
            im4 = Add(ai, br, im4);
            bi = Vector128.Create(b[10]);
            re4 = Less(ai, bi, re4);
            im4 = Add(ar, bi, im4);
            br = Vector128.Create(b[5]);
            re5 = Add(ar, br, re5);
            im5 = Add(ai, br, im5);
            bi = Vector128.Create(b[11]);
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
    private static void Store(T* c, Vector128<T> product) => (Vector128.Load(c) - product).Store(c);

    /// <summary>c + a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<T> Add(Vector128<T> a, Vector128<T> b, Vector128<T> c) => typeof(T) == typeof(double)
        ? Vector128.MultiplyAddEstimate(a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Vector128.MultiplyAddEstimate(a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();

    /// <summary>c - a b.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<T> Less(Vector128<T> a, Vector128<T> b, Vector128<T> c) => typeof(T) == typeof(double)
        ? Vector128.MultiplyAddEstimate(-a.AsDouble(), b.AsDouble(), c.AsDouble()).As<double, T>()
        : Vector128.MultiplyAddEstimate(-a.AsSingle(), b.AsSingle(), c.AsSingle()).As<float, T>();
}
