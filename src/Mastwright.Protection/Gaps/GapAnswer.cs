using System.Collections.Immutable;
using Mastwright.Model.Trails;

namespace Mastwright.Protection.Gaps;

/// <summary>The answer to a <see cref="GapRequest"/>: <see cref="GapSetting"/>, <see cref="NoGapFits"/> or <see cref="GapInputUnusable"/>.</summary>
/// <param name="Findings">Remarks and faults of the input.</param>
public abstract record GapAnswer(ImmutableArray<Finding> Findings)
{
    /// <summary>The caution that goes on every page about the base gap.</summary>
    public const string Caution =
        "Set and inspect the gap only with the transmitter off and locked out, the mast bonded to earth, and no thunderstorm within hearing. " +
        "A gap limits voltage; it does not make a station, a cable or a person safe in a strike. Keep arresters and bonds in place. " +
        "Local codes, the makers' data and a licensed engineer come first.";
}

/// <summary>A spacing that holds off the station and still fires before the weakest part.</summary>
/// <param name="SpacingM">The spacing to set, in metres.</param>
/// <param name="Feeler">Feeler sizes for it, inch fraction and millimetre.</param>
/// <param name="WindowLowM">Smallest spacing that holds off, setting error included.</param>
/// <param name="WindowHighM">Largest spacing that still protects, setting error included.</param>
/// <param name="WorkingPeakV">Highest working crest over all bands, mismatch and modulation included.</param>
/// <param name="WeakestStrengthV">Lowest strength behind the gap.</param>
/// <param name="HoldOffV">What the set gap is sure to hold at radio frequency in the thinnest air, wet, set too small.</param>
/// <param name="FiringV">What it may need to fire on a lightning front in the densest air, set too wide.</param>
/// <param name="StaticSparkV">Spark voltage at the nominal setting, dry, in the densest air, slow voltage.</param>
/// <param name="Checks">The two checks of the gap.</param>
/// <param name="Findings">Remarks.</param>
public sealed record GapSetting(
    Trail SpacingM,
    FeelerSize Feeler,
    Trail WindowLowM,
    Trail WindowHighM,
    Trail WorkingPeakV,
    Trail WeakestStrengthV,
    Trail HoldOffV,
    Trail FiringV,
    Trail StaticSparkV,
    ImmutableArray<Check> Checks,
    ImmutableArray<Finding> Findings) : GapAnswer(Findings);

/// <summary>No spacing does both. Says by how much, and what to change.</summary>
/// <param name="WindowLowM">Smallest spacing that holds off.</param>
/// <param name="WindowHighM">Largest spacing that protects; null when even the smallest gap fires too late.</param>
/// <param name="WorkingPeakV">Highest working crest.</param>
/// <param name="WeakestStrengthV">Lowest strength behind the gap.</param>
/// <param name="StrengthNeededV">Strength every part behind the gap would need for the smallest gap that holds off.</param>
/// <param name="WorkingPeakAllowedV">Working crest that would be allowed by the largest gap that protects; 0 when there is none.</param>
/// <param name="GoverningBand">The band with the highest crest.</param>
/// <param name="WeakestPart">The part with the lowest strength.</param>
/// <param name="Changes">What to change, most effective first.</param>
/// <param name="Checks">The failing checks.</param>
/// <param name="Findings">Remarks, and the error that no gap fits.</param>
public sealed record NoGapFits(
    Trail WindowLowM,
    Trail? WindowHighM,
    Trail WorkingPeakV,
    Trail WeakestStrengthV,
    Trail StrengthNeededV,
    Trail WorkingPeakAllowedV,
    string GoverningBand,
    string WeakestPart,
    ImmutableArray<string> Changes,
    ImmutableArray<Check> Checks,
    ImmutableArray<Finding> Findings) : GapAnswer(Findings);

/// <summary>The request holds values that cannot be used; every one has its finding.</summary>
/// <param name="Findings">One finding for each fault.</param>
public sealed record GapInputUnusable(ImmutableArray<Finding> Findings) : GapAnswer(Findings);
