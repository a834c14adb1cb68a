using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Kernels.HalfSpace;
using Mastwright.Fields.Solving;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Results;

/// <summary>
/// Near fields in presence of real soil, in the air and in the soil: the vector and scalar potentials of the half-space kernels,
/// and their derivatives by central differences over a twentieth of the distance to the nearest wire.
/// </summary>
internal sealed class SoilNearField
{
    // From this many lengths away a filament's middle stands for it: its current is linear, and the rest is (length/distance)²/24.
    private const double Distant = 12;

    private readonly Filament[] _filaments;
    private readonly (Complex Start, Complex End)[] _currents;
    private readonly HalfSpaceKernels _kernels;

    // Share of a charge's direct potential that passes the surface.
    private readonly Complex _charge;

    public SoilNearField(DrivenWires driven, Soil soil, IReadOnlyList<Vec3> points)
    {
        _filaments = [.. driven.Mesh.Segments.Select(s => Filament.Of(s))];
        _currents = [.. Enumerable.Range(0, _filaments.Length).Select(driven.EndCurrents)];
        var reach = ModelReach.Of(driven.Mesh.Nodes.Concat(points));
        _kernels = new(soil.ComplexPermittivity(driven.FrequencyHz), Vacuum.WaveNumber(driven.FrequencyHz), reach, Interactions.KernelTolerance);
        _charge = 2 / (_kernels.Medium.IndexSquared + 1);
    }

    /// <summary>Both fields at a point; one on the surface counts as in the air.</summary>
    public NearFieldSample At(Vec3 point)
    {
        var k = _kernels.WaveNumber;
        var nearestM = Math.Max(_filaments.Min(f => f.DistanceM(point)), 1e-4);
        var step = Math.Min(0.05 * nearestM, 0.02 / (k * _kernels.Medium.Index.Magnitude));

        // The differences must not reach across the surface, where the fields jump.
        step = Math.Min(step, Math.Max(0.9 * Math.Abs(point.Z), 1e-3));
        if (Math.Abs(point.Z) < step)
            point = point with { Z = point.Z >= 0 ? 1.01 * step : -1.01 * step };
        Potential Slope(Vec3 along) => (Potentials(point, point + along) - Potentials(point, point - along)) / (2 * step);
        Potential x = Slope(new(step, 0, 0)), y = Slope(new(0, step, 0)), z = Slope(new(0, 0, step)), here = Potentials(point, point);
        var omegaMu = new Complex(0, k * Vacuum.WaveImpedanceOhm);
        return new(
            new(-(omegaMu * here.X) - x.Scalar, -(omegaMu * here.Y) - y.Scalar, -(omegaMu * here.Z) - z.Scalar),
            new(y.Z - z.Y, z.X - x.Z, x.Y - y.X));
    }

    // A/μ in amperes and Φ in volts. All points of a difference use the rules that suit the place in their middle: a change of rule must not pass for a slope.
    private Potential Potentials(Vec3 middle, Vec3 point)
    {
        var sum = default(Potential);
        for (var s = 0; s < _filaments.Length; s++)
            sum += OfFilament(_filaments[s], _currents[s].Start, _currents[s].End, point, middle);
        return sum;
    }

    // Panels no longer than 0.7 of their distance from the point: they grow away from the place nearest to it.
    private static int Panels(Span<double> edges, double lengthM, double nearestM, double distanceM)
    {
        if (lengthM <= 0.7 * distanceM)
        {
            (edges[0], edges[1]) = (0, lengthM);
            return 1;
        }

        var count = 0;
        Span<double> away = stackalloc double[edges.Length / 2];
        var steps = 0;
        for (var x = 0.0; x < Math.Max(nearestM, lengthM - nearestM) && steps < away.Length; x = away[steps++])
            away[steps] = x + (0.7 * Math.Sqrt((distanceM * distanceM) + (x * x)));
        edges[count++] = 0;
        for (var i = steps - 1; i >= 0; i--)
            if (away[i] < nearestM * (1 - 1e-9))
                edges[count++] = nearestM - away[i];
        if (nearestM > 0 && nearestM < lengthM)
            edges[count++] = nearestM;
        for (var i = 0; i < steps; i++)
            if (away[i] < (lengthM - nearestM) * (1 - 1e-9))
                edges[count++] = nearestM + away[i];
        edges[count] = lengthM;
        return count;
    }

    private Potential OfFilament(in Filament filament, Complex start, Complex end, Vec3 point, Vec3 middle)
    {
        var nearestM = Math.Clamp((middle - filament.Start).Dot(filament.Tangent), 0, filament.LengthM);
        var distanceM = Math.Max((middle - filament.PointAt(nearestM)).Length, 1e-6);
        var k = _kernels.WaveNumber;
        bool sourceInAir = filament.Centre.Z > 0, pointInAir = point.Z > 0;
        var region = sourceInAir != pointInAir ? Region.Across : pointInAir ? Region.Air : Region.Soil;
        Span<double> edges = stackalloc double[96];
        var panels = Panels(edges, filament.LengthM, nearestM, distanceM);
        var rule = GaussRule.Of(distanceM > Distant * filament.LengthM ? 1 : distanceM > 4 * filament.LengthM ? 2 : 4);

        // Φ = (1/4πε₀)∫ q K, q = jI′/ω, and 1/ωε₀ = η/k.
        var charge = new Complex(0, Vacuum.WaveImpedanceOhm / k) * (end - start) / filament.LengthM;
        Complex ax = default, ay = default, az = default, scalar = default;
        for (var panel = 0; panel < panels; panel++)
        {
            for (var g = 0; g < rule.Nodes.Length; g++)
            {
                var along = edges[panel] + ((edges[panel + 1] - edges[panel]) * rule.Nodes[g]);
                var t = along / filament.LengthM;
                var weight = rule.Weights[g] * (edges[panel + 1] - edges[panel]) / (4 * Math.PI);
                var source = filament.PointAt(along);
                var current = weight * (((1 - t) * start) + (t * end));
                double dx = point.X - source.X, dy = point.Y - source.Y, rho = Math.Sqrt((dx * dx) + (dy * dy));
                var (horizontal, vertical, turning, scalarKernel) = Whole(region, rho, point.Z, source.Z);
                double cos = rho > 0 ? dx / rho : 0, sin = rho > 0 ? dy / rho : 0;
                ax += current * ((filament.Tangent.X * horizontal) - (filament.Tangent.Z * cos * turning));
                ay += current * ((filament.Tangent.Y * horizontal) - (filament.Tangent.Z * sin * turning));
                az += current * ((filament.Tangent.Z * vertical) + (((filament.Tangent.X * cos) + (filament.Tangent.Y * sin)) * turning));
                scalar += weight * charge * scalarKernel;
            }
        }

        return new(ax, ay, az, scalar);
    }

    // Direct part, image and remainder together.
    private (Complex Horizontal, Complex Vertical, Complex Turning, Complex Scalar) Whole(Region region, double rho, double z, double sourceZ)
    {
        var rest = _kernels.At(region, rho, z, sourceZ);
        var n2 = _kernels.Medium.IndexSquared;
        var q = _kernels.Medium.ImageFactor;
        if (region == Region.Soil)
        {
            Complex inSoil = Wave(_kernels.SoilWaveNumber, rho, z - sourceZ), echo = Wave(_kernels.SoilWaveNumber, rho, z + sourceZ);
            return (inSoil + rest.Horizontal, inSoil - (2 * q * echo) + rest.Vertical, rest.Turning, ((inSoil + (q * echo)) / n2) + rest.Charge);
        }

        var direct = Wave(_kernels.WaveNumber, rho, z - sourceZ);
        if (region == Region.Across)
            return (direct + rest.Horizontal, direct + rest.Vertical, rest.Turning, (_charge * direct) + rest.Charge);
        var image = Wave(_kernels.WaveNumber, rho, z + sourceZ);
        return (direct + rest.Horizontal, direct + (2 * q * image) + rest.Vertical, rest.Turning, direct - (q * image) + rest.Charge);
    }

    private static Complex Wave(double k, double rho, double height)
    {
        var r = Math.Sqrt((rho * rho) + (height * height));
        var (sin, cos) = Math.SinCos(k * r);
        return new(cos / r, -sin / r);
    }

    private static Complex Wave(Complex k, double rho, double height)
    {
        var r = Math.Sqrt((rho * rho) + (height * height));
        return Complex.Exp(new Complex(0, -1) * k * r) / r;
    }

    private readonly record struct Potential(Complex X, Complex Y, Complex Z, Complex Scalar)
    {
        public static Potential operator +(Potential a, Potential b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z, a.Scalar + b.Scalar);

        public static Potential operator -(Potential a, Potential b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z, a.Scalar - b.Scalar);

        public static Potential operator /(Potential a, double d) => new(a.X / d, a.Y / d, a.Z / d, a.Scalar / d);
    }
}
