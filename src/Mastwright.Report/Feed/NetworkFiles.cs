using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis;
using Mastwright.Analysis.Feed;
using Mastwright.Analysis.Results;
using Mastwright.Build.Sweeps;
using Mastwright.Build.Sweeps.Touchstone;
using Mastwright.Circuits.Export;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Feed;

/// <summary>The files of one network in open formats.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Netlist">SPICE netlist at the design frequency.</param>
/// <param name="AtLine">Touchstone text of what the line sees over the band, one port; null for a group's feed.</param>
/// <param name="Ports">Touchstone text of the network alone: port 1 at the line, then one a mast.</param>
/// <param name="PortCount">Ports of that file.</param>
public sealed record NetworkFiles(string Title, string Netlist, string? AtLine, string Ports, int PortCount)
{
    /// <summary>The files of the network a mast uses on a band.</summary>
    /// <param name="result">The station's result.</param>
    /// <param name="mast">Which mast.</param>
    /// <param name="band">Name of the band.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (NetworkFiles? Files, ImmutableArray<Finding> Findings) OfBand(StationResult result, int mast, string band, CancellationToken cancellation)
    {
        var fed = FeedRun.Of(result, null, cancellation);
        var found = fed.IsEmpty ? null : fed[mast].Bands.First(b => b.Band.Title == band);
        if (found?.Chosen is not { } chosen)
        {
            return (null, found?.Findings ?? result.Findings);
        }

        var (low, high) = chosen.Problem.Load.Span;
        var title = $"{result.Station.Name}, mast {fed[mast].Mast}, {band}: {chosen.Title}";
        return (new NetworkFiles(title, MatchFiles.Netlist(chosen), Text(MatchFiles.OnePort(chosen, low, high), chosen.Problem.LineOhm, title + ", with the mast"),
            Text(MatchFiles.TwoPort(chosen, low, high), chosen.Problem.LineOhm, title + ", network alone: port 1 at the line, port 2 at the mast"), 2), []);
    }

    /// <summary>The files of the first way to feed a group.</summary>
    /// <param name="station">The station.</param>
    /// <param name="group">Name of the group.</param>
    /// <param name="progress">Told what is being done.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static (NetworkFiles? Files, ImmutableArray<Finding> Findings) OfGroup(Station station, string group, IProgress<AnalysisStep>? progress, CancellationToken cancellation)
    {
        var (groups, findings) = GroupFeedRun.Of(station with { Groups = [.. station.Groups.Where(g => g.Name == group)] }, progress, cancellation);
        if (groups.FirstOrDefault()?.Offers.FirstOrDefault() is not { Real.Feed: var feed } || groups[0].Masts.IsEmpty)
        {
            return (null, [.. findings, .. groups.SelectMany(g => g.Findings)]);
        }

        var span = feed.Problem.Load.Span;
        var (low, high) = double.IsInfinity(span.HighHz) ? (feed.Problem.FrequencyHz * 0.99, feed.Problem.FrequencyHz * 1.01) : span;
        var title = $"{station.Name}, group {group}: {feed.Title}";
        return (new NetworkFiles(title, MatchFiles.Netlist(feed), null,
            Text(MatchFiles.GroupPorts(feed, low, high), feed.Problem.LineOhm, title + ", without the masts: port 1 at the line, then " + string.Join(", ", groups[0].Masts)), feed.Problem.Masts + 1), []);
    }

    private static string Text(ImmutableArray<(double FrequencyHz, Complex[,] S)> rows, double referenceOhm, string comment)
    {
        var ports = rows[0].S.GetLength(0);
        var data = new NetworkData(NetworkParameter.S, [.. Enumerable.Repeat(referenceOhm, ports)],
            [.. rows.Select(r => new NetworkPoint(r.FrequencyHz, [.. r.S.Cast<Complex>()]))], []);
        return TouchstoneWriter.Write(data, new TouchstoneWriteOptions(Comments: [comment]));
    }
}
