using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Units;

namespace Mastwright.Circuits.Capacitors;

/// <summary>How a capacitor is built.</summary>
public enum CapacitorKind
{
    /// <summary>Plates in a vacuum bottle.</summary>
    Vacuum,

    /// <summary>Plates in air.</summary>
    Air,

    /// <summary>Silvered mica.</summary>
    Mica,

    /// <summary>Ceramic of transmitting grade.</summary>
    Ceramic,

    /// <summary>A length of open coaxial cable.</summary>
    CoaxStub,
}

/// <summary>A capacitor that can be bought or made, with its ratings.</summary>
/// <param name="Name">What the builder calls it.</param>
/// <param name="Kind">How it is built.</param>
/// <param name="LowestF">Smallest setting, farads; equal to <paramref name="HighestF"/> for a fixed one.</param>
/// <param name="HighestF">Largest setting, farads.</param>
/// <param name="PeakRating">Peak radio-frequency voltage it stands.</param>
/// <param name="CurrentRating">RMS radio-frequency current it carries at <paramref name="RatedAtHz"/>.</param>
/// <param name="RatedAtHz">Frequency of the current rating, hertz; the current allowed falls as 1/√(f/f0) above it, because skin effect raises the loss.</param>
/// <param name="Loss">Its loss.</param>
/// <param name="Price">Price; null when unknown.</param>
public sealed record CapacitorItem(
    string Name,
    CapacitorKind Kind,
    double LowestF,
    double HighestF,
    PeakVolts PeakRating,
    RmsAmps CurrentRating,
    double RatedAtHz,
    CapacitorLoss Loss,
    double? Price = null)
{
    /// <summary>Whether it can be set, within half a percent at the ends.</summary>
    public bool IsVariable => HighestF > LowestF * 1.01;

    /// <summary>RMS current allowed at a frequency.</summary>
    public RmsAmps CurrentAllowedAt(double frequencyHz) =>
        new(CurrentRating.Value / Math.Sqrt(Math.Max(1, Math.Sqrt(frequencyHz / RatedAtHz))));

    /// <summary>A length of open coaxial cable as a capacitor: C = √ε·l/(c·Z0) = l/(v·Z0).</summary>
    /// <param name="line">The cable.</param>
    /// <param name="lengthM">Length, metres.</param>
    /// <param name="peakRating">What the cable stands at its open end.</param>
    /// <param name="currentRating">What its ends carry.</param>
    /// <param name="frequencyHz">Frequency for the loss, hertz.</param>
    /// <remarks>Good below an eighth of a wave; longer stubs belong in the network as lines.</remarks>
    public static CapacitorItem CoaxStub(Lines.LineType line, double lengthM, PeakVolts peakRating, RmsAmps currentRating, double frequencyHz)
    {
        var farad = lengthM / (line.VelocityFactor * Vacuum.SpeedOfLightMPerS * line.CharacteristicOhm);
        var gamma = line.PropagationPerM(frequencyHz);

        // Zin = Z0·coth γl ≈ -j/(ωC) with the real part Z0·αl/(βl)² · (1 - (βl)²/3 …); as a loss tangent that is α/β.
        return new($"{line.Name}, {lengthM:0.00} m", CapacitorKind.CoaxStub, farad, farad, peakRating, currentRating, frequencyHz, new CapacitorLoss(gamma.Real / gamma.Imaginary, 0));
    }
}
