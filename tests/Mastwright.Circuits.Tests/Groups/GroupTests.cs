using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Export;
using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Groups;

public class GroupTests
{
    private const double F = 3.65e6;
    private static readonly LineType Lossless50 = new("50", 50, 0.66);
    private static readonly LineType Lossless75 = new("75", 75, 0.82);

    // Thin quarter-wave masts a quarter wave apart on a square over perfect ground, by the induced-EMF method (Carter 1932; table
    // of the reference values: 20.379 - j14.165 Ω at 0.25 λ; the corner at 0.354 λ between its neighbours); self 36.54 + j21.26 Ω
    // and the earth's loss at each base.
    private static LoadImpedance FourSquareLoad(double earthOhm)
    {
        Complex self = new(36.54 + earthOhm, 21.26), side = new(20.379, -14.165), corner = new(8.345, -18.70);
        return LoadImpedance.Constant(new[,]
        {
            { self, side, side, corner },
            { side, self, corner, side },
            { side, corner, self, side },
            { corner, side, side, self },
        });
    }

    private static GroupProblem FourSquare(PartQuality? quality = null, double earthOhm = 5) => new(
        FourSquareLoad(earthOhm),
        [1, -Complex.ImaginaryOne, -Complex.ImaginaryOne, -1],
        50,
        F,
        1500,
        quality ?? PartQuality.FromQ(250, 2000))
    {
        Feeder = LineStock.Coax75,
    };

    private static GroupProblem Pair(Complex z1, Complex z2, Complex ratio, LineType feeder) => new(
        LoadImpedance.Constant(new[,] { { z1, Complex.Zero }, { Complex.Zero, z2 } }), [1, ratio], 50, F, 1000, PartQuality.Lossless)
    { Feeder = feeder };

    [Fact]
    public void Drive_impedances_are_the_matrix_rows_by_hand()
    {
        var t = DriveTable.Of(FourSquare(earthOhm: 0));
        var j = Complex.ImaginaryOne;
        Near.Equal(new Complex(36.54, 21.26) - (2 * j * new Complex(20.379, -14.165)) - new Complex(8.345, -18.70), t.Drives[0].ImpedanceOhm, 1e-12);
        Near.Equal(new Complex(44.885, 2.56), t.Drives[1].ImpedanceOhm, 1e-12);
        Near.Relative(1500, t.Drives.Sum(d => d.PowerW), 1e-12);
        Assert.Contains(t.Findings, f => f.Code == "group-weak-mast");
    }

    [Fact]
    public void Quarter_waves_of_50_ohm_force_equal_currents_and_drift_off_frequency_as_computed_apart()
    {
        // Reference page 2.5: 20 + j15 and 60 + j30 Ω; 1 % low: .99517717 at +.711543°; 1 % high: 1.00459575 at -.728505°.
        var feed = CurrentForcing.Design(Pair(new(20, 15), new(60, 30), 1, Lossless50)).Feed!;
        Near.Absolute(0, feed.WorstError, 1e-9);
        var low = feed.At(F * 0.99).Errors[1].Achieved;
        Near.Relative(.99517717, low.Magnitude, 1e-8);
        Near.Absolute(.711543, low.Phase * 180 / Math.PI, 1e-6);
        var high = feed.At(F * 1.01).Errors[1].Achieved;
        Near.Relative(1.00459575, high.Magnitude, 1e-8);
        Near.Absolute(-.728505, high.Phase * 180 / Math.PI, 1e-6);
        Assert.Equal(1, feed.Swr, 1e-6);
    }

    [Fact]
    public void Forced_four_square_reaches_its_currents_but_for_line_loss()
    {
        var lossless = CurrentForcing.Design(FourSquare(PartQuality.Lossless) with { Feeder = Lossless75 }).Feed!;
        Near.Absolute(0, lossless.WorstError, 1e-8);
        Assert.Equal(1, lossless.Swr, 1e-6);
        var real = CurrentForcing.Design(FourSquare()).Feed!;
        Assert.InRange(real.WorstError, 1e-6, 0.08);
        Near.Relative(1500, real.Solution.LoadPowerW + real.Solution.LossW, 1e-9);
        Near.Relative(270, real.Lines.Max(l => l.Degrees), 1e-9);
    }

    [Fact]
    public void Independent_networks_reach_the_demanded_currents_with_lossy_parts_and_feeders()
    {
        foreach (var reach in new[] { 0.0, 21.0 })
        {
            var result = IndependentNetworks.Design(FourSquare() with { ReachM = reach });
            Assert.NotNull(result.Feed);
            Near.Absolute(0, result.Feed.WorstError, 1e-6);
            Assert.Equal(1, result.Feed.Swr, 1e-5);
            Near.Relative(1500, result.Feed.Solution.LoadPowerW + result.Feed.Solution.LossW, 1e-9);
        }
    }

    [Fact]
    public void Rear_mast_of_a_square_over_perfect_ground_takes_no_power_and_lossy_networks_say_so()
    {
        var lossless = IndependentNetworks.Design(FourSquare(PartQuality.Lossless, 0)).Feed!;
        Near.Absolute(0, lossless.WorstError, 1e-6);
        var lossy = IndependentNetworks.Design(FourSquare(earthOhm: 0));
        Assert.InRange(lossy.Feed!.WorstError, 0, 0.05);
        Assert.Equal(lossy.Feed.WorstError >= 0.01, lossy.Findings.Any(f => f.Code == "group-untuned"));
    }

    [Fact]
    public void Network_takes_power_out_of_a_mast_that_gives_it()
    {
        // Close spacing and the wrong phase: mast 1 shows negative resistance.
        var z = new[,] { { new Complex(36, 0), new Complex(33, -6) }, { new Complex(33, -6), new Complex(36, 0) } };
        var p = new GroupProblem(LoadImpedance.Constant(z), [0.8, Complex.FromPolarCoordinates(-1, 0.1)], 50, F, 1000, PartQuality.Lossless);
        Assert.Contains(DriveTable.Of(p).Findings, f => f.Message.Contains("gives power back", StringComparison.Ordinal));
        var feed = IndependentNetworks.Design(p).Feed!;
        Near.Absolute(0, feed.WorstError, 1e-6);
    }

    [Fact]
    public void Feeders_of_odd_lengths_reach_the_currents_through_L_networks()
    {
        var result = PhasingLines.Design(FourSquare() with { FeederLengthsM = [17, 19.5, 23, 21] });
        Assert.NotNull(result.Feed);
        Near.Absolute(0, result.Feed.WorstError, 1e-6);
        Assert.Equal(1, result.Feed.Swr, 1e-5);
        Near.Relative(1500, result.Feed.Solution.LoadPowerW + result.Feed.Solution.LossW, 1e-9);
        var wanted = DriveTable.Of(FourSquare()).Drives;
        foreach (var d in result.Feed.Drives)
            Near.Equal(wanted[d.Mast].ImpedanceOhm, d.ImpedanceOhm, 1e-5);
        Near.Relative(result.Feed.Solution.LoadPowerW, result.Feed.Drives.Sum(d => d.PowerW), 1e-9);
        Assert.Equal([17.0, 19.5, 23.0, 21.0], result.Feed.Lines.Select(l => l.LengthM));
        var independent = IndependentNetworks.Design(FourSquare() with { FeederLengthsM = [17, 19.5, 23, 21] });
        Near.Absolute(0, independent.Feed!.WorstError, 1e-6);
        Assert.Equal("group-feeders", Assert.Single(PhasingLines.Design(FourSquare() with { FeederLengthsM = [17] }).Findings).Code);
    }

    [Fact]
    public void Designer_offers_every_feed_that_works_the_best_first()
    {
        var (feeds, _) = GroupDesigner.Design(FourSquare() with { ReachM = 14 });
        Assert.Equal(4, feeds.Length);
        Assert.Equal(feeds.Select(GroupDesigner.Points).Order(), feeds.Select(GroupDesigner.Points));
        Assert.All(feeds, f => Near.Relative(1500, f.Solution.LoadPowerW + f.Solution.LossW, 1e-9));
        Assert.True(feeds.Single(f => f.Title == "quadrature hybrid").DumpPowerW > 0);
        var (none, why) = GroupDesigner.Design(FourSquare() with { Currents = [1, 1] });
        Assert.Empty(none);
        Assert.Equal("group-size", Assert.Single(why).Code);
    }

    [Fact]
    public void Full_four_square_with_its_feed_agrees_with_ngspice()
    {
        var feed = IndependentNetworks.Design(FourSquare() with { ReachM = 21, Feeder = Lossless75 }).Feed!;
        var deck = SpiceNetlist.Of(feed.Network, F, "four-square").Split('\n').Where(l => !l.StartsWith(".ac", StringComparison.Ordinal) && !l.StartsWith(".end", StringComparison.Ordinal));
        var spice = Spice.Ac(deck, F);
        var ours = feed.Network.Solve(F);
        for (var k = 0; k < 4; k++)
        {
            Near.Equal(spice[GroupProblem.MastNode(k)], ours.NodeVoltage(GroupProblem.MastNode(k)), 1e-6);
            Near.Equal(spice[$"vant_s{k}#branch"], ours.Part("ANT").Ports[k].CurrentPhasor, 1e-6);
        }
    }

    // Reference page 2.5: bad loads on an ideal hybrid; dump wave (G2 + G3)/2, V3/V2 as computed apart. Quarter waves of
    // 50 Ω turn a mast of 2500/Z into Z, and make its current follow the port's voltage.
    [Theory]
    [InlineData(25, 50, -.1666667, 1.5)]
    [InlineData(25, 25, -.3333333, 1)]
    [InlineData(100, 25, 0, .5)]
    public void Hybrid_with_bad_loads(double through, double coupled, double dumpWave, double ratio)
    {
        var p = Pair(2500 / through, 2500 / coupled, Complex.ImaginaryOne, Lossless50);
        var feed = HybridFeed.Design(p, 1).Feed!;
        Near.Equal(new Complex(0, ratio), feed.Errors[1].Achieved, 1e-6);
        var available = AcSource.Transmitter("TX", "a", "0", 1000, 50).OpenVoltage.Magnitude / 2;
        Near.Absolute(Math.Abs(dumpWave), feed.Network.Solve(F).NodeVoltage("dump").Magnitude / available, 1e-6);
    }

    [Fact]
    public void Hybrid_refuses_phases_it_cannot_give()
    {
        var codes = HybridFeed.Design(Pair(36, 36, Complex.FromPolarCoordinates(1, 2), Lossless50)).Findings.Select(f => f.Code);
        Assert.Equal(["group-hybrid-phase"], codes);
    }

    [Fact]
    public void Lines_of_arbitrary_length_give_the_currents_of_a_cardioid_pair()
    {
        var z = new[,] { { new Complex(36.4, 0), new Complex(20, -15) }, { new Complex(20, -15), new Complex(36.4, 0) } };
        var (feeds, findings) = EqualVoltageLines.Design(new(LoadImpedance.Constant(z), [1, -Complex.ImaginaryOne], 50, F, 1000, PartQuality.Lossless) { Feeder = Lossless50 });
        Assert.Empty(findings);
        Assert.NotEmpty(feeds);
        Assert.All(feeds, f =>
        {
            Near.Absolute(0, f.WorstError, 1e-6);
            Assert.Equal(1, f.Swr, 1e-5);
        });
    }

    [Fact]
    public void Four_square_is_steered_by_rearranging_its_masts()
    {
        var j = Complex.ImaginaryOne;
        var (table, impossible) = DirectionTable.Of([1, -j, -j, -1], [("NE", [1, -j, -j, -1]), ("NW", [-j, 1, -1, -j]), ("SW", [-1, -j, -j, 1]), ("SE", [-j, -1, 1, -j])]);
        Assert.Null(impossible);
        Assert.Equal([0, 1, 2, 3], table!.Directions[0].PortOfMast);
        Assert.Equal([3, 1, 2, 0], table.Directions[2].PortOfMast);
        Assert.All(table.Directions, d => Assert.Equal(4, d.PortOfMast.Distinct().Count()));
        Assert.Equal("NE", table.DropOff);
        Assert.Equal("odd", DirectionTable.Of([1, -j], [("odd", [1, 1])]).Impossible);
    }

    [Fact]
    public void Active_matrix_is_refused()
    {
        var z = new[,] { { new Complex(36, 0), new Complex(50, 0) }, { new Complex(50, 0), new Complex(36, 0) } };
        Assert.Equal("group-active-load", Assert.Single(CurrentForcing.Design(new(LoadImpedance.Constant(z), [1, 1], 50, F, 1000, PartQuality.Lossless)).Findings).Code);
    }
}
