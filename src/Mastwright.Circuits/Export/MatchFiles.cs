using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Export;

/// <summary>The contents of the files of a match or of a group's feed: scattering matrices over frequency, and netlists.</summary>
public static class MatchFiles
{
    private const string Caution = "High voltage at radio frequency in the real network: see the stated peak voltages.";

    /// <summary>One port: what the line sees, over frequency.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz.</param>
    /// <param name="points">How many.</param>
    public static ImmutableArray<(double FrequencyHz, Complex[,] S)> OnePort(MatchCandidate candidate, double lowHz, double highHz, int points = 101) =>
        [.. MatchSweep.Of(candidate, lowHz, highHz, points).Select(p => (p.FrequencyHz, new[,] { { p.Reflection } }))];

    /// <summary>Two ports: the network alone, port 1 at the line, port 2 at the antenna.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz.</param>
    /// <param name="points">How many.</param>
    public static ImmutableArray<(double FrequencyHz, Complex[,] S)> TwoPort(MatchCandidate candidate, double lowHz, double highHz, int points = 101)
    {
        var parts = candidate.Network.Parts.Where(p => p.Role == PartRole.Passive && p.Name != Ladder.BaseInsulator).ToList();
        return [.. MatchSweep.Frequencies(lowHz, highHz, points).Select(f => (f, PortParameters.Scattering(parts, [Ladder.LineNode, candidate.Ladder.LoadNode], candidate.Problem.LineOhm, f)))];
    }

    /// <summary>The ports of a group's feed without its masts: port 1 at the line, then one a mast.</summary>
    /// <param name="feed">The feed.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz.</param>
    /// <param name="points">How many.</param>
    public static ImmutableArray<(double FrequencyHz, Complex[,] S)> GroupPorts(GroupFeed feed, double lowHz, double highHz, int points = 101)
    {
        var parts = feed.Network.Parts.Where(p => p.Role == PartRole.Passive).ToList();
        ImmutableArray<string> ports = [Ladder.LineNode, .. Enumerable.Range(0, feed.Problem.Masts).Select(GroupProblem.MastNode)];
        return [.. MatchSweep.Frequencies(lowHz, highHz, points).Select(f => (f, PortParameters.Scattering(parts, ports, feed.Problem.LineOhm, f)))];
    }

    /// <summary>The netlist of a match, frozen at the design frequency.</summary>
    public static string Netlist(MatchCandidate candidate) => SpiceNetlist.Of(candidate.Network, candidate.Problem.FrequencyHz, candidate.Title, Caution);

    /// <summary>The netlist of a group's feed with its masts, frozen at the design frequency.</summary>
    public static string Netlist(GroupFeed feed) => SpiceNetlist.Of(feed.Network, feed.Problem.FrequencyHz, feed.Title, Caution);
}
