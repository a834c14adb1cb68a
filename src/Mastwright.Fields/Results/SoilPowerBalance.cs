using System.Numerics;
using Mastwright.Fields.Kernels;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;

namespace Mastwright.Fields.Results;

/// <summary>Equal radials in the soil, evenly spread about a mast: one of them stands for all.</summary>
/// <param name="Foot">The mast's foot on the surface, metres.</param>
/// <param name="AzimuthRad">Direction of one radial, counter-clockwise from +x.</param>
/// <param name="Count">How many, at least 1.</param>
/// <param name="LengthM">Length, metres.</param>
/// <param name="DepthM">Depth of their axes, metres, positive.</param>
/// <param name="WireRadiusM">Radius of the wire, metres.</param>
/// <param name="StubRadiusM">Radius of the conductor that leads down to them, metres.</param>
public sealed record BuriedRadials(Vec3 Foot, double AzimuthRad, int Count, double LengthM, double DepthM, double WireRadiusM, double StubRadiusM);

/// <summary>Where the power of a mast over soil goes, every part by an integral of its own.</summary>
/// <param name="InputW">Fed.</param>
/// <param name="WiresW">Heat in wires and loads.</param>
/// <param name="SoilW">Heat in the soil inside the radius.</param>
/// <param name="OutwardW">Passes outward through the hood and, below the surface, through the rim.</param>
/// <param name="RadiusM">Radius of hood and rim, metres.</param>
public sealed record SoilPower(double InputW, double WiresW, double SoilW, double OutwardW, double RadiusM)
{
    /// <summary>All parts over the power fed: one, as far as fields and currents agree.</summary>
    public double Closure => (WiresW + SoilW + OutwardW) / InputW;
}

/// <summary>
/// Poynting's theorem over buried radials: σ|E|² summed through the upper layer of the soil, right up to the wires; what sinks out of that layer;
/// and the flux through a hood over everything. The sector of one radial, mirrored, stands for all; the hood is looked at all round.
/// </summary>
public static class SoilPowerBalance
{
    private const int HoodRings = 20;
    private const int Azimuths = 18;

    // Between fewer radials the currents differ more from place to place, and there are fewer wires to sum over.
    private const int Few = 8;

    private static readonly GaussRule Two = GaussRule.Of(2);
    private static readonly GaussRule Three = GaussRule.Of(3);
    private static readonly GaussRule Four = GaussRule.Of(4);

    /// <summary>The balance.</summary>
    /// <param name="driven">The driven model over real soil.</param>
    /// <param name="radials">Its radials.</param>
    /// <param name="radiusM">Radius of hood and rim: beyond all wires, metres.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentException">The ground is not real soil.</exception>
    public static SoilPower Of(DrivenWires driven, BuriedRadials radials, double radiusM, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(driven);
        ArgumentNullException.ThrowIfNull(radials);
        if (driven.Mesh.Model.Ground is not Ground.HalfSpace half)
            throw new ArgumentException("The balance is for real soil.", nameof(driven));
        var layerM = Math.Max(1, 3 * radials.DepthM);
        var joule = new List<(Vec3 At, double Volume)>();
        var sinking = new List<(Vec3 At, Vec3 Area)>();
        foreach (var (rho, along) in Distances(radials, radiusM))
        {
            var width = Math.PI * rho / radials.Count;
            var inner = rho < radials.LengthM ? radials.WireRadiusM : 1e-3;
            foreach (var (y, z, area) in AroundWire(width, radials.DepthM, layerM, inner))
                joule.Add((Place(radials, rho, y, z), 2 * radials.Count * along * area));
            foreach (var (y, weight) in Graded(width, layerM))
                sinking.Add((Place(radials, rho, y, -layerM), -2 * radials.Count * along * weight * Vec3.Up));
        }

        var outward = Hood(radials.Foot, radiusM).Concat(Rim(radials.Foot, radiusM, layerM)).ToList();
        var fields = NearField.At(driven, [.. joule.Select(j => j.At), .. sinking.Select(s => s.At), .. outward.Select(o => o.At)], cancellation);
        var permittivity = half.Soil.ComplexPermittivity(driven.FrequencyHz);
        var conductivity = -permittivity.Imaginary * 2 * Math.PI * driven.FrequencyHz * Vacuum.PermittivityFPerM;
        double soil = 0, out_ = 0;
        for (var i = 0; i < joule.Count; i++)
            soil += conductivity * Math.Pow(fields[i].Electric.Magnitude, 2) * joule[i].Volume;
        for (var i = 0; i < sinking.Count; i++)
            soil += Flux(fields[joule.Count + i], sinking[i].Area);
        for (var i = 0; i < outward.Count; i++)
            out_ += Flux(fields[joule.Count + sinking.Count + i], outward[i].Area);
        return new(driven.InputPowerW, driven.LossPowerW, soil, out_, radiusM);
    }

    // Distances from the mast with their weights, fine at the stub and where the radials end.
    private static IEnumerable<(double Rho, double Weight)> Distances(BuriedRadials radials, double radiusM)
    {
        var l = radials.LengthM;
        var rule = radials.Count < Few ? Three : Two;
        double[] edges = [.. new[] { radials.StubRadiusM, 0.03, 0.1, 0.3, 1, 0.3 * l, 0.6 * l, 0.85 * l, 0.96 * l, 0.993 * l, l, 1.007 * l, 1.04 * l, 1.15 * l, 1.5 * l, 2.5 * l, 5 * l, radiusM }
            .Where(e => e >= radials.StubRadiusM && e <= radiusM).Distinct().Order()];
        for (var p = 0; p + 1 < edges.Length; p++)
        {
            var ratio = edges[p + 1] / edges[p];
            foreach (var (node, weight) in rule.Nodes.Zip(rule.Weights))
            {
                var rho = edges[p] * Math.Pow(ratio, node);
                yield return (rho, weight * Math.Log(ratio) * rho);
            }
        }
    }

    // Half the upright section between a radial and the middle towards the next, on rays from the wire to the section's edge: towards the side, the surface and the floor.
    private static IEnumerable<(double Y, double Z, double Area)> AroundWire(double width, double depth, double layer, double inner)
    {
        var below = layer - depth;
        foreach (var (t, w) in Panels(Math.Asinh(-below / width), 0).Concat(Panels(0, Math.Asinh(depth / width))))
            foreach (var point in Ray(width, width * Math.Sinh(t), w / Math.Cosh(t), depth, inner))
                yield return point;
        foreach (var (t, w) in Panels(0, Math.Asinh(width / depth)))
            foreach (var point in Ray(depth * Math.Sinh(t), depth, w / Math.Cosh(t), depth, inner))
                yield return point;
        foreach (var (t, w) in Panels(0, Math.Asinh(width / below)))
            foreach (var point in Ray(below * Math.Sinh(t), -below, w / Math.Cosh(t), depth, inner))
                yield return point;
    }

    // Points from the wire's skin to a point of the edge given from the axis; the field near the wire falls as one over the distance.
    private static IEnumerable<(double Y, double Z, double Area)> Ray(double y, double z, double angle, double depth, double inner)
    {
        var reach = Math.Sqrt((y * y) + (z * z));
        if (reach <= inner)
            yield break;
        var logarithm = Math.Log(reach / inner);
        var panels = Math.Max(1, (int)Math.Ceiling(logarithm / 3));
        for (var p = 0; p < panels; p++)
        {
            for (var g = 0; g < 3; g++)
            {
                var r = inner * Math.Exp(logarithm * (p + Three.Nodes[g]) / panels);
                yield return (y * r / reach, (z * r / reach) - depth, angle * r * r * Three.Weights[g] * logarithm / panels);
            }
        }
    }

    private static IEnumerable<(double At, double Weight)> Panels(double from, double to)
    {
        var count = Math.Max(1, (int)Math.Ceiling((to - from) / 4));
        for (var p = 0; p < count; p++)
            for (var g = 0; g < 3; g++)
                yield return (from + ((to - from) * (p + Three.Nodes[g]) / count), (to - from) * Three.Weights[g] / count);
    }

    // Sideways from a radial at a scale.
    private static IEnumerable<(double Y, double Weight)> Graded(double width, double scale) =>
        Panels(0, Math.Asinh(width / scale)).Select(t => (scale * Math.Sinh(t.At), t.Weight * scale * Math.Cosh(t.At)));

    private static IEnumerable<(Vec3 At, Vec3 Area)> Hood(Vec3 foot, double radius)
    {
        var rule = GaussRule.Of(HoodRings);
        for (var i = 0; i < HoodRings; i++)
        {
            double cos = rule.Nodes[i], sin = Math.Sqrt(1 - (cos * cos));
            for (var a = 0; a < Azimuths; a++)
            {
                var (s, c) = Math.SinCos(2 * Math.PI * (a + 0.5) / Azimuths);
                Vec3 outward = new(sin * c, sin * s, cos);
                yield return (foot + (radius * outward), 2 * Math.PI / Azimuths * rule.Weights[i] * radius * radius * outward);
            }
        }
    }

    private static IEnumerable<(Vec3 At, Vec3 Area)> Rim(Vec3 foot, double radius, double layer)
    {
        for (var g = 0; g < 4; g++)
        {
            for (var a = 0; a < Azimuths; a++)
            {
                var (s, c) = Math.SinCos(2 * Math.PI * (a + 0.5) / Azimuths);
                yield return (foot + new Vec3(radius * c, radius * s, -layer * Four.Nodes[g]), 2 * Math.PI / Azimuths * radius * layer * Four.Weights[g] * new Vec3(c, s, 0));
            }
        }
    }

    private static Vec3 Place(BuriedRadials radials, double rho, double y, double z)
    {
        var (s, c) = Math.SinCos(radials.AzimuthRad + (y / rho));
        return radials.Foot + new Vec3(rho * c, rho * s, z);
    }

    // Real power through an area, RMS phasors.
    private static double Flux(in NearFieldSample sample, Vec3 area)
    {
        var (e, h) = (sample.Electric, sample.Magnetic);
        Complex x = (e.Y * Complex.Conjugate(h.Z)) - (e.Z * Complex.Conjugate(h.Y));
        Complex y = (e.Z * Complex.Conjugate(h.X)) - (e.X * Complex.Conjugate(h.Z));
        Complex z = (e.X * Complex.Conjugate(h.Y)) - (e.Y * Complex.Conjugate(h.X));
        return (x.Real * area.X) + (y.Real * area.Y) + (z.Real * area.Z);
    }
}
