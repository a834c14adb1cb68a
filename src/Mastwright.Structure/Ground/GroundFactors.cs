using Mastwright.Model.Trails;
using Mastwright.Numerics;

namespace Mastwright.Structure.Ground;

/// <summary>Factors of safety for ground and concrete, on service loads; change them with <c>with</c>. All are common practice unless your code says otherwise.</summary>
public sealed record GroundFactors
{
    /// <summary>On bearing failure computed from soil strength.</summary>
    public double Bearing { get; init; } = 3.0;

    /// <summary>On uplift carried by the strength of soil.</summary>
    public double Uplift { get; init; } = 2.0;

    /// <summary>On uplift carried by dead weight alone.</summary>
    public double DeadWeight { get; init; } = 1.5;

    /// <summary>On sideways failure of soil.</summary>
    public double Lateral { get; init; } = 2.0;

    /// <summary>On sliding.</summary>
    public double Sliding { get; init; } = 1.5;

    /// <summary>On tipping over.</summary>
    public double Overturning { get; init; } = 1.5;

    /// <summary>On screw anchors judged by their installation torque.</summary>
    public double ScrewTorque { get; init; } = 2.0;

    /// <summary>On the bond of grout to rock and to steel.</summary>
    public double Bond { get; init; } = 3.0;

    /// <summary>On yielding of steel and on sections of steel and concrete.</summary>
    public double Steel { get; init; } = 1.67;

    /// <summary>On bearing of concrete.</summary>
    public double ConcreteBearing { get; init; } = 2.5;

    /// <summary>On the ultimate compression of a base insulator.</summary>
    public double Ceramic { get; init; } = 3.0;

    internal static Trail Trail(string what, double value) =>
        Model.Trails.Trail.Given($"factor of safety on {what}", "FS", value, QuantityKind.Ratio, Source.CommonPractice, "changeable");
}

/// <summary>What a guy or several guys on one anchor ask of it.</summary>
/// <param name="HorizontalN">Horizontal part, N.</param>
/// <param name="UpN">Upward part, N.</param>
public sealed record AnchorPull(double HorizontalN, double UpN)
{
    /// <summary>The whole pull, N.</summary>
    public double TotalN => Math.Sqrt((HorizontalN * HorizontalN) + (UpN * UpN));

    /// <summary>The pull of a force on the anchor; x east, y north, z up. A force down pulls nothing up.</summary>
    public static AnchorPull Of(Vec3 forceN) => new(Math.Sqrt((forceN.X * forceN.X) + (forceN.Y * forceN.Y)), Math.Max(0, forceN.Z));

    internal Trail Horizontal => Trail.Given("horizontal pull on the anchor", "H", HorizontalN, QuantityKind.Force, FromAnalysis);

    internal Trail Up => Trail.Given("upward pull on the anchor", "V", UpN, QuantityKind.Force, FromAnalysis);

    internal Trail Total => Trail.Computed("pull on the anchor", "T", TotalN, QuantityKind.Force, "T = √(H² + V²)", Source.Literature("statics"), Horizontal, Up);

    internal static Source FromAnalysis { get; } = new("second-order analysis of the mast", SourceKind.Derived);
}

/// <summary>Where an anchor stands and what is asked of it.</summary>
/// <param name="Part">Which anchor, e.g. <c>"mast A, north"</c>; goes into the names of the checks.</param>
/// <param name="Soil">The soil.</param>
/// <param name="Pull">The greatest pull.</param>
/// <param name="GoverningCase">The case it comes from, in words.</param>
/// <param name="Factors">Factors of safety.</param>
public sealed record AnchorDuty(string Part, Soil Soil, AnchorPull Pull, string GoverningCase, GroundFactors Factors);

/// <summary>A ground anchor. A new kind is one new class.</summary>
public abstract record Anchor
{
    /// <summary>What must hold of it, each as a check with cure and caution.</summary>
    public abstract IEnumerable<Check> Examine(AnchorDuty duty);

    /// <summary>A check that demand stays within capacity, with the soil's caution.</summary>
    private protected static Check AtMost(AnchorDuty duty, string id, string title, Trail demand, Trail capacity, string cure) => Check.AtMost(
        $"stand.anchor.{id}[{duty.Part}]", Trade.Stand, title, demand, capacity, duty.GoverningCase, cure, duty.Soil.Caution);

    /// <summary>A check that cannot be answered, because the soil lacks a value the method needs.</summary>
    private protected static Check Unknown(AnchorDuty duty, string id, string title, Trail demand, string missing) => new(
        $"stand.anchor.{id}[{duty.Part}]", Trade.Stand, title, demand,
        Trail.Given("capacity that can be shown", "R", 0, demand.Kind, new("nothing is presumed where a soil value is missing", SourceKind.Assumed)),
        0, Verdict.Unknown, duty.GoverningCase, $"Give the soil's {missing}; have it tested.", duty.Soil.Caution);
}
