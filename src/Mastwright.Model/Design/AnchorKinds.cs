using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>A concrete block in or on the ground, held by its weight, its friction and the soil in front of it.</summary>
public sealed record BlockAnchor
{
    /// <summary>Length along the pull, m.</summary>
    [Field("length", "Length along the pull.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double LengthM { get; init; }

    /// <summary>Width across the pull, m.</summary>
    [Field("width", "Width across the pull.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double WidthM { get; init; }

    /// <summary>Height, m.</summary>
    [Field("height", "Height of the block.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double HeightM { get; init; }

    /// <summary>Depth of its top below ground, m.</summary>
    [Field("top-depth", "Depth of its top below ground.", Default = "0 m", Why = "cast flush with the ground")]
    [Quantity(QuantityKind.Length, 0, 10)]
    public double TopDepthM { get; init; }
}

/// <summary>A concrete beam buried across the pull.</summary>
public sealed record DeadmanAnchor
{
    /// <summary>Length across the pull, m.</summary>
    [Field("length", "Length across the pull.", Required = true)]
    [Quantity(QuantityKind.Length, 0.2, 10)]
    public double LengthM { get; init; }

    /// <summary>Height of the beam, m.</summary>
    [Field("height", "Height of the beam.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 5)]
    public double HeightM { get; init; }

    /// <summary>Thickness along the pull, m.</summary>
    [Field("thickness", "Thickness along the pull.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 5)]
    public double ThicknessM { get; init; }

    /// <summary>Depth of its top below ground, m.</summary>
    [Field("top-depth", "Depth of its top below ground.", Required = true)]
    [Quantity(QuantityKind.Length, 0, 10)]
    public double TopDepthM { get; init; }
}

/// <summary>A steel screw with one helical plate.</summary>
public sealed record ScrewInGround
{
    /// <summary>Diameter of the plate, m.</summary>
    [Field("diameter", "Diameter of the helical plate.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.05, 1)]
    public double DiameterM { get; init; }

    /// <summary>Vertical depth of the plate, m.</summary>
    [Field("depth", "Vertical depth of the plate below ground.", Required = true)]
    [Quantity(QuantityKind.Length, 0.3, 15)]
    public double DepthM { get; init; }

    /// <summary>Rated strength of shaft and eye, N.</summary>
    [Field("rated", "Rated strength of shaft and eye, from the maker.", Required = true)]
    [Quantity(QuantityKind.Force, 100, 10e6)]
    public double RatedN { get; init; }

    /// <summary>Torque it was driven with, N·m.</summary>
    [Field("torque", "Torque at the end of driving, when measured.", Default = "not measured")]
    [Quantity(QuantityKind.Moment, 10, 100e3)]
    public double? TorqueNm { get; init; }
}

/// <summary>A bar grouted into rock.</summary>
public sealed record RockBar
{
    /// <summary>Diameter of the hole, m.</summary>
    [Field("hole", "Diameter of the drilled hole.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.015, 0.3)]
    public double HoleDiameterM { get; init; }

    /// <summary>Bonded length in sound rock, m.</summary>
    [Field("bond-length", "Grouted length in sound rock.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 10)]
    public double BondLengthM { get; init; }

    /// <summary>Bar diameter, m.</summary>
    [Field("bar", "Diameter of the bar.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.006, 0.1)]
    public double BarDiameterM { get; init; }
}

/// <summary>A steel tube set in the ground that holds the guy above it.</summary>
public sealed record PostInGround
{
    /// <summary>Outside diameter, m.</summary>
    [Field("diameter", "Outside diameter of the tube.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.03, 1)]
    public double DiameterM { get; init; }

    /// <summary>Wall, m.</summary>
    [Field("wall", "Wall thickness.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.001, 0.1)]
    public double WallM { get; init; }

    /// <summary>Yield strength, Pa.</summary>
    [Field("yield", "Yield strength of the tube.", Default = "235 MPa", Why = "the common mild grade")]
    [Quantity(QuantityKind.Stress, 50e6, 1e9)]
    public double YieldPa { get; init; } = 235e6;

    /// <summary>Strength of the concrete filling, Pa.</summary>
    [Field("filling", "Strength of the concrete the tube is filled with.", Default = "0 MPa", Why = "not filled")]
    [Quantity(QuantityKind.Stress, 0, 100e6)]
    public double FillingPa { get; init; }

    /// <summary>Diameter of the hole it is cast in, m.</summary>
    [Field("hole", "Diameter of the concrete-filled hole it stands in.", Required = true)]
    [Quantity(QuantityKind.Length, 0.1, 2)]
    public double HoleDiameterM { get; init; }

    /// <summary>Embedded length, m.</summary>
    [Field("depth", "Embedded length.", Required = true)]
    [Quantity(QuantityKind.Length, 0.3, 6)]
    public double DepthM { get; init; }
}
