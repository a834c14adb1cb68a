using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Lines;

public class LossyLineTests
{
    private const double F = 7e6;

    // Reference page 2.4, closed form Zin = Z0 (ZL + Z0 tanh γl)/(Z0 + ZL tanh γl) computed in Python.
    [Theory]
    [InlineData(50, 25, 0, 1, 90, 86.01298467, 0, 2, 1.72025969, 1.19585794)]
    [InlineData(50, 100, 50, .5, 45, 52.41592469, -44.43118214, 2.61803399, 2.32546051, .71775384)]
    [InlineData(50, 36.6, 21.5, .25, 120, 32.43902585, -13.92144134, 1.79298746, 1.73238451, .29121382)]
    [InlineData(50, 5, -200, .3, 75, 2.02037745, -.84665011, 170.094121, 24.7549585, 8.37721365)]
    [InlineData(75, 50, 0, 2, 180, 58.19227160, 0, 1.5, 1.28883094, 2.10757281)]
    [InlineData(50, 500, 0, 3, 360, 119.50941931, 0, 10, 2.39018839, 7.00769839)]
    public void Input_impedance_swr_and_total_loss(double z0, double r, double x, double lossDb, double angleDeg, double rin, double xin, double swrLoad, double swrIn, double totalDb)
    {
        var length = new LineType("t", z0, 0.8).LengthM(angleDeg * Math.PI / 180, F);
        var type = LineType.FromSpotLoss("t", z0, 0.8, lossDb / length * 100, F);
        var s = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 100, z0),
            new Line("T", "in", "out", type, length),
            new MultiportLoad("ANT", "out", new Complex(r, x))).Solve(F);
        var zin = s.InputImpedanceOhm("TX");
        Near.Absolute(rin, zin.Real, 2e-8 * rin);
        Near.Absolute(xin, zin.Imaginary, 2e-8 * zin.Magnitude);
        Near.Relative(swrLoad, Mismatch.Swr(new Complex(r, x), z0), 1e-8);
        Near.Relative(swrIn, Mismatch.Swr(zin, z0), 1e-8);
        Near.Absolute(totalDb, s.LossDb, 6e-9);
        Near.Relative(s.InputPowerW, s.LoadPowerW + s.LossW, 1e-9);
    }

    [Theory]
    [InlineData(50, 25, 0, 45, 40, 30)]
    [InlineData(50, 100, 50, 60, 31.908363304, -35.610544040)]
    [InlineData(75, 36.6, 21.5, 90, 114.260105117, -67.120007104)]
    public void Lossless_input_impedance(double z0, double r, double x, double angleDeg, double rin, double xin)
    {
        var type = new LineType("t", z0, 0.8);
        var s = new Network(
            AcSource.Transmitter("TX", "in", Network.Ground, 100, 50),
            new Line("T", "in", "out", type, type.LengthM(angleDeg * Math.PI / 180, F)),
            new MultiportLoad("ANT", "out", new Complex(r, x))).Solve(F);
        Near.Equal(new Complex(rin, xin), s.InputImpedanceOhm("TX"), 1e-10);
    }

    [Theory]
    [InlineData(1.1, .047619048, 26.44438589, .00985913)]
    [InlineData(2, .333333333, 9.54242509, .51152522)]
    [InlineData(10, .818181818, 1.74300351, 4.80725379)]
    public void Swr_return_loss_and_mismatch_loss(double swr, double reflection, double returnDb, double mismatchDb)
    {
        var g = Mismatch.Reflection(50 * swr, 50).Magnitude;
        Near.Absolute(reflection, g, 1e-9);
        Near.Relative(swr, Mismatch.Swr(g), 1e-12);
        Near.Absolute(returnDb, Mismatch.ReturnLossDb(g), 1e-8);
        Near.Absolute(mismatchDb, Mismatch.MismatchLossDb(g), 1e-8);
    }

    [Fact]
    public void Highest_voltage_on_a_lossless_line_is_where_the_textbook_puts_it()
    {
        // A 25 Ω load on 50 Ω, half a wave: the crest is a quarter wave from the load, SWR times the voltage at the load.
        var type = new LineType("t", 50, 1);
        var wave = new StandingWave(type, type.LengthM(Math.PI, F), F, 25, 1);
        var (volts, at) = wave.HighestVoltage();
        Near.Relative(50, volts, 1e-9);
        Near.Relative(type.WavelengthM(F) / 4, at, 1e-5);
        Near.Relative(2, wave.SwrAt(3), 1e-12);
    }
}
