using Mastwright.Numerics;

namespace Mastwright.Fields.Wires;

/// <summary>
/// A straight round conductor from <paramref name="Start"/> to <paramref name="End"/>, its radius changing evenly along it.
/// Ends that meet (or an end that lands on another wire) are joined; crossings in mid-span are not.
/// </summary>
/// <param name="Name">Unique name, used in every message and result.</param>
/// <param name="Start">First end, metres; z is height above the ground plane.</param>
/// <param name="End">Second end, metres.</param>
/// <param name="StartRadiusM">Radius at the first end, metres.</param>
/// <param name="EndRadiusM">Radius at the second end, metres.</param>
/// <param name="Metal">What it is made of.</param>
public sealed record Wire(string Name, Vec3 Start, Vec3 End, double StartRadiusM, double EndRadiusM, Conductor Metal)
{
    /// <summary>A wire of one radius throughout.</summary>
    public Wire(string name, Vec3 start, Vec3 end, double radiusM, Conductor? metal = null)
        : this(name, start, end, radiusM, radiusM, metal ?? Conductor.Perfect)
    {
    }

    /// <summary>Insulation around the metal, or null for a bare wire.</summary>
    public Jacket? Jacket { get; init; }

    /// <summary>Length in metres.</summary>
    public double LengthM => (End - Start).Length;

    /// <summary>The point at <paramref name="fraction"/> (0 at the start, 1 at the end).</summary>
    public Vec3 PointAt(double fraction) => Start + (fraction * (End - Start));

    /// <summary>The radius at <paramref name="fraction"/> of the length, in metres.</summary>
    public double RadiusAt(double fraction) => StartRadiusM + (fraction * (EndRadiusM - StartRadiusM));
}
