using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Gaps;

/// <summary>The voltage one band puts across the base at full power.</summary>
/// <param name="Name">Name of the band, e.g. <c>"80 m"</c>.</param>
/// <param name="FrequencyHz">Frequency in hertz.</param>
/// <param name="CarrierPeakV">Crest of the radio-frequency voltage across the base, unmodulated, full power, in volts, with its trail.</param>
/// <param name="ModulationFactor">Crest with modulation over crest without: 1 for single sideband at its peak power, telegraphy and FM; 2 for amplitude modulation at 100 % counted from the carrier.</param>
public sealed record GapBand(string Name, double FrequencyHz, Trail CarrierPeakV, double ModulationFactor = 1);

/// <summary>How the strength of a part behind the gap was stated.</summary>
public enum StrengthKind
{
    /// <summary>Impulse withstand (1.2/50 µs or similar), volts peak.</summary>
    Impulse,

    /// <summary>Alternating withstand, volts peak. Taken as the impulse strength too, which is on the safe side.</summary>
    AlternatingCrest,

    /// <summary>Direct-voltage rating or test voltage. Taken as the impulse strength too, which is on the safe side.</summary>
    Direct,
}

/// <summary>A part that the gap protects.</summary>
/// <param name="Name">Name, e.g. <c>"series capacitor"</c>.</param>
/// <param name="StrengthPeakV">Its lowest strength in volts peak, wet where it can be wet, with its trail.</param>
/// <param name="Kind">How it was stated.</param>
/// <param name="FallsWithAirDensity">True for strengths through air (a bare insulator, coil turns), given at reference air: they are multiplied by k(δ) of the thinnest air.</param>
public sealed record GapProtected(string Name, Trail StrengthPeakV, StrengthKind Kind, bool FallsWithAirDensity = false);

/// <summary>
/// What is asked of a base gap: it must hold off the station's own voltage on every band in the thinnest air, and fire before the weakest part behind it
/// gives way in the densest air, with a margin at both ends and with the error of setting it.
/// </summary>
/// <param name="Electrodes">The electrodes.</param>
/// <param name="ThinAir">The thinnest air of the year (hottest day) at the site; used for holding off.</param>
/// <param name="DenseAir">The densest air of the year (coldest day) at the site; used for firing.</param>
/// <param name="Bands">Every band used.</param>
/// <param name="Protected">Every part behind the gap whose strength is known.</param>
/// <param name="MismatchFactor">Rise of the base voltage when the match drifts, at least 1; √SWR is the rise at constant forward power at the worst point of a line.</param>
/// <param name="HoldOffMargin">Spark voltage over working peak that must be left, at least 1.</param>
/// <param name="ProtectionMargin">Strength behind the gap over firing voltage that must be left, at least 1.</param>
/// <param name="WetFactor">What rain drops and dirt leave of the gap's dry strength, above 0 to 1; 1 under a drip hood.</param>
/// <param name="ImpulseRatio">
/// Firing voltage on a lightning front over the static spark voltage, at least 1: the gap needs time to fire. Null takes what the equal-area rule gives for a
/// standard 1.2 µs front on which the gap fires at the crest; the strike simulation computes it for a given stroke.
/// </param>
/// <param name="SettingToleranceM">Error of setting with a feeler in metres, 0 or more, plus and minus.</param>
public sealed record GapRequest(
    GapElectrodes Electrodes,
    AirState ThinAir,
    AirState DenseAir,
    ImmutableArray<GapBand> Bands,
    ImmutableArray<GapProtected> Protected,
    double MismatchFactor = 1.2,
    double HoldOffMargin = 1.3,
    double ProtectionMargin = 1.2,
    double WetFactor = 0.85,
    double? ImpulseRatio = null,
    double SettingToleranceM = 0.2e-3)
{
    internal const double UsualFormativeLagS = 100e-9;

    /// <summary>Formative lag of the gap in seconds for the equal-area rule: 100 ns fires within 500 ns at a fifth over the static voltage (common practice, no source: within about 500 ns).</summary>
    public double FormativeLagS { get; init; } = UsualFormativeLagS;

    /// <summary>Statistical lag in seconds, waited for a first electron; it counts into the same area.</summary>
    public double StatisticalLagS { get; init; }

    /// <summary>
    /// What strokes build up across the open gap. When there are any, the gap's upper end is set with its volt-time curve on the worst of them in place of the
    /// impulse ratio of the standard front.
    /// </summary>
    public ImmutableArray<Lightning.StrikeFront> Fronts { get; init; } = [];
}
