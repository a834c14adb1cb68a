namespace Mastwright.Catalog;

/// <summary>Insulator in a guy: a porcelain egg or a glass-fibre rod.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Kind"><c>"porcelain egg"</c> or <c>"fibreglass rod"</c>.</param>
/// <param name="StrengthN">Rated tensile strength.</param>
/// <param name="LengthM">Length.</param>
/// <param name="DiameterM">Diameter.</param>
/// <param name="HoleM">Largest strand hole; null where it does not apply.</param>
/// <param name="DryFlashoverV">Dry flashover at power frequency, RMS.</param>
/// <param name="WetFlashoverV">Wet flashover at power frequency, RMS.</param>
/// <param name="LeakageM">Leakage distance over the surface.</param>
/// <param name="CapacitanceF">Approximate capacitance between the ends, hardware fitted.</param>
/// <param name="MassKg">Approximate mass.</param>
public sealed record StrainInsulator(
    RowInfo Info,
    string Kind,
    double StrengthN,
    double LengthM,
    double DiameterM,
    double? HoleM,
    double DryFlashoverV,
    double WetFlashoverV,
    double LeakageM,
    double CapacitanceF,
    double MassKg)
    : Part(Info);

/// <summary>Insulator under the mast foot.</summary>
/// <param name="Info">Name, source, standing and note.</param>
/// <param name="Kind">What it is, e.g. <c>"porcelain post"</c>.</param>
/// <param name="CompressionN">Ultimate compression along its axis.</param>
/// <param name="HeightM">Height.</param>
/// <param name="DiameterM">Diameter.</param>
/// <param name="CapacitanceF">Capacitance between its ends.</param>
/// <param name="DryFlashoverV">Dry flashover at power frequency, RMS.</param>
/// <param name="WetFlashoverV">Wet flashover at power frequency, RMS.</param>
/// <param name="ImpulseV">Critical impulse flashover, 1.2/50 µs, crest.</param>
/// <param name="LeakageM">Leakage distance over the surface.</param>
/// <param name="MassKg">Mass.</param>
public sealed record BaseInsulator(
    RowInfo Info,
    string Kind,
    double CompressionN,
    double HeightM,
    double DiameterM,
    double CapacitanceF,
    double DryFlashoverV,
    double WetFlashoverV,
    double ImpulseV,
    double LeakageM,
    double MassKg)
    : Part(Info);
