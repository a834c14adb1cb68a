using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Switching;

/// <summary>What one mast hands to the receiver of another while it transmits.</summary>
public static class NeighbourCoupling
{
    /// <summary>Power in a receiver on the line of a listening mast over the power into the transmitting one.</summary>
    /// <param name="impedanceOhm">Impedance matrix of the two at the frequency, ohms: the transmitting mast first, two by two.</param>
    /// <param name="listening">The network between the listening mast and its line.</param>
    /// <param name="receiverOhm">Input resistance of the receiver, ohms.</param>
    /// <param name="frequencyHz">Frequency transmitted on, hertz.</param>
    public static double ReceivedShare(Complex[,] impedanceOhm, MatchCandidate listening, double receiverOhm, double frequencyHz)
    {
        var (ladder, problem) = (listening.Ladder, listening.Problem);
        var parts = new List<Part>
        {
            AcSource.Transmitter("driver", "neighbour", Network.Ground, 1, problem.LineOhm),
            new MultiportLoad("masts", [("neighbour", Network.Ground), (ladder.LoadNode, Network.Ground)], LoadImpedance.Constant(impedanceOhm)),
            new Resistor("receiver", Ladder.LineNode, Network.Ground, Guard.Positive(receiverOhm)),
        };
        for (var i = 0; i < ladder.Sections.Length; i++)
            parts.AddRange(ladder.Sections[i].Build(ladder.NameOf(i), ladder.NodeAfter(i), ladder.NodeAfter(i + 1), problem.Quality));
        if (problem.BaseShuntF > 0)
            parts.Add(new Capacitor(Ladder.BaseInsulator, ladder.LoadNode, Network.Ground, problem.BaseShuntF, problem.BaseShuntLoss));
        var solution = new Network(parts).Solve(frequencyHz);
        return solution.Part("receiver").DissipationW / solution.InputPowerW;
    }
}
