using System.ComponentModel;

namespace Mastwright.Report.Json;

/// <summary>A number in the JSON result.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Symbol">Its symbol in the formula.</param>
/// <param name="Si">The number in the SI unit of its kind; null when it is infinite.</param>
/// <param name="Kind">What it measures.</param>
/// <param name="Shown">The number with the unit of the station's choice.</param>
/// <param name="Formula">The formula; empty for a given value.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Assumed">Whether an assumption stands underneath.</param>
/// <param name="OutOfRange">Sentences where a model underneath is outside its range.</param>
public sealed record JsonNumber(
    string Name, string Symbol, double? Si, string Kind, string Shown, string Formula, string Source, bool Assumed, IReadOnlyList<string> OutOfRange);

/// <summary>A check in the JSON result.</summary>
/// <param name="Id">Stable name.</param>
/// <param name="Trade">The trade it belongs to.</param>
/// <param name="Title">What is checked.</param>
/// <param name="Verdict">pass, caution, fail or unknown.</param>
/// <param name="Ratio">Use of capacity; null when it is infinite.</param>
/// <param name="GoverningCase">What governs.</param>
/// <param name="Demand">What is asked.</param>
/// <param name="Capacity">What is allowed.</param>
/// <param name="Cure">What to change.</param>
/// <param name="Caution">A safety caution.</param>
public sealed record JsonCheck(
    string Id, string Trade, string Title, string Verdict, double? Ratio, string GoverningCase, JsonNumber Demand, JsonNumber Capacity, string Cure, string? Caution);

/// <summary>A complex impedance in ohms.</summary>
/// <param name="R">Resistance, Ω.</param>
/// <param name="X">Reactance, Ω.</param>
public sealed record JsonOhm(double R, double X);

/// <summary>A part of a matching network.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Kind">Inductance or Capacitance.</param>
/// <param name="Si">Its value, H or F.</param>
/// <param name="PeakV">Peak voltage across it, V.</param>
/// <param name="CurrentRmsA">Current through it, A RMS.</param>
/// <param name="LossW">Heat in it, W.</param>
public sealed record JsonPart(string Title, string Kind, double Si, double PeakV, double CurrentRmsA, double LossW);

/// <summary>A matching network.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Swr">SWR at its input.</param>
/// <param name="LossDb">Its loss, dB.</param>
/// <param name="Parts">Its parts from the line to the mast.</param>
public sealed record JsonMatch(string Title, double Swr, double LossDb, IReadOnlyList<JsonPart> Parts);

/// <summary>A band of a mast.</summary>
/// <param name="Name">The band.</param>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="PowerW">Power, W.</param>
/// <param name="MastOhm">The mast at its foot, Ω.</param>
/// <param name="FeedOhm">With insulator and stray capacitance, Ω.</param>
/// <param name="EarthLoss">Loss resistance of earth and radials.</param>
/// <param name="Efficiency">Radiated over fed power.</param>
/// <param name="BaseCurrentRms">Base current.</param>
/// <param name="BasePeakV">Base peak voltage.</param>
/// <param name="GainDbi">Gain, dBi.</param>
/// <param name="FieldAt1Km">Field at 1 km.</param>
/// <param name="Match">Network; null when none can be made.</param>
public sealed record JsonBand(
    string Name, double FrequencyHz, double PowerW, JsonOhm MastOhm, JsonOhm FeedOhm, JsonNumber EarthLoss, JsonNumber Efficiency,
    JsonNumber BaseCurrentRms, JsonNumber BasePeakV, JsonNumber GainDbi, JsonNumber FieldAt1Km, JsonMatch? Match);

/// <summary>The base gap.</summary>
/// <param name="Fits">Whether a gap fits.</param>
/// <param name="Setting">The setting; null when none fits.</param>
/// <param name="FeelerInch">Feeler size in inches as text; null when none fits.</param>
/// <param name="WindowLow">Smallest setting that holds; null when unknown.</param>
/// <param name="WindowHigh">Largest setting that protects; null when unknown.</param>
/// <param name="WorkingPeakV">Highest working peak.</param>
/// <param name="WeakestStrengthV">Strength of the weakest part.</param>
/// <param name="Changes">What to change when none fits.</param>
public sealed record JsonGap(
    bool Fits, JsonNumber? Setting, string? FeelerInch, JsonNumber? WindowLow, JsonNumber? WindowHigh, JsonNumber? WorkingPeakV, JsonNumber? WeakestStrengthV, IReadOnlyList<string> Changes);

/// <summary>A load case.</summary>
/// <param name="Name">The case.</param>
/// <param name="Stable">Whether it stands.</param>
/// <param name="TopDeflectionM">Level movement of the top, m.</param>
/// <param name="BaseCompressionN">Compression at the foot, N.</param>
/// <param name="LargestGuyN">Largest guy tension, N.</param>
/// <param name="LargestMomentNm">Largest bending moment, N·m.</param>
public sealed record JsonCase(string Name, bool Stable, double TopDeflectionM, double BaseCompressionN, double LargestGuyN, double LargestMomentNm);

/// <summary>A mast.</summary>
/// <param name="Name">The mast.</param>
/// <param name="FirstResonance">Its first resonance; null when none was found.</param>
/// <param name="Bands">Its bands.</param>
/// <param name="Gap">Its base gap.</param>
/// <param name="Cases">Its load cases.</param>
public sealed record JsonMast(string Name, JsonNumber? FirstResonance, IReadOnlyList<JsonBand> Bands, JsonGap Gap, IReadOnlyList<JsonCase> Cases);

/// <summary>One mast of a driven group.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="DriveOhm">Its drive impedance, Ω.</param>
/// <param name="CurrentRms">Its current.</param>
/// <param name="BasePeakV">Its base peak voltage.</param>
/// <param name="Power">The power it takes.</param>
public sealed record JsonDrive(string Mast, JsonOhm DriveOhm, JsonNumber CurrentRms, JsonNumber BasePeakV, JsonNumber Power);

/// <summary>A switch position of a group.</summary>
/// <param name="Name">The position.</param>
/// <param name="GainDbi">Gain, dBi.</param>
/// <param name="FrontToBackDb">Front to back, dB.</param>
/// <param name="GainOverOneDb">Gain over one mast, dB.</param>
/// <param name="Drives">The masts.</param>
public sealed record JsonDirection(string Name, JsonNumber GainDbi, JsonNumber FrontToBackDb, JsonNumber GainOverOneDb, IReadOnlyList<JsonDrive> Drives);

/// <summary>A group of masts.</summary>
/// <param name="Name">The group.</param>
/// <param name="Directions">Its switch positions.</param>
public sealed record JsonGroup(string Name, IReadOnlyList<JsonDirection> Directions);

/// <summary>A default taken.</summary>
/// <param name="Path">The field.</param>
/// <param name="Value">What was taken.</param>
/// <param name="Why">Why.</param>
public sealed record JsonAssumption(string Path, string Value, string Why);

/// <summary>A warning or note.</summary>
/// <param name="Code">Stable name.</param>
/// <param name="Severity">error, warning or note.</param>
/// <param name="Message">What it says.</param>
/// <param name="WayOut">What to do.</param>
public sealed record JsonFinding(string Code, string Severity, string Message, string? WayOut);

/// <summary>What <c>check --json</c> prints.</summary>
/// <param name="Format">Version of this format.</param>
/// <param name="Station">Name of the station.</param>
/// <param name="Fingerprint">Fingerprint of the design.</param>
/// <param name="Verdict">pass, caution, fail or unknown: the worst of all checks.</param>
/// <param name="Checks">Every check.</param>
/// <param name="Masts">Every mast.</param>
/// <param name="Groups">Every group.</param>
/// <param name="Assumptions">Every default taken.</param>
/// <param name="Findings">Warnings and notes.</param>
/// <param name="Cautions">Safety cautions that go with the station.</param>
[Description("What `mastwright check --json` prints. Numbers are in SI units.")]
public sealed record ResultDocument(
    int Format,
    string Station,
    string Fingerprint,
    string Verdict,
    IReadOnlyList<JsonCheck> Checks,
    IReadOnlyList<JsonMast> Masts,
    IReadOnlyList<JsonGroup> Groups,
    IReadOnlyList<JsonAssumption> Assumptions,
    IReadOnlyList<JsonFinding> Findings,
    IReadOnlyList<string> Cautions)
{
    /// <summary>The version this program writes.</summary>
    public const int CurrentFormat = 1;
}
