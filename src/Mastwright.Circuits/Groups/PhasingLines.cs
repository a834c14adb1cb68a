using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>
/// Feeders of whatever lengths there are, and one L network a mast in the box: the wanted currents fix voltage and current at
/// the box's end of every feeder, and an L network brings each from the common voltage (equal voltages are simply joined).
/// Right at the design frequency; unlike current forcing it does not hold when the masts change.
/// </summary>
public static class PhasingLines
{
    /// <summary>What it is called.</summary>
    public const string Title = "feeders of given length with L networks";

    private const double Same = 1e-3;

    /// <summary>Designs the feed for the problem's feeder lengths, trying each mast in turn as the one wired straight to the common node.</summary>
    public static GroupResult Design(GroupProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new(null, faults);
        if (problem.Currents.Any(i => i == Complex.Zero))
            return new(null, [new("group-idle", Severity.Error, "Every mast on a feeder carries current; one is asked to carry nothing.", WayOut: "Leave the idle mast out of the group, or use independent networks.")]);
        var table = DriveTable.Of(problem);
        var feed = Enumerable.Range(0, problem.Masts).Select(straight => Try(problem, table, straight)).OfType<GroupFeed>().MinBy(f => f.Solution.LossW + (1e6 * Math.Max(0, f.WorstError - 0.01)));
        return feed is null
            ? new(null, [new("group-lines", Severity.Error, "No set of L networks brings these currents from one voltage with these feeder lengths.", WayOut: "Change one feeder's length by an eighth of a wave, or use independent networks.")])
            : new(feed, feed.Findings);
    }

    private static GroupFeed? Try(GroupProblem p, DriveTable table, int straight)
    {
        var ends = table.Drives.Select(d =>
        {
            var wave = new StandingWave(p.Feeder, p.FeederM(d.Mast), p.FrequencyHz, d.VoltagePhasor, d.CurrentPhasor);
            return (d.Mast, Voltage: wave.VoltageAt(p.FeederM(d.Mast)), Current: wave.CurrentAt(p.FeederM(d.Mast)));
        }).ToList();
        var rest = new List<Part> { p.Antenna() };
        var networks = new List<Part>();
        foreach (var (mast, voltage, current) in ends)
        {
            var ratio = voltage / ends[straight].Voltage;
            var joined = (ratio - 1).Magnitude < Same;
            var node = joined ? "box" : $"box{mast + 1}";
            rest.Add(p.FeederM(mast) > 0 ? new Line($"W{mast + 1}", node, GroupProblem.MastNode(mast), p.Feeder, p.FeederM(mast)) : new Resistor($"W{mast + 1}", node, GroupProblem.MastNode(mast), 0));
            if (joined)
                continue;
            if (GroupParts.LNetwork($"{mast + 1}", "box", node, ratio, current / voltage, p) is not { } network)
                return null;
            networks.AddRange(network);
        }

        var probe = new AcSource(GroupFeed.Transmitter, "box", Network.Ground, 1, p.LineOhm);
        List<Part> parts = [.. rest, .. GroupTuner.Tune(networks, [.. rest, probe], p, matchToo: false)];
        parts.AddRange(GroupParts.Matched(parts, "box", p));
        var whole = new Network(parts);
        return whole.TrySolve(p.FrequencyHz, out _, out _) ? new GroupFeed(Title, whole, p, table.Findings) : null;
    }
}
