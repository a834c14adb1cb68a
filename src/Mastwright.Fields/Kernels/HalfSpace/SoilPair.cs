using Mastwright.Fields.Meshing;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>
/// The interaction of two segments in presence of the soil, each wholly in the air or wholly in the soil: the direct part and the
/// image by the free-space routines, the remainder by quadrature of the tables.
/// </summary>
internal static class SoilPair
{
    // Nepers after which the wave through the soil itself is forgotten beside the one along the surface.
    private const double Deaf = 10;

    /// <summary>Volts per ampere between end currents; ends 00, 01, 10, 11.</summary>
    public static PairBlock Reaction(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        bool pInAir = p.Centre.Z > 0, qInAir = q.Centre.Z > 0;
        if (pInAir && qInAir)
            return InAir(kernels, p, q);
        return pInAir == qInAir ? InSoil(kernels, p, q) : Across(kernels, p, q);
    }

    private static PairBlock InAir(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        var k = kernels.WaveNumber;
        var sum = new SoilPairSum(kernels, p, q);
        sum.Image(PairIntegrals.Compute(p, q, k), p.Tangent.Dot(q.Tangent), 1);
        var mirrored = q.Mirrored;
        var factor = kernels.Medium.ImageFactor;
        sum.Image(PairIntegrals.Compute(p, mirrored, k), 2 * factor * p.Tangent.Z * q.Tangent.Z, -factor);
        Remainder(ref sum, Region.Air, p, q, mirrored);
        return sum.Result(k);
    }

    private static PairBlock InSoil(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        var k1 = kernels.SoilWaveNumber;
        var n2 = kernels.Medium.IndexSquared;
        var sum = new SoilPairSum(kernels, p, q);
        var mirrored = q.Mirrored;
        var reachM = (p.Centre - q.Centre).Length - (0.5 * (p.LengthM + q.LengthM));
        if (-k1.Imaginary * reachM > Deaf)
        {
            Remainder(ref sum, Region.Soil, p, q, mirrored);
            return sum.Result(kernels.WaveNumber);
        }

        sum.Image(PairIntegrals.Compute(p, q, k1), p.Tangent.Dot(q.Tangent), 1 / n2);
        var factor = kernels.Medium.ImageFactor;
        sum.Image(PairIntegrals.Compute(p, mirrored, k1), -2 * factor * p.Tangent.Z * q.Tangent.Z, factor / n2);
        Remainder(ref sum, Region.Soil, p, q, mirrored);
        return sum.Result(kernels.WaveNumber);
    }

    private static PairBlock Across(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        var sum = new SoilPairSum(kernels, p, q);
        sum.Image(PairIntegrals.Compute(p, q, kernels.WaveNumber), p.Tangent.Dot(q.Tangent), 2 / (kernels.Medium.IndexSquared + 1));
        Remainder(ref sum, Region.Across, p, q, q);
        return sum.Result(kernels.WaveNumber);
    }

    // The remainders vary on the scale of the distance to the image (to the other segment itself, across the interface).
    private static void Remainder(ref SoilPairSum sum, Region region, in Filament p, in Filament q, in Filament image)
    {
        var closest = JointGraph.ClosestOf(p.Start, p.LengthM * p.Tangent, image.Start, image.LengthM * image.Tangent);
        var gapM = closest.DistanceM;
        var longerM = Math.Max(p.LengthM, q.LengthM);
        if (gapM > 0.7 * longerM)
        {
            // Between two buried wires far apart only the wave along the surface is left, long against any segment in the soil.
            var points = gapM < 3 * longerM ? 3 : region == Region.Soil && gapM > 12 * longerM ? 1 : 2;
            sum.Add(region, 0, 1, 0, 1, points);
            return;
        }

        // Panels growing away from the closest points, where the kernel of turning current is steep.
        Span<double> edgesP = stackalloc double[24];
        Span<double> edgesQ = stackalloc double[24];
        var countP = Edges(edgesP, closest.S, Math.Max(gapM, 1e-3 * p.LengthM) / p.LengthM);
        var countQ = Edges(edgesQ, closest.T, Math.Max(gapM, 1e-3 * q.LengthM) / q.LengthM);
        for (var i = 0; i + 1 < countP; i++)
            for (var j = 0; j + 1 < countQ; j++)
                sum.Add(region, edgesP[i], edgesP[i + 1], edgesQ[j], edgesQ[j + 1], 3);
    }

    private static int Edges(Span<double> edges, double centre, double first)
    {
        var count = 0;
        edges[count++] = 0;
        Span<double> steps = stackalloc double[11];
        var n = 0;
        for (var d = first; d < 1 && n < 10; d *= 4)
            steps[n++] = d;
        for (var i = n - 1; i >= 0; i--)
            if (centre - steps[i] > 1e-9 && centre - steps[i] < 1)
                edges[count++] = centre - steps[i];
        if (centre > edges[count - 1] + 1e-9 && centre < 1 - 1e-9)
            edges[count++] = centre;
        for (var i = 0; i < n; i++)
            if (centre + steps[i] < 1 - 1e-9 && centre + steps[i] > edges[count - 1])
                edges[count++] = centre + steps[i];
        edges[count++] = 1;
        return count;
    }
}
