using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Match;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Tune;

/// <summary>A part of the network now and next.</summary>
/// <param name="Name">Its reference name.</param>
/// <param name="Title">What it is.</param>
/// <param name="Kind">What its value measures.</param>
/// <param name="Now">Value now; null for a part that is not there yet.</param>
/// <param name="Next">Value to set.</param>
/// <param name="TurnsNow">Tap on the coil given, in turns from one end; null when unknown.</param>
/// <param name="TurnsNext">Tap to set; null when unknown or out of the coil's reach.</param>
public sealed record PartSetting(string Name, string Title, QuantityKind Kind, double? Now, double Next, double? TurnsNow, double? TurnsNext);

/// <summary>What to set next so that the line is matched to the mast as measured.</summary>
/// <param name="FrequencyHz">Frequency it is for.</param>
/// <param name="MeasuredOhm">Impedance measured at the feed terminal there.</param>
/// <param name="PredictedOhm">Impedance predicted there.</param>
/// <param name="Network">The network in words.</param>
/// <param name="SwrNow">Standing-wave ratio the present settings give on the measured mast.</param>
/// <param name="SwrNext">Standing-wave ratio with the next settings, losses of the parts in.</param>
/// <param name="Parts">Part by part.</param>
/// <param name="OtherForm">Whether the present form cannot match the measured mast, so that another is proposed.</param>
public sealed record NextSetting(
    double FrequencyHz, Complex MeasuredOhm, Complex PredictedOhm, string Network, double SwrNow, double SwrNext, ImmutableArray<PartSetting> Parts, bool OtherForm)
{
    /// <summary>Works it out.</summary>
    /// <param name="station">The station, for line and quality of parts.</param>
    /// <param name="mast">Name of the mast.</param>
    /// <param name="band">The band.</param>
    /// <param name="measuredOhm">Impedance measured at the feed terminal.</param>
    /// <param name="predictedOhm">Impedance predicted there.</param>
    /// <param name="present">Settings now by reference name or “coil”, “capacitor”; those of the design where nothing is given.</param>
    /// <param name="coil">The tapped coil in use; null when unknown.</param>
    public static (NextSetting? Setting, ImmutableArray<Finding> Findings) Of(
        Station station, string mast, Band band, Complex measuredOhm, Complex predictedOhm, IReadOnlyDictionary<string, double> present, AirCoil? coil)
    {
        var measured = Problem(station, band, measuredOhm);
        if (measured.Faults() is { IsEmpty: false } faults)
        {
            return (null, faults);
        }

        var (drawn, faulty) = NetworkChoice.Of(station, mast, band, Problem(station, band, predictedOhm));
        if (drawn is null)
        {
            return (null, faulty);
        }

        var (ladder, unknown) = Present(drawn.Match.Ladder, present);
        if (unknown is not null)
        {
            return (null, [unknown]);
        }

        var now = new MatchCandidate(drawn.Match.TopologyId, drawn.Match.Title, ladder, measured);
        var tuned = LadderTuner.Retune(ladder, measured);
        var next = tuned is not null ? now.With(tuned) : NetworkChoice.Of(station, mast, band, measured).Chosen?.Match ?? now;
        return (new NextSetting(
            band.FrequencyHz, measuredOhm, predictedOhm, next.Title, now.Swr, next.Swr,
            [.. next.Ladder.Sections.SelectMany((s, i) => Settings(next.Ladder, i, tuned is null ? null : ladder, coil))], tuned is null), []);
    }

    private static MatchProblem Problem(Station station, Band band, Complex feedOhm) =>
        FeedProblem.Of(station, band, LoadImpedance.Constant(feedOhm), shuntF: 0);

    // A tapped coil has two settings: how much of it is in use, and where its tap sits.
    private static IEnumerable<PartSetting> Settings(Ladder ladder, int index, Ladder? before, AirCoil? coil)
    {
        yield return Part(ladder, index, before?.Sections[index].Value, coil);
        if (ladder.Sections[index] is TappedCoilSection tapped)
        {
            var share = (before?.Sections[index] as TappedCoilSection)?.TapShare;
            yield return new PartSetting(ladder.NameOf(index) + " tap", "turns from ground to the tap over all turns in use", QuantityKind.Ratio, share, tapped.TapShare, null, null);
        }
    }

    private static PartSetting Part(Ladder ladder, int index, double? now, AirCoil? coil)
    {
        var section = ladder.Sections[index];
        var isCoil = section.ValueKind == QuantityKind.Inductance;
        return new PartSetting(
            ladder.NameOf(index), section.Title, section.ValueKind, now, section.Value,
            isCoil && now is { } present ? coil?.TurnsFor(present) : null, isCoil ? coil?.TurnsFor(section.Value) : null);
    }

    private static (Ladder Ladder, Finding? Problem) Present(Ladder drawn, IReadOnlyDictionary<string, double> present)
    {
        var sections = drawn.Sections.ToBuilder();
        var names = Enumerable.Range(0, sections.Count).Select(drawn.NameOf).ToList();
        foreach (var (name, value) in present)
        {
            var wanted = name.ToUpperInvariant() switch { "COIL" or "L" => "L1", "CAPACITOR" or "C" => "C1", var other => other };
            var index = names.IndexOf(wanted);
            if (index < 0)
            {
                return (drawn, new Finding("part-unknown", Severity.Error, $"The network of the design has no part “{name}”.", Value: name,
                    Allowed: string.Join("; ", names.Select((n, i) => string.Create(CultureInfo.InvariantCulture, $"{n} ({sections[i].Title})"))), WayOut: "Name one of its parts."));
            }

            sections[index] = sections[index].WithValue(value);
        }

        return (new Ladder(sections.ToImmutable()), null);
    }
}
