using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Kernels.HalfSpace;

/// <summary>Gathers vector and scalar potential integrals of one pair of segments.</summary>
internal struct SoilPairSum(HalfSpaceKernels kernels, in Filament p, in Filament q)
{
    private readonly Filament _p = p;
    private readonly Filament _q = q;
    private readonly double _horizontal = (p.Tangent.X * q.Tangent.X) + (p.Tangent.Y * q.Tangent.Y);
    private readonly double _vertical = p.Tangent.Z * q.Tangent.Z;
    private PairBlock _vector;
    private Complex _charge;

    /// <summary>Adds a closed-form image with its factors in the vector and in the scalar potential.</summary>
    public void Image(in PairBlock block, Complex vectorFactor, Complex chargeFactor)
    {
        _vector.M00 += vectorFactor * block.M00;
        _vector.M01 += vectorFactor * block.M01;
        _vector.M10 += vectorFactor * block.M10;
        _vector.M11 += vectorFactor * block.M11;
        _charge += chargeFactor * block.Total;
    }

    /// <summary>Adds the tabulated remainders over a part of both segments, by a product Gauss rule.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Add(Region region, double p0, double p1, double q0, double q1, int points)
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
                var kernel = kernels.At(region, rho, at.Z, from.Z);
                var turn = rho > 1e-12 ? ((_p.Tangent.Z * Along(_q.Tangent, dx, dy)) - (_q.Tangent.Z * Along(_p.Tangent, dx, dy))) / rho : 0;
                _vector.Add(x, y, weight * ((_horizontal * kernel.Horizontal) + (_vertical * kernel.Vertical) + (turn * kernel.Turning)));
                _charge += weight * kernel.Charge;
            }
        }
    }

    /// <summary>Volts per ampere: jωμ/4π times the vector integrals, 1/jωε₀4π times the charges of the two shape functions.</summary>
    public readonly PairBlock Result(double waveNumber)
    {
        var vector = new Complex(0, waveNumber * Vacuum.WaveImpedanceOhm / (4 * Math.PI));
        var charge = new Complex(0, -Vacuum.WaveImpedanceOhm / (4 * Math.PI * waveNumber)) * _charge / (_p.LengthM * _q.LengthM);
        return new()
        {
            M00 = (vector * _vector.M00) + charge,
            M01 = (vector * _vector.M01) - charge,
            M10 = (vector * _vector.M10) - charge,
            M11 = (vector * _vector.M11) + charge,
        };
    }

    private static double Along(Vec3 tangent, double dx, double dy) => (tangent.X * dx) + (tangent.Y * dy);
}
