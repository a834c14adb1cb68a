using System.Collections.Immutable;

namespace Mastwright.Build.Sweeps.Touchstone;

/// <summary>How the pairs of numbers are to be read.</summary>
public enum NumberForm
{
    /// <summary>Magnitude in dB (20 log) and angle in degrees.</summary>
    DecibelAngle,

    /// <summary>Magnitude and angle in degrees.</summary>
    MagnitudeAngle,

    /// <summary>Real and imaginary part.</summary>
    RealImaginary,
}

/// <summary>Which part of the matrix the file gives.</summary>
public enum MatrixFormat
{
    /// <summary>All entries.</summary>
    Full,

    /// <summary>The lower triangle; the matrix is symmetric.</summary>
    Lower,

    /// <summary>The upper triangle; the matrix is symmetric.</summary>
    Upper,
}

/// <summary>What the head of a Touchstone text says before the first number.</summary>
/// <param name="Version">1.0 for a text without a version keyword, 1.1 for one of those with several references, else what the keyword says.</param>
/// <param name="FrequencyUnitHz">Hertz in one unit of the frequency column.</param>
/// <param name="Parameter">The network parameter.</param>
/// <param name="Form">The form of the number pairs.</param>
/// <param name="ReferenceOhm">References as written: one for all ports or one for each.</param>
/// <param name="ReferenceWritten">Whether the text gives a reference at all.</param>
/// <param name="Ports">Number of ports; null when the text does not say.</param>
/// <param name="TwoPortOrder2112">Whether two-port data run 11, 21, 12, 22.</param>
/// <param name="Matrix">Which part of the matrix is written.</param>
/// <param name="FrequencyCount">Announced number of frequencies; null when the text does not say.</param>
/// <param name="NoiseCount">Announced number of noise frequencies; null when the text does not say.</param>
public sealed record TouchstoneHeader(
    string Version,
    double FrequencyUnitHz,
    NetworkParameter Parameter,
    NumberForm Form,
    ImmutableArray<double> ReferenceOhm,
    bool ReferenceWritten,
    int? Ports,
    bool TwoPortOrder2112,
    MatrixFormat Matrix,
    int? FrequencyCount,
    int? NoiseCount)
{
    /// <summary>What a text means that has no option line: GHz, S, magnitude and angle, 50 Ω.</summary>
    public static TouchstoneHeader Default { get; } = new("1.0", 1e9, NetworkParameter.S, NumberForm.MagnitudeAngle, [50.0], false, null, true, MatrixFormat.Full, null, null);

    /// <summary>Whether the text follows version 2, where Z, Y, H and G are not normalised.</summary>
    public bool IsVersion2 => Version.StartsWith('2');
}
