using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Fields.Meshing;

namespace Mastwright.Fields.Kernels;

/// <summary>
/// Two segments that share an end and leave it at an angle. The kernel is the tubular one with the axial distance replaced by the
/// distance between the two axis points, which tends to the exact coaxial kernel as the bend straightens. The corner is taken out
/// by the substitution s′ = s·v in one half of the square and s = s′·v in the other, whose Jacobian cancels 1/R.
/// </summary>
internal static class JoinedPair
{
    private const int AlongPoints = 8;
    private const int AcrossPoints = 8;

    public static PairBlock Compute(in Filament p, in Filament q, Complex k)
    {
        const double tolerance = 4 * JointGraph.ToleranceM;
        if ((p.Start - q.Start).Length < tolerance)
            return FromCorner(p, q, k);
        if ((p.Start - q.PointAt(q.LengthM)).Length < tolerance)
            return FromCorner(p, q.Reversed, k).WithSecondReversed;
        if ((p.PointAt(p.LengthM) - q.Start).Length < tolerance)
            return FromCorner(p.Reversed, q, k).WithFirstReversed;
        return (p.PointAt(p.LengthM) - q.PointAt(q.LengthM)).Length < tolerance
            ? FromCorner(p.Reversed, q.Reversed, k).WithFirstReversed.WithSecondReversed

            // An end that touches the other's flank cannot occur after cutting, except through the plane of symmetry.
            : NearPair.Compute(p, q, k, JointGraph.ToleranceM);
    }

    private static PairBlock FromCorner(in Filament p, in Filament q, Complex k)
    {
        var kernel = new TubularKernel(p.RadiusM, q.RadiusM, k);
        var cosine = p.Tangent.Dot(q.Tangent);
        var block = default(PairBlock);
        Half(ref block, p.LengthM, q.LengthM, cosine, kernel, firstIsLonger: true);
        Half(ref block, q.LengthM, p.LengthM, cosine, kernel, firstIsLonger: false);
        return block;
    }

    // One half of the rectangle: the leading fraction x runs 0..1, the other is x·v. Distances use the true lengths.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Half(ref PairBlock block, double leadM, double otherM, double cosine, in TubularKernel kernel, bool firstIsLonger)
    {
        GaussRule along = GaussRule.Of(AlongPoints), across = GaussRule.Of(AcrossPoints);

        // R/x as a function of v has its minimum at v0; for sharp angles the panels are split and graded there.
        var v0 = Math.Clamp(cosine * leadM / otherM, 0, 1);
        var width = Math.Max(0.02, Math.Sqrt(Math.Max(0, 1 - (cosine * cosine))) * leadM / otherM);
        Span<double> edges = stackalloc double[16];
        var count = Edges(edges, v0, width, cosine > 0.3);
        for (var e = 0; e + 1 < count; e++)
        {
            for (var j = 0; j < AcrossPoints; j++)
            {
                var v = edges[e] + ((edges[e + 1] - edges[e]) * across.Nodes[j]);
                var wv = (edges[e + 1] - edges[e]) * across.Weights[j];
                var shape = (leadM * leadM) + (otherM * otherM * v * v) - (2 * leadM * otherM * v * cosine);
                for (var i = 0; i < AlongPoints; i++)
                {
                    var t = along.Nodes[i];
                    var x = t * t;
                    var weight = 2 * t * along.Weights[i] * wv * x * leadM * otherM;
                    var value = weight * kernel.At(x * x * shape);
                    if (firstIsLonger)
                        block.Add(x, x * v, value);
                    else
                        block.Add(x * v, x, value);
                }
            }
        }
    }

    private static int Edges(Span<double> edges, double v0, double width, bool sharp)
    {
        var count = 0;
        edges[count++] = 0;
        if (sharp)
        {
            for (var d = 4 * width; d >= width * 0.9; d *= 0.5)
                if (v0 - d > 0.02)
                    edges[count++] = v0 - d;
            if (v0 > edges[count - 1] + 0.02 && v0 < 0.98)
                edges[count++] = v0;
            for (var d = width; d <= width * 4.1; d *= 2)
                if (v0 + d < 0.98 && v0 + d > edges[count - 1])
                    edges[count++] = v0 + d;
        }

        edges[count++] = 1;
        return count;
    }
}
