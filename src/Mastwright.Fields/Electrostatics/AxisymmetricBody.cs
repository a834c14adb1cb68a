using System.Collections.Immutable;

namespace Mastwright.Fields.Electrostatics;

/// <summary>A conductor of revolution about the z axis. All pieces of one body share one potential; they need not touch.</summary>
/// <param name="Name">Name, unique among the bodies of a problem.</param>
/// <param name="Outline">Its outline, piece after piece; pieces that touch end to start are meshed to match.</param>
public sealed record AxisymmetricBody(string Name, ImmutableArray<MeridianCurve> Outline)
{
    /// <summary>A ball.</summary>
    /// <param name="name">Name.</param>
    /// <param name="centreZ">Height of the centre in metres.</param>
    /// <param name="radiusM">Radius in metres.</param>
    public static AxisymmetricBody Ball(string name, double centreZ, double radiusM) =>
        new(name, [new MeridianArc(0, centreZ, radiusM, radiusM, -Math.PI / 2, Math.PI / 2)]);

    /// <summary>A ring of round tube, its plane level.</summary>
    /// <param name="name">Name.</param>
    /// <param name="centreZ">Height of the tube's centre line in metres.</param>
    /// <param name="ringRadiusM">Radius of the centre line in metres.</param>
    /// <param name="tubeRadiusM">Radius of the tube in metres, less than the ring radius.</param>
    public static AxisymmetricBody Ring(string name, double centreZ, double ringRadiusM, double tubeRadiusM) =>
        new(name, [new MeridianArc(ringRadiusM, centreZ, tubeRadiusM, tubeRadiusM, 0, 2 * Math.PI)]);

    /// <summary>An upright rod with a half-ball on top and a half-ball below, or standing on the plane.</summary>
    /// <param name="name">Name.</param>
    /// <param name="bottomZ">Height of its lowest point in metres; 0 stands on the plane with no lower end.</param>
    /// <param name="topZ">Height of its highest point in metres.</param>
    /// <param name="radiusM">Radius in metres.</param>
    public static AxisymmetricBody Rod(string name, double bottomZ, double topZ, double radiusM)
    {
        var shaftTop = topZ - radiusM;
        var dome = new MeridianArc(0, shaftTop, radiusM, radiusM, 0, Math.PI / 2);
        if (bottomZ <= 0)
            return new(name, [new MeridianLine(radiusM, 0, radiusM, shaftTop), dome]);
        var shaftBottom = bottomZ + radiusM;
        return new(name,
        [
            new MeridianArc(0, shaftBottom, radiusM, radiusM, -Math.PI / 2, 0),
            new MeridianLine(radiusM, shaftBottom, radiusM, shaftTop),
            dome,
        ]);
    }

    /// <summary>The same body with another body's outline joined to it electrically.</summary>
    public AxisymmetricBody JoinedWith(AxisymmetricBody other) => this with { Outline = [.. Outline, .. other.Outline] };
}
