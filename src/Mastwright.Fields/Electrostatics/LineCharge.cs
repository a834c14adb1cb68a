using Mastwright.Numerics;

namespace Mastwright.Fields.Electrostatics;

/// <summary>Potential and field of a straight line charge of unit λ/ε₀ and of a point charge of unit q/ε₀ (Smythe; any field text).</summary>
internal static class LineCharge
{
    /// <summary>Potential at a point at least <paramref name="radius"/> away: (1/4π) ln((R₀ + R₁ + L)/(R₀ + R₁ − L)).</summary>
    public static double Potential(Vec3 start, Vec3 end, Vec3 point, double radius)
    {
        var length = (end - start).Length;
        var sum = Distance(point - start, radius) + Distance(point - end, radius);
        return Math.Log((sum + length) / (sum - length)) / (4 * Math.PI);
    }

    /// <summary>Field at a point off the line, in the direction of the force on a positive charge.</summary>
    public static Vec3 Field(Vec3 start, Vec3 end, Vec3 point)
    {
        var length = (end - start).Length;
        var (a, b) = (point - start, point - end);
        var (ra, rb) = (a.Length, b.Length);
        var sum = ra + rb;
        return (2 * length / ((sum * sum) - (length * length)) / (4 * Math.PI)) * ((a / ra) + (b / rb));
    }

    /// <summary>Potential of a point charge.</summary>
    public static double PointPotential(Vec3 at, Vec3 point, double radius) => 1 / (4 * Math.PI * Distance(point - at, radius));

    /// <summary>Field of a point charge.</summary>
    public static Vec3 PointField(Vec3 at, Vec3 point)
    {
        var d = point - at;
        var r = d.Length;
        return d / (4 * Math.PI * r * r * r);
    }

    private static double Distance(Vec3 d, double radius) => Math.Sqrt(d.Dot(d) + (radius * radius));
}
