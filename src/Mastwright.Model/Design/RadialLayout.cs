using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>How radials lie.</summary>
public enum RadialLay
{
    /// <summary>On the surface.</summary>
    [Word("surface", "laid on the surface, where grass and rain bury them shallowly within a season")]
    Surface,

    /// <summary>In the soil.</summary>
    [Word("buried", "buried at the stated depth")]
    Buried,

    /// <summary>In the air.</summary>
    [Word("elevated", "hung in the air at the stated height, insulated from the soil")]
    Elevated,
}

/// <summary>How the earth enters the verdict.</summary>
public enum EarthModel
{
    /// <summary>The quick estimate.</summary>
    [Word("estimate", "currents over perfect ground, and a loss resistance for soil and radials: instant, for eight or more equal radials on or in the soil")]
    Estimate,

    /// <summary>The exact half space.</summary>
    [Word("exact", "currents solved over the real soil with every radial as a wire: slower, right for few, short, uneven or elevated radials too")]
    Exact,
}

/// <summary>A sheet of mesh or plate around the base.</summary>
public sealed record GroundScreen
{
    /// <summary>Side of the square, m.</summary>
    [Field("width", "Side of the square of mesh or plate under the base, joined to the radials.", Required = true)]
    [Quantity(QuantityKind.Length, 0.2, 30)]
    public double WidthM { get; init; }

    /// <summary>Width of the meshes, m; null for a plate.</summary>
    [Field("mesh", "Width of the meshes; leave it out for a solid plate.", Default = "none, a solid plate")]
    [Quantity(QuantityKind.FineLength, 0.001, 0.5)]
    public double? MeshM { get; init; }

    /// <summary>Radius of the disc of equal area, m.</summary>
    public double RadiusM => WidthM / Math.Sqrt(Math.PI);
}

/// <summary>A range of bearings in which radials are cut short.</summary>
public sealed record ShortRadials
{
    /// <summary>Where the range begins, rad.</summary>
    [Field("from", "Compass bearing at which the range begins, seen from the mast's foot.", Required = true)]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double FromRad { get; init; }

    /// <summary>Where it ends, rad, going clockwise.</summary>
    [Field("to", "Compass bearing at which it ends, going clockwise.", Required = true)]
    [Quantity(QuantityKind.Angle, 0, 2 * Math.PI)]
    public double ToRad { get; init; }

    /// <summary>Length in the range, m.</summary>
    [Field("length", "Length of the radials in that range.", Required = true)]
    [Quantity(QuantityKind.Length, 0.5, 500)]
    public double LengthM { get; init; }

    /// <summary>Whether a bearing lies in the range.</summary>
    public bool Holds(double bearingRad)
    {
        var span = Turn(ToRad - FromRad);
        return Turn(bearingRad - FromRad) <= span + 1e-9;
    }

    private static double Turn(double rad) => rad - (2 * Math.PI * Math.Floor(rad / (2 * Math.PI)));
}
