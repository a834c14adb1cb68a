using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using Mastwright.Analysis.Results;
using Mastwright.Circuits;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>One frequency of a sweep.</summary>
/// <param name="FrequencyHz">Frequency, Hz.</param>
/// <param name="FeedOhm">Impedance the network sees, Ω.</param>
/// <param name="Swr">Standing wave ratio on the line with the network left as it is; null when there is no network.</param>
public sealed record SweepPoint(double FrequencyHz, Complex FeedOhm, double? Swr);

/// <summary>A mast's impedance and match across one band.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="Band">The band.</param>
/// <param name="Points">The points, frequency rising.</param>
public sealed record BandSweepResult(string Mast, string Band, ImmutableArray<SweepPoint> Points)
{
    /// <summary>Why there are no points, or what to know of them: a curve over soil that did not settle, wires cut coarsely.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>The run of swept frequencies round the design frequency where the standing wave ratio stays at or below a limit; null when it exceeds it there.</summary>
    public (double LowHz, double HighHz)? Within(double swr, double designHz)
    {
        var centre = Points.Select((p, i) => (Gap: Math.Abs(p.FrequencyHz - designHz), Index: i)).Min().Index;
        bool Good(int i) => Points[i].Swr is { } s && s <= swr;
        if (!Good(centre))
        {
            return null;
        }

        var (low, high) = (centre, centre);
        while (low > 0 && Good(low - 1))
        {
            low--;
        }

        while (high < Points.Length - 1 && Good(high + 1))
        {
            high++;
        }

        return (Points[low].FrequencyHz, Points[high].FrequencyHz);
    }
}

/// <summary>Sweeps bands after the station is solved: how the match the station has been given fares off its design frequency.</summary>
public static class BandSweep
{
    private const int Solved = 5;
    private const int Shown = 41;

    /// <summary>One mast across one band, over the earth the verdict rests on: the wires are solved at a few frequencies, the rows between follow a smooth curve through them.</summary>
    /// <param name="result">The station's result.</param>
    /// <param name="mast">Index of the mast.</param>
    /// <param name="band">Index of the band.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static BandSweepResult Of(StationResult result, int mast, int band, CancellationToken cancellation = default)
    {
        var station = result.Station;
        var (m, b) = (station.Masts[mast], station.Bands[band]);
        var answer = result.Masts[mast].Bands[band];
        var (low, high) = BandImpedanceRun.Edges(b);
        var (found, findings) = EarthChoice.IsExact(station) ? OverSoil(station, mast, b, low, high, cancellation) : OverPerfectGround(station, mast, b, low, high, cancellation);
        if (found is not { } load)
        {
            return new BandSweepResult(m.Name, b.Title, []) { Findings = findings };
        }

        var matched = answer.Match is { } match ? new MatchCandidate(match.TopologyId, match.Title, match.Ladder, match.Problem with { Load = load }) : null;
        var points = Enumerable.Range(0, Shown).Select(i => low + ((high - low) * i / (Shown - 1))).Select(f =>
        {
            cancellation.ThrowIfCancellationRequested();
            var seen = BasePoint.Of(load.At(f)[0, 0], b.PowerW, f, BandRun.BaseCapacitanceF(station, m));
            return new SweepPoint(f, new Complex(seen.TerminalResistance.Value, seen.TerminalReactance.Value), matched?.SwrAt(f));
        });
        return new BandSweepResult(m.Name, b.Title, [.. points]) { Findings = findings };
    }

    private static (LoadImpedance? Load, ImmutableArray<Finding> Findings) OverPerfectGround(Station station, int mast, Band b, double low, double high, CancellationToken cancellation)
    {
        double[] at = [.. Enumerable.Range(0, Solved).Select(i => low + ((high - low) * i / (Solved - 1))).Append(b.FrequencyHz).Distinct().Order()];
        var sweep = WireSolver.Sweep(WireModels.Of(station), at, null, cancellation);
        return (sweep.Solutions.IsEmpty ? null
            : LoadImpedance.Table([.. sweep.Solutions.Select((s, i) => (at[i], s.FeedImpedance(mast) + BandRun.Drive(station, station.Masts[mast], s, mast).Earth.Value))]), sweep.Findings);
    }

    // Where the verdict rests on the real soil, its network meets the impedance over that soil, the earth's loss in it.
    private static (LoadImpedance? Load, ImmutableArray<Finding> Findings) OverSoil(Station station, int mast, Band b, double low, double high, CancellationToken cancellation)
    {
        var (sweep, note) = SoilSolver.Sweep(SoilModels.Of(station).Model, low, high, BandImpedanceRun.Tolerance, cancellation);
        return (sweep.HasValues
            ? LoadImpedance.Table([.. Enumerable.Range(0, Shown).Select(i => Math.Min(high, low + ((high - low) * i / (Shown - 1)))).Append(b.FrequencyHz).Distinct().Order().Select(f => (f, sweep.FeedImpedance(f, mast)))])
            : null, [.. sweep.Findings, .. new[] { note, Unsettled(sweep.HasValues, sweep.Converged, sweep.ErrorEstimate) }.OfType<Finding>()]);
    }

    /// <summary>What to say of a curve that holds values but did not settle to what was asked; null when it did.</summary>
    /// <param name="hasValues">Whether there is a curve.</param>
    /// <param name="converged">Whether it settled.</param>
    /// <param name="error">Largest estimated relative error between the frequencies solved.</param>
    internal static Finding? Unsettled(bool hasValues, bool converged, double error) => !hasValues || converged ? null
        : new("sweep-unsettled", Severity.Warning, "The curve over the soil did not settle between the frequencies solved: narrow features of it may be wrong or missing.",
            Value: double.IsFinite(error) ? string.Create(CultureInfo.InvariantCulture, $"{100 * error:0.##} %") : null,
            Allowed: string.Create(CultureInfo.InvariantCulture, $"{100 * BandImpedanceRun.Tolerance:0.##} %"), WayOut: "Sweep a narrower band, or look for a guy or coil that resonates inside it.");
}
