using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>A square steel plate under the base insulator, on the concrete.</summary>
public sealed record BasePlate
{
    /// <summary>Side, m.</summary>
    [Field("width", "Side of the square plate.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.03, 2)]
    public double WidthM { get; init; }

    /// <summary>Thickness, m.</summary>
    [Field("thickness", "Thickness of the plate.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.002, 0.2)]
    public double ThicknessM { get; init; }

    /// <summary>Yield strength, Pa.</summary>
    [Field("yield", "Yield strength of the plate.", Default = "235 MPa", Why = "the common mild grade")]
    [Quantity(QuantityKind.Stress, 100e6, 1000e6)]
    public double YieldPa { get; init; } = 235e6;
}

/// <summary>A plate with a hole on the mast that a shackle takes hold of.</summary>
public sealed record LugSpec
{
    /// <summary>Thickness, m.</summary>
    [Field("thickness", "Thickness of the plate.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.002, 0.1)]
    public double ThicknessM { get; init; }

    /// <summary>Width across the pull, m.</summary>
    [Field("width", "Width across the pull.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.01, 0.5)]
    public double WidthM { get; init; }

    /// <summary>Hole, m.</summary>
    [Field("hole", "Diameter of the hole.", Required = true)]
    [Quantity(QuantityKind.FineLength, 0.004, 0.2)]
    public double HoleM { get; init; }

    /// <summary>Pin, m; null for the hole less a millimetre.</summary>
    [Field("pin", "Diameter of the shackle's pin.", Default = "1 mm less than the hole")]
    [Quantity(QuantityKind.FineLength, 0.003, 0.2)]
    public double? PinM { get; init; }

    /// <summary>End distance, m; null for centred in the width.</summary>
    [Field("end-distance", "Metal from the hole's edge to the plate's end, along the pull.", Default = "as much as beside the hole")]
    [Quantity(QuantityKind.FineLength, 0.002, 0.5)]
    public double? EndDistanceM { get; init; }

    /// <summary>Metal, catalogue name.</summary>
    [Field("metal", "The metal (see `mastwright list metals`).", Default = "S235", Why = "the common mild grade")]
    [CatalogueName("metals")]
    public string Metal { get; init; } = "S235";
}
