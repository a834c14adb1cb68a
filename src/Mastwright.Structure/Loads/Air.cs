namespace Mastwright.Structure.Loads;

/// <summary>Properties of air that more than one method takes.</summary>
public static class Air
{
    /// <summary>Kinematic viscosity of EN 1991-1-4 section 7.9.1, m²/s (from memory).</summary>
    public const double KinematicViscosityM2PerS = 15e-6;
}
