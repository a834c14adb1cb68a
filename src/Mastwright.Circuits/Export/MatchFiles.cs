using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Export;

/// <summary>The files of a match.</summary>
public static class MatchFiles
{
    /// <summary>One port: what the line sees, over frequency.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz.</param>
    /// <param name="points">How many.</param>
    /// <param name="format">How pairs are written.</param>
    public static string OnePort(MatchCandidate candidate, double lowHz, double highHz, int points = 101, TouchstoneFormat format = TouchstoneFormat.RealImaginary) =>
        Touchstone.Write([.. MatchSweep.Of(candidate, lowHz, highHz, points).Select(p => (p.FrequencyHz, new[,] { { p.Reflection } }))], candidate.Problem.LineOhm, format, $"{candidate.Title}, with the antenna");

    /// <summary>Two ports: the network alone, port 1 at the line, port 2 at the antenna.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="lowHz">First frequency, hertz.</param>
    /// <param name="highHz">Last frequency, hertz.</param>
    /// <param name="points">How many.</param>
    /// <param name="format">How pairs are written.</param>
    public static string TwoPort(MatchCandidate candidate, double lowHz, double highHz, int points = 101, TouchstoneFormat format = TouchstoneFormat.RealImaginary)
    {
        var parts = candidate.Network.Parts.Where(p => p.Role == PartRole.Passive && p.Name != Ladder.BaseInsulator).ToList();
        var rows = MatchSweep.Frequencies(lowHz, highHz, points)
            .Select(f => (f, PortParameters.Scattering(parts, [Ladder.LineNode, candidate.Ladder.LoadNode], candidate.Problem.LineOhm, f)));
        return Touchstone.Write([.. rows], candidate.Problem.LineOhm, format, $"{candidate.Title}, network alone: port 1 at the line, port 2 at the antenna");
    }

    /// <summary>The netlist, frozen at the design frequency.</summary>
    public static string Netlist(MatchCandidate candidate) =>
        SpiceNetlist.Of(candidate.Network, candidate.Problem.FrequencyHz, candidate.Title, "High voltage at radio frequency in the real network: see the stated peak voltages.");
}
