namespace Mastwright.Catalog;

/// <summary>A metal or a metallic coat.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Family"><c>"steel"</c>, <c>"aluminium"</c>, <c>"stainless"</c>, <c>"copper"</c>, ...</param>
/// <param name="YieldPa">Yield strength; null for coats.</param>
/// <param name="UltimatePa">Tensile strength; null for coats.</param>
/// <param name="WeldedYieldPa">Yield strength in the zone softened by a weld; null where welding does not soften.</param>
/// <param name="WeldedUltimatePa">Tensile strength in the zone softened by a weld; null where welding does not soften.</param>
/// <param name="ModulusPa">Modulus of elasticity.</param>
/// <param name="DensityKgPerM3">Density.</param>
/// <param name="ExpansionPerK">Coefficient of thermal expansion.</param>
/// <param name="ConductivitySPerM">Electrical conductivity at 20 °C.</param>
/// <param name="RelativePermeability">Relative permeability taken for skin effect; for steel a rough value.</param>
/// <param name="AnodicIndexV">Anodic index: volts to gold. Metals far apart corrode in contact.</param>
public sealed record Metal(
    RowInfo Info,
    string Family,
    double? YieldPa,
    double? UltimatePa,
    double? WeldedYieldPa,
    double? WeldedUltimatePa,
    double ModulusPa,
    double DensityKgPerM3,
    double ExpansionPerK,
    double ConductivitySPerM,
    double RelativePermeability,
    double AnodicIndexV)
    : Part(Info);

/// <summary>Soil as a conductor of radio waves.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="RelativePermittivity">Relative permittivity.</param>
/// <param name="ConductivitySPerM">Conductivity.</param>
public sealed record ElectricalSoil(RowInfo Info, double RelativePermittivity, double ConductivitySPerM) : Part(Info);

/// <summary>Soil as something to stand on and pull against. Presumptive values: only a soil test knows.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="BearingPa">Allowable vertical bearing; null when nothing may be presumed.</param>
/// <param name="LateralPaPerM">Allowable lateral bearing per metre of depth; null when nothing may be presumed.</param>
/// <param name="BaseFriction">Allowable coefficient of friction under a footing; null where adhesion is used or nothing may be presumed.</param>
/// <param name="BaseAdhesionPa">Allowable adhesion under a footing, for clay; null elsewhere.</param>
/// <param name="UnitWeightNPerM3">Moist unit weight.</param>
/// <param name="FrictionAngleRad">Angle of internal friction; null for clay and rock.</param>
/// <param name="UndrainedShearPa">Undrained shear strength; null for sand, gravel and rock.</param>
public sealed record MechanicalSoil(
    RowInfo Info,
    double? BearingPa,
    double? LateralPaPerM,
    double? BaseFriction,
    double? BaseAdhesionPa,
    double UnitWeightNPerM3,
    double? FrictionAngleRad,
    double? UndrainedShearPa)
    : Part(Info);
