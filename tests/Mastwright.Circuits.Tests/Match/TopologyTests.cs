using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Match.Topologies;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Match;

public class TopologyTests
{
    private static MatchProblem Problem(Complex load, double frequencyHz, double line = 50) =>
        new(LoadImpedance.Constant(load), line, frequencyHz, 1000, PartQuality.Lossless) { Lines = [.. LineStock.Usual.Select(l => new LineType(l.Name, l.CharacteristicOhm, l.VelocityFactor))] };

    // Reference page 2.2 (handbook pi and T values, computed apart in Python).
    [Fact]
    public void Pi_50_to_1000_Q_10_at_3500_kHz()
    {
        var s = PiNetwork.At(Problem(1000, 3.5e6), 10, 1).Sections;
        Near.Relative(1830.24654e-12, s[0].Value, 5e-9);
        Near.Relative(5.40832412e-6, s[1].Value, 5e-9);
        Near.Relative(454.728409e-12, s[2].Value, 5e-9);
    }

    [Fact]
    public void Pi_50_to_200_Q_5_at_7_MHz()
    {
        var s = PiNetwork.At(Problem(200, 7e6), 5, 1).Sections;
        Near.Relative(1066.43265e-12, s[0].Value, 5e-9);
        Near.Relative(1.28464411e-6, s[1].Value, 5e-9);
        Near.Relative(568.410511e-12, s[2].Value, 5e-9);
    }

    [Fact]
    public void T_50_to_12_Q_5_at_1850_kHz()
    {
        var s = TNetwork.At(Problem(12, 1.85e6), 5, 1).Sections;
        Near.Relative(9.84654910e-6, s[0].Value, 5e-9);
        Near.Relative(2009.87012e-12, s[1].Value, 5e-9);
        Near.Relative(5.16178194e-6, s[2].Value, 5e-9);
    }

    // Reference page 2.3.
    [Theory]
    [InlineData(36, 42.426406871)]
    [InlineData(100, 70.710678119)]
    [InlineData(20, 31.622776602)]
    public void Quarter_wave_line(double load, double ohm)
    {
        var section = (LineSection)Assert.Single(Assert.Single(new QuarterWave().Synthesise(Problem(load, 7e6))).Sections);
        Near.Relative(ohm, section.Type.CharacteristicOhm, 1e-9);
        Near.Relative(0.25, section.LengthM / section.Type.WavelengthM(7e6), 1e-9);
    }

    [Theory]
    [InlineData(50, 75, 29.333874251)]
    [InlineData(50, 25, 28.125505702)]
    [InlineData(50, 100, 28.125505702)]
    [InlineData(50, 36, 29.559709396)]
    public void Twelfth_wave_angle(double line, double load, double degrees) =>
        Near.Relative(degrees, TwelfthWave.Angle(line, load) * 180 / Math.PI, 1e-10);

    [Fact]
    public void Twelfth_wave_joins_75_to_50_ohm_exactly()
    {
        var ladder = Assert.Single(new TwelfthWave().Synthesise(Problem(75, 7e6)));
        Assert.All(ladder.Sections, s => Near.Relative(.081482984, s.Value / ((LineSection)s).Type.WavelengthM(7e6), 1e-6));
        Assert.Equal(75, ((LineSection)ladder.Sections[0]).Type.CharacteristicOhm);
    }

    [Theory]
    [InlineData(75, 30, -10, 128.77192307, 43.85377861)]
    [InlineData(75, 36, 20, 77.96873548, 43.67026048)]
    [InlineData(300, 35, 10, 108.36694787, 4.23666701)]
    public void Series_section(double z1, double r, double x, double aDeg, double bDeg)
    {
        var angles = SeriesSection.Angles(new Complex(r, x) / 50, z1 / 50);
        Assert.NotNull(angles);
        Near.Relative(aDeg, angles.Value.A * 180 / Math.PI, 1e-9);
        Near.Relative(bDeg, angles.Value.B * 180 / Math.PI, 1e-8);
    }

    [Fact]
    public void Series_section_that_cannot_reach_has_no_solution() => Assert.Null(SeriesSection.Angles(new Complex(5, -300) / 50, 1.5));

    [Theory]
    [InlineData(100, -50, .125, .02, .375, .125)]
    [InlineData(100, -50, .30120819, -.02, .125, .375)]
    [InlineData(60, -80, .11042322, .02943920, .34497462, .09497462)]
    [InlineData(60, -80, .25944453, -.02943920, .15502538, .40502538)]
    public void Single_stub_of_the_textbooks(double r, double x, double dWl, double b, double openWl, double shortWl)
    {
        var problem = Problem(new Complex(r, x), 7e6);
        var place = SingleStub.Places(new Complex(r, x), 50).Single(p => Math.Sign(p.SusceptanceS) == Math.Sign(b));
        Near.Absolute(dWl, place.Angle / (2 * Math.PI), 6e-9);
        Near.Absolute(b, place.SusceptanceS, 6e-9);
        var wave = problem.FeedType.WavelengthM(7e6);
        var ladders = new SingleStub().Synthesise(problem).Where(l => Math.Abs((l.Sections[1].Value / wave) - dWl) < 1e-6).ToArray();
        Near.Absolute(openWl, ladders.Single(l => !((StubSection)l.Sections[0]).Shorted).Sections[0].Value / wave, 6e-9);
        Near.Absolute(shortWl, ladders.Single(l => ((StubSection)l.Sections[0]).Shorted).Sections[0].Value / wave, 6e-9);
    }

    public static TheoryData<double, double> Loads => new()
    {
        { 20, -60 },
        { 8, -250 },
        { 36, 22 },
        { 120, 80 },
        { 50, -30 },
        { 400, -900 },
        { 70, -5 },
        { 1500, 600 },
    };

    [Theory]
    [MemberData(nameof(Loads))]
    public void Every_topology_matches_its_load_exactly_without_losses(double r, double x)
    {
        var problem = Problem(new Complex(r, x), 3.65e6);
        foreach (var topology in TopologyList.All.Where(t => t is not ShuntCoil and not SeriesCapacitor))
            foreach (var ladder in topology.Synthesise(problem))
                Assert.True(new MatchCandidate(topology.Id, topology.Title, ladder, problem).Swr < 1 + 1e-5, $"{topology.Id} {r} {x}");
    }

    [Theory]
    [MemberData(nameof(Loads))]
    public void Every_topology_with_lossy_parts_agrees_with_ngspice(double r, double x)
    {
        var problem = Problem(new Complex(r, x), 3.65e6) with { Quality = PartQuality.FromQ(220, 1500), BaseShuntF = 40e-12 };
        foreach (var candidate in MatchDesigner.Design(problem).Candidates)
        {
            var solution = candidate.Network.Solve(3.65e6);
            var spice = Spice.Ac(DeckOf.Network(candidate.Network, 3.65e6), 3.65e6);
            foreach (var node in candidate.Network.Nodes)
                Near.Equal(spice[node.ToLowerInvariant()], solution.NodeVoltage(node), 1e-8);
        }
    }

    [Fact]
    public void Between_them_the_loads_call_for_every_topology()
    {
        var used = Loads.Select(row => row.Data).SelectMany(z => MatchDesigner.Design(Problem(new Complex(z.Item1, z.Item2), 3.65e6)).Candidates).Select(c => c.TopologyId).ToHashSet();
        Assert.Equal(TopologyList.All.Select(t => t.Id).Order(), used.Order());
    }
}
