using Mastwright.Numerics;

namespace Mastwright.Fields.Meshing;

/// <summary>One straight piece of wire, short against the wavelength, on which the current varies linearly.</summary>
/// <param name="Wire">Index of the wire in the model.</param>
/// <param name="Start">First end, metres.</param>
/// <param name="Tangent">Unit vector from start to end.</param>
/// <param name="LengthM">Length in metres.</param>
/// <param name="RadiusM">Radius in metres (mean over the segment of a tapered wire).</param>
/// <param name="StartAlongM">Distance of the start from the wire's own start, metres.</param>
/// <param name="StartNode">Index of the node at the start.</param>
/// <param name="EndNode">Index of the node at the end.</param>
public readonly record struct Segment(
    int Wire, Vec3 Start, Vec3 Tangent, double LengthM, double RadiusM, double StartAlongM, int StartNode, int EndNode)
{
    /// <summary>Second end, metres.</summary>
    public Vec3 End => Start + (LengthM * Tangent);

    /// <summary>Midpoint, metres.</summary>
    public Vec3 Centre => Start + (0.5 * LengthM * Tangent);
}

/// <summary>One end of one segment: <paramref name="End"/> is 0 at the segment's start and 1 at its end.</summary>
internal readonly record struct SegmentEnd(int Segment, int End);
