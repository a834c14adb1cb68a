using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>
/// Current forcing: a quarter wave of line to every mast makes its current I = -jV/Z0 whatever the mast shows, so masts on
/// one node carry equal currents, and a half wave more turns one over. Nodes of other phase are set by an L network each:
/// with r = V2/V1, X1 = Im(1/r)/Re(Y2) in series and 1/X2 = (Re(1/r) - 1)/X1 + Im(Y2) to ground at the second node.
/// </summary>
public static class CurrentForcing
{
    /// <summary>What it is called.</summary>
    public const string Title = "current forcing";

    private const double Same = 1e-6;

    /// <summary>Designs the feed: lines of the problem's feeder, an L network for every further phase, and a match to the line.</summary>
    public static GroupResult Design(GroupProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new(null, faults);
        if (problem.Currents.Any(i => i == Complex.Zero))
            return new(null, [new("group-idle", Severity.Error, "Current forcing drives every mast; one is asked to carry nothing.", WayOut: "Leave the idle mast out of the group, or use independent networks.")]);
        var findings = DriveTable.Of(problem).Findings.ToBuilder();
        var nodes = Nodes(problem);
        var parts = new List<Part> { problem.Antenna() };
        var quarters = QuartersToReach(problem);
        foreach (var (node, ratio) in nodes)
            for (var k = 0; k < problem.Masts; k++)
            {
                var own = problem.Currents[k] / problem.Currents[problem.Reference];
                var over = (own + ratio).Magnitude < Same;
                if (over || (own - ratio).Magnitude < Same)
                    parts.Add(new Line($"W{k + 1}", node, GroupProblem.MastNode(k), problem.Feeder, problem.Feeder.LengthM((quarters + (over ? 2 : 0)) * Math.PI / 2, problem.FrequencyHz)));
            }

        var y = NodeAdmittances(nodes, problem);
        for (var n = 1; n < nodes.Count; n++)
        {
            if (GroupParts.LNetwork($"{n}", nodes[0].Node, nodes[n].Node, nodes[n].Ratio / nodes[0].Ratio, y[n], problem) is not { } network)
                return new(null, [new("group-forcing", Severity.Error, "An L network cannot set this phase: the node takes no power, or the currents differ in amount alone.", WayOut: "Use lines of other impedance for one mast, or independent networks.")]);
            parts.AddRange(network);
        }

        if (quarters > 1)
            findings.Add(new("group-long-lines", Severity.Note, $"A quarter wave does not reach the masts; {quarters} quarter waves are used and hold the phase over less bandwidth.", WayOut: "Use line of a higher velocity factor."));
        parts.AddRange(GroupParts.Matched(parts, nodes[0].Node, problem));
        return new(new GroupFeed(Title, new Network(parts), problem, findings.ToImmutable()), findings.ToImmutable());
    }

    internal static int QuartersToReach(GroupProblem p)
    {
        var quarter = p.Feeder.WavelengthM(p.FrequencyHz) / 4;
        var n = 1;
        while (n * quarter < p.ReachM)
            n += 2;
        return n;
    }

    // One node for each current that is not another's equal or opposite.
    private static List<(string Node, Complex Ratio)> Nodes(GroupProblem p)
    {
        var nodes = new List<(string Node, Complex Ratio)> { ("box1", Complex.One) };
        foreach (var i in p.Currents)
        {
            var ratio = i / p.Currents[p.Reference];
            if (!nodes.Any(n => (n.Ratio - ratio).Magnitude < Same || (n.Ratio + ratio).Magnitude < Same))
                nodes.Add(($"box{nodes.Count + 1}", ratio));
        }

        return nodes;
    }

    // The admittance each node shows while all masts carry their wanted currents, losses of the lines included.
    private static Complex[] NodeAdmittances(List<(string Node, Complex Ratio)> nodes, GroupProblem p)
    {
        var drives = DriveTable.Of(p).Drives;
        var quarters = QuartersToReach(p);
        return [.. nodes.Select(node =>
        {
            var (current, voltage) = (Complex.Zero, Complex.Zero);
            foreach (var d in drives)
            {
                var own = d.CurrentPhasor / drives[p.Reference].CurrentPhasor;
                var over = (own + node.Ratio).Magnitude < Same;
                if (!over && (own - node.Ratio).Magnitude >= Same)
                    continue;
                var length = p.Feeder.LengthM((quarters + (over ? 2 : 0)) * Math.PI / 2, p.FrequencyHz);
                var wave = new Lines.StandingWave(p.Feeder, length, p.FrequencyHz, d.VoltagePhasor, d.CurrentPhasor);
                current += wave.CurrentAt(length);
                voltage = wave.VoltageAt(length);
            }

            return current / voltage;
        })];
    }
}
