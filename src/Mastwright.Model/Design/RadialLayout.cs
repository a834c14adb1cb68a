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

/// <summary>How conductivity and permittivity of the soil change with frequency.</summary>
public enum SoilFrequency
{
    /// <summary>They do not.</summary>
    [Word("constant", "the same on every band, as the soil class or your own figures say")]
    Constant,

    /// <summary>Longmire and Smith.</summary>
    [Word("longmire-smith", "the universal soil of Longmire and Smith 1975: thirteen relaxations that follow from the conductivity at low frequency; the permittivity stated is not used")]
    LongmireSmith,

    /// <summary>Messier.</summary>
    [Word("messier", "Messier 1980: both follow from the conductivity at low frequency and a high-frequency permittivity of 8")]
    Messier,

    /// <summary>Alipio and Visacro.</summary>
    [Word("alipio-visacro", "Alipio and Visacro 2014, recommended by CIGRE: fitted to field measurements up to 4 MHz; the permittivity stated is not used")]
    AlipioVisacro,
}

/// <summary>Insulation on radial wires.</summary>
public sealed record WireJacket
{
    /// <summary>Radial thickness, m.</summary>
    [Field("thickness", "Thickness of the insulation.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.00005, 0.02)]
    public double ThicknessM { get; init; } = 0.0008;

    /// <summary>Relative permittivity.</summary>
    [Field("permittivity", "Its relative permittivity: 2.3 for polyethylene, 3 to 4 for PVC.", Default = "3.5", Why = "PVC; from memory")]
    [Quantity(QuantityKind.Ratio, 1, 20)]
    public double RelativePermittivity { get; init; } = 3.5;

    /// <summary>Loss tangent.</summary>
    [Field("loss-tangent", "Its loss tangent.", Default = "0.03", Why = "PVC; from memory")]
    [Quantity(QuantityKind.Ratio, 0, 1)]
    public double LossTangent { get; init; } = 0.03;
}

/// <summary>A straight conductor near the masts that is no part of them: a flagpole, a gutter, a rail, a steel fence rail.</summary>
public sealed record NearbyMetal
{
    /// <summary>What it is.</summary>
    [Field("name", "What it is, e.g. flagpole, gutter, fence rail.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>East of the site's origin, m.</summary>
    [Field("east", "Where it begins, east of the site's origin.", Required = true)]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double EastM { get; init; }

    /// <summary>North of the site's origin, m.</summary>
    [Field("north", "Where it begins, north of the site's origin.", Required = true)]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double NorthM { get; init; }

    /// <summary>Height of its beginning, m.</summary>
    [Field("height", "Height of its beginning above ground.", Default = "0 m", Why = "it stands on the ground")]
    [Quantity(QuantityKind.Length, 0, 200)]
    public double HeightM { get; init; }

    /// <summary>East of its end, m.</summary>
    [Field("end-east", "Where it ends, east of the site's origin.", Default = "above its beginning")]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double? EndEastM { get; init; }

    /// <summary>North of its end, m.</summary>
    [Field("end-north", "Where it ends, north of the site's origin.", Default = "above its beginning")]
    [Quantity(QuantityKind.Length, -5000, 5000)]
    public double? EndNorthM { get; init; }

    /// <summary>Height of its end, m.</summary>
    [Field("end-height", "Height of its end above ground.", Required = true)]
    [Quantity(QuantityKind.Length, 0, 200)]
    public double EndHeightM { get; init; }

    /// <summary>Diameter, m.</summary>
    [Field("diameter", "Its diameter, or of anything not round the diameter of a round bar of the same girth.", Default = "50 mm", Why = "a common pole; it matters little")]
    [Quantity(QuantityKind.FineLength, 0.001, 2)]
    public double DiameterM { get; init; } = 0.05;

    /// <summary>Whether the end on the ground is joined to it.</summary>
    [Field("earthed", "Whether an end that stands on the ground is joined to it; over real soil by a rod of 1 m.", Default = "yes", Why = "metal in a footing is joined to the soil well enough")]
    public bool Earthed { get; init; } = true;
}

/// <summary>How radio frequency sees a lattice mast.</summary>
public enum LatticeModel
{
    /// <summary>One round conductor.</summary>
    [Word("equivalent", "one round conductor of the radius that has the inductance and capacitance of the legs together")]
    Equivalent,

    /// <summary>Every leg.</summary>
    [Word("legs", "every leg a wire of its own, tied together at joints of sections and at guy levels")]
    Legs,
}
