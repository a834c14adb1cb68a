namespace Mastwright.Build.Materials;

/// <summary>What a quantity of material is counted in; the number itself is in this unit.</summary>
public enum MaterialUnit
{
    /// <summary>Pieces.</summary>
    Each,

    /// <summary>Metres.</summary>
    Metre,

    /// <summary>Square metres.</summary>
    SquareMetre,

    /// <summary>Cubic metres.</summary>
    CubicMetre,

    /// <summary>Kilograms.</summary>
    Kilogram,
}

/// <summary>Units as price files write them.</summary>
internal static class PriceUnits
{
    /// <summary>Words allowed in a price file, for messages.</summary>
    public const string Allowed = "each, m, ft, m2, ft2, m3, yd3, l, kg, lb";

    /// <summary>The unit and how many of it one written unit is; null for an unknown word.</summary>
    public static (MaterialUnit Unit, decimal Size)? Parse(string text) => text.Trim().ToLowerInvariant() switch
    {
        "each" or "ea" or "pc" or "pcs" or "piece" => (MaterialUnit.Each, 1m),
        "m" => (MaterialUnit.Metre, 1m),
        "ft" => (MaterialUnit.Metre, 0.3048m),
        "m2" or "m²" => (MaterialUnit.SquareMetre, 1m),
        "ft2" or "ft²" => (MaterialUnit.SquareMetre, 0.3048m * 0.3048m),
        "m3" or "m³" => (MaterialUnit.CubicMetre, 1m),
        "yd3" or "yd³" => (MaterialUnit.CubicMetre, 0.9144m * 0.9144m * 0.9144m),
        "l" => (MaterialUnit.CubicMetre, 0.001m),
        "kg" => (MaterialUnit.Kilogram, 1m),
        "lb" => (MaterialUnit.Kilogram, 0.45359237m),
        _ => null,
    };

    /// <summary>The short name shown beside a quantity.</summary>
    public static string Symbol(MaterialUnit unit) => unit switch
    {
        MaterialUnit.Each => "each",
        MaterialUnit.Metre => "m",
        MaterialUnit.SquareMetre => "m²",
        MaterialUnit.CubicMetre => "m³",
        _ => "kg",
    };
}
