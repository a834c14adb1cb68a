using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json.Serialization;
using NodaTime;

namespace Mastwright.Journal.Entries;

/// <summary>The weather when an entry was made.</summary>
/// <param name="TemperatureK">Air temperature, kelvin; null when not noted.</param>
/// <param name="WindMs">Wind speed, m/s; null when not noted.</param>
/// <param name="Words">Anything else: wet, frost on the ground.</param>
public sealed record Weather(double? TemperatureK = null, double? WindMs = null, string Words = "")
{
    /// <summary>The coldest that is taken, kelvin: nowhere on the ground is it colder.</summary>
    public const double LeastTemperatureK = 173;

    /// <summary>The hottest that is taken, kelvin: a strand in the sun and beside a heater is still cooler.</summary>
    public const double MostTemperatureK = 373;

    /// <summary>The strongest wind that is taken, m/s.</summary>
    public const double MostWindMPerS = 150;

    /// <summary>Nothing noted.</summary>
    public static Weather NotNoted { get; } = new();
}

/// <summary>
/// Something noted about the station. Entries are measurements and observations, never copies of computed results.
/// </summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When, with the offset of the local clock.</param>
/// <param name="Mast">The mast it concerns; empty for the whole station.</param>
/// <param name="Author">Who noted it.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">Weather at the time.</param>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(TensionEntry), "tension")]
[JsonDerivedType(typeof(SweepEntry), "sweep")]
[JsonDerivedType(typeof(InspectionEntry), "inspection")]
[JsonDerivedType(typeof(PhotoEntry), "photo")]
[JsonDerivedType(typeof(StormEntry), "storm")]
[JsonDerivedType(typeof(NoteEntry), "note")]
public abstract record JournalEntry(Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather)
{
    /// <summary>The kind in one word, as stored and exported.</summary>
    [JsonIgnore]
    public abstract string Kind { get; }
}

/// <summary>The tension of a guy as measured.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">Weather; the temperature is needed to compare readings.</param>
/// <param name="Guy">The guy.</param>
/// <param name="TensionN">Tension at the anchor, newtons.</param>
/// <param name="UncertaintyN">One standard deviation, newtons; null when not known.</param>
/// <param name="Method">How it was measured.</param>
/// <param name="Raw">The reading itself, e.g. <c>"10 returns in 2.79 s"</c>.</param>
public sealed record TensionEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather,
    string Guy, double TensionN, double? UncertaintyN, string Method, string Raw)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "tension";
}

/// <summary>One frequency of a sweep.</summary>
/// <param name="FrequencyHz">Frequency, hertz.</param>
/// <param name="ResistanceOhm">Resistance, ohms.</param>
/// <param name="ReactanceOhm">Reactance, ohms, inductive positive.</param>
public readonly record struct SweepSample(double FrequencyHz, double ResistanceOhm, double ReactanceOhm);

/// <summary>An impedance sweep, with the file it came from kept as it was.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">Weather; wet ground moves the reading.</param>
/// <param name="Plane">Where it was measured: at the base, at the desk through the feed cable.</param>
/// <param name="ReferenceOhm">Port impedance of the analyser.</param>
/// <param name="Samples">The points, frequencies rising.</param>
/// <param name="SourceName">Name of the file read.</param>
/// <param name="SourceText">Its whole text; empty when there was none.</param>
public sealed record SweepEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather,
    string Plane, double ReferenceOhm, ImmutableArray<SweepSample> Samples, string SourceName, string SourceText)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "sweep";
}

/// <summary>What an inspected item looked like.</summary>
public enum ItemState
{
    /// <summary>As it should be.</summary>
    Good,

    /// <summary>To be watched or seen to in time.</summary>
    Watch,

    /// <summary>To be put right before the station is used or climbed.</summary>
    Bad,

    /// <summary>Could not be looked at.</summary>
    NotSeen,
}

/// <summary>One line of an inspection.</summary>
/// <param name="Key">Key of the checklist item.</param>
/// <param name="Label">Its words at the time.</param>
/// <param name="State">What was found.</param>
/// <param name="Remark">Free words.</param>
public sealed record InspectedItem(string Key, string Label, ItemState State, string Remark = "");

/// <summary>An inspection by checklist.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">Weather.</param>
/// <param name="Items">The lines.</param>
public sealed record InspectionEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather,
    ImmutableArray<InspectedItem> Items)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "inspection";
}

/// <summary>A photo, kept outside the journal and referred to.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When it was taken.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">Caption.</param>
/// <param name="Weather">Weather.</param>
/// <param name="Path">Path of the file, relative to the journal where possible.</param>
/// <param name="Sha256">Digest of the file in lower-case hexadecimal, to know it again; empty when not taken.</param>
/// <param name="About">The entry it belongs to; null when it stands alone.</param>
public sealed record PhotoEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather,
    string Path, string Sha256, Guid? About)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "photo";

    /// <summary>Digest of a photo's file, to be kept in <see cref="Sha256"/>.</summary>
    public static string DigestOf(Stream file) => Convert.ToHexStringLower(SHA256.HashData(file));
}

/// <summary>A storm, an ice event or lightning.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When it began.</param>
/// <param name="Mast">Empty: it concerns the station.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">Weather when noted.</param>
/// <param name="Ended">When it ended; null while it lasts or when not known.</param>
/// <param name="GustMs">Strongest gust, m/s; null when not known.</param>
/// <param name="IceM">Radial ice thickness, metres; null when not known, 0 for none.</param>
/// <param name="Lightning">Whether lightning struck here or near.</param>
public sealed record StormEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather,
    OffsetDateTime? Ended, double? GustMs, double? IceM, bool Lightning)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "storm";
}

/// <summary>Words only.</summary>
/// <param name="Id">Never used twice.</param>
/// <param name="At">When.</param>
/// <param name="Mast">The mast.</param>
/// <param name="Author">Who.</param>
/// <param name="Text">The words.</param>
/// <param name="Weather">Weather.</param>
public sealed record NoteEntry(
    Guid Id, OffsetDateTime At, string Mast, string Author, string Text, Weather Weather)
    : JournalEntry(Id, At, Mast, Author, Text, Weather)
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "note";
}
