using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Circuits.Groups;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Direction = Mastwright.Model.Design.Direction;

namespace Mastwright.Analysis.Feed;

/// <summary>One way to feed a group, in parts that can be had.</summary>
/// <param name="Real">The feed with its parts.</param>
/// <param name="Pattern">What it radiates in the first switch position with the currents it really gives.</param>
/// <param name="Edges">Worst drive error and SWR at the edges of the band.</param>
public sealed record GroupOffer(GroupRealisation Real, GroupPattern Pattern, ImmutableArray<(double FrequencyHz, double WorstError, double Swr)> Edges);

/// <summary>One switch position on the hardware of the group.</summary>
/// <param name="Direction">The position.</param>
/// <param name="Wanted">What the asked currents radiate.</param>
/// <param name="Given">What the feed's currents radiate.</param>
/// <param name="Errors">Each fed mast's name, current asked and achieved over that of the reference mast.</param>
/// <param name="Swr">SWR at the transmitter.</param>
/// <param name="DumpW">Power in a dump resistor, W.</param>
public sealed record FedDirection(Direction Direction, GroupPattern Wanted, GroupPattern Given, ImmutableArray<(string Mast, Complex Asked, Complex Achieved)> Errors, double Swr, double DumpW);

/// <summary>A group with everything its feed needs.</summary>
/// <param name="Group">The group.</param>
/// <param name="Masts">Names of the masts fed.</param>
/// <param name="Offers">Ways to feed it, best first; the one the design names in front.</param>
/// <param name="Table">Which mast hangs on which port in each position; null when the positions are no rearrangements of one another.</param>
/// <param name="Directions">Position by position on the first way's hardware.</param>
/// <param name="Findings">Why other ways fail, and what to know.</param>
public sealed record FedGroup(Group Group, ImmutableArray<string> Masts, ImmutableArray<GroupOffer> Offers, DirectionTable? Table, ImmutableArray<FedDirection> Directions, ImmutableArray<Finding> Findings);

/// <summary>Feeds of groups in parts that can be had, and their switching.</summary>
public static class GroupFeedRun
{
    private const double EdgeShare = 0.01;

    /// <summary>Every group.</summary>
    public static (ImmutableArray<FedGroup> Groups, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = SoilModels.Of(station);
        var findings = new List<Finding>(soil.Findings);
        var groups = ImmutableArray.CreateBuilder<FedGroup>();
        foreach (var (group, g) in station.Groups.Select((group, g) => (group, g)))
        {
            progress?.Report(new AnalysisStep($"Solving group {group.Name} over the soil", (double)g / station.Groups.Length));
            var solved = SoilSolver.Solve(soil.Model, group.FrequencyHz, cancellation);
            findings.AddRange(solved.Findings);
            if (solved.Solution is { } solution)
            {
                var beside = Beside(station, group, cancellation);
                findings.AddRange(beside.Findings);
                groups.Add(One(station, group, new GroupBasis(solution), beside.Solutions));
            }
        }

        return (groups.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }

    // The edges of the band the group works in; of a group outside every band, a hundredth to either side.
    private static SweepResult Beside(Station station, Group group, CancellationToken cancellation)
    {
        var edges = GroupRun.BandOf(station, group) is { } band ? FeedProblem.Edges(band) : default;
        var (low, high) = edges.LowHz < group.FrequencyHz && group.FrequencyHz < edges.HighHz
            ? edges
            : (group.FrequencyHz * (1 - EdgeShare), group.FrequencyHz * (1 + EdgeShare));
        return WireSolver.Sweep(WireModels.Of(station), [low, group.FrequencyHz, high], null, cancellation);
    }

    private static FedGroup One(Station station, Group group, GroupBasis basis, ImmutableArray<WireSolution> beside)
    {
        if (group.Directions.FirstOrDefault(d => GroupRun.Asked(station, d).Count(a => a != Complex.Zero) >= 2) is not { } first)
        {
            return new FedGroup(group, [], [], null, [], [new Finding("group-single", Severity.Warning, "No position feeds two masts, so there is nothing to phase.", WayOut: "Give two masts of a position a size above 0.")]);
        }

        var terminals = GroupTerminals.Of(station, group, first, basis, beside);
        var names = terminals.Fed.Select(i => station.Masts[i].Name).ToImmutableArray();
        var (feeds, why) = GroupDesigner.Design(terminals.Problem);
        var workshop = FeedProblem.Workshop(station, group.FrequencyHz, GroupRun.BandOf(station, group) ?? new Band());
        var azimuth = (Math.PI / 2) - first.BearingRad;
        var wanted = TitleOf(group.Feed.Way);
        var offers = feeds.DistinctBy(f => f.Title).Select(f => GroupRealisation.Of(f, workshop))
            .OrderBy(r => r.Feed.Title == wanted ? 0 : 1).ThenBy(r => r.IsComplete ? 0 : 1).ThenBy(r => GroupDesigner.Points(r.Feed))
            .Select(r => new GroupOffer(r, basis.Pattern(terminals.IntoMasts(r.Feed.Currents), azimuth), [.. beside.Where(s => s.FrequencyHz != group.FrequencyHz).Select(s =>
            {
                var (errors, swr) = r.Feed.At(s.FrequencyHz);
                return (s.FrequencyHz, errors.Max(e => e.Vector), swr);
            })])).ToImmutableArray();
        var findings = why.ToBuilder();
        if (wanted is not null && offers.All(o => o.Real.Feed.Title != wanted))
        {
            findings.Add(new Finding("group-way", Severity.Error, $"The way “{wanted}” asked for cannot feed {group.Name}.", Value: wanted, Allowed: string.Join(", ", offers.Select(o => o.Real.Feed.Title)),
                WayOut: (why.FirstOrDefault() is { } f ? f.Message + " " : "") + "Name one of these ways, or leave “way” out."));
        }

        if (offers.IsEmpty)
        {
            return new FedGroup(group, names, [], null, [], findings.ToImmutable());
        }

        // Positions feeding other masts than the first need a box of their own.
        var alike = group.Directions.Where(d => Fed(station, d).SequenceEqual(terminals.Fed)).ToList();
        var asked = alike.Select(d => (d.Name, Currents: terminals.Fed.Select(i => GroupRun.Asked(station, d)[i]).ToImmutableArray())).ToList();
        var (table, impossible) = DirectionTable.Of(asked[0].Currents, asked);
        if (table is null || alike.Count < group.Directions.Length)
        {
            findings.Add(new Finding("group-switching", Severity.Warning, $"Position “{impossible ?? group.Directions.First(d => !alike.Contains(d)).Name}” is no rearrangement of the currents of “{first.Name}”: one box with relays cannot serve both.",
                WayOut: "Build a box for each such position, or ask currents that are the same set on other masts."));
        }

        return new FedGroup(group, names, offers, table, table is null ? [] : [.. alike.Select((d, k) => Hang(station, group, basis, terminals, offers[0].Real, table.Directions[k], d))], findings.ToImmutable());
    }

    private static FedDirection Hang(Station station, Group group, GroupBasis basis, GroupTerminals terminals, GroupRealisation real, Circuits.Groups.Direction ports, Direction direction)
    {
        var asked = GroupRun.Asked(station, direction);

        // What the feed is asked for at its terminals in this position, strays included.
        var own = GroupTerminals.Of(station, group, direction, basis).Problem.Currents;
        var (feed, currents) = real.Hung(ports.PortOfMast, own);
        var given = terminals.IntoMasts(currents);
        var azimuth = (Math.PI / 2) - direction.BearingRad;
        var reference = terminals.Fed.MaxBy(i => asked[i].Magnitude);
        return new FedDirection(direction, basis.Pattern(basis.AtPower(asked, group.PowerW), azimuth), basis.Pattern(given, azimuth),
            [.. terminals.Fed.Select(i => (station.Masts[i].Name, asked[i] / asked[reference], given[i] / given[reference]))], feed.Swr, feed.DumpPowerW);
    }

    private static int[] Fed(Station station, Direction direction)
    {
        var asked = GroupRun.Asked(station, direction);
        return [.. Enumerable.Range(0, asked.Length).Where(i => asked[i] != Complex.Zero)];
    }

    private static string? TitleOf(GroupWay way) => way switch
    {
        GroupWay.CurrentForcing => CurrentForcing.Title,
        GroupWay.Hybrid => HybridFeed.Title,
        GroupWay.PhasingLines => PhasingLines.Title,
        GroupWay.CutLines => EqualVoltageLines.Title,
        GroupWay.Independent => IndependentNetworks.Title,
        _ => null,
    };
}
