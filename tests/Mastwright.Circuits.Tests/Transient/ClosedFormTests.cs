using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tests.Outside;
using Mastwright.Circuits.Transient;

namespace Mastwright.Circuits.Tests.Transient;

public class ClosedFormTests
{
    [Fact]
    public void Ringing_circuit_follows_its_damped_sine()
    {
        // Series R 10 Ω, L 10 µH, C 1 nF charged to 1000 V: i = (V/ωd·L)·exp(-αt)·sin ωd·t.
        var (r, l, c) = (10.0, 10e-6, 1e-9);
        var result = new TransientCircuit()
            .Capacitor("C", "a", "0", c, 1000)
            .Resistor("R", "a", "b", r)
            .Inductor("L", "b", "0", l)
            .Run(new(5e-6) { RelativeTolerance = 1e-7 });
        var alpha = r / (2 * l);
        var wd = Math.Sqrt((1 / (l * c)) - (alpha * alpha));
        var crest = 1000 / (wd * l);
        var i = result.Current("L");
        for (var k = 0; k < result.TimesS.Length; k++)
        {
            var t = result.TimesS[k];
            Near.Absolute(crest * Math.Exp(-alpha * t) * Math.Sin(wd * t), i[k], 2e-4 * crest);
        }
    }

    [Fact]
    public void Energy_of_a_charged_capacitor_all_ends_in_the_resistor()
    {
        var result = new TransientCircuit()
            .Capacitor("C", "a", "0", 1e-6, 100)
            .Resistor("R", "a", "0", 10)
            .Run(new(200e-6) { LongestStepS = 0.1e-6 });
        Near.Relative(0.5 * 1e-6 * 100 * 100, result.EnergyJ("R"), 1e-4);
        Near.Relative(1e-6 * 100, result.ChargeC("R"), 1e-4);
    }

    [Fact]
    public void Open_line_doubles_a_step_and_a_matched_line_passes_it_late()
    {
        var open = new TransientCircuit()
            .VoltageSource("V", "s", "0", Waveform.Step(100), 50)
            .Line("T", "s", "e", 50, 100e-9)
            .Resistor("R", "e", "0", 1e9)
            .Run(new(1e-6));
        Near.Absolute(0, open.At(open.Voltage("e"), 95e-9), 1e-6);
        Near.Absolute(100, open.At(open.Voltage("e"), 105e-9), 1e-3);
        Near.Absolute(50, open.At(open.Voltage("s"), 150e-9), 1e-6);
        Near.Absolute(100, open.At(open.Voltage("s"), 250e-9), 1e-3);
        Near.Absolute(0, open.At(open.Current("T"), 300e-9), 1e-3);
    }

    [Fact]
    public void Ladder_diagram_of_a_badly_matched_line()
    {
        // Reflections Γs = (10 - 50)/60 at the source, Γl = (150 - 50)/200 at the load (any book on lattice diagrams).
        var result = new TransientCircuit()
            .VoltageSource("V", "s", "0", Waveform.Step(60), 10)
            .Line("T", "s", "e", 50, 10e-9)
            .Resistor("R", "e", "0", 150)
            .Run(new(200e-9));
        var (gs, gl, first) = (-40.0 / 60, 100.0 / 200, 60 * 50.0 / 60);
        var expected = 0.0;
        for (var n = 0; n < 9; n++)
        {
            expected += first * Math.Pow(gs * gl, n) * (1 + gl);
            Near.Absolute(expected, result.At(result.Voltage("e"), (10 + (20 * n) + 10) * 1e-9), 1e-3 * 50);
        }
    }

    [Theory]
    [InlineData(10e-9)]
    [InlineData(100e-9)]
    [InlineData(1e-6)]
    public void Toepler_and_Rompe_Weizel_arcs_on_a_current_ramp_have_their_closed_forms(double t)
    {
        // i = A·t, A = 1 A/ns, gap 5 mm: R = kT·d/(A·t²/2) and R = d/√(2a·A²t³/3) (reference script, computed apart).
        var (a, gapM) = (1e9, 5e-3);
        TransientResult Ramp(IArcLaw law) => new TransientCircuit()
            .CurrentSource("I", "0", "g", Waveform.Of(s => 1e-6 + (a * s), 0))
            .Gap("G", "g", "0", new GapModel(new VoltageBreakdown(new PeakVolts(1e-9)), law, 0))
            .Resistor("Rp", "g", "0", 1e9)
            .Run(new(t) { RelativeTolerance = 1e-5 });
        var toepler = Ramp(new ToeplerArc(1e-2, gapM, 1e-6));
        Near.Relative(1e-2 * gapM / (a * t * t / 2), toepler.Voltage("g")[^1] / (a * t), 2e-3);
        var rompe = Ramp(new RompeWeizelArc(1.1e-4, gapM, 1e-6));
        Near.Relative(gapM / Math.Sqrt(2 * 1.1e-4 * a * a * t * t * t / 3), rompe.Voltage("g")[^1] / (a * t), 2e-3);
    }

    [Fact]
    public void Gap_fires_where_a_ramp_crosses_its_level()
    {
        var result = new TransientCircuit()
            .VoltageSource("V", "a", "0", Waveform.Of(t => 1e9 * t), 1)
            .Gap("G", "a", "0", new GapModel(new VoltageBreakdown(new PeakVolts(15000)), new ConstantArc(0.1), 0))
            .Run(new(40e-6));
        var fired = Assert.Single(result.Events);
        Near.Relative(15e-6, fired.TimeS, 1e-6);
        Near.Relative(15000, result.HighestVoltage("a").Value, 1e-5);
    }

    [Fact]
    public void Disruptive_effect_fires_when_the_area_above_its_onset_is_full()
    {
        // A 20 kV step over 12 kV onset, k = 1, D = 4 mV·s: fires after D/(V - V0) = 0.5 µs.
        var result = new TransientCircuit()
            .VoltageSource("V", "a", "0", Waveform.Step(20000), 1)
            .Gap("G", "a", "0", new GapModel(new DisruptiveEffect(new PeakVolts(12000), 1, 4e-3), new ConstantArc(0.1), 0))
            .Run(new(2e-6));
        Near.Relative(0.5e-6, Assert.Single(result.Events).TimeS, 1e-4);
    }

    [Fact]
    public void Arc_dies_when_its_current_stays_small()
    {
        var result = new TransientCircuit()
            .Capacitor("C", "a", "0", 1e-6, 1000)
            .Resistor("R", "a", "g", 10)
            .Gap("G", "g", "0", new GapModel(new VoltageBreakdown(new PeakVolts(900)), new ConstantArc(0.01), 1e-12, 1, 5e-6))
            .Run(new(200e-6));
        Assert.Equal([TransientEventKind.Fired, TransientEventKind.Died], result.Events.Select(e => e.Kind));

        // i = 100·exp(-t/10µs) falls to 1 A after 46.05 µs, and the arc dies 5 µs later.
        Near.Absolute(51.05e-6, result.Events[1].TimeS, 0.8e-6);
    }

    [Fact]
    public void Soil_that_ionises_lowers_the_voltage_as_its_law_says()
    {
        // R = R0/√(1 + I/Ig) (CIGRE; from memory), 100 Ω, Ig 1 kA, 3 kA: 50 Ω, 150 kV.
        var result = new TransientCircuit()
            .CurrentSource("I", "0", "e", Waveform.Lines((0, 0), (1e-6, 3000)))
            .Resistor("Re", "e", "0", i => 100 / Math.Sqrt(1 + (Math.Abs(i) / 1000)))
            .Run(new(2e-6));
        Near.Relative(150e3, result.Voltage("e")[^1], 1e-6);
    }

    [Fact]
    public void Circuit_without_a_path_stops_with_a_finding()
    {
        var result = new TransientCircuit()
            .VoltageSource("V", "a", "0", Waveform.Step(1), 1)
            .Resistor("R", "b", "c", 1)
            .Run(new(1e-6));
        Assert.Equal("transient-singular", Assert.Single(result.Findings).Code);
    }
}
