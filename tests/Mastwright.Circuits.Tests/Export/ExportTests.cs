using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Export;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Export;

public class ExportTests
{
    private const double F = 3.65e6;

    [Fact]
    public void Exported_netlist_of_every_kind_of_part_runs_in_ngspice_and_agrees()
    {
        var z = new[,] { { new Complex(36, 12), new Complex(-10, -15) }, { new Complex(-10, -15), new Complex(40, -5) } };
        var network = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 1000, 50),
            new Line("W1", "in", "a", new LineType("ideal", 75, 0.8), 11),
            new Inductor("L1", "a", "b", 3e-6, CoilLoss.ConstantQ(200), 4e-12),
            new Inductor("L2", "a", Network.Ground, 5e-6, CoilLoss.Resistance(0.6)),
            new Mutual("M1", "L1", "L2", 0.3),
            new Capacitor("C1", "b", "c", 300e-12, new CapacitorLoss(2e-4, 0.02)),
            new Switch("S1", "a", "c", closed: false),
            new Switch("S2", "c", "d", closed: true),
            new Resistor("R1", "c", Network.Ground, 5000),
            new MultiportLoad("ANT", [("d", Network.Ground), ("b", Network.Ground)], LoadImpedance.Constant(z)));
        Agrees(network, 2e-7);
    }

    [Fact]
    public void Exported_lossy_line_agrees_to_its_stated_approximation()
    {
        var type = LineType.FromSpotLoss("coax", 50, 0.66, 2.0, 10e6);
        var network = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 1000, 50),
            new Line("W1", "in", "a", type, 30),
            new MultiportLoad("ANT", "a", new Complex(20, -40)));
        var gamma = type.PropagationPerM(F);
        Agrees(network, 2 * gamma.Real / gamma.Imaginary);
    }

    [Fact]
    public void Names_with_blanks_and_of_one_spelling_stay_apart()
    {
        var network = new Network(
            AcSource.Transmitter("TX", "80 m", Network.Ground, 100, 50),
            new Resistor("R 1", "80 m", "80_M", 10),
            new Resistor("R_1", "80_M", Network.Ground, 30));
        var deck = SpiceNetlist.Of(network, F, "names").Split('\n').Where(l => !l.StartsWith(".ac", StringComparison.Ordinal) && !l.StartsWith(".end", StringComparison.Ordinal));
        var spice = Spice.Ac(deck, F);
        Near.Equal(network.Solve(F).NodeVoltage("80 m"), spice["80_m"], 1e-9);
        Near.Equal(network.Solve(F).NodeVoltage("80_M"), spice["80_m_2"], 1e-9);
    }

    [Fact]
    public void Scattering_of_a_lossless_match_is_unitary_and_reciprocal()
    {
        var match = LMatch.Design(new Complex(20, -60), 50, F, 100, PartQuality.Lossless).Candidates[0];
        var parts = match.Network.Parts.Where(p => p.Role == PartRole.Passive);
        var s = PortParameters.Scattering(parts, [Ladder.LineNode, match.Ladder.LoadNode], 50, F);
        Near.Equal(s[0, 1], s[1, 0], 1e-12);
        Near.Relative(1, (s[0, 0].Magnitude * s[0, 0].Magnitude) + (s[1, 0].Magnitude * s[1, 0].Magnitude), 1e-12);

        // Closed by the antenna, Γin = S11 + S12·S21·ΓL/(1 - S22·ΓL) must vanish.
        var load = Mismatch.Reflection(new Complex(20, -60), 50);
        Near.Absolute(0, (s[0, 0] + (s[0, 1] * s[1, 0] * load / (1 - (s[1, 1] * load)))).Magnitude, 1e-12);
    }

    [Fact]
    public void Files_of_a_match_hold_its_sweep_and_its_network()
    {
        var match = LMatch.Design(new Complex(20, -60), 50, F, 100, PartQuality.HomeBuilt).Candidates[0];
        var one = MatchFiles.OnePort(match, 3.5e6, 3.8e6, 4);
        Assert.Equal(4, one.Length);
        var sweep = MatchSweep.Of(match, 3.5e6, 3.8e6, 4);
        Near.Relative(3.6e6, one[1].FrequencyHz, 1e-12);
        Near.Equal(sweep[1].Reflection, one[1].S[0, 0], 1e-12);
        Near.Relative(match.SwrAt(3.6e6), sweep[1].Swr, 1e-12);

        // Port 2 closed by the antenna must give the one-port's reflection.
        var two = MatchFiles.TwoPort(match, 3.5e6, 3.8e6, 4)[1].S;
        var load = Mismatch.Reflection(new Complex(20, -60), 50);
        Near.Equal(sweep[1].Reflection, two[0, 0] + (two[0, 1] * two[1, 0] * load / (1 - (two[1, 1] * load))), 1e-8);
        Assert.Contains(".ac lin", MatchFiles.Netlist(match));
    }

    private static void Agrees(Network network, double tolerance)
    {
        var deck = SpiceNetlist.Of(network, F, "exported", "a comment").Split('\n').Where(l => !l.StartsWith(".ac", StringComparison.Ordinal) && !l.StartsWith(".end", StringComparison.Ordinal)).ToArray();
        var spice = Spice.Ac(deck, F);
        var ours = network.Solve(F);
        foreach (var node in network.Nodes)
            Near.Equal(ours.NodeVoltage(node), spice[node], tolerance);
    }
}
