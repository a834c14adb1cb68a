namespace Mastwright.Structure.Loads;

/// <summary>Properties of air that more than one method takes.</summary>
public static class Air
{
    /// <summary>Density that EN 1991-1-4 section 4.5 recommends, kg/m³ (from memory).</summary>
    public const double DensityKgPerM3 = 1.25;

    /// <summary>Kinematic viscosity of EN 1991-1-4 section 7.9.1, m²/s (from memory).</summary>
    public const double KinematicViscosityM2PerS = 15e-6;
}
