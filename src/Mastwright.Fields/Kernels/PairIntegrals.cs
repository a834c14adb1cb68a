using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Fields.Meshing;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels;

/// <summary>
/// Galerkin integrals of two filaments in free space. The method follows from how the two lie: on one axis (exact tubular kernel,
/// reduced to one dimension), joined at an angle (corner transformation), near each other (static part analytic), or far (Gauss
/// rule with the second-order correction for both radii).
/// </summary>
internal static class PairIntegrals
{
    /// <summary>Pairs whose gap exceeds this share of the longer one may use the plain product rule.</summary>
    private const double FarGap = 0.7;

    /// <summary>Pairs on one axis closer than this many summed radii use the exact tubular kernel.</summary>
    private const double TubularReach = 6;

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static PairBlock Compute(in Filament p, in Filament q, Complex k)
    {
        var between = q.Centre - p.Centre;
        var gapM = between.Length - (0.5 * (p.LengthM + q.LengthM));
        var longerM = Math.Max(p.LengthM, q.LengthM);
        var radii = p.RadiusM + q.RadiusM;
        if (gapM > FarGap * longerM && gapM > TubularReach * radii)
            return FarPair.Compute(p, q, k, gapM);
        gapM = JointGraph.ClosestOf(p.Start, p.LengthM * p.Tangent, q.Start, q.LengthM * q.Tangent).DistanceM;
        var cosine = p.Tangent.Dot(q.Tangent);
        if (Math.Abs(cosine) > 1 - 1e-10 && OffAxisM(p, between) < 1e-7 * longerM)
        {
            return gapM > FarGap * longerM && gapM > TubularReach * radii
                ? FarPair.Compute(p, q, k, gapM)
                : CoaxialPair.Compute(p, q, k);
        }

        if (gapM > FarGap * longerM)
            return FarPair.Compute(p, q, k, gapM);
        return gapM < 2 * JointGraph.ToleranceM ? JoinedPair.Compute(p, q, k) : NearPair.Compute(p, q, k, gapM);
    }

    private static double OffAxisM(in Filament p, Vec3 between) => between.Cross(p.Tangent).Length;
}

/// <summary>Product Gauss rule for filaments well apart.</summary>
internal static class FarPair
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static PairBlock Compute(in Filament p, in Filament q, Complex k, double gapM)
    {
        double size = k.Magnitude, beta = k.Real, alpha = -k.Imaginary;
        var ruleP = GaussRule.Of(Order(gapM / p.LengthM, size * p.LengthM));
        var ruleQ = GaussRule.Of(Order(gapM / q.LengthM, size * q.LengthM));
        double aa = 0.25 * p.RadiusM * p.RadiusM, bb = 0.25 * q.RadiusM * q.RadiusM;
        var radii = p.RadiusM + q.RadiusM;
        var corrected = gapM < 40 * radii;
        double m00R = 0, m00I = 0, m01R = 0, m01I = 0, m10R = 0, m10I = 0, m11R = 0, m11I = 0;
        for (var i = 0; i < ruleP.Nodes.Length; i++)
        {
            var x = ruleP.Nodes[i];
            var from = p.PointAt(x * p.LengthM) - q.Start;
            double s0R = 0, s0I = 0, s1R = 0, s1I = 0;
            for (var j = 0; j < ruleQ.Nodes.Length; j++)
            {
                var y = ruleQ.Nodes[j];
                var d = from - (y * q.LengthM * q.Tangent);
                var r2 = d.Dot(d);
                var r = Math.Sqrt(r2);
                var (sin, cos) = Math.SinCos(beta * r);
                var g = ruleQ.Weights[j] / r;
                if (alpha != 0)
                    g *= Math.Exp(-alpha * r);
                double re = g * cos, im = -g * sin;

                // The radii weaken or strengthen the static field; they touch the radiating part only in the order (ka)².
                if (corrected)
                {
                    double cp = d.Dot(p.Tangent), cq = d.Dot(q.Tangent);
                    re *= 1 + (((aa * (r2 - (3 * cp * cp))) + (bb * (r2 - (3 * cq * cq)))) / (r2 * r2));
                }

                s0R += (1 - y) * re;
                s0I += (1 - y) * im;
                s1R += y * re;
                s1I += y * im;
            }

            double w0 = (1 - x) * ruleP.Weights[i], w1 = x * ruleP.Weights[i];
            m00R += w0 * s0R;
            m00I += w0 * s0I;
            m01R += w0 * s1R;
            m01I += w0 * s1I;
            m10R += w1 * s0R;
            m10I += w1 * s0I;
            m11R += w1 * s1R;
            m11I += w1 * s1I;
        }

        var scale = p.LengthM * q.LengthM;
        return new()
        {
            M00 = new(scale * m00R, scale * m00I),
            M01 = new(scale * m01R, scale * m01I),
            M10 = new(scale * m10R, scale * m10I),
            M11 = new(scale * m11R, scale * m11I),
        };
    }

    private static int Order(double gapOverLength, double phase)
    {
        var order = gapOverLength > 10 ? 2 : gapOverLength > 4 ? 3 : gapOverLength > 1.5 ? 4 : 6;
        return phase > 1 ? order + 1 : phase > 0.35 ? Math.Max(order, 3) : order;
    }
}

/// <summary>Filaments close to each other but neither joined nor on one axis: the static inner integral is analytic.</summary>
internal static class NearPair
{
    private const int OuterPoints = 6;
    private const int InnerPoints = 5;

    public static PairBlock Compute(in Filament p, in Filament q, Complex k, double gapM) =>
        p.LengthM > q.LengthM ? OuterFirst(q, p, k, gapM).Transposed : OuterFirst(p, q, k, gapM);

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static PairBlock OuterFirst(in Filament outer, in Filament inner, Complex k, double gapM)
    {
        var block = default(PairBlock);
        var panels = Math.Clamp((int)Math.Ceiling(outer.LengthM / (1.5 * gapM)), 1, 24);
        GaussRule ruleOut = GaussRule.Of(OuterPoints), ruleIn = GaussRule.Of(InnerPoints);
        for (var panel = 0; panel < panels; panel++)
        {
            for (var i = 0; i < OuterPoints; i++)
            {
                var x = (panel + ruleOut.Nodes[i]) / panels;
                var w = ruleOut.Weights[i] * outer.LengthM / panels;
                var from = outer.PointAt(x * outer.LengthM) - inner.Start;
                var (zero, one) = Statics(from, inner);
                Complex m0 = zero - (one / inner.LengthM), m1 = one / inner.LengthM;
                for (var j = 0; j < InnerPoints; j++)
                {
                    var y = ruleIn.Nodes[j];
                    var r = (from - (y * inner.LengthM * inner.Tangent)).Length;
                    var smooth = ruleIn.Weights[j] * inner.LengthM * TubularKernel.SmoothPart(k, r);
                    m0 += (1 - y) * smooth;
                    m1 += y * smooth;
                }

                block.M00 += w * (1 - x) * m0;
                block.M01 += w * (1 - x) * m1;
                block.M10 += w * x * m0;
                block.M11 += w * x * m1;
            }
        }

        return block;
    }

    /// <summary>∫ du/R and ∫ u du/R along the filament, the point given relative to its start.</summary>
    internal static (double Zero, double One) Statics(Vec3 from, in Filament inner)
    {
        var u0 = from.Dot(inner.Tangent);
        var rho2 = Math.Max(0, from.Dot(from) - (u0 * u0));
        double left = u0, right = inner.LengthM - u0;
        double r1 = Math.Sqrt((left * left) + rho2), r2 = Math.Sqrt((right * right) + rho2);
        var zero = left < 0 ? Math.Log((right + r2) / (r1 - left))
            : right < 0 ? Math.Log((left + r1) / (r2 - right))
            : Math.Log((right + r2) * (left + r1) / rho2);
        return (zero, r2 - r1 + (u0 * zero));
    }
}
