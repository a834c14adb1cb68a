using Mastwright.Circuits.Transient;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>Lengths of line in a struck network against line theory.</summary>
public class StrikeLineTests
{
    // A mast that stands bonded to its plate: the strap's voltage rises with the stroke and nothing breaks it off, so that closed forms hold.
    private static StrikeScenario With(params FeedPart[] feed) => new(
        LightningCurrents.Of(LightningLevel.III, StrokeKind.Subsequent), new(20, 0.05), null, new(100, 16, 20, 1e-3, 0.02, 2), [.. feed], null, null)
    {
        EndS = 5e-6,
        LineOhm = 50,
    };

    private static FeedPart Line(FeedElement element, double delayS, double ohm = 50) => new("line", element, element == FeedElement.Line, delayS) { LineOhm = ohm };

    // Bergeron's travelling-wave line, which is held against ngspice elsewhere, with a front of 200 ns as the steepest stroke has it: the open end of a quarter wave on 160 m.
    [Theory]
    [InlineData(135e-9)]
    [InlineData(40e-9)]
    [InlineData(270e-9)]
    public void Sections_follow_the_travelling_wave(double delayS)
    {
        var sections = StrikeCircuit.PiecesOf(Line(FeedElement.Line, delayS)).Along.Length;
        Assert.True(delayS / sections <= 20e-9 * (1 + 1e-9));
        TransientResult Run(Func<TransientCircuit, TransientCircuit> line) => line(new TransientCircuit()
            .VoltageSource("u", "s", TransientCircuit.Ground, Waveform.Of(t => 1000 * Math.Min(1, t / 200e-9)))
            .Resistor("r", "s", "in", 150)).Resistor("open", "out", TransientCircuit.Ground, 1e6).Run(new(2e-6) { RelativeTolerance = 1e-5, LongestStepS = 2e-9 });
        var wave = Run(c => c.Line("line", "in", "out", 50, delayS));
        var ladder = Run(c => StrikeCircuit.Ladder(c, "line", "in", "out", TransientCircuit.Ground, 50, delayS, sections, StrikeCircuit.LineDamping));
        foreach (var t in Enumerable.Range(1, 40).Select(k => k * 50e-9))
            Assert.Equal(At(wave, "out", t), At(ladder, "out", t), 0.04 * 1000);
    }

    // A matched line shows its own impedance at its near end, whatever its length: the base sees what it sees with the line's end straight on it.
    [Fact]
    public void A_matched_line_is_its_own_impedance()
    {
        var straight = StrikeSimulation.Run(With())!;
        var behind = StrikeSimulation.Run(With(Line(FeedElement.Line, 120e-9)))!;
        var line = behind.Parts.Single(p => p.Name == "line");
        Assert.Equal(1, behind.Parts[0].PeakV.Value / straight.Parts[0].PeakV.Value, 0.02);
        Assert.Equal(1, line.PeakV.Value / behind.Parts[0].PeakV.Value, 0.05);
        Assert.Equal(1, line.PeakA.Value / (behind.Parts[0].PeakV.Value / 50), 0.05);
    }

    // A shorted stub that is short against the front is the inductance Z0·τ, an open one the capacitance τ/Z0.
    [Fact]
    public void Short_stubs_are_their_inductance_and_their_capacitance()
    {
        var shorted = StrikeSimulation.Run(With(Line(FeedElement.ShortedStub, 10e-9, 75)))!.Parts.Single(p => p.Name == "line");
        var coil = StrikeSimulation.Run(With(new FeedPart("coil", FeedElement.Coil, false, 75 * 10e-9)))!.Parts.Single(p => p.Name == "coil");
        Assert.Equal(1, shorted.PeakA.Value / coil.PeakA.Value, 0.03);
        var open = StrikeSimulation.Run(With(Line(FeedElement.OpenStub, 10e-9, 50)))!.Parts.Single(p => p.Name == "line");
        var capacitor = StrikeSimulation.Run(With(new FeedPart("capacitor", FeedElement.Capacitor, false, 10e-9 / 50)))!.Parts.Single(p => p.Name == "capacitor");
        Assert.Equal(1, open.PeakV.Value / capacitor.PeakV.Value, 0.03);
    }

    // A wave that meets a short doubles its current there, while the near end, until the wave comes back, has only what went in, u/Z0 (line theory). The sections
    // spread so short a wave a little, so the double is not quite reached.
    [Fact]
    public void A_shorted_stub_is_struck_hardest_at_its_short()
    {
        var result = StrikeSimulation.Run(With(Line(FeedElement.ShortedStub, 270e-9)) with { EndS = 0.85e-6 })!;
        var goesIn = result.Parts[0].PeakV.Value / 50;
        Assert.Equal(1, result.Raw.HighestCurrent("line 1 L").Value / goesIn, 0.05);
        Assert.InRange(result.Parts.Single(p => p.Name == "line").PeakA.Value / goesIn, 1.5, 2.02);
    }

    // Conservation of energy: a matched line hands on what it takes in; what stays are the dampings of its sections.
    [Fact]
    public void A_line_keeps_little_of_what_runs_through_it()
    {
        var result = StrikeSimulation.Run(With(Line(FeedElement.Line, 120e-9)))!;
        Assert.True(Math.Abs(result.Parts.Single(p => p.Name == "line").EnergyJ.Value) < 0.05 * result.Raw.EnergyJ("feed line"));
    }

    [Fact]
    public void A_line_without_an_impedance_is_refused() =>
        Assert.Equal("strike-feed-line", Assert.Single(With(Line(FeedElement.Line, 100e-9, 0)).Faults()).Code);

    private static double At(TransientResult result, string node, double t)
    {
        var volts = result.Voltage(node);
        var k = Math.Clamp(Enumerable.Range(0, result.TimesS.Length).First(i => i == result.TimesS.Length - 1 || result.TimesS[i] >= t), 1, result.TimesS.Length - 1);
        var share = (t - result.TimesS[k - 1]) / (result.TimesS[k] - result.TimesS[k - 1]);
        return volts[k - 1] + (share * (volts[k] - volts[k - 1]));
    }
}
