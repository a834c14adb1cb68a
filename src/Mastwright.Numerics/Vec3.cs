namespace Mastwright.Numerics;

/// <summary>
/// A point or vector in space, double precision. x points east, y north, z up, unless a caller says otherwise.
/// </summary>
/// <param name="X">First component.</param>
/// <param name="Y">Second component.</param>
/// <param name="Z">Third component.</param>
public readonly record struct Vec3(double X, double Y, double Z)
{
    /// <summary>The null vector.</summary>
    public static Vec3 Zero => default;

    /// <summary>The upward unit vector.</summary>
    public static Vec3 Up => new(0, 0, 1);

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this));

    /// <summary>Scalar product.</summary>
    public double Dot(Vec3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product, right-handed.</summary>
    public Vec3 Cross(Vec3 other) => new(
        (Y * other.Z) - (Z * other.Y),
        (Z * other.X) - (X * other.Z),
        (X * other.Y) - (Y * other.X));

    /// <summary>The vector of unit length in the same direction.</summary>
    /// <exception cref="InvalidOperationException">The vector has no direction because its length is zero.</exception>
    public Vec3 Unit()
    {
        var length = Length;
        return length > 0 ? this / length : throw new InvalidOperationException("A null vector has no direction.");
    }

    /// <summary>Sum.</summary>
    public static Vec3 operator +(Vec3 a, Vec3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    public static Vec3 operator -(Vec3 a, Vec3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>Opposite.</summary>
    public static Vec3 operator -(Vec3 a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Scaling.</summary>
    public static Vec3 operator *(double s, Vec3 a) => new(s * a.X, s * a.Y, s * a.Z);

    /// <summary>Scaling.</summary>
    public static Vec3 operator *(Vec3 a, double s) => s * a;

    /// <summary>Division by a number.</summary>
    public static Vec3 operator /(Vec3 a, double s) => new(a.X / s, a.Y / s, a.Z / s);
}
