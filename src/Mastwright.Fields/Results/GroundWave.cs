using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Model.Units;
using Mastwright.Numerics.Special;

namespace Mastwright.Fields.Results;

/// <summary>
/// The wave along flat soil after Sommerfeld and Norton. Holds from about one wavelength out to 80/f^(1/3) km (f in MHz), where the
/// earth's curve begins to matter (47 CFR 73.184).
/// </summary>
public static class GroundWave
{
    /// <summary>
    /// The attenuation factor F = 1 − j√(πw)·exp(−w)·erfc(j√w), w = −j(kd/2)(n² − 1)/n⁴, for both ends at the ground.
    /// Norton 1936 (from memory).
    /// </summary>
    /// <param name="soil">The soil.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    /// <param name="distanceM">Distance in metres.</param>
    public static Complex Attenuation(Soil soil, double frequencyHz, double distanceM)
    {
        ArgumentNullException.ThrowIfNull(soil);
        var n2 = soil.ComplexPermittivity(frequencyHz);
        var w = new Complex(0, -0.5 * Vacuum.WaveNumber(frequencyHz) * distanceM) * (n2 - 1) / (n2 * n2);
        var root = Complex.Sqrt(w);
        return 1 - (new Complex(0, Math.Sqrt(Math.PI)) * root * Faddeeva.W(-root));
    }

    /// <summary>Largest distance at which the flat-earth formula is used, metres: 80/f^(1/3) km.</summary>
    public static double FlatEarthLimitM(double frequencyHz) => 80e3 / Math.Cbrt(frequencyHz / 1e6);

    /// <summary>Vertical field at the ground at a distance, V/m RMS, for a given power into the feeds.</summary>
    /// <param name="far">The far field of the driven model.</param>
    /// <param name="soil">The soil along the way.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    /// <param name="powerW">Power into the feeds, watts.</param>
    /// <param name="azimuthRad">Direction, radians counter-clockwise from +x.</param>
    /// <param name="distanceM">Distance in metres, more than a wavelength.</param>
    public static double FieldVPerM(FarField far, Soil soil, double frequencyHz, double powerW, double azimuthRad, double distanceM)
    {
        ArgumentNullException.ThrowIfNull(far);
        return far.FieldAt1KmVPerM(powerW, azimuthRad) * 1000 / distanceM * Attenuation(soil, frequencyHz, distanceM).Magnitude;
    }
}
