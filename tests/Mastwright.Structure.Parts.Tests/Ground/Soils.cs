using Mastwright.Structure.Ground;

namespace Mastwright.Structure.Parts.Tests.Ground;

/// <summary>Soils typed by hand.</summary>
internal static class Soils
{
    public const double Degree = Math.PI / 180;

    public static Soil Sand(double gammaKn = 18, double phiDegrees = 30) => new("sand", gammaKn * 1e3) { FrictionAngleRad = phiDegrees * Degree, BaseFriction = 0.25, AllowableBearingPa = 95.76e3, LateralPaPerM = 23.56e3 };

    public static Soil Clay(double cuKpa = 50, double gammaKn = 18) => new("clay", gammaKn * 1e3) { UndrainedShearPa = cuKpa * 1e3, BaseAdhesionPa = 6.2e3, AllowableBearingPa = 71.8e3 };

    public static Soil Rock { get; } = new("rock", 25e3) { AllowableBearingPa = 190e3, BaseFriction = 0.35 };
}
