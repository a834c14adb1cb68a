using System.Numerics;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Units;

namespace Mastwright.Circuits.Lines;

/// <summary>
/// A kind of transmission line. The characteristic impedance is taken as real; the matched loss per metre follows
/// k1·√f (skin effect) plus k2·f (dielectric), the usual two-term fit to makers' tables.
/// </summary>
public sealed record LineType
{
    /// <summary>Creates a line type.</summary>
    /// <param name="name">What the builder calls it.</param>
    /// <param name="characteristicOhm">Characteristic impedance, ohms.</param>
    /// <param name="velocityFactor">Wave speed over the speed of light, above 0, at most 1.</param>
    /// <param name="skinDb">k1, dB per metre at 1 Hz, growing with √f.</param>
    /// <param name="dielectricDb">k2, dB per metre at 1 Hz, growing with f.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public LineType(string name, double characteristicOhm, double velocityFactor, double skinDb = 0, double dielectricDb = 0)
    {
        Name = name;
        CharacteristicOhm = Guard.Positive(characteristicOhm);
        VelocityFactor = velocityFactor is > 0 and <= 1 ? velocityFactor : throw new ArgumentOutOfRangeException(nameof(velocityFactor), velocityFactor, "Above 0, at most 1.");
        SkinDb = Guard.NotNegative(skinDb, nameof(skinDb));
        DielectricDb = Guard.NotNegative(dielectricDb, nameof(dielectricDb));
    }

    /// <summary>A line whose loss is known at one frequency and grows with √f, as skin effect makes it below VHF.</summary>
    /// <param name="name">What the builder calls it.</param>
    /// <param name="characteristicOhm">Characteristic impedance, ohms.</param>
    /// <param name="velocityFactor">Wave speed over the speed of light.</param>
    /// <param name="lossDbPer100M">Matched loss in dB per 100 m.</param>
    /// <param name="atHz">The frequency at which it holds.</param>
    public static LineType FromSpotLoss(string name, double characteristicOhm, double velocityFactor, double lossDbPer100M, double atHz) =>
        new(name, characteristicOhm, velocityFactor, lossDbPer100M / 100 / Math.Sqrt(Guard.Positive(atHz)));

    /// <summary>What the builder calls it.</summary>
    public string Name { get; }

    /// <summary>Characteristic impedance, ohms.</summary>
    public double CharacteristicOhm { get; }

    /// <summary>Wave speed over the speed of light.</summary>
    public double VelocityFactor { get; }

    /// <summary>Loss term growing with √f: dB per metre at 1 Hz.</summary>
    public double SkinDb { get; }

    /// <summary>Loss term growing with f: dB per metre at 1 Hz.</summary>
    public double DielectricDb { get; }

    /// <summary>Working voltage, crest, by its maker; null when not known.</summary>
    public PeakVolts? PeakRating { get; init; }

    /// <summary>Matched loss in dB per metre.</summary>
    public double LossDbPerM(double frequencyHz) => (SkinDb * Math.Sqrt(frequencyHz)) + (DielectricDb * frequencyHz);

    /// <summary>Wavelength on the line, metres.</summary>
    public double WavelengthM(double frequencyHz) => VelocityFactor * Vacuum.SpeedOfLightMPerS / frequencyHz;

    /// <summary>Length of an electrical angle at a frequency, metres.</summary>
    /// <param name="angleRad">Electrical length in radians.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    public double LengthM(double angleRad, double frequencyHz) => angleRad / (2 * Math.PI) * WavelengthM(frequencyHz);

    /// <summary>The propagation constant γ = α + jβ per metre, α in nepers.</summary>
    public Complex PropagationPerM(double frequencyHz) =>
        new(LossDbPerM(frequencyHz) * Math.Log(10) / 20, 2 * Math.PI / WavelengthM(frequencyHz));
}
