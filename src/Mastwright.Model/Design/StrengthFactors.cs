using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>Formats of member rules.</summary>
public enum MemberFormat
{
    /// <summary>Resistance factors.</summary>
    [Word("resistance-factors", "AISC 360 and the Aluminum Design Manual with resistance factors, for factored loads")]
    ResistanceFactors,

    /// <summary>Allowable strength.</summary>
    [Word("allowable-strength", "AISC 360 and the Aluminum Design Manual with allowable strength, for service loads")]
    AllowableStrength,

    /// <summary>Eurocodes.</summary>
    [Word("eurocode", "EN 1993-1-1 and EN 1999-1-1, for factored loads")]
    Eurocode,
}

/// <summary>Factors on nominal member strength, all multipliers: φ, 1/Ω or 1/γM.</summary>
public sealed record MemberFactors
{
    /// <summary>Yielding.</summary>
    [Field("yielding", "On yielding in tension.", Required = true)]
    [Quantity(QuantityKind.Ratio, 0.2, 1)]
    public double Yielding { get; init; } = 0.9;

    /// <summary>Rupture.</summary>
    [Field("rupture", "On rupture, bolts and bearing.", Required = true)]
    [Quantity(QuantityKind.Ratio, 0.2, 1)]
    public double Rupture { get; init; } = 0.75;

    /// <summary>Compression.</summary>
    [Field("compression", "On compression.", Required = true)]
    [Quantity(QuantityKind.Ratio, 0.2, 1)]
    public double Compression { get; init; } = 0.9;

    /// <summary>Bending.</summary>
    [Field("bending", "On bending.", Required = true)]
    [Quantity(QuantityKind.Ratio, 0.2, 1)]
    public double Bending { get; init; } = 0.9;
}

/// <summary>Factors of safety of soil and concrete.</summary>
public sealed record GroundSafety
{
    /// <summary>On bearing failure computed from soil strength.</summary>
    [Field("bearing", "On bearing failure computed from soil strength.", Default = "3", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Bearing { get; init; } = 3;

    /// <summary>On uplift carried by the strength of soil.</summary>
    [Field("uplift", "On uplift carried by the strength of soil.", Default = "2", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Uplift { get; init; } = 2;

    /// <summary>On uplift carried by dead weight alone.</summary>
    [Field("dead-weight", "On uplift carried by dead weight alone.", Default = "1.5", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double DeadWeight { get; init; } = 1.5;

    /// <summary>On sideways failure of soil.</summary>
    [Field("lateral", "On sideways failure of soil.", Default = "2", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Lateral { get; init; } = 2;

    /// <summary>On sliding.</summary>
    [Field("sliding", "On sliding.", Default = "1.5", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Sliding { get; init; } = 1.5;

    /// <summary>On tipping over.</summary>
    [Field("overturning", "On tipping over.", Default = "1.5", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Overturning { get; init; } = 1.5;

    /// <summary>On screw anchors judged by their driving torque.</summary>
    [Field("screw-torque", "On screw anchors judged by their driving torque.", Default = "2", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double ScrewTorque { get; init; } = 2;

    /// <summary>On the bond of grout to rock and steel.</summary>
    [Field("bond", "On the bond of grout to rock and steel.", Default = "3", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Bond { get; init; } = 3;

    /// <summary>On yielding of steel in anchors and base plates.</summary>
    [Field("steel", "On yielding of steel in anchors and base plates.", Default = "1.67", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Steel { get; init; } = 1.67;

    /// <summary>On bearing of concrete.</summary>
    [Field("concrete", "On bearing of concrete.", Default = "2.5", Why = "common practice, no source; local code governs")]
    [Quantity(QuantityKind.Ratio, 1, 10)]
    public double Concrete { get; init; } = 2.5;
}
