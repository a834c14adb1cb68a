using System.Numerics;
using System.Runtime.CompilerServices;

namespace Mastwright.Fields.Kernels;

/// <summary>
/// Two segments on one axis, the same one included. The kernel depends on the axial distance u only, so the double integral is the
/// single one ∫ K(u) W(u) du with the piecewise cubic overlap W(u) = ∫ Nₐ(s) N_b(s + u) ds. The logarithmic singularity at
/// u = 0 and the change of character at u ≈ a are met with geometrically growing panels.
/// </summary>
internal static class CoaxialPair
{
    private const int PanelPoints = 7;
    private const double PanelGrowth = 3.5;

    public static PairBlock Compute(in Filament p, in Filament q, Complex k)
    {
        if (p.Tangent.Dot(q.Tangent) < 0)
            return Compute(p, q.Reversed, k).WithSecondReversed;
        var kernel = new TubularKernel(p.RadiusM, q.RadiusM, k);
        var offset = (q.Start - p.Start).Dot(p.Tangent);
        Span<double> breaks = [offset - p.LengthM, Math.Min(offset, offset + q.LengthM - p.LengthM), Math.Max(offset, offset + q.LengthM - p.LengthM), offset + q.LengthM];
        var block = default(PairBlock);
        for (var i = 0; i < 3; i++)
        {
            double from = breaks[i], to = breaks[i + 1];
            var negligible = 1e-12 * (p.LengthM + q.LengthM);
            if (to - from < negligible)
                continue;
            if (from < -negligible && to > negligible)
            {
                Graded(ref block, p, q, kernel, offset, 0, to, 1);
                Graded(ref block, p, q, kernel, offset, 0, -from, -1);
            }
            else if (to <= negligible)
                Graded(ref block, p, q, kernel, offset, Math.Max(0, -to), -from, -1);
            else
                Graded(ref block, p, q, kernel, offset, Math.Max(0, from), to, 1);
        }

        return block;
    }

    // Panels from |u| = near to |u| = far, fine towards zero.
    private static void Graded(ref PairBlock block, in Filament p, in Filament q, in TubularKernel kernel, double offset, double near, double far, int sign)
    {
        var scale = kernel.Scale;
        if (near < 0.02 * scale)
        {
            var first = Math.Min(far, 0.1 * scale);
            Panel(ref block, p, q, kernel, offset, near, first, sign, true);
            near = first;
        }

        while (near < far * (1 - 1e-12))
        {
            var next = Math.Min(far, near < 0.5 * scale ? 5 * near : PanelGrowth * Math.Max(near, 0.5 * scale));
            if (next > 0.75 * far)
                next = far;
            Panel(ref block, p, q, kernel, offset, near, next, sign, false);
            near = next;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Panel(ref PairBlock block, in Filament p, in Filament q, in TubularKernel kernel, double offset, double from, double to, int sign, bool logarithmic)
    {
        var rule = GaussRule.Of(PanelPoints);
        for (var i = 0; i < PanelPoints; i++)
        {
            double t = rule.Nodes[i], w = rule.Weights[i];
            double u, jacobian;
            if (logarithmic)
                (u, jacobian) = (from + ((to - from) * t * t * t), 3 * t * t * (to - from));
            else
                (u, jacobian) = (from + ((to - from) * t), to - from);
            AddOverlap(ref block, p, q, offset, sign * u, w * jacobian * kernel.At(u * u));
        }
    }

    // W(u) for the four products of shape functions; the products are quadratic in s, so two Gauss points are exact.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void AddOverlap(ref PairBlock block, in Filament p, in Filament q, double offset, double u, Complex weightedKernel)
    {
        var low = Math.Max(0, offset - u);
        var high = Math.Min(p.LengthM, offset + q.LengthM - u);
        var length = high - low;
        if (length <= 0)
            return;
        const double half = 0.28867513459481287;
        for (var g = -1; g <= 1; g += 2)
        {
            var s = low + ((0.5 + (g * half)) * length);
            block.Add(s / p.LengthM, (s + u - offset) / q.LengthM, 0.5 * length * weightedKernel);
        }
    }
}
