using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Groups against the pattern formula of 47 CFR 73.150 and against themselves.</summary>
public class GroupPatternTests
{
    private const double FrequencyHz = 3.65e6;
    private const double WavelengthM = 299792458.0 / FrequencyHz;

    /// <summary>
    /// 47 CFR 73.150(b)(1)(i): E ∝ |Σ F_i f_i(θ) exp(j(S_i cos θ cos(φ_i − φ) + ψ_i))|, f(θ) = (cos(G sin θ) − cos G)/((1 − cos G) cos θ), for the
    /// sinusoidal currents of quarter-wave masts of vanishing thickness over perfect ground: two and four masts, within 2 % of the strongest.
    /// </summary>
    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void Patterns_follow_the_formula_of_47_CFR_73_150(int masts)
    {
        var side = WavelengthM / 4;
        var feet = masts == 2
            ? new[] { new Vec3(0, 0, 0), new Vec3(side, 0, 0) }
            : [new Vec3(0, 0, 0), new Vec3(side, 0, 0), new Vec3(0, side, 0), new Vec3(side, side, 0)];
        Complex[] currents = masts == 2
            ? [1, -Complex.ImaginaryOne]
            : [1, -Complex.ImaginaryOne, -Complex.ImaginaryOne, -1];
        WireModel Model(double radiusM) => Enumerable.Range(0, masts).Aggregate(WireModel.Over(Ground.Perfect), (model, i) =>
            model.With(new Wire($"mast {i}", feet[i], feet[i] + (0.25 * WavelengthM * Vec3.Up), radiusM)).WithFeed($"feed {i}", $"mast {i}"));
        double Formula(double elevation, double azimuth)
        {
            var g = Math.PI / 2;
            var f = (Math.Cos(g * Math.Sin(elevation)) - Math.Cos(g)) / ((1 - Math.Cos(g)) * Math.Cos(elevation));
            var k = 2 * Math.PI / WavelengthM * Math.Cos(elevation);
            return f * feet.Zip(currents, (p, i) => i * Complex.FromPolarCoordinates(1, k * ((p.X * Math.Cos(azimuth)) + (p.Y * Math.Sin(azimuth))))).Aggregate((a, b) => a + b).Magnitude;
        }

        var places = Enumerable.Range(0, 8).SelectMany(e => Enumerable.Range(0, 36).Select(a => (E: e * Math.PI / 18, A: a * Math.PI / 18))).ToList();
        var formula = places.Select(p => Formula(p.E, p.A)).ToList();
        double Apart(double radiusM)
        {
            var basis = new GroupBasis(WireSolver.Solve(Model(radiusM), FrequencyHz).Require());
            var solved = places.Select(p => Math.Sqrt(basis.Gain(currents, basis.Towards(p.E, p.A)))).ToList();
            return solved.Zip(formula, (s, f) => Math.Abs((s / solved.Max()) - (f / formula.Max()))).Max();
        }

        // Coupling bends the currents of real masts away from the sinusoid; that fades as one over the logarithm of their slimness.
        var (thin, thinner) = (Apart(1e-4), Apart(1e-10));
        Assert.InRange(thinner, 0, 0.02);
        Assert.True(thinner < thin, $"{thinner} {thin}");
    }

    [Fact]
    public void The_pair_of_the_examples_steers_both_ways_alike_and_feeds_give_its_pattern()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "pair-80m.yaml"))).Station!;
        station = station with { Masts = [.. station.Masts.Select(m => m with { Radials = m.Radials with { Count = 12, LengthM = 8 } })] };
        var group = GroupPatternRun.Of(station).Groups.Single();
        var (east, west) = (group.Directions[0], group.Directions[1]);

        // The layout turned half round is itself.
        Assert.Equal(east.Pattern.GainDbi, west.Pattern.GainDbi, 0.01);
        Assert.Equal(1500, east.Drives.Sum(d => d.PowerW), 0.01);
        Assert.Equal(group.ImpedanceOhm[0, 1].Real, group.ImpedanceOhm[1, 0].Real, 1e-6);

        // Cardioid of two quarter-wave masts a quarter wave apart: about 3 dB over one (common practice, no source).
        Assert.InRange(east.GainOverOneDb, 2, 4.5);
        Assert.True(east.Tolerance.Zip(east.Tolerance.Skip(1)).All(p => p.First.FrontToBackDb >= p.Second.FrontToBackDb));
        Assert.NotEmpty(east.Feeds);

        // A feed without drive error must radiate the asked pattern through the bases' capacitance.
        var exact = east.Feeds.MinBy(f => f.Feed.WorstError)!;
        Assert.InRange(exact.Feed.WorstError, 0, 1e-3);
        Assert.Equal(east.Pattern.FrontToBackDb, exact.Pattern.FrontToBackDb, 0.2);
    }
}
