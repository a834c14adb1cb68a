using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Tests.Capacitors;

public class CapacitorTests
{
    private static readonly CapacitorItem Mica = new("mica 470 pF", CapacitorKind.Mica, 470e-12, 470e-12, new(1500), new(4), 7e6, CapacitorLoss.ConstantQ(2000), 5);

    [Fact]
    public void Bank_shares_voltage_and_current()
    {
        var (banks, findings) = CapacitorChooser.Choose([Mica], new CapacitorDuty(470e-12, 3.65e6, new PeakVolts(2000), new RmsAmps(5)));
        Assert.Empty(findings);
        var bank = Assert.Single(banks);
        Assert.Equal((2, 2), (bank.InSeries, bank.InParallel));
        Near.Relative(1000.0 / 1500, bank.Checks[0].Ratio, 1e-12);
        Near.Relative(2.5 / 4, bank.Checks[1].Ratio, 1e-12);
        Assert.Equal(20, bank.Price);
    }

    [Fact]
    public void Over_rating_is_a_finding_with_the_nearest_bank()
    {
        var (banks, findings) = CapacitorChooser.Choose([Mica], new CapacitorDuty(470e-12, 3.65e6, new PeakVolts(20000), new RmsAmps(5)));
        Assert.Empty(banks);
        Assert.Contains("mica 470 pF", Assert.Single(findings).Allowed);
        Assert.Equal(Verdict.Fail, CapacitorChooser.Try(Mica, new CapacitorDuty(470e-12, 3.65e6, new PeakVolts(20000), new RmsAmps(5))).Checks[0].Verdict);
    }

    [Fact]
    public void Coax_stub_is_the_capacitor_its_line_equations_say()
    {
        var line = LineType.FromSpotLoss("RG-type 50 ohm", 50, 0.66, 2.0, 10e6);
        var stub = CapacitorItem.CoaxStub(line, 1, new(3000), new(10), 3.65e6);
        var asLine = new Network(AcSource.Transmitter("TX", "a", "0", 1, 50), new Line("T", "a", "b", line, 1)).Solve(3.65e6).InputImpedanceOhm("TX");
        var asPart = new Network(AcSource.Transmitter("TX", "a", "0", 1, 50), new Capacitor("C", "a", "0", stub.HighestF, stub.Loss)).Solve(3.65e6).InputImpedanceOhm("TX");
        Near.Relative(asLine.Imaginary, asPart.Imaginary, 0.01);
        Near.Relative(asLine.Real, asPart.Real, 0.02);
    }

    // IEC 60063.
    [Theory]
    [InlineData(455e-12, 470e-12)]
    [InlineData(9.7e-10, 1e-9)]
    [InlineData(130e-12, 120e-12)]
    public void Nearest_of_E12(double value, double nearest) => Near.Relative(nearest, PreferredValues.Nearest(PreferredValues.E12, value), 1e-12);
}
