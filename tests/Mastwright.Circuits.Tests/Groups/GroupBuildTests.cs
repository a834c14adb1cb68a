using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Capacitors;
using Mastwright.Circuits.Export;
using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Loss;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Circuits.Tests.Outside;

namespace Mastwright.Circuits.Tests.Groups;

public class GroupBuildTests
{
    private const double F = 3.65e6;

    // Quarter-wave masts a quarter wave apart on a square over perfect ground (Carter 1932, reference page), 5 Ω of earth at each.
    private static readonly Complex Self = new(36.54, 21.26);
    private static readonly Complex Side = new(20.379, -14.165);
    private static readonly Complex Corner = new(8.345, -18.70);

    private static readonly Workshop Shop = new([new CapacitorItem("variable", CapacitorKind.Vacuum, 5e-12, 4000e-12, new PeakVolts(15e3), new RmsAmps(60), 10e6, CapacitorLoss.ConstantQ(5000))], 0.3, 0.4);

    private static GroupProblem FourSquare(double earthOhm = 5, Complex? self = null)
    {
        var z = (self ?? Self) + earthOhm;
        return new(LoadImpedance.Constant(new[,] { { z, Side, Side, Corner }, { Side, z, Corner, Side }, { Side, Corner, z, Side }, { Corner, Side, Side, z } }),
            [1, -Complex.ImaginaryOne, -Complex.ImaginaryOne, -1], 50, F, 1500, PartQuality.FromQ(250, 2000))
        { ReachM = 14, Feeder = LineStock.Coax75 };
    }

    // Published drive impedances of a quarter-wave four-square, elements cut to resonance, as printed in low-band handbooks
    // (from memory: 61.7 + j59.4 front, 41.0 - j19.3 both middle ones, -0.4 - j15.4 rear). Theirs are of wires of finite thickness, ours of
    // thin ones cut to resonance by a series reactance, so they agree within some ohms.
    [Fact]
    public void Drive_impedances_lie_near_the_published_ones()
    {
        var drives = DriveTable.Of(FourSquare(0, new Complex(36.4, 0))).Drives;
        Near.Absolute(0, (new Complex(61.7, 59.4) - drives[3].ImpedanceOhm).Magnitude, 7);
        Near.Absolute(0, (new Complex(41.0, -19.3) - drives[1].ImpedanceOhm).Magnitude, 7);
        Near.Absolute(0, (new Complex(-0.4, -15.4) - drives[0].ImpedanceOhm).Magnitude, 7);
    }

    // Array factor of the square along its diagonal: the four phasors add to 2 + 2·sin kd forward and to 2 - 2·sin kd backward, kd = 2π·√2/8
    // (the sum written out by hand): the horizon behind is 25.2 dB down.
    [Fact]
    public void Pattern_of_the_currents_fed_is_that_of_the_textbook_square()
    {
        var feed = IndependentNetworks.Design(FourSquare()).Feed!;
        const double kd = 2 * Math.PI * 0.1767766953;
        double Field(double azimuth)
        {
            double Path(double place) => kd * Math.Cos(azimuth - place);
            double[] places = [Math.PI, Math.PI / 2, -Math.PI / 2, 0];
            return feed.Currents.Select((i, k) => i * Complex.FromPolarCoordinates(1, Path(places[k]))).Aggregate((a, b) => a + b).Magnitude;
        }

        var textbook = (2 + (2 * Math.Sin(kd))) / Math.Abs(2 - (2 * Math.Sin(kd)));
        Near.Relative(textbook, Field(0) / Field(Math.PI), 1e-5);
        Near.Absolute(25.2, 20 * Math.Log10(Field(0) / Field(Math.PI)), 0.05);
    }

    [Fact]
    public void Every_feed_in_real_parts_keeps_power_in_balance_and_its_currents()
    {
        var feeds = GroupDesigner.Design(FourSquare()).Feeds;
        Assert.Equal(new[] { CurrentForcing.Title, HybridFeed.Title, PhasingLines.Title, IndependentNetworks.Title }.Order(), feeds.Select(f => f.Title).Order());
        foreach (var feed in feeds)
        {
            var real = GroupRealisation.Of(feed, Shop);
            Near.Relative(1500, real.Feed.Solution.LoadPowerW + real.Feed.Solution.LossW, 1e-9);
            if (feed.Title != HybridFeed.Title)
            {
                Assert.True(real.Feed.WorstError < 0.09, $"{feed.Title}: {real.Feed.WorstError}");
                Assert.True(real.Feed.Swr < 1.2, $"{feed.Title}: {real.Feed.Swr}");
            }

            Assert.All(real.Coils, c => Near.Relative(((Inductor)real.Feed.Network.Parts.Single(p => p.Name == c.Section)).InductanceH, c.Proposal.Report.Inductance.Value, 1e-6));
        }
    }

    [Fact]
    public void Square_switched_to_another_corner_works_as_before()
    {
        var real = GroupRealisation.Of(IndependentNetworks.Design(FourSquare()).Feed!, Shop);
        var (table, _) = DirectionTable.Of([1, -Complex.ImaginaryOne, -Complex.ImaginaryOne, -1],
        [
            ("one", [1, -Complex.ImaginaryOne, -Complex.ImaginaryOne, -1]),

            // The same corner turned by a quarter, told with another mast as the reference of the phase.
            ("two", [1, Complex.ImaginaryOne, -Complex.ImaginaryOne, 1]),
        ]);
        Assert.NotNull(table);
        var (feed, currents) = real.Hung(table.Directions[1].PortOfMast, [1, Complex.ImaginaryOne, -Complex.ImaginaryOne, 1]);
        Assert.Equal(real.Feed.WorstError, feed.WorstError, 1e-9);
        Near.Relative(real.Feed.Swr, feed.Swr, 1e-9);
        Near.Equal(new Complex(0, 1), currents[1] / currents[0], 1e-3);
    }

    [Fact]
    public void Hybrid_serves_currents_that_strays_turn_a_little_off_the_right_angle()
    {
        var z = new[,] { { Self + 5, Side }, { Side, Self + 5 } };
        GroupProblem Pair(double degrees) => new(LoadImpedance.Constant(z), [1, Complex.FromPolarCoordinates(1, degrees * Math.PI / 180)], 50, F, 1000, PartQuality.Lossless);
        Assert.NotNull(HybridFeed.Design(Pair(-97)).Feed);
        Assert.Null(HybridFeed.Design(Pair(-60)).Feed);
        Assert.Equal("group-hybrid-useless", Assert.Single(HybridFeed.Design(Pair(178)).Findings).Code);
    }

    [Fact]
    public void Built_group_agrees_with_ngspice()
    {
        // Lines without loss: the netlist's line with series resistance is no exact twin of ours.
        var real = GroupRealisation.Of(CurrentForcing.Design(FourSquare() with { Feeder = new LineType("75", 75, 0.82) }).Feed!, Shop).Feed;
        var deck = MatchFiles.Netlist(real).Split('\n').Where(l => !l.StartsWith(".ac", StringComparison.Ordinal) && !l.StartsWith(".end", StringComparison.Ordinal));
        var spice = Spice.Ac(deck, F);
        var ours = real.Network.Solve(F);
        for (var k = 0; k < 4; k++)
            Near.Equal(spice[GroupProblem.MastNode(k)], ours.NodeVoltage(GroupProblem.MastNode(k)), 1e-6);
    }

    // A quarter wave turns the mast's current into the box's voltage, Z0·I, the same for every mast of a forced group: the line holds at least that crest.
    [Theory]
    [InlineData(5000, 1, true)]
    [InlineData(200, 1, false)]
    public void Phasing_lines_must_stand_their_crest(double ratingV, double modulation, bool stands)
    {
        var feed = CurrentForcing.Design(FourSquare() with { Feeder = LineStock.Coax75 with { PeakRating = new PeakVolts(ratingV) } }).Feed!;
        var real = GroupRealisation.Of(feed, Shop with { PeakFactor = modulation });

        Assert.Equal(real.Feed.Lines.Count(), real.Lines.Length);
        var box = 75 * real.Feed.Currents.Max(i => i.Magnitude) * Math.Sqrt(2);
        Assert.All(real.Lines, c => Assert.True(c.Demand.Value >= 0.9 * box));
        Assert.Equal(stands, real.IsComplete);
        Assert.Equal(stands, real.Findings.All(f => f.Code != "line-rating"));
    }
}
