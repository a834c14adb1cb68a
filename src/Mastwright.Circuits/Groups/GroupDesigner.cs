using System.Collections.Immutable;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>Every way of feeding a group, solved and put in order.</summary>
public static class GroupDesigner
{
    /// <summary>
    /// Tries current forcing, a quadrature hybrid, lines of equal voltage, feeders of given length with L networks, and
    /// independent networks.
    /// </summary>
    /// <param name="problem">The group.</param>
    /// <returns>
    /// The feeds in order of demerits (our own weighing, no source): one for each percent of the worst current error, one for
    /// each 0.1 dB of loss including a dump resistor, a quarter for each coil, capacitor and line; and why the others failed.
    /// </returns>
    public static (ImmutableArray<GroupFeed> Feeds, ImmutableArray<Finding> Findings) Design(GroupProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return ([], faults);
        var feeds = new List<GroupFeed>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var design in new Func<GroupProblem, GroupResult>[] { CurrentForcing.Design, p => HybridFeed.Design(p), PhasingLines.Design, IndependentNetworks.Design })
        {
            var result = design(problem);
            if (result.Feed is { } feed)
                feeds.Add(feed);
            else
                findings.AddRange(result.Findings.Select(f => f with { Severity = Severity.Note }));
        }

        if (problem.Masts == 2)
        {
            var (lines, why) = EqualVoltageLines.Design(problem);
            feeds.AddRange(lines.Take(2));
            findings.AddRange(why.Select(f => f with { Severity = Severity.Note }));
        }

        return ([.. feeds.OrderBy(Points)], findings.ToImmutable());
    }

    /// <summary>Demerits of a feed, the fewer the better.</summary>
    public static double Points(GroupFeed feed) =>
        (feed.WorstError * 100)
        + (feed.Solution.LossDb / 0.1)
        + (0.25 * feed.Network.Parts.Count(p => p is Inductor or Capacitor or Line));
}
