using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>The earth at each mast besides its radials.</summary>
public sealed record EarthSystem
{
    /// <summary>Measured resistivity, Ω·m.</summary>
    [Field("resistivity", "Resistivity of the soil measured with direct or low-frequency current.", Default = "one over the soil's conductivity at radio frequency")]
    [Quantity(QuantityKind.Resistivity, 0.1, 1e5)]
    public double? ResistivityOhmM { get; init; }

    /// <summary>Number of rods.</summary>
    [Field("rods", "Earth rods driven around each base and bonded to its plate.", Default = "0", Why = "the file names none; rods make a strike's earth deeper and drier seasons safer")]
    [Quantity(QuantityKind.Count, 0, 40)]
    public int Rods { get; init; }

    /// <summary>Length of a rod, m.</summary>
    [Field("rod-length", "Length of a rod in the ground.", Default = "2.4 m", Why = "an 8 ft rod")]
    [Quantity(QuantityKind.Length, 0.3, 30)]
    public double RodLengthM { get; init; } = 2.4;

    /// <summary>Diameter of a rod, m.</summary>
    [Field("rod-diameter", "Diameter of a rod.", Default = "16 mm", Why = "a 5/8 in rod")]
    [Quantity(QuantityKind.FineLength, 0.006, 0.1)]
    public double RodDiameterM { get; init; } = 0.016;

    /// <summary>Distance of the rods from the mast's axis, m.</summary>
    [Field("rod-distance", "Distance of the rods from the mast's axis; they stand evenly spread.", Default = "2.4 m", Why = "about a rod's length apart, so that they share the current; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.1, 50)]
    public double RodDistanceM { get; init; } = 2.4;

    /// <summary>Metal of the rods, catalogue name.</summary>
    [Field("rod-metal", "Metal of the rods' surface (see `mastwright list metals`).", Default = "copper", Why = "copper-clad steel rods")]
    [CatalogueName("metals")]
    public string RodMetal { get; init; } = "copper";

    /// <summary>A ring in the ground.</summary>
    [Field("ring", "A buried ring round each base, bonded to every radial that crosses it.", Default = "none")]
    public EarthRing? Ring { get; init; }

    /// <summary>How radials are bonded.</summary>
    [Field("radial-bond", "How the radials are joined at the base.", Default = "plate", Why = "a plate or ring at the foot that all radials are bolted or brazed to")]
    public RadialBond RadialBond { get; init; } = RadialBond.Plate;

    /// <summary>Metal of the radials under a strike's heat.</summary>
    [Field("radial-metal", "Metal of the radials.", Default = "copper", Why = "copper or copper-clad wire")]
    public StrapMetal RadialMetal { get; init; } = StrapMetal.Copper;

    /// <summary>Resistivity of a layer on the ground, Ω·m.</summary>
    [Field("surface-resistivity", "Resistivity of a layer of gravel or asphalt around the base, wet.", Default = "no layer")]
    [Quantity(QuantityKind.Resistivity, 1, 1e6)]
    public double? SurfaceOhmM { get; init; }

    /// <summary>Thickness of that layer, m.</summary>
    [Field("surface-thickness", "Thickness of that layer.", Default = "0.1 m", Why = "four inches of gravel; it counts only with a surface-resistivity")]
    [Quantity(QuantityKind.FineLength, 0.01, 1)]
    public double SurfaceThicknessM { get; init; } = 0.1;
}

/// <summary>A buried ring.</summary>
public sealed record EarthRing
{
    /// <summary>Diameter, m.</summary>
    [Field("diameter", "Diameter of the ring.", Required = true)]
    [Quantity(QuantityKind.Length, 0.5, 200)]
    public double DiameterM { get; init; } = 4;

    /// <summary>Wire diameter, m.</summary>
    [Field("wire", "Diameter of its wire, or that of a round wire of the strap's girth.", Default = "8 mm", Why = "a 50 mm² conductor")]
    [Quantity(QuantityKind.FineLength, 0.001, 0.1)]
    public double WireDiameterM { get; init; } = 0.008;

    /// <summary>Depth, m.</summary>
    [Field("depth", "Depth of the ring.", Default = "0.5 m", Why = "below the dry top soil; common practice, no source")]
    [Quantity(QuantityKind.Length, 0.02, 5)]
    public double DepthM { get; init; } = 0.5;
}

/// <summary>How radials are joined at the base.</summary>
public enum RadialBond
{
    /// <summary>A plate.</summary>
    [Word("plate", "all bolted, brazed or soldered to one plate or bus at the foot")]
    Plate,

    /// <summary>Twisted and clamped.</summary>
    [Word("clamped", "laid together under clamps; joints must be inspected, they carry the strike")]
    Clamped,

    /// <summary>Not bonded.</summary>
    [Word("none", "joined for radio frequency through the feed only, not for a strike")]
    None,
}
