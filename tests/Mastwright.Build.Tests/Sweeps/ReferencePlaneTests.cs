using System.Numerics;
using FsCheck.Xunit;
using Mastwright.Build.Sweeps;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Sweeps;

public class ReferencePlaneTests
{
    private static ImpedanceSweep Sweep(params (double F, Complex Z)[] points) => new("test", 50, [.. points.Select(p => new SweepPoint(p.F, p.Z))]);

    [Fact]
    public void A_quarter_wave_turns_an_impedance_over()
    {
        // Zin = Z0²/ZL, the quarter-wave transformer (Pozar, Microwave Engineering, ch. 2, from memory).
        var f = 299_792_458.0 * 0.66 / (4 * 10);
        var seen = ReferencePlane.ToAnalyser(Sweep((f, 100)), [new Cable(50, 10, 0.66)]);
        Assert.Equal(25, seen.Points[0].ImpedanceOhm.Real, 1e-9);
        Assert.Equal(0, seen.Points[0].ImpedanceOhm.Imaginary, 1e-9);
    }

    [Theory]
    [InlineData(20, 0, 1.5)]
    [InlineData(200, -300, 3)]
    public void A_lossy_line_follows_its_hyperbolic_tangent(double r, double x, double lossDb)
    {
        // Zin = Z0 (ZL + Z0 tanh g)/(Z0 + ZL tanh g), g = A ln10/20 + j theta.
        var f = 5e6;
        var theta = 2 * Math.PI * f * 12 / (0.8 * 299_792_458.0);
        var tanh = Complex.Tanh(new Complex(lossDb * Math.Log(10) / 20, theta));
        var load = new Complex(r, x);
        var expected = 50 * (load + (50 * tanh)) / (50 + (load * tanh));
        var seen = new Cable(50, 12, 0.8, lossDb / 12, f).SeenThrough(load, f);
        Assert.True((expected - seen).Magnitude < 1e-9 * expected.Magnitude);
    }

    [Property]
    public bool Moving_there_and_back_changes_nothing(int seed)
    {
        var random = new Random(seed);
        var load = new Complex(5 + (300 * random.NextDouble()), (random.NextDouble() - 0.5) * 600);
        PlaneElement[] elements =
        [
            new Cable(75, 30 * random.NextDouble(), 0.66, 0.02 * random.NextDouble()),
            new SeriesChoke(new(1 * random.NextDouble(), 1e-6 * random.NextDouble(), 5e-12)),
            new DrainChoke(new(5, 1e-3, 20e-12)),
            new StrayShunt(60e-12 * random.NextDouble()),
        ];
        var sweep = Sweep((1.8e6, load), (7e6, load), (28e6, load));
        var back = ReferencePlane.ToAntenna(ReferencePlane.ToAnalyser(sweep, elements), elements).Value!;
        return back.Points.Zip(sweep.Points).All(p => (p.First.ImpedanceOhm - p.Second.ImpedanceOhm).Magnitude < 1e-6 * load.Magnitude);
    }

    [Fact]
    public void A_cable_entered_too_lossy_is_found_out()
    {
        var measured = ReferencePlane.ToAnalyser(Sweep((7e6, new Complex(2, -400))), [new Cable(50, 30, 0.66, 0.02, 7e6)]);
        var moved = ReferencePlane.ToAntenna(measured, [new Cable(50, 30, 0.66, 0.2, 7e6)]);
        Assert.Contains(moved.Findings, f => f.Code == "resistance-negative" && f.Severity == Severity.Warning);
        Assert.Contains(moved.Findings, f => f.Code == "loss-large");
    }

    [Fact]
    public void An_overlay_measures_a_known_difference()
    {
        static Complex Antenna(double f) => new(36 + (5e-6 * (f - 7e6)), 4e-4 * (f - 7.05e6));
        var predicted = Sweep([.. Enumerable.Range(0, 41).Select(i => 6.8e6 + (i * 1e4)).Select(f => (f, Antenna(f)))]);
        var measured = Sweep([.. Enumerable.Range(0, 15).Select(i => 6.905e6 + (i * 2e4)).Select(f => (f, Antenna(f) + new Complex(4, -20)))]);
        var overlay = SweepOverlay.Of(measured, predicted).Value!;
        Assert.Equal(15, overlay.Points.Length);
        Assert.Equal(4, overlay.MeanResistanceDifference.Value, 1e-3);
        Assert.Equal(-20, overlay.MeanReactanceDifference.Value, 1e-3);
        Assert.Equal(20, overlay.ReactanceRms.Value, 1e-3);
        Assert.Equal(50e3, overlay.Resonances[0].MeasuredHz - overlay.Resonances[0].PredictedHz, 1);
    }

    [Fact]
    public void A_reading_without_phase_is_moved_as_far_as_it_goes()
    {
        // 1 dB one way hides a ratio of 3 behind (1 + 0.5·10^-0.1)/(1 − 0.5·10^-0.1) = 2.3177.
        var cable = new Cable(50, 10, 0.66, 0.1, 7e6);
        var seen = ReferencePlane.ToAnalyser(Sweep((7e6, 150)), [cable]).Points[0].Swr(50);
        Assert.Equal(2.31765, seen, 1e-5);
        var back = ReferencePlane.ToAntenna(new SwrSweep("swr", 50, [(7e6, seen)]), cable).Value!;
        Assert.Equal(3, back.Points[0].Swr, 1e-9);
        Assert.Equal("plane-needs-phase", Assert.Single(ReferencePlane.ToAntenna(back, cable with { CharacteristicOhm = 75 }).Errors).Code);
        Assert.Contains(ReferencePlane.ToAntenna(new SwrSweep("swr", 50, [(7e6, 20)]), cable).Findings, f => f.Code == "resistance-negative");
    }

    [Fact]
    public void A_reading_without_phase_shows_the_shift_of_the_best_match()
    {
        var predicted = Sweep([.. Enumerable.Range(0, 41).Select(i => 6.8e6 + (i * 1e4)).Select(f => (f, new Complex(50, (f - 7.0e6) * 4e-4)))]);
        var measured = new SwrSweep("swr", 50, [.. Enumerable.Range(0, 21).Select(i => 6.9e6 + (i * 1e4)).Select(f => (f, new SweepPoint(f, new(50, (f - 7.05e6) * 4e-4)).Swr(50)))]);
        var overlay = SwrOverlay.Of(measured, predicted).Value!;
        Assert.Equal(50e3, overlay.BestMatchShift.Value, 1e-3);
        Assert.True(overlay.ReflectionRms.Value > 0.05);
    }

    [Fact]
    public void Sweeps_without_a_common_frequency_are_refused()
    {
        var reading = SweepOverlay.Of(Sweep((3.5e6, 50)), Sweep((7e6, 50), (7.1e6, 50)));
        Assert.Equal("overlay-empty", Assert.Single(reading.Errors).Code);
    }
}
