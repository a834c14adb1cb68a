namespace Mastwright.Model.Units;

/// <summary>Constants of free space (SI, CODATA 2018) and the conversions every field formula needs.</summary>
public static class Vacuum
{
    /// <summary>Speed of light in m/s.</summary>
    public const double SpeedOfLightMPerS = 299792458.0;

    /// <summary>Permittivity of free space in F/m.</summary>
    public const double PermittivityFPerM = 8.8541878128e-12;

    /// <summary>Permeability of free space in H/m.</summary>
    public const double PermeabilityHPerM = 1 / (PermittivityFPerM * SpeedOfLightMPerS * SpeedOfLightMPerS);

    /// <summary>Wave impedance of free space in ohms (376.7303…).</summary>
    public const double WaveImpedanceOhm = PermeabilityHPerM * SpeedOfLightMPerS;

    /// <summary>Free-space wavelength in metres at <paramref name="frequencyHz"/>.</summary>
    public static double WavelengthM(double frequencyHz) => SpeedOfLightMPerS / frequencyHz;

    /// <summary>Free-space wave number 2π/λ in rad/m at <paramref name="frequencyHz"/>.</summary>
    public static double WaveNumber(double frequencyHz) => 2 * Math.PI * frequencyHz / SpeedOfLightMPerS;
}
