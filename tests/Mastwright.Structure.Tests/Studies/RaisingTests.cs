using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Raising;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Studies;

/// <summary>Raising statics against an independent computation: mast 20 m, 2390 N at 10 m, lifted at 15 m.</summary>
public class RaisingTests
{
    private static readonly MastOnHinge Mast = new(20, 2390, 10, 15);

    [Theory]
    [InlineData(0, 4645.33, 4290.18, 3983.33, 3983.33, 796.67, 3983.33, 4780.00)]
    [InlineData(10, 4274.66, 4225.00, 3267.43, 4135.70, 1525.90, 3568.31, 4743.69)]
    [InlineData(30, 3472.59, 3715.41, 1778.20, 3677.43, 2919.83, 2788.33, 4459.80)]
    [InlineData(50, 2644.49, 2757.68, 362.76, 2430.38, 3693.08, 2152.49, 3926.26)]
    [InlineData(60, 2256.02, 2145.09, -263.00, 1685.77, 3716.50, 1913.53, 3585.00)]
    [InlineData(88, 1596.97, 149.73, -1535.30, 60.42, 2526.99, 1594.79, 2473.41)]
    public void Falling_derrick(double degrees, double haul, double lift, double pole, double hx, double hz, double px, double pz)
    {
        var s = new FallingDerrick(Mast, 6, 10).At(degrees * Math.PI / 180);
        Near.Absolute(haul, s.HaulLineN, 0.006, "haul");
        Near.Absolute(lift, s.LiftLineN, 0.006, "lift");
        Near.Absolute(pole, s.PoleCompressionN, 0.006, "pole");
        Near.Absolute(new Vec3(hx, 0, hz), s.HingeOnMastN, 0.009, "hinge");
        Near.Absolute(new Vec3(px, 0, pz), s.PivotN, 0.009, "pivot");
    }

    [Theory]
    [InlineData(0, 3385.83)]
    [InlineData(15, 2999.98)]
    [InlineData(45, 2175.34)]
    [InlineData(75, 1506.02)]
    public void Standing_gin_pole(double degrees, double line) =>
        Near.Absolute(line, new StandingGinPole(Mast, 8, 0, 10).At(degrees * Math.PI / 180).LiftLineN, 0.006);

    [Fact]
    public void Worst_angle_and_warnings_of_a_falling_derrick()
    {
        var r = new FallingDerrick(Mast, 6, 10).Lift();
        Assert.Equal(0, r.WorstHaul.AngleRad);
        Assert.InRange(r.PoleTensionFromRad!.Value * 180 / Math.PI, 55, 58);
        Assert.InRange(r.BackLineFromRad * 180 / Math.PI, 65, 88);
        Assert.Contains(r.Findings, f => f.Code == "back-line");
        Assert.Contains(r.Findings, f => f.Code == "pole-pulled");
        Assert.Equal(5, r.Explain().Count);
        Assert.Contains("power lines", r.Caution);
    }

    /// <summary>Forces and moments on mast and pole together, and on a pole with weight at any angle.</summary>
    [Fact]
    public void Falling_derrick_balances()
    {
        var d = new FallingDerrick(Mast with { DynamicFactor = 1.3 }, 7, 11, 300, 1.4, 0.5);
        foreach (var deg in new[] { 0.0, 25, 55, 80 })
        {
            var a = deg * Math.PI / 180;
            var s = d.At(a);
            var tip = 7 * new Vec3(Math.Cos(a + 1.4), 0, Math.Sin(a + 1.4));
            var winch = new Vec3(-11, 0, 0.5);
            var pull = s.HaulLineN * (winch - tip).Unit();
            var cog = 10 * new Vec3(Math.Cos(a), 0, Math.Sin(a));
            Near.Absolute(Vec3.Zero, s.PivotN + pull + new Vec3(0, 0, -(2390 * 1.3) - 300), 1e-8, "forces");
            Near.Absolute(Vec3.Zero, tip.Cross(pull) + cog.Cross(new(0, 0, -2390 * 1.3)) + (0.5 * tip).Cross(new(0, 0, -300)), 1e-8, "moments");
        }
    }

    [Fact]
    public void Standing_pole_and_stay_balance()
    {
        var s = new StandingGinPole(Mast, 8, 1, 9, 200).At(0.3);
        var sheave = new Vec3(-1, 0, 8);
        var lift = 15 * new Vec3(Math.Cos(0.3), 0, Math.Sin(0.3));
        var toMast = s.LiftLineN * (lift - sheave).Unit();
        var stay = s.BackStayN * new Vec3(-9, 0, -8).Unit();
        Near.Absolute(0, (toMast + stay).X, 1e-8, "sideways");
        Near.Absolute(s.PoleCompressionN, s.LiftLineN + 200 - (toMast + stay).Z, 1e-8, "down");
    }

    /// <summary>Beam on two supports with an overhang under an even load, the textbook formulas: wc²/2 over the support, R²/2w in the span.</summary>
    [Fact]
    public void Bending_of_the_lying_mast()
    {
        const double W = 2390.0 / 20;
        Near.Relative(Math.Max(W * 25 / 2, Math.Pow((2390 - (W * 400 / 30)) / 1, 2) / (2 * W)), Mast.LargestBendingNm(0), 1e-12);
        Assert.Equal(0, Mast.LargestBendingNm(Math.PI / 2), 1e-9);
    }

    [Fact]
    public void Stacking_solves_every_part_built_mast()
    {
        var sections = Enumerable.Range(0, 5).Select(i => ReferenceMasts.Tube(6 * (i + 1), 0.1397, 0.005, 6 * i)).ToArray();
        Guy[] Guys(double height, double radius) => [.. new double[] { 0, 120, 240 }.Select(a => new Guy($"{height}/{a}", ReferenceMasts.Anchor(radius, a), height, ReferenceMasts.Strand, GuySetting.OfAnchorTension(2500)))];
        var mast = new GuyedMast(Vec3.Zero, sections, [.. Guys(14, 12), .. Guys(28, 18)]);
        Guy[] temporary = [.. Guys(5.8, 12), .. Guys(11.8, 12), .. Guys(23.8, 18)];
        var steps = Stacking.Steps(mast, new(250, 4, 1.5, 0.3), temporary);
        Assert.Equal([6, 12, 18, 24], steps.Select(s => s.HeightM));
        Assert.All(steps, s => Assert.True(s.Solution.IsStable, $"{s.HeightM}: {s.Solution.Outcome}"));
        Assert.Equal([3, 3, 3, 6], steps.Select(s => s.Mast.Guys.Count));
        var load = 1.3 * 6 * sections[0].WeightNPerM;
        Near.Relative(load, steps[0].RopeN, 1e-9);
        Near.Relative((2 * load) + 250, steps[0].PoleCompressionN, 1e-9);
        Assert.Equal(4, steps[2].FreeTopM, 9);
        var bare = Stacking.Steps(mast, new(250, 4, 1.5, 0.3), []);
        Assert.False(bare[0].Solution.IsStable);
        Assert.Contains(bare[0].Findings, f => f.Code == "no-guys-yet");
    }
}
