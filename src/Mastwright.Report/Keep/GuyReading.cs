using System.Collections.Immutable;
using Mastwright.Analysis.Tune;
using Mastwright.Build.Tension;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Report.Keep;

/// <summary>What every entry has, whatever it is about.</summary>
/// <param name="Id">Its key.</param>
/// <param name="At">When.</param>
/// <param name="Author">Who noted it.</param>
/// <param name="Text">Free words.</param>
/// <param name="Weather">The weather meanwhile.</param>
public sealed record EntryHead(Guid Id, OffsetDateTime At, string Author, string Text, Weather Weather);

/// <summary>What was read beside a guy, turned into its tension: the same from the command line, a filled-in sheet and a phone.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Guy">The guy as it should be.</param>
/// <param name="Found">The tension found.</param>
/// <param name="Raw">The reading as written.</param>
/// <param name="Remarks">What is to be said about it.</param>
public sealed record GuyReading(Mast Mast, GuyAtRest Guy, TensionEstimate Found, string Raw, ImmutableArray<Finding> Remarks)
{
    /// <summary>The field of a finding about the guy.</summary>
    public const string GuyField = "guy";

    /// <summary>The field of a finding about the reading.</summary>
    public const string ReadingField = "reading";

    /// <summary>The tension from what was read; a finding with <see cref="GuyField"/>, <see cref="ReadingField"/> or no place when there is none.</summary>
    /// <param name="masts">The masts as they stand.</param>
    /// <param name="station">The station.</param>
    /// <param name="mast">One of its masts.</param>
    /// <param name="temperatureK">Temperature meanwhile; null when it was not noted.</param>
    /// <param name="guy">The guy as written.</param>
    /// <param name="way">How it was read, one of <see cref="TensionReadings.Ways"/>.</param>
    /// <param name="raw">The reading as written.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (GuyReading? Reading, Finding? Problem) Take(
        StandingMasts masts, Station station, Mast mast, double? temperatureK, string guy, string way, string raw, CancellationToken cancellation)
    {
        var (standing, falls) = masts.Of(station, mast, temperatureK, cancellation);
        if (standing is null)
        {
            return (null, falls);
        }

        var (name, unknown) = GuyNames.Find([.. standing.Guys.Select(g => g.Name)], guy, mast.Name);
        if (unknown is not null)
        {
            return (null, unknown with { Place = new Place("", 0, 0, GuyField) });
        }

        var found = standing.Guys.First(g => g.Name == name);
        var estimate = TensionReadings.Estimate(found, way, raw);
        return estimate.Value is { } tension
            ? (new GuyReading(mast, found, tension, raw, estimate.Findings), null)
            : (null, estimate.Errors.First() with { Place = new Place("", 0, 0, ReadingField) });
    }

    /// <summary>The entry it makes.</summary>
    public TensionEntry Entry(EntryHead head) =>
        new(head.Id, head.At, Mast.Name, head.Author, head.Text, head.Weather, GuyNames.Short(Guy.Name), Found.AtAnchor.Value, Found.UncertaintyN, Found.Method, Raw);
}
