using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>A symmetric 3x3 stiffness in N/m: force change per displacement of a point.</summary>
/// <param name="XX">Row x, column x.</param>
/// <param name="XY">Row x, column y.</param>
/// <param name="XZ">Row x, column z.</param>
/// <param name="YY">Row y, column y.</param>
/// <param name="YZ">Row y, column z.</param>
/// <param name="ZZ">Row z, column z.</param>
public readonly record struct Stiffness3(double XX, double XY, double XZ, double YY, double YZ, double ZZ)
{
    /// <summary>The force that a displacement calls up.</summary>
    public static Vec3 operator *(Stiffness3 k, Vec3 v) => new(
        (k.XX * v.X) + (k.XY * v.Y) + (k.XZ * v.Z),
        (k.XY * v.X) + (k.YY * v.Y) + (k.YZ * v.Z),
        (k.XZ * v.X) + (k.YZ * v.Y) + (k.ZZ * v.Z));

    /// <summary>Sum.</summary>
    public static Stiffness3 operator +(Stiffness3 a, Stiffness3 b) =>
        new(a.XX + b.XX, a.XY + b.XY, a.XZ + b.XZ, a.YY + b.YY, a.YZ + b.YZ, a.ZZ + b.ZZ);

    /// <summary>Stiffness along a direction, t·K·t, for a unit vector t.</summary>
    public double Along(Vec3 direction) => direction.Dot(this * direction);

    /// <summary>The inverse matrix, by cofactors; of a stiffness, the flexibility.</summary>
    internal Stiffness3 Inverse()
    {
        double a = (YY * ZZ) - (YZ * YZ), b = (XZ * YZ) - (XY * ZZ), c = (XY * YZ) - (XZ * YY);
        var d = (XX * a) + (XY * b) + (XZ * c);
        return new(a / d, b / d, c / d, ((XX * ZZ) - (XZ * XZ)) / d, ((XY * XZ) - (XX * YZ)) / d, ((XX * YY) - (XY * XY)) / d);
    }

    /// <summary><paramref name="scale"/> times the symmetric part of a⊗b + b⊗a.</summary>
    internal static Stiffness3 Dyad(double scale, Vec3 a, Vec3 b)
    {
        var s = 0.5 * scale;
        return new(
            2 * s * a.X * b.X,
            s * ((a.X * b.Y) + (a.Y * b.X)),
            s * ((a.X * b.Z) + (a.Z * b.X)),
            2 * s * a.Y * b.Y,
            s * ((a.Y * b.Z) + (a.Z * b.Y)),
            2 * s * a.Z * b.Z);
    }
}
