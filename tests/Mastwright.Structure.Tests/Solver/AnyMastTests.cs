using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>Masts drawn at random, sound and hopeless: every one gets an answer, and every stable answer is an equilibrium.</summary>
public class AnyMastTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Every_mast_gets_a_finite_answer_and_every_stable_one_balances(int seed)
    {
        var random = new Random(seed);
        var outcomes = new Dictionary<Outcome, int>();
        for (var i = 0; i < 30; i++)
        {
            var (mast, loadCase) = Draw(random);
            var s = MastSolver.Solve(mast, loadCase, new() { SmallestLoadStep = 1.0 / 32 });
            outcomes[s.Outcome] = outcomes.GetValueOrDefault(s.Outcome) + 1;
            Assert.True(s.Outcome == Outcome.InvalidInput || s.Nodes.All(n => double.IsFinite(n.DisplacementM.Length) && double.IsFinite(n.RotationRad.Length)));
            Assert.All(s.Sections, x => Assert.True(double.IsFinite(x.AxialN + x.BendingMomentNm + x.ShearN + x.TorsionNm)));
            Assert.All(s.Guys, g => Assert.True(double.IsFinite(g.AnchorTensionN + g.SagM)));
            Assert.True(s.IsStable || s.Findings.Count > 0);
            if (s.IsStable)
            {
                Assert.True(s.RelativeResidual <= 1e-8);
                Balances(mast, loadCase, s);
            }
        }

        // The draw is wide enough to hold both kinds.
        Assert.True(outcomes.GetValueOrDefault(Outcome.Stable) > 3, "stable ones");
        Assert.True(outcomes.GetValueOrDefault(Outcome.Unstable) + outcomes.GetValueOrDefault(Outcome.Mechanism) > 1, "others");
    }

    private static void Balances(GuyedMast mast, LoadCase c, MastSolution s)
    {
        var sum = s.Foot.ReactionN;
        var size = s.Foot.ReactionN.Length;
        foreach (var g in s.Guys)
        {
            sum += g.ForceOnMastN;
            size += g.ForceOnMastN.Length;
        }

        foreach (var l in c.MastLoads)
        {
            sum += 0.5 * (l.Points[1].HeightM - l.Points[0].HeightM) * (l.Points[0].LoadNPerM + l.Points[1].LoadNPerM);
        }

        sum = c.PointLoads.Aggregate(sum, (t, p) => t + p.ForceN);
        sum = mast.Segments.Aggregate(sum, (t, x) => t - new Vec3(0, 0, c.DeadLoadFactor * x.WeightNPerM * (x.TopM - x.BottomM)));
        Assert.True(sum.Length <= 1e-8 * size, $"{sum.Length / size:G3}");
    }

    private static (GuyedMast Mast, LoadCase Case) Draw(Random random)
    {
        double Between(double a, double b) => a + ((b - a) * random.NextDouble());
        var height = Between(6, 60);
        var joint = height * Between(0.3, 0.7);
        var diameter = Between(0.05, 0.2);
        MastSegment[] segments = [ReferenceMasts.Tube(joint, diameter, 0.04 * diameter), ReferenceMasts.Tube(height, Between(0.6, 1) * diameter, 0.03 * diameter, joint)];
        var levels = random.Next(1, 5);
        var anchors = random.Next(3, 5);
        var guys = new List<Guy>();
        var cable = new GuyCable(Between(5e-6, 6e-5), 1.6e11, 0.006, Between(0.3, 5), 1.2e-5);
        for (var l = 1; l <= levels; l++)
        {
            var at = height * (l - Between(0, 0.3)) / levels;
            var tension = cable.AxialStiffnessN * Math.Pow(10, Between(-4.5, -2.5));
            for (var a = 0; a < anchors; a++)
            {
                var anchor = ReferenceMasts.Anchor(height * Between(0.3, 0.8), (360.0 * a / anchors) + Between(-15, 15), Between(-0.05, 0.05) * height);
                guys.Add(new($"{l}/{a}", anchor, at, cable, GuySetting.OfAnchorTension(tension), random.Next(2) * 0.1, Between(-1, 1)));
            }
        }

        var mast = new GuyedMast(new(Between(-5, 5), 0, 0), segments, guys, (FootFixity)random.Next(2));
        var push = Math.Pow(10, Between(0.5, 2.5));
        var c = ReferenceMasts.Wind(mast, Between(0, 1500), Between(0, 360), new LineLoad([new(0, new(push, 0.3 * push, 0)), new(height, new(2 * push, push, -0.5 * push))])) with
        {
            TemperatureK = Between(240, 320),
            DeadLoadFactor = Between(0.9, 1.4),
            PointLoads = [new(height, new(Between(-200, 200), Between(-200, 200), Between(-2000, 100)), new(0, 0, Between(-50, 50)))],
        };
        return (mast, c);
    }
}
