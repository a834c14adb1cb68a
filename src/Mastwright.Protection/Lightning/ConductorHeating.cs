using Mastwright.Model.Trails;

namespace Mastwright.Protection.Lightning;

/// <summary>A conductor material with what its heating by a strike needs (IEC 62305-1 table D.2).</summary>
/// <param name="Name">Name.</param>
/// <param name="ResistivityOhmM">Resistivity at ambient in Ω·m.</param>
/// <param name="TemperatureCoefficientPerK">Rise of the resistivity per kelvin.</param>
/// <param name="DensityKgPerM3">Density in kg/m³.</param>
/// <param name="HeatJPerKgK">Specific heat in J/(kg·K).</param>
/// <param name="MeltingRiseK">Rise in kelvin at which it melts, from 20 °C.</param>
public sealed record StrikeMetal(
    string Name, double ResistivityOhmM, double TemperatureCoefficientPerK, double DensityKgPerM3, double HeatJPerKgK, double MeltingRiseK)
{
    /// <summary>Aluminium.</summary>
    public static StrikeMetal Aluminium { get; } = new("aluminium", 29e-9, 4.0e-3, 2700, 908, 640);

    /// <summary>Mild steel.</summary>
    public static StrikeMetal MildSteel { get; } = new("mild steel", 120e-9, 6.5e-3, 7700, 469, 1510);

    /// <summary>Copper.</summary>
    public static StrikeMetal Copper { get; } = new("copper", 17.8e-9, 3.92e-3, 8920, 385, 1060);

    /// <summary>Stainless steel.</summary>
    public static StrikeMetal Stainless { get; } = new("stainless steel", 700e-9, 0.8e-3, 8000, 500, 1480);
}

/// <summary>Adiabatic heating of a conductor by a lightning current (IEC 62305-1 annex D).</summary>
public static class ConductorHeating
{
    private static readonly Source Iec = Source.FromMemory("IEC 62305-1 annex D.4.1, table D.2", "2010");

    /// <summary>
    /// Temperature rise in kelvin: (1/α)[exp((W/R)·α·ρ₀/(q²·γ·Cw)) − 1]. The skin effect of the pulse, and melting, are not in it; a rise beyond the
    /// melting point is said to melt, and the number is then the rise at which it does.
    /// </summary>
    /// <param name="metal">The metal.</param>
    /// <param name="sectionM2">Cross-section in m², positive.</param>
    /// <param name="specificEnergy">W/R that flows in it, in J/Ω.</param>
    public static Trail Rise(StrikeMetal metal, double sectionM2, Trail specificEnergy)
    {
        var exponent = specificEnergy.Value * metal.TemperatureCoefficientPerK * metal.ResistivityOhmM
            / (sectionM2 * sectionM2 * metal.DensityKgPerM3 * metal.HeatJPerKgK);
        var rise = exponent > 50 ? double.PositiveInfinity : (Math.Exp(exponent) - 1) / metal.TemperatureCoefficientPerK;
        var melts = rise > metal.MeltingRiseK;
        return Trail.Computed($"temperature rise of {metal.Name}", "Δθ", melts ? metal.MeltingRiseK : rise, QuantityKind.TemperatureDifference,
            "Δθ = (1/α)[exp((W/R)·α·ρ0/(q²·γ·Cw)) − 1]", Iec,
            specificEnergy,
            Trail.Given("cross-section", "q", sectionM2, QuantityKind.SectionArea, Source.DesignFile),
            Trail.Given("resistivity", "ρ0", metal.ResistivityOhmM, QuantityKind.Resistivity, Iec),
            Trail.Given("density", "γ", metal.DensityKgPerM3, QuantityKind.Density, Iec))
            .Within("below melting", melts ? $"The {metal.Name} melts: the section is too small for this current." : null);
    }

    /// <summary>Whether the conductor melts.</summary>
    public static bool Melts(StrikeMetal metal, double sectionM2, Trail specificEnergy) => Rise(metal, sectionM2, specificEnergy).OutOfRange is not null;

    /// <summary>A check that the rise stays at or below what its surroundings bear.</summary>
    /// <param name="part">Name of the conductor.</param>
    /// <param name="metal">The metal.</param>
    /// <param name="sectionM2">Cross-section in m².</param>
    /// <param name="specificEnergy">W/R that flows in it.</param>
    /// <param name="allowedRiseK">Allowed rise in kelvin.</param>
    public static Check Check(string part, StrikeMetal metal, double sectionM2, Trail specificEnergy, double allowedRiseK = 200) =>
        Model.Trails.Check.AtMost($"survive.strike.heat[{part}]", Trade.Survive, $"{part} survives the heat of a strike",
            Rise(metal, sectionM2, specificEnergy),
            Trail.Assumed("allowed rise", "Δθa", Math.Min(allowedRiseK, metal.MeltingRiseK), QuantityKind.TemperatureDifference, "well below melting, and below what joints and coverings bear"),
            "first positive stroke", "Take a larger section.", StrikeCautions.Storm);
}
