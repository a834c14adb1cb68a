using Mastwright.Numerics.Special;
using MathNet.Numerics.Integration;

namespace Mastwright.Fields.Electrostatics;

/// <summary>
/// Potential of a charged element of revolution for unit surface field σ/ε₀: ∫ r′ K(m)/(π ρ₁) dl, with ρ₁² = (r + r′)² + (z − z′)²
/// and m = 4 r r′/ρ₁² (ring potential: Smythe; Jackson, problem 5.4 in form). In metres.
/// </summary>
internal sealed class RingKernel
{
    private const int FarPoints = 4;
    private const int NearPoints = 10;
    private static readonly GaussLegendreRule NearRule = new(0, 1, NearPoints);
    private static readonly double[] NearNodes = [.. Enumerable.Range(0, NearPoints).Select(NearRule.GetAbscissa)];
    private static readonly double[] NearWeights = [.. Enumerable.Range(0, NearPoints).Select(NearRule.GetWeight)];

    private readonly MeridianElement _element;
    private readonly double[] _r = new double[FarPoints];
    private readonly double[] _z = new double[FarPoints];
    private readonly double[] _w = new double[FarPoints];
    private readonly double _midR;
    private readonly double _midZ;
    private readonly double _nearM;

    public RingKernel(MeridianElement element)
    {
        _element = element;
        var rule = new GaussLegendreRule(element.T0, element.T1, FarPoints);
        for (var q = 0; q < FarPoints; q++)
        {
            var t = rule.GetAbscissa(q);
            (_r[q], _z[q]) = element.Curve.Point(t);
            _w[q] = rule.GetWeight(q) * element.Curve.Speed(t);
        }

        (_midR, _midZ) = element.Curve.Point(element.Middle);
        _nearM = 2.0 * element.LengthM;
        AreaM2 = 2 * Math.PI * Enumerable.Range(0, FarPoints).Sum(q => _r[q] * _w[q]);
    }

    /// <summary>Surface area of the element in m².</summary>
    public double AreaM2 { get; }

    /// <summary>Potential per unit σ/ε₀ at a point, in metres. <paramref name="own"/> marks the element's own middle.</summary>
    public double Potential(double r, double z, bool own)
    {
        var dr = r - _midR;
        var dz = z - _midZ;
        if (!own && (dr * dr) + (dz * dz) > _nearM * _nearM)
        {
            var sum = 0.0;
            for (var q = 0; q < FarPoints; q++)
                sum += _w[q] * Density(r, z, _r[q], _z[q]);
            return sum;
        }

        var split = own ? _element.Middle : Nearest(r, z);
        return Graded(r, z, split, _element.T0) + Graded(r, z, split, _element.T1);
    }

    // From the nearest point to one end with t = split + (end − split) u³, which takes the logarithm at u = 0 away.
    private double Graded(double r, double z, double split, double end)
    {
        var span = end - split;
        if (span == 0)
            return 0;
        var sum = 0.0;
        for (var q = 0; q < NearPoints; q++)
        {
            var u = NearNodes[q];
            var t = split + (span * u * u * u);
            var (rs, zs) = _element.Curve.Point(t);
            sum += NearWeights[q] * 3 * u * u * Math.Abs(span) * _element.Curve.Speed(t) * Density(r, z, rs, zs);
        }

        return sum;
    }

    private double Nearest(double r, double z)
    {
        const int steps = 16;
        var best = _element.T0;
        var least = double.PositiveInfinity;
        for (var i = 0; i <= steps; i++)
        {
            var t = _element.T0 + ((_element.T1 - _element.T0) * i / steps);
            var (rs, zs) = _element.Curve.Point(t);
            var d = ((r - rs) * (r - rs)) + ((z - zs) * (z - zs));
            if (d < least)
                (least, best) = (d, t);
        }

        return best;
    }

    private static double Density(double r, double z, double rs, double zs)
    {
        var dz = z - zs;
        var far = ((r + rs) * (r + rs)) + (dz * dz);
        var near = ((r - rs) * (r - rs)) + (dz * dz);
        return rs * EllipticIntegrals.KFromComplement(near / far) / (Math.PI * Math.Sqrt(far));
    }
}
