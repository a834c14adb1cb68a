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
