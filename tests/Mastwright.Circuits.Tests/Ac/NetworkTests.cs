using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Ac;

public class NetworkTests
{
    private const double F = 3.65e6;

    [Fact]
    public void Quadrature_hybrid_of_coupled_coils_agrees_with_ngspice_and_the_closed_form()
    {
        // Reference page 2.5: 50 Ω hybrid; at f0 both outputs 1/√2 at -45° and +45°, the fourth port dark.
        Network Hybrid(double k) => new(
            AcSource.Transmitter("TX", "1", Network.Ground, 100, 50),
            new Inductor("L1", "1", "2", 2.1802047e-6, CoilLoss.ConstantQ(300)),
            new Inductor("L2", "3", "4", 2.1802047e-6, CoilLoss.ConstantQ(300)),
            new Mutual("K", "L1", "L2", k),
            new Capacitor("C1", "1", "3", 436.04094e-12, CapacitorLoss.None),
            new Capacitor("C2", "2", "4", 436.04094e-12, CapacitorLoss.None),
            new Resistor("R2", "2", Network.Ground, 50),
            new Resistor("R3", "3", Network.Ground, 50),
            new Resistor("R4", "4", Network.Ground, 50));
        var lossy = Hybrid(0.98);
        var solution = lossy.Solve(F);
        var spice = Spice.Ac(DeckOf.Network(lossy, F), F);
        foreach (var node in lossy.Nodes)
            Near.Equal(spice[node], solution.NodeVoltage(node), 1e-9);

        var ideal = new Network(Hybrid(1).Parts.Select(p => p is Inductor l ? new Inductor(l.Name, l.A, l.B, l.InductanceH, CoilLoss.None) : p)).Solve(F);
        var incident = ideal.NodeVoltage("1");
        Near.Equal(Complex.FromPolarCoordinates(Math.Sqrt(0.5), -Math.PI / 4), ideal.NodeVoltage("2") / incident, 1e-6);
        Near.Equal(Complex.FromPolarCoordinates(Math.Sqrt(0.5), Math.PI / 4), ideal.NodeVoltage("3") / incident, 1e-6);
        Assert.True(ideal.NodeVoltage("4").Magnitude < 1e-6 * incident.Magnitude);
    }

    [Fact]
    public void Lines_stubs_and_self_capacitance_agree_with_ngspice()
    {
        var line = new LineType("test", 75, 0.82);
        var network = new Network(
            AcSource.Transmitter("TX", "a", Network.Ground, 500, 50),
            new Line("T1", "a", "b", line, 17.3),
            new Line("T2", ("b", Network.Ground), ("c", "d"), new LineType("test", 50, 0.66), 8.1),
            new Resistor("RD", "d", Network.Ground, 12),
            new Inductor("L1", "c", "e", 4e-6, CoilLoss.ConstantQ(180), 6e-12),
            new Capacitor("C1", "e", Network.Ground, 150e-12, CapacitorLoss.ConstantQ(900)),
            new MultiportLoad("ANT", "e", new Complex(18, -35)));
        var solution = network.Solve(F);
        var spice = Spice.Ac(DeckOf.Network(network, F), F);
        foreach (var node in network.Nodes)
            Near.Equal(spice[node], solution.NodeVoltage(node), 1e-9);
    }

    [Fact]
    public void Power_balances_in_a_network_of_every_part()
    {
        var z = new[,] { { new Complex(36, 12), new Complex(10, -15) }, { new Complex(10, -15), new Complex(40, -5) } };
        var network = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 1000, 50),
            new Line("T1", "in", "a", LineType.FromSpotLoss("lossy", 50, 0.66, 2.0, 10e6), 40),
            new Inductor("L1", "a", "b", 3e-6, CoilLoss.SkinEffect(0.3, F), 4e-12),
            new Inductor("L2", "a", Network.Ground, 5e-6, CoilLoss.Resistance(0.6)),
            new Mutual("M", "L1", "L2", 0.3),
            new Capacitor("C1", "b", "c", 300e-12, new CapacitorLoss(2e-4, 0.02)),
            new Switch("S1", "a", "c", closed: false),
            new Switch("S2", "c", "d", closed: true),
            new Resistor("R1", "c", Network.Ground, 5000),
            new MultiportLoad("ANT", [("d", Network.Ground), ("b", Network.Ground)], LoadImpedance.Constant(z)));
        var s = network.Solve(F).AtInputPower(1000);
        Near.Relative(1000, s.LoadPowerW + s.LossW, 1e-9);
        Assert.All(s.Parts, p => Assert.True(p.DissipationW > -1e-9));
        var residual = s.Part("T1").Ports[1].CurrentPhasor + s.Part("L1").Ports[0].CurrentPhasor
            + s.Part("L2").Ports[0].CurrentPhasor + s.Part("S1").Ports[0].CurrentPhasor;
        Assert.True(residual.Magnitude < 1e-9);
    }

    [Fact]
    public void Two_port_antenna_follows_its_impedance_matrix()
    {
        var z = new[,] { { new Complex(36, 12), new Complex(10, -15) }, { new Complex(10, -15), new Complex(40, -5) } };
        var s = new Network(
            new CurrentDrive("I1", "a", Network.Ground, 1),
            new CurrentDrive("I2", "b", Network.Ground, new Complex(0, -1)),
            new MultiportLoad("ANT", [("a", Network.Ground), ("b", Network.Ground)], LoadImpedance.Constant(z))).Solve(F);
        Near.Equal(z[0, 0] + (z[0, 1] * new Complex(0, -1)), s.InputImpedanceOhm("I1"), 1e-12);
        Near.Relative(s.LoadPowerW, s.InputPowerW, 1e-12);
    }

    [Fact]
    public void Node_left_hanging_is_named()
    {
        var ok = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 100, 50),
            new Resistor("R1", "in", Network.Ground, 50),
            new Capacitor("C9", "left", "right", 1e-12, CapacitorLoss.None)).TrySolve(F, out _, out var problem);
        Assert.False(ok);
        Assert.Contains("right", problem!.Message);
    }

    [Fact]
    public void Peak_is_root_two_times_rms_and_the_types_do_not_mix()
    {
        var s = new Network(AcSource.Transmitter("TX", "in", Network.Ground, 100, 50), new Resistor("R1", "in", Network.Ground, 50)).Solve(F);
        var r = s.Part("R1");
        Near.Relative(Math.Sqrt(100 * 50.0), r.HighestVoltage.Value, 1e-12);
        Near.Relative(100, r.PeakVoltage.Value, 1e-12);
        Near.Relative(Math.Sqrt(2), r.HighestCurrent.Value, 1e-12);
        Assert.Null(typeof(Circuits.Quantities.RmsVolts).GetMethod("op_Implicit"));
    }

    [Fact]
    public void Passive_matrix_is_told_from_an_active_one()
    {
        var passive = LoadImpedance.Constant(new[,] { { new Complex(36, 0), new Complex(30, 9) }, { new Complex(30, 9), new Complex(36, 0) } });
        var active = LoadImpedance.Constant(new[,] { { new Complex(36, 0), new Complex(40, 9) }, { new Complex(40, 9), new Complex(36, 0) } });
        Assert.True(passive.IsPassive(F));
        Assert.False(active.IsPassive(F));
    }
}
