using Mastwright.Numerics;

namespace Mastwright.Structure.Solver;

/// <summary>The axes of a mast section: along the mast, and two across it. Undeformed: up, east, north.</summary>
internal readonly record struct Triad(Vec3 Along, Vec3 East, Vec3 North)
{
    public static Triad Plumb => new(Vec3.Up, new(1, 0, 0), new(0, 1, 0));

    /// <summary>A vector that rides with the section, given by its undeformed components.</summary>
    public Vec3 Carry(Vec3 undeformed) => (undeformed.X * East) + (undeformed.Y * North) + (undeformed.Z * Along);

    /// <summary>The axes after a further rotation, made exactly square again.</summary>
    public Triad Turned(Vec3 rotation)
    {
        var along = Turn(rotation, Along).Unit();
        var east = Turn(rotation, East);
        east = (east - (east.Dot(along) * along)).Unit();
        return new(along, east, along.Cross(east));
    }

    /// <summary>The rotation vector from the undeformed axes.</summary>
    public Vec3 RotationVector()
    {
        // Twice the axial vector of the rotation matrix is 2 sin(angle) times the axis; the trace gives the cosine.
        var sine = 0.5 * new Vec3(North.Z - Along.Y, Along.X - East.Z, East.Y - North.X);
        var cosine = 0.5 * (East.X + North.Y + Along.Z - 1);
        var s = sine.Length;
        return s < 1e-12 ? sine : Math.Atan2(s, cosine) / s * sine;
    }

    // Rodrigues.
    private static Vec3 Turn(Vec3 w, Vec3 v)
    {
        var angle2 = w.Dot(w);
        var angle = Math.Sqrt(angle2);
        var a = angle < 1e-4 ? 1 - (angle2 / 6) : Math.Sin(angle) / angle;
        var half = Math.Sin(0.5 * angle);
        var b = angle < 1e-4 ? 0.5 - (angle2 / 24) : 2 * half * half / angle2;
        var c = w.Cross(v);
        return v + (a * c) + (b * w.Cross(c));
    }
}
