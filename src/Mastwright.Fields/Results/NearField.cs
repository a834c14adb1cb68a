using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.CompilerServices;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Results;

/// <summary>A complex vector: three RMS phasors.</summary>
/// <param name="X">East component.</param>
/// <param name="Y">North component.</param>
/// <param name="Z">Upward component.</param>
public readonly record struct FieldVector(Complex X, Complex Y, Complex Z)
{
    /// <summary>Root of the sum of squared magnitudes: what an isotropic RMS probe reads.</summary>
    public double Magnitude => Math.Sqrt(Square(X) + Square(Y) + Square(Z));

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}

/// <summary>Electric and magnetic field at one point.</summary>
/// <param name="Electric">Electric field, V/m RMS.</param>
/// <param name="Magnetic">Magnetic field, A/m RMS.</param>
public readonly record struct NearFieldSample(FieldVector Electric, FieldVector Magnetic);

/// <summary>
/// Fields at any point in the air, near or far, summed from the currents and charges of every segment and its image. Inside a wire,
/// and closer than about one radius to it, the answer is that of a current on its axis.
/// </summary>
public static class NearField
{
    /// <summary>Both fields at a point.</summary>
    /// <param name="driven">The driven model.</param>
    /// <param name="point">Where, metres; below a perfect ground the fields are zero, below real soil they are those in the soil.</param>
    public static NearFieldSample At(DrivenWires driven, Vec3 point)
    {
        ArgumentNullException.ThrowIfNull(driven);
        return driven.Mesh.Model.Ground is Ground.HalfSpace ? At(driven, [point])[0] : OverMirror(driven, point);
    }

    /// <summary>Both fields at many points: over real soil much cheaper than one by one, and spread over all cores.</summary>
    /// <param name="driven">The driven model.</param>
    /// <param name="points">Where, metres.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ImmutableArray<NearFieldSample> At(DrivenWires driven, IReadOnlyList<Vec3> points, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(driven);
        ArgumentNullException.ThrowIfNull(points);
        var soil = driven.Mesh.Model.Ground is Ground.HalfSpace half ? new SoilNearField(driven, half.Soil, points) : null;
        var samples = new NearFieldSample[points.Count];
        Parallel.For(0, samples.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            samples[i] = soil is null ? OverMirror(driven, points[i]) : soil.At(points[i]));
        return [.. samples];
    }

    /// <summary>
    /// Both fields wherever they are asked for inside a reach, one place after the other: what is common to all places over real soil is worked out once. Safe for several threads.
    /// </summary>
    /// <param name="driven">The driven model.</param>
    /// <param name="corners">Places that span the reach together with the wires, metres; outside it answers over real soil lose accuracy.</param>
    public static Func<Vec3, NearFieldSample> Within(DrivenWires driven, IReadOnlyList<Vec3> corners)
    {
        ArgumentNullException.ThrowIfNull(driven);
        ArgumentNullException.ThrowIfNull(corners);
        return driven.Mesh.Model.Ground is Ground.HalfSpace half ? new SoilNearField(driven, half.Soil, corners).At : point => OverMirror(driven, point);
    }

    private static NearFieldSample OverMirror(DrivenWires driven, Vec3 point)
    {
        var mirrored = driven.Mesh.Model.Ground is Ground.PerfectPlane;
        if (mirrored && point.Z < 0)
            return default;

        // On the plane itself the image's share is the source's own, mirrored: one of the two sums tells the other.
        var onPlane = mirrored && point.Z == 0;
        var sum = new Accumulator(Vacuum.WaveNumber(driven.FrequencyHz));
        for (var s = 0; s < driven.Mesh.Segments.Length; s++)
        {
            var (a, b) = driven.EndCurrents(s);
            var filament = Filament.Of(driven.Mesh.Segments[s]);
            sum.Add(filament, a, b, point, 1);
            if (mirrored && !onPlane)
                sum.Add(filament.Mirrored, a, b, point, -1);
        }

        return onPlane ? OnPlane(sum.Result()) : sum.Result();
    }

    private static NearFieldSample OnPlane(NearFieldSample own) =>
        new(new(Complex.Zero, Complex.Zero, 2 * own.Electric.Z), new(2 * own.Magnetic.X, 2 * own.Magnetic.Y, Complex.Zero));

    private struct Accumulator(double k)
    {
        private Complex _ex;
        private Complex _ey;
        private Complex _ez;
        private Complex _hx;
        private Complex _hy;
        private Complex _hz;

        // The image of a current keeps its vertical and turns its horizontal part: the mirrored tangent times −1, charge times −1.
        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Add(in Filament filament, Complex start, Complex end, Vec3 point, double sign)
        {
            var distanceM = filament.DistanceM(point);
            var panels = Math.Clamp((int)Math.Ceiling(filament.LengthM / Math.Max(0.7 * distanceM, 1e-9)), 1, 400);
            var rule = GaussRule.Of(distanceM > 4 * filament.LengthM ? 3 : 6);
            var omegaMu = k * Vacuum.WaveImpedanceOhm;
            var charge = new Complex(0, 1) * (end - start) / filament.LengthM;
            for (var panel = 0; panel < panels; panel++)
            {
                for (var g = 0; g < rule.Nodes.Length; g++)
                {
                    var x = (panel + rule.Nodes[g]) / panels;
                    var weight = sign * rule.Weights[g] * filament.LengthM / panels / (4 * Math.PI);
                    var d = point - filament.PointAt(x * filament.LengthM);
                    var r = Math.Max(d.Length, filament.RadiusM * 1e-3);
                    var wave = Complex.FromPolarCoordinates(weight / r, -k * r);
                    var gradient = new Complex(1, k * r) * wave / (r * r);
                    var current = ((1 - x) * start) + (x * end);

                    // E = −jωμ I t G + (q/ε)(1 + jkR)G R/R², with line charge q = j I′/ω; 1/(ωε) = η/k.
                    var along = new Complex(0, -omegaMu) * current * wave;
                    var outward = Vacuum.WaveImpedanceOhm / k * charge * gradient;
                    _ex += (along * filament.Tangent.X) + (outward * d.X);
                    _ey += (along * filament.Tangent.Y) + (outward * d.Y);
                    _ez += (along * filament.Tangent.Z) + (outward * d.Z);
                    var curl = filament.Tangent.Cross(d);
                    var around = current * gradient;
                    _hx += around * curl.X;
                    _hy += around * curl.Y;
                    _hz += around * curl.Z;
                }
            }
        }

        public readonly NearFieldSample Result() => new(new(_ex, _ey, _ez), new(_hx, _hy, _hz));
    }
}
