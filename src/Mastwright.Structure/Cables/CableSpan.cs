using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>One piece of a cable in line, counted from the start (the anchor).</summary>
/// <param name="UnstressedLengthM">Length without tension, above zero.</param>
/// <param name="AxialStiffnessN">EA.</param>
/// <param name="LoadNPerM">Load per unstressed metre.</param>
/// <param name="EndLoadN">A lump of load at the far end of the piece: the weight of an insulator or fitting.</param>
public readonly record struct CableSpan(double UnstressedLengthM, double AxialStiffnessN, Vec3 LoadNPerM, Vec3 EndLoadN = default)
{
    /// <summary>All load on the piece.</summary>
    internal Vec3 TotalLoadN => (UnstressedLengthM * LoadNPerM) + EndLoadN;

    /// <summary>Where an arc of this piece ends relative to its start, given the tension vector at its start.</summary>
    internal Vec3 Reach(Vec3 startTension, double arcM)
    {
        var (plane, h, v) = Resolve(startTension);
        var (span, rise) = CatenaryKernel.Position(h, v, v + (plane.Load * arcM), arcM, plane.Load, AxialStiffnessN);
        return (span * plane.Across) + (rise * plane.Up);
    }

    /// <summary>Movement of the end of the whole piece per change of tension, start held.</summary>
    internal Stiffness3 Flexibility(Vec3 startTension)
    {
        var (plane, h, v) = Resolve(startTension);
        var f = CatenaryKernel.Flexibility(h, v, v + (plane.Load * UnstressedLengthM), UnstressedLengthM, plane.Load, AxialStiffnessN);
        var side = plane.Across.Cross(plane.Up);
        return Stiffness3.Dyad(f.HH, plane.Across, plane.Across) + Stiffness3.Dyad(2 * f.HV, plane.Across, plane.Up)
            + Stiffness3.Dyad(f.VV, plane.Up, plane.Up) + Stiffness3.Dyad(f.Out, side, side);
    }

    private (LoadPlane Plane, double Horizontal, double Vertical) Resolve(Vec3 startTension)
    {
        var plane = LoadPlane.Of(startTension, LoadNPerM);
        var least = 1e-12 * (startTension.Length + (plane.Load * UnstressedLengthM)) + double.Epsilon;
        return (plane, Math.Max(startTension.Dot(plane.Across), least), startTension.Dot(plane.Up));
    }
}
