using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Groups;

/// <summary>Pieces common to the designers.</summary>
internal static class GroupParts
{
    /// <summary>A reactance as a coil or capacitor, or nothing when it vanishes.</summary>
    public static Part? Reactance(string name, string a, string b, double ohm, GroupProblem p) => Math.Abs(ohm) < 1e-9
        ? null
        : ohm > 0
            ? new Inductor("L" + name, a, b, ohm / p.Omega, p.Quality.Coil)
            : new Capacitor("C" + name, a, b, -1 / (p.Omega * ohm), p.Quality.Capacitor);

    /// <summary>
    /// The L network that gives a second node the voltage r·V1: X1 = Im(1/r)/Re(Y2) in series, 1/X2 = (Re(1/r) - 1)/X1 + Im(Y2)
    /// to ground at the second node. Null when no such network exists.
    /// </summary>
    public static IReadOnlyList<Part>? LNetwork(string name, string first, string second, Complex ratio, Complex admittance, GroupProblem p)
    {
        var inverse = 1 / ratio;
        var x1 = inverse.Imaginary / admittance.Real;
        if (!double.IsFinite(x1) || Math.Abs(x1) < 1e-6 * p.LineOhm)
            return null;
        var b = ((inverse.Real - 1) / x1) + admittance.Imaginary;
        return [.. new[] { Reactance(name + "s", first, second, x1, p), b == 0 ? null : Reactance(name + "p", second, Network.Ground, 1 / b, p) }.OfType<Part>()];
    }

    /// <summary>Puts a two-element match between the transmitter's line and a node, tuned with all losses in.</summary>
    public static IEnumerable<Part> Matched(IReadOnlyList<Part> rest, string node, GroupProblem p)
    {
        var probe = new Network(rest.Append(new AcSource("probe", node, Network.Ground, 1, p.LineOhm)));
        var z = probe.Solve(p.FrequencyHz).InputImpedanceOhm("probe");
        var problem = new MatchProblem(LoadImpedance.Constant(z), p.LineOhm, p.FrequencyHz, p.PowerW, p.Quality);
        var best = LMatch.Design(problem).Candidates.FirstOrDefault();
        yield return AcSource.Transmitter(GroupFeed.Transmitter, "line", Network.Ground, p.PowerW, p.LineOhm);
        if (best is null || best.Ladder.Sections.IsEmpty)
        {
            yield return new Resistor("bond", "line", node, 0);
            yield break;
        }

        var ladder = MatchDesigner.Knobs(best.Ladder) is { Length: 2 } knobs && LadderTuner.Tune(best.Ladder, problem, knobs) is { } tuned ? tuned : best.Ladder;
        for (var i = 0; i < ladder.Sections.Length; i++)
        {
            string Place(int k) => ladder.NodeAfter(k) == ladder.LoadNode ? node : ladder.NodeAfter(k);
            foreach (var part in ladder.Sections[i].Build("m" + ladder.NameOf(i), Place(i), Place(i + 1), p.Quality))
                yield return part;
        }

        if (ladder.LoadNode == Ladder.LineNode)
            yield return new Resistor("bond", "line", node, 0);
    }
}
