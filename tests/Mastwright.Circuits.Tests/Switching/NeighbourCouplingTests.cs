using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Switching;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Switching;

public class NeighbourCouplingTests
{
    // Two coupled ports by hand: I2 = -Z21·I1/(Z22 + R), Zin = Z11 - Z12·Z21/(Z22 + R), share = |I2|²R/(|I1|²·Re Zin).
    [Fact]
    public void Receiver_straight_on_the_neighbour_by_hand()
    {
        Complex z11 = new(40, 20), z12 = new(18, -12), z22 = new(50, 0);
        var straight = LMatch.Design(new(LoadImpedance.Constant(50), 50, 3.65e6, 100, PartQuality.Lossless)).Candidates.Single();
        Assert.Empty(straight.Ladder.Sections);
        var share = NeighbourCoupling.ReceivedShare(new[,] { { z11, z12 }, { z12, z22 } }, straight, 50, 3.65e6);
        var loop = z22 + 50;
        var expected = (z12 / loop).Magnitude * (z12 / loop).Magnitude * 50 / (z11 - (z12 * z12 / loop)).Real;
        Near.Relative(expected, share, 1e-12);
    }

    [Fact]
    public void Network_matched_to_the_neighbour_lets_most_through()
    {
        Complex z11 = new(40, 20), z12 = new(3, -2), z22 = new(22, -80);
        var problem = new MatchProblem(LoadImpedance.Constant(z22), 50, 3.65e6, 100, PartQuality.Lossless);
        var matched = LMatch.Design(problem).Candidates[0];
        var other = LMatch.Design(problem with { FrequencyHz = 7.1e6 }).Candidates[0];
        double Share(MatchCandidate c) => NeighbourCoupling.ReceivedShare(new[,] { { z11, z12 }, { z12, z22 } }, c, 50, 3.65e6);

        // A matched receiver gets |Z12|²/(4·R22·Re Zin), the most there is.
        var zin = z11 - (z12 * z12 / (z22 + Complex.Conjugate(z22)));
        Near.Relative(z12.Magnitude * z12.Magnitude / (4 * 22 * zin.Real), Share(matched), 1e-6);
        Assert.True(Share(other) < Share(matched));
    }
}
