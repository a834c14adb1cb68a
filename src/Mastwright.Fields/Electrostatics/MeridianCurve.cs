namespace Mastwright.Fields.Electrostatics;

/// <summary>
/// A piece of the outline of a body of revolution about the z axis: a smooth curve t ↦ (r, z), t from 0 to 1, lengths in metres.
/// The side on which the air lies does not matter: on a conductor the outer charge is all there is.
/// </summary>
public abstract record MeridianCurve
{
    /// <summary>Point on the curve.</summary>
    public abstract (double R, double Z) Point(double t);

    /// <summary>Derivative by t in metres.</summary>
    public abstract (double R, double Z) Derivative(double t);

    /// <summary>Radius of curvature in the meridian plane at t, in metres; infinite on a straight line.</summary>
    public abstract double MeridianRadiusM(double t);

    /// <summary>Radius of curvature around the axis at t (distance to the axis along the surface normal), in metres; infinite on a flat disc.</summary>
    public double AzimuthRadiusM(double t)
    {
        var (dr, dz) = Derivative(t);
        var cosine = Math.Abs(dz) / Math.Sqrt((dr * dr) + (dz * dz));
        var r = Point(t).R;
        // On the axis the two radii of curvature are one.
        return r < 1e-12 ? MeridianRadiusM(t) : cosine < 1e-12 ? double.PositiveInfinity : r / cosine;
    }

    /// <summary>Speed |d(r, z)/dt| in metres.</summary>
    internal double Speed(double t)
    {
        var (dr, dz) = Derivative(t);
        return Math.Sqrt((dr * dr) + (dz * dz));
    }
}

/// <summary>A straight piece: cylinder, cone or disc.</summary>
/// <param name="StartR">Radius at the start in metres.</param>
/// <param name="StartZ">Height at the start in metres.</param>
/// <param name="EndR">Radius at the end in metres.</param>
/// <param name="EndZ">Height at the end in metres.</param>
public sealed record MeridianLine(double StartR, double StartZ, double EndR, double EndZ) : MeridianCurve
{
    /// <inheritdoc/>
    public override (double R, double Z) Point(double t) => (StartR + (t * (EndR - StartR)), StartZ + (t * (EndZ - StartZ)));

    /// <inheritdoc/>
    public override (double R, double Z) Derivative(double t) => (EndR - StartR, EndZ - StartZ);

    /// <inheritdoc/>
    public override double MeridianRadiusM(double t) => double.PositiveInfinity;
}

/// <summary>An arc of an ellipse with axes along r and z: a circle's arc when both half-axes are equal.</summary>
/// <param name="CentreR">Radius of the centre in metres: 0 for a ball or dome, the ring radius for a torus.</param>
/// <param name="CentreZ">Height of the centre in metres.</param>
/// <param name="SemiR">Half-axis along r in metres.</param>
/// <param name="SemiZ">Half-axis along z in metres.</param>
/// <param name="StartRad">Angle at the start, counted from the r direction towards z.</param>
/// <param name="EndRad">Angle at the end.</param>
public sealed record MeridianArc(double CentreR, double CentreZ, double SemiR, double SemiZ, double StartRad, double EndRad) : MeridianCurve
{
    /// <inheritdoc/>
    public override (double R, double Z) Point(double t)
    {
        var (s, c) = Math.SinCos(Angle(t));
        var r = CentreR + (SemiR * c);
        return (Math.Abs(r) < 1e-14 * SemiR ? 0 : r, CentreZ + (SemiZ * s));
    }

    /// <inheritdoc/>
    public override (double R, double Z) Derivative(double t)
    {
        var (s, c) = Math.SinCos(Angle(t));
        var turn = EndRad - StartRad;
        return (-SemiR * s * turn, SemiZ * c * turn);
    }

    /// <inheritdoc/>
    public override double MeridianRadiusM(double t)
    {
        var (s, c) = Math.SinCos(Angle(t));
        var speed = Math.Sqrt((SemiR * s * SemiR * s) + (SemiZ * c * SemiZ * c));
        return speed * speed * speed / (SemiR * SemiZ);
    }

    private double Angle(double t) => StartRad + (t * (EndRad - StartRad));
}
