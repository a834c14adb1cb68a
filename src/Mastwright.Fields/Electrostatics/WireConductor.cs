using System.Collections.Immutable;
using Mastwright.Numerics;

namespace Mastwright.Fields.Electrostatics;

/// <summary>A straight round wire, tube or rod with half-ball ends.</summary>
/// <param name="Start">Centre line at the start, in metres, z up.</param>
/// <param name="End">Centre line at the end, in metres.</param>
/// <param name="RadiusM">Radius in metres.</param>
/// <param name="Fine">True to resolve the charge close to its ends, as a rod or whisker whose tip gradient is wanted; false for guys and masts.</param>
public sealed record Wire(Vec3 Start, Vec3 End, double RadiusM, bool Fine = false)
{
    /// <summary>Length in metres.</summary>
    public double LengthM => (End - Start).Length;

    /// <summary>A ring of straight pieces.</summary>
    /// <param name="centre">Centre in metres.</param>
    /// <param name="ringRadiusM">Radius of the ring in metres.</param>
    /// <param name="tubeRadiusM">Radius of its tube in metres.</param>
    /// <param name="pieces">Number of pieces, at least 8.</param>
    public static ImmutableArray<Wire> LevelRing(Vec3 centre, double ringRadiusM, double tubeRadiusM, int pieces = 24)
    {
        // A polygon of the same circumference keeps the capacitance closest.
        var corner = ringRadiusM * (Math.PI / pieces) / Math.Sin(Math.PI / pieces);
        Vec3 Corner(int i) => centre + new Vec3(corner * Math.Cos(2 * Math.PI * i / pieces), corner * Math.Sin(2 * Math.PI * i / pieces), 0);
        return [.. Enumerable.Range(0, pieces).Select(i => new Wire(Corner(i), Corner(i + 1), tubeRadiusM))];
    }
}

/// <summary>Wires joined to one conductor.</summary>
/// <param name="Name">Name.</param>
/// <param name="Wires">Its wires; ends that coincide are joined, other ends are free.</param>
public sealed record WireConductor(string Name, ImmutableArray<Wire> Wires);
