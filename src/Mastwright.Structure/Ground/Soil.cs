using Mastwright.Model.Trails;

namespace Mastwright.Structure.Ground;

/// <summary>Soil to stand on and pull against. What is null is not known, and a method that needs it says so.</summary>
/// <param name="Name">Its class, e.g. <c>"sand"</c>.</param>
/// <param name="UnitWeightNPerM3">Moist (or saturated, when submerged) unit weight, N/m³.</param>
public sealed record Soil(string Name, double UnitWeightNPerM3)
{
    internal const double WaterNPerM3 = 9806.65;

    /// <summary>Angle of internal friction, rad; null for clay and rock.</summary>
    public double? FrictionAngleRad { get; init; }

    /// <summary>Undrained shear strength cu, Pa; null for sand, gravel and rock.</summary>
    public double? UndrainedShearPa { get; init; }

    /// <summary>Allowable (presumptive) vertical bearing, Pa.</summary>
    public double? AllowableBearingPa { get; init; }

    /// <summary>Allowable (presumptive) lateral bearing per metre of depth, Pa/m.</summary>
    public double? LateralPaPerM { get; init; }

    /// <summary>Friction coefficient under a footing.</summary>
    public double? BaseFriction { get; init; }

    /// <summary>Adhesion under a footing, Pa, for clay.</summary>
    public double? BaseAdhesionPa { get; init; }

    /// <summary>Whether ground water may stand above the works.</summary>
    public bool Submerged { get; init; }

    /// <summary>Whether the values come from a test of this very soil.</summary>
    public bool Tested { get; init; }

    /// <summary>Where the values come from.</summary>
    public Source Source { get; init; } = Source.DesignFile;

    /// <summary>Whether it is taken as sand or gravel: friction, no cohesion.</summary>
    public bool IsSand => FrictionAngleRad is > 0 && UndrainedShearPa is null;

    /// <summary>Whether it is taken as clay: undrained cohesion.</summary>
    public bool IsClay => UndrainedShearPa is > 0;

    /// <summary>The caution that goes with every result from this soil.</summary>
    public string Caution => Tested
        ? "Soil changes over a few metres and with the seasons: look at what you dig out, and stop if it is not what was tested. Dig only where buried services have been located, and never work in an unsupported trench."
        : "These are presumed soil values: only a soil test knows. Dig only where buried services have been located, never work in an unsupported trench, and have a licensed engineer look at anchors that could hurt someone.";

    internal Trail UnitWeight
    {
        get
        {
            var given = Trail.Given($"unit weight of {Name}", "γ", UnitWeightNPerM3, QuantityKind.UnitWeight, Source);
            return Submerged
                ? Trail.Computed(
                    $"buoyant unit weight of {Name}", "γ", UnitWeightNPerM3 - WaterNPerM3, QuantityKind.UnitWeight, "γ = γsat - γw", Source.Literature("soil mechanics: effective stress"),
                    given, Trail.Given("unit weight of water", "γw", WaterNPerM3, QuantityKind.UnitWeight, Source.Literature("density of water times standard gravity")))
                : given;
        }
    }

    internal Trail FrictionAngle => Trail.Given($"friction angle of {Name}", "φ", FrictionAngleRad ?? 0, QuantityKind.Angle, Source);

    internal Trail UndrainedShear => Trail.Given($"undrained shear strength of {Name}", "cu", UndrainedShearPa ?? 0, QuantityKind.Pressure, Source);
}
