using Mastwright.Structure.Raising;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Studies;

/// <summary>Bending of a mast lifted at one or two points, against closed forms of statics and the handbook rule for lifting bars.</summary>
public class LiftBendingTests
{
    private static LiftBending Even(double lengthM, double nPerM, double liftM, double spreadM = 0) => new([new(0, lengthM, nPerM)], [], liftM, spreadM, 1);

    /// <summary>A beam with an overhang (Roark's Formulas for Stress and Strain, table of beams; statics): hogging w·b²/2 over the support, sagging R²/(2w) in the span.</summary>
    [Theory]
    [InlineData(20, 100, 14)]
    [InlineData(20, 100, 18)]
    [InlineData(12, 35, 12)]
    public void One_point_is_a_beam_with_an_overhang(double length, double w, double at)
    {
        var lift = Even(length, w, at);

        Near.Relative(w * length * length / (2 * at), lift.LiftN, 1e-12);
        Near.Absolute(-w * (length - at) * (length - at) / 2, lift.MomentNm(at), 1e-9);
        var foot = (w * length) - lift.LiftN;
        Near.Relative(foot * foot / (2 * w), lift.MomentNm(foot / w), 1e-9);
        Near.Absolute(0, lift.MomentNm(0), 1e-8);
        Near.Absolute(0, lift.MomentNm(length), 1e-9);
    }

    /// <summary>
    /// Pile handling practice: a pile pitched from one end with a single point is picked up 0.293 of its length from the other
    /// end (1 - 1/√2), where the hogging and the sagging moment are alike, w·L²·(3/2 - √2)/... = 0.0429·w·L² (Tomlinson, Pile Design and Construction Practice, from memory).
    /// </summary>
    [Fact]
    public void The_best_single_point_is_that_of_pile_handling()
    {
        var best = Even(10, 1000, 5).Best();

        Near.Relative(1 / Math.Sqrt(2), best.LiftM / 10, 0.006);
        Near.Relative(0.0429, best.Worst().MomentNm / (1000 * 100), 0.02);
    }

    /// <summary>An equalising bridle loads both points alike, so the pull is what one point in their middle would take, and moments close.</summary>
    [Fact]
    public void A_bridle_bends_less_and_keeps_equilibrium()
    {
        var one = new LiftBending([new(0, 8, 120), new(8, 20, 60)], [new(20, 300)], 13, 0, 1.3);
        var two = one with { SpreadM = 5 };

        Near.Relative(one.LiftN, two.LiftN, 1e-12);
        Near.Absolute(0, two.MomentNm(0), 1e-7);
        Near.Absolute(one.MomentNm(16), two.MomentNm(16), 1e-9);
        Assert.True(two.Best().Worst().MomentNm < one.Best().Worst().MomentNm);
    }

    /// <summary>Side guys by hand: a mast of 20 m in an even side wind of 30 N/m, held at 14 m by a guy to an anchor 10 m to the side.</summary>
    [Fact]
    public void A_side_guy_by_hand()
    {
        // Moment 30·20²/2 = 6000 N·m over 14 m is 428.57 N sideways; the guy of √(14² + 10²) = 17.205 m has 10 m sideways.
        var guys = new SideGuys(14, 10, 6000);

        Near.Relative(17.2047, guys.LengthM, 1e-5);
        Near.Relative(428.571 * 17.2047 / 10, guys.TensionN, 1e-5);
    }
}
