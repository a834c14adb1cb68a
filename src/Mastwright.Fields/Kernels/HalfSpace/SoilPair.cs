using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>What the soil adds to the interaction of two segments in the air: images by the free-space routines, remainders by quadrature.</summary>
internal static class SoilPair
{
    /// <summary>Volts per ampere between end currents, without the direct part; ends 00, 01, 10, 11.</summary>
    public static PairBlock Reaction(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        var k = kernels.WaveNumber;
        var mirrored = q.Mirrored;
        var image = PairIntegrals.Compute(p, mirrored, k);
        var factor = kernels.Medium.ImageFactor;
        var vector = new Complex(0, k * Vacuum.WaveImpedanceOhm / (4 * Math.PI));
        var charge = new Complex(0, -Vacuum.WaveImpedanceOhm / (4 * Math.PI * k)) / (p.LengthM * q.LengthM);
        var vertical = 2 * factor * p.Tangent.Z * q.Tangent.Z;
        var (block, chargeRest) = Remainders(kernels, p, q, mirrored);
        var charged = charge * ((-factor * image.Total) + chargeRest);
        return new()
        {
            M00 = (vector * ((vertical * image.M00) + block.M00)) + charged,
            M01 = (vector * ((vertical * image.M01) + block.M01)) - charged,
            M10 = (vector * ((vertical * image.M10) + block.M10)) - charged,
            M11 = (vector * ((vertical * image.M11) + block.M11)) + charged,
        };
    }

    private static (PairBlock Vector, Complex Charge) Remainders(HalfSpaceKernels kernels, in Filament p, in Filament q, in Filament mirrored)
    {
        var distanceM = JointGraph.ClosestOf(p.Start, p.LengthM * p.Tangent, mirrored.Start, mirrored.LengthM * mirrored.Tangent);
        var sum = new Sum(kernels, p, q);
        var gapM = distanceM.DistanceM;
        if (gapM > 0.7 * Math.Max(p.LengthM, q.LengthM))
        {
            sum.Add(0, 1, 0, 1, gapM > 3 * Math.Max(p.LengthM, q.LengthM) ? 2 : 3);
            return sum.Result;
        }

        // Panels growing away from the closest points, where the kernel of turning current is steep.
        Span<double> edgesP = stackalloc double[24];
        Span<double> edgesQ = stackalloc double[24];
        var countP = Edges(edgesP, distanceM.S, Math.Max(gapM, 1e-3 * p.LengthM) / p.LengthM);
        var countQ = Edges(edgesQ, distanceM.T, Math.Max(gapM, 1e-3 * q.LengthM) / q.LengthM);
        for (var i = 0; i + 1 < countP; i++)
            for (var j = 0; j + 1 < countQ; j++)
                sum.Add(edgesP[i], edgesP[i + 1], edgesQ[j], edgesQ[j + 1], 3);
        return sum.Result;
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

    /// <summary>Product Gauss sums of all remainders over a pair.</summary>
    private struct Sum(HalfSpaceKernels kernels, in Filament p, in Filament q)
    {
        private readonly Filament _p = p;
        private readonly Filament _q = q;
        private readonly double _horizontal = (p.Tangent.X * q.Tangent.X) + (p.Tangent.Y * q.Tangent.Y);
        private readonly double _vertical = p.Tangent.Z * q.Tangent.Z;
        private PairBlock _block;
        private Complex _charge;

        public readonly (PairBlock Vector, Complex Charge) Result => (_block, _charge);

        public void Add(double p0, double p1, double q0, double q1, int points)
        {
            var rule = GaussRule.Of(points);
            var area = (p1 - p0) * (q1 - q0) * _p.LengthM * _q.LengthM;
            for (var i = 0; i < points; i++)
            {
                var x = p0 + ((p1 - p0) * rule.Nodes[i]);
                var at = _p.PointAt(x * _p.LengthM);
                for (var j = 0; j < points; j++)
                {
                    var y = q0 + ((q1 - q0) * rule.Nodes[j]);
                    var from = _q.PointAt(y * _q.LengthM);
                    double dx = at.X - from.X, dy = at.Y - from.Y, weight = area * rule.Weights[i] * rule.Weights[j];
                    var rho = Math.Sqrt((dx * dx) + (dy * dy));
                    var kernel = kernels.Air(rho, at.Z + from.Z);
                    var turn = rho > 1e-12 ? (_p.Tangent.Z * Along(_q.Tangent, dx, dy) - (_q.Tangent.Z * Along(_p.Tangent, dx, dy))) / rho : 0;
                    _block.Add(x, y, weight * ((_horizontal * kernel.Horizontal) + (_vertical * kernel.Vertical) + (turn * kernel.Turning)));
                    _charge += weight * kernel.Charge;
                }
            }
        }

        private static double Along(Vec3 tangent, double dx, double dy) => (tangent.X * dx) + (tangent.Y * dy);
    }
}
