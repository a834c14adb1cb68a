using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests;

public class BasePointTests
{
    [Fact]
    public void Half_wave_mast_1500_W_at_1000_ohm_by_hand()
    {
        // I = √(1500/1000) = 1.2247449, V = I·√(1000² + 500²) = 1369.3064, Vp = 1936.4917.
        var b = BasePoint.Of(new Complex(1000, -500), 1500, 3.65e6);
        Near.Relative(1.224744871, b.MastCurrent.Value, 1e-9);
        Near.Relative(1369.306394, b.Voltage.Value, 1e-9);
        Near.Relative(1936.491673, b.PeakVoltage.Value, 1e-9);
        Near.Relative(b.MastCurrent.Value, b.TerminalCurrent.Value, 1e-12);
    }

    [Fact]
    public void Insulator_capacitance_agrees_with_ngspice()
    {
        var b = BasePoint.Of(new Complex(15, -180), 1000, 1.85e6, 60e-12);
        var network = new Network(
            AcSource.Transmitter("TX", "t", Network.Ground, 1000, 50),
            new Capacitor("CB", "t", Network.Ground, 60e-12, CapacitorLoss.None),
            new MultiportLoad("ANT", "t", new Complex(15, -180)));
        var spice = Spice.Ac(DeckOf.Network(network, 1.85e6), 1.85e6);
        Near.Equal(spice["t"] / -spice["vtx#branch"], b.TerminalOhm, 1e-9);
        var s = network.Solve(1.85e6).AtInputPower(1000);
        Near.Relative(s.Part("ANT").HighestVoltage.Value, b.Voltage.Value, 1e-9);
        Near.Relative(s.Part("CB").HighestCurrent.Value, b.InsulatorCurrent.Value, 1e-9);
        Near.Relative(s.Part("TX").HighestCurrent.Value, b.TerminalCurrent.Value, 1e-9);
    }
}
