using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;
using Mastwright.Structure.Vibration;

namespace Mastwright.Structure.Tests.Vibration;

public class VibrationTests
{
    /// <summary>Beams of the textbooks, e.g. Blevins, Formulas for Natural Frequency and Mode Shape: cantilever root 1.875104, pinned π.</summary>
    [Theory]
    [InlineData(5, true, 4.44421)]
    [InlineData(15, false, 1.38612)]
    [InlineData(20, false, 0.77969)]
    public void Tube_as_a_beam(double length, bool cantilever, double expected)
    {
        // No gravity on the member, only mass: the weight is carried by a dead load factor of nothing.
        var tube = ReferenceMasts.Tube(length, 0.1143, 0.0045);
        var mast = cantilever ? new GuyedMast(Vec3.Zero, [tube], [], FootFixity.BuiltIn) : Pinned(tube, length);
        var weightless = new LoadCase("no gravity", DeadLoadFactor: 0);
        var prepared = MastSolver.Prepare(mast, [weightless]);
        var modes = MastVibration.Of(prepared, prepared.Solve(weightless), 2);
        Near.Relative(expected, modes[0].FrequencyHz, 2e-3);
        Near.Relative(modes[0].FrequencyHz, modes[1].FrequencyHz, 1e-6, "same in both directions");
        Near.Relative(12.1852, modes[0].EquivalentMassKgPerM, 2e-3, "equivalent mass");
    }

    /// <summary>f √(1 - P/Pe): the same handbook; P 9765 N of Pe 21070.72 N gives 1.01534 Hz.</summary>
    [Fact]
    public void Compression_lowers_the_frequency()
    {
        var tube = ReferenceMasts.Tube(15, 0.1143, 0.0045);
        var c = new LoadCase("compressed", DeadLoadFactor: 0) { PointLoads = [new(15, new(0, 0, -9765))] };
        var prepared = MastSolver.Prepare(Pinned(tube, 15), [c]);
        Near.Relative(1.01534, MastVibration.Of(prepared, prepared.Solve(c), 1, downwardLoadsHaveMass: false)[0].FrequencyHz, 2e-3);
    }

    /// <summary>Irvine, Cable Structures, 1981, ch. 3: first symmetric in-plane frequency by λ², independently computed.</summary>
    [Theory]
    [InlineData(0.05, 1.002051)]
    [InlineData(0.5, 1.020312)]
    [InlineData(1, 1.040200)]
    [InlineData(5, 1.186499)]
    [InlineData(10, 1.345125)]
    [InlineData(20, 1.609536)]
    [InlineData(39.4784176, 2.0)]
    [InlineData(60, 2.290962)]
    public void Sagging_cable(double lambda2, double expected) => Near.Relative(expected, GuyVibration.SymmetricRatio(lambda2), 1e-6);

    [Theory]
    [InlineData(10, 15, 18.01323, 0.04252)]
    [InlineData(12, 14, 18.424247, 0.06128)]
    [InlineData(18, 28, 33.259816, 0.13620)]
    public void Lambda_squared_of_guys(double l, double h, double length, double expected) =>
        Near.Relative(expected, GuyVibration.LambdaSquaredOf(ElasticCatenary.Solve(new(l, 0, h), length, 3.73e6, new(0, 0, -1.766))), 3e-3);

    /// <summary>Taut string: T 3000 N, 1.766 N/m, 18.0278 m: 3.579752 Hz, a shake returns after 0.279349 s.</summary>
    [Fact]
    public void Guy_as_a_string()
    {
        var chord = new Vec3(10, 0, 15);
        var c = ElasticCatenary.Solve(chord, 18.01323, 3.73e6, new(0, 0, -1.766));
        var v = GuyVibration.Of("g", c, 1.766);
        var expected = 3.579752 * Math.Sqrt(v.MeanTensionN / 3000 * 18.0278 / 18.01323);
        Near.Relative(expected, v.OutOfPlaneHz, 1e-4);
        Near.Relative(1 / v.OutOfPlaneHz, v.PulseReturnS, 1e-12);
        Assert.InRange(v.InPlaneHz / v.OutOfPlaneHz, 1, 1.003);
        Near.Relative(3000, GuyVibration.TensionFromPulse(1.766 / 9.80665, 18.0278, 10, 2.79349).Value, 1e-4);
        Assert.Null(v.Explain().OutOfRange);
    }

    [Fact]
    public void Tight_guys_raise_the_sway_frequency_of_a_mast()
    {
        double Lowest(double tension)
        {
            var mast = ReferenceMasts.MastA(0, 120, 240);
            mast = mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(tension) })] };
            var p = MastSolver.Prepare(mast, [ReferenceMasts.Still]);
            return MastVibration.Of(p, p.Solve(ReferenceMasts.Still), 4)[0].FrequencyHz;
        }

        Assert.InRange(Lowest(3000), 0.5, 2.5);
        Assert.True(Lowest(3000) > Lowest(60));
    }

    /// <summary>EN 1991-1-4 annex E and Strouhal's relation, independently computed.</summary>
    [Fact]
    public void Vortex_shedding()
    {
        Near.Relative(157.480, WindExcitation.SheddingFrequency(5, 0.00635).Value, 1e-5);
        Near.Relative(13.998, WindExcitation.SheddingFrequency(8, 0.1143).Value, 1e-4);
        Near.Relative(12.598, WindExcitation.SheddingFrequency(8, 0.1143, WindExcitation.StrouhalRound).Value, 1e-4);
        Near.Relative(1.1430, WindExcitation.CriticalSpeed(1.8, 0.1143).Value, 1e-5);
    }

    /// <summary>EN 1991-1-4 annex E by hand: Sc = 2 · 0.012 · 12.1852/(1.25 · 0.1143²), y/d = 0.13 · 0.6 · 0.7/(0.18² Sc), v = 2 Sc f d.</summary>
    [Fact]
    public void Scruton_number_amplitude_and_galloping()
    {
        var scruton = WindExcitation.Scruton(12.1852, 0.012, 0.1143);
        Near.Relative(17.908, scruton.Value, 1e-4);
        var amplitude = WindExcitation.VortexAmplitude(scruton, WindExcitation.CriticalSpeed(1.8, 0.1143), 0.1143);
        Near.Relative(0.094104 * 0.1143, amplitude.Value, 1e-4);
        Assert.Null(amplitude.OutOfRange);
        Near.Relative(2 * 17.908 * 2.5 * 0.03, WindExcitation.GallopingOnset(scruton, 2.5, 0.03).Value, 1e-4);

        // Light and hardly damped: the formula is past its range and says so.
        var light = WindExcitation.Scruton(1, 0.005, 0.1143);
        Assert.NotNull(WindExcitation.VortexAmplitude(light, WindExcitation.CriticalSpeed(1.8, 0.1143), 0.1143).OutOfRange);
    }

    /// <summary>A published field example of the pulse method in pounds: 100 ft of guy weighing 56.6 lb per 250 ft, one return in 0.75 s, 500 lb.</summary>
    [Fact]
    public void Pulse_method_in_pounds()
    {
        const double KgPerM = 56.6 / 250 * 0.45359237 / 0.3048;
        var tension = GuyVibration.TensionFromPulse(KgPerM, 100 * 0.3048, 1, 0.75).Value;
        Near.Relative(500.4, tension / 4.4482216, 2e-4);
    }

    [Fact]
    public void Screens_give_verdicts()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var p = MastSolver.Prepare(mast, [ReferenceMasts.Still]);
        var s = p.Solve(ReferenceMasts.Still);
        var mode = MastVibration.Of(p, s, 1)[0];
        Assert.NotEqual(Verdict.Unknown, WindExcitation.MastVortexCheck(mode, 0.1397, 0.012, 0.014, 25).Verdict);
        Assert.Equal(Verdict.Pass, WindExcitation.MastVortexCheck(mode with { FrequencyHz = 100 }, 0.1397, 0.012, 0.014, 25).Verdict);
        var tension = GuyWindScreen.InitialTension("28/0", s.Guy("28/0").AnchorTensionN, 29600);
        Assert.All(tension, c => Assert.NotEqual(Verdict.Fail, c.Verdict));
        Assert.Equal(Verdict.Fail, GuyWindScreen.InitialTension("g", 9000, 29600)[0].Verdict);
        Assert.Equal(Verdict.Fail, GuyWindScreen.InitialTension("g", 900, 29600)[1].Verdict);
        var vibration = GuyVibration.Of(s.Guy("28/0"), 1.766);
        Assert.True(GuyWindScreen.AeolianLoops(vibration, 0.00635, 5).Value > 10);
        Assert.True(GuyWindScreen.Galloping(vibration, 0.03, 15).Ratio > 1);
    }

    private static GuyedMast Pinned(MastSegment tube, double length)
    {
        var cable = new GuyCable(0.1, 2e11, 0.01, 1e-4);
        return new(Vec3.Zero, [tube], [.. new double[] { 0, 90, 180, 270 }.Select(a => new Guy($"{a}", ReferenceMasts.Anchor(100, a, length - 1e-3), length, cable, GuySetting.OfAnchorTension(1e4)))]);
    }
}
