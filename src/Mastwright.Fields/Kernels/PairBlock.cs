using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels;

/// <summary>A straight filament of finite radius: the geometry of a segment or of its image.</summary>
internal readonly record struct Filament(Vec3 Start, Vec3 Tangent, double LengthM, double RadiusM)
{
    public Vec3 Centre => Start + (0.5 * LengthM * Tangent);

    public Vec3 PointAt(double alongM) => Start + (alongM * Tangent);

    /// <summary>The filament along a segment's axis.</summary>
    public static Filament Of(in Segment segment) => new(segment.Start, segment.Tangent, segment.LengthM, segment.RadiusM);

    /// <summary>Shortest distance from a point to the axis, metres.</summary>
    public double DistanceM(Vec3 point) => (point - PointAt(Math.Clamp((point - Start).Dot(Tangent), 0, LengthM))).Length;

    /// <summary>The mirror picture in the plane z = 0.</summary>
    public Filament Mirrored => new(new(Start.X, Start.Y, -Start.Z), new(Tangent.X, Tangent.Y, -Tangent.Z), LengthM, RadiusM);

    /// <summary>The same filament run through from its other end.</summary>
    public Filament Reversed => new(PointAt(LengthM), -Tangent, LengthM, RadiusM);
}

/// <summary>
/// The four double integrals ∫∫ Nₐ(s) N_b(s′) G(s, s′) ds ds′ of two filaments, N₀ falling and N₁ rising linearly from 0 to 1
/// along the filament, G = exp(−jkR)/R. Unit: metres.
/// </summary>
internal struct PairBlock
{
    public Complex M00;
    public Complex M01;
    public Complex M10;
    public Complex M11;

    /// <summary>∫∫ G ds ds′, since N₀ + N₁ = 1.</summary>
    public readonly Complex Total => M00 + M01 + M10 + M11;

    /// <summary>The block with first and second filament exchanged.</summary>
    public readonly PairBlock Transposed => new() { M00 = M00, M01 = M10, M10 = M01, M11 = M11 };

    /// <summary>The block after the second filament was run through from its other end.</summary>
    public readonly PairBlock WithSecondReversed => new() { M00 = M01, M01 = M00, M10 = M11, M11 = M10 };

    /// <summary>The block after the first filament was run through from its other end.</summary>
    public readonly PairBlock WithFirstReversed => new() { M00 = M10, M01 = M11, M10 = M00, M11 = M01 };

    /// <summary>Adds another block.</summary>
    public void Add(in PairBlock other)
    {
        M00 += other.M00;
        M01 += other.M01;
        M10 += other.M10;
        M11 += other.M11;
    }

    /// <summary>Takes another block away.</summary>
    public void Subtract(in PairBlock other)
    {
        M00 -= other.M00;
        M01 -= other.M01;
        M10 -= other.M10;
        M11 -= other.M11;
    }

    /// <summary>Adds the kernel at one pair of points, x and y being their fractions along the two filaments.</summary>
    public void Add(double x, double y, Complex weightedKernel)
    {
        M00 += (1 - x) * (1 - y) * weightedKernel;
        M01 += (1 - x) * y * weightedKernel;
        M10 += x * (1 - y) * weightedKernel;
        M11 += x * y * weightedKernel;
    }
}
