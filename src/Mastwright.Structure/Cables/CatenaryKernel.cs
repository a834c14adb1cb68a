using Mastwright.Numerics;

namespace Mastwright.Structure.Cables;

/// <summary>The plane a uniformly loaded cable lies in: "up" is against the load, "across" at right angles to it.</summary>
internal readonly record struct LoadPlane(Vec3 Across, Vec3 Up, double Load)
{
    /// <summary>The plane spanned by a vector and the load; any plane through the load when the two are parallel.</summary>
    public static LoadPlane Of(Vec3 direction, Vec3 load)
    {
        var w = load.Length;
        var up = w > 0 ? -load / w : Vec3.Up;
        var across = direction - (direction.Dot(up) * up);
        if (across.Length <= 1e-12 * direction.Length)
        {
            across = Math.Abs(up.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0);
            across -= across.Dot(up) * up;
        }

        return new(across.Unit(), up, w);
    }
}

/// <summary>
/// The elastic catenary in its own plane, after Irvine, Cable Structures, 1981, ch. 1, and Jayaraman and Knudson,
/// Computers and Structures 14 (1981) 325-333. H is the constant tension across the load, Vi and Vj the
/// tension components against the load at start and end, Vj = Vi + w L.
/// The differences are written so that nothing cancels when the cable is nearly straight.
/// </summary>
internal static class CatenaryKernel
{
    /// <summary>Span and rise of the end over the start.</summary>
    public static (double Span, double Rise) Position(double h, double vi, double vj, double length, double load, double ea)
    {
        double ti = Math.Sqrt((h * h) + (vi * vi)), tj = Math.Sqrt((h * h) + (vj * vj));
        var span = (h * length / ea) + (h * LogOverLoad(h, vi, vj, length, load));
        var sum = ti + tj;
        var rise = (length * (vi + vj) / (2 * ea)) + (sum > 0 ? length * (vi + vj) / sum : 0);
        return (span, rise);
    }

    /// <summary>Flexibility of the end: d(span)/dH, d(span)/dV = d(rise)/dH, d(rise)/dV, and the flexibility out of the plane.</summary>
    public static (double HH, double HV, double VV, double Out) Flexibility(double h, double vi, double vj, double length, double load, double ea)
    {
        double ti = Math.Sqrt((h * h) + (vi * vi)), tj = Math.Sqrt((h * h) + (vj * vj));
        var log = LogOverLoad(h, vi, vj, length, load);

        // (Vj/Tj - Vi/Ti)/w: the direct difference loses digits when both ends pull the same way.
        var sine = vi * vj > 0
            ? h * h * length * (vi + vj) / (ti * tj * ((vj * ti) + (vi * tj)))
            : load > 0 ? ((vj / tj) - (vi / ti)) / load : length / ti;
        var hv = -h * length * (vi + vj) / ((ti + tj) * ti * tj);
        return ((length / ea) + log - sine, hv, (length / ea) + sine, (length / ea) + log);
    }

    /// <summary>[asinh(Vj/H) - asinh(Vi/H)]/w, which tends to L/T when the load vanishes.</summary>
    private static double LogOverLoad(double h, double vi, double vj, double length, double load)
    {
        if (vi + vj < 0)
        {
            (vi, vj) = (-vj, -vi);
        }

        double ti = Math.Sqrt((h * h) + (vi * vi)), tj = Math.Sqrt((h * h) + (vj * vj));
        var denominator = vi > 0 ? vi + ti : h * h / (ti - vi);
        var relative = length * (1 + ((vi + vj) / (ti + tj))) / denominator;
        var z = load * relative;
        return z < 1e-8 ? relative * (1 - (0.5 * z)) : LogOnePlus(z) / load;
    }

    // ln(1+z) without losing the digits of a small z (Kahan).
    private static double LogOnePlus(double z)
    {
        var u = 1 + z;
        return u == 1 ? z : Math.Log(u) * (z / (u - 1));
    }
}
