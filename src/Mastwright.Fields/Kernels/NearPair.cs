using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels;

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
