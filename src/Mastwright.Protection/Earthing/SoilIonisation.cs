using Mastwright.Model.Trails;

namespace Mastwright.Protection.Earthing;

/// <summary>Soil that breaks down round an electrode under lightning current, and so lowers its resistance.</summary>
public static class SoilIonisation
{
    /// <summary>Critical field of soil: 300 kV/m (Mousa 1994, from memory).</summary>
    public static Trail CriticalFieldMousa { get; } =
        Trail.Given("critical field of soil", "Es", 300e3, QuantityKind.ElectricField, Source.FromMemory("Mousa, The soil ionization gradient associated with discharge of high currents into concentrated electrodes, IEEE Trans. PWRD 9", "1994"));

    /// <summary>Critical field of soil: 400 kV/m (CIGRE 63, from memory).</summary>
    public static Trail CriticalFieldCigre { get; } =
        Trail.Given("critical field of soil", "Es", 400e3, QuantityKind.ElectricField, Source.FromMemory("CIGRE brochure 63", "1991"));

    private static readonly Source Cigre = Source.FromMemory("CIGRE brochure 63, concentrated earths", "1991");
    private static readonly Source Sunde = Source.FromMemory("Sunde, Earth Conduction Effects in Transmission Systems", "1968");

    /// <summary>Resistance of a concentrated electrode at a current: R = R₀/√(1 + I/Ig), Ig = Es·ρ/(2π R₀²).</summary>
    public static Trail ConcentratedResistance(Trail lowCurrentOhm, double resistivityOhmM, Trail current, Trail criticalField)
    {
        var limit = LimitCurrentA(lowCurrentOhm.Value, resistivityOhmM, criticalField.Value);
        var ig = Trail.Computed("current at which soil breaks down", "Ig", limit, QuantityKind.PeakCurrent, "Ig = Es·ρ/(2π·R0²)", Cigre,
            criticalField, Trail.Given("soil resistivity", "ρ", resistivityOhmM, QuantityKind.Resistivity, Source.DesignFile), lowCurrentOhm);
        return Trail.Computed("impulse resistance", "Ri", lowCurrentOhm.Value / Math.Sqrt(1 + (Math.Abs(current.Value) / limit)), QuantityKind.Resistance, "Ri = R0/√(1 + I/Ig)", Cigre,
            lowCurrentOhm, current, ig)
            .Within("electrodes up to about 30 m across", null);
    }

    /// <summary>Ig of a concentrated electrode in amperes.</summary>
    public static double LimitCurrentA(double lowCurrentOhm, double resistivityOhmM, double criticalFieldVPerM) =>
        criticalFieldVPerM * resistivityOhmM / (2 * Math.PI * lowCurrentOhm * lowCurrentOhm);

    /// <summary>Radius of the broken-down soil round a rod or buried wire that leaks a current evenly: ρI/(2πL·Es), in metres.</summary>
    public static Trail SheathRadius(double resistivityOhmM, double lengthM, Trail current, Trail criticalField) =>
        Trail.Computed("radius of broken-down soil", "ai", resistivityOhmM * current.Value / (2 * Math.PI * lengthM * criticalField.Value), QuantityKind.Length, "ai = ρ·I/(2π·L·Es)", Sunde,
            Trail.Given("soil resistivity", "ρ", resistivityOhmM, QuantityKind.Resistivity, Source.DesignFile), current,
            Trail.Given("length", "L", lengthM, QuantityKind.Length, Source.DesignFile), criticalField);

    /// <summary>Radius of a half ball of broken-down soil: √(ρI/(2π Es)), in metres.</summary>
    public static Trail HemisphereRadius(double resistivityOhmM, Trail current, Trail criticalField) =>
        Trail.Computed("radius of broken-down soil", "ri", Math.Sqrt(resistivityOhmM * current.Value / (2 * Math.PI * criticalField.Value)), QuantityKind.Length, "ri = √(ρ·I/(2π·Es))", Sunde,
            Trail.Given("soil resistivity", "ρ", resistivityOhmM, QuantityKind.Resistivity, Source.DesignFile), current, criticalField);
}
