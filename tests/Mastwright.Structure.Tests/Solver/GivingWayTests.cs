using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>Whatever the input, an answer comes back: never an exception, never a number that is none.</summary>
public class GivingWayTests
{
    [Fact]
    public void Mast_too_slender_for_its_load_is_unstable_with_the_share_it_carries()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var s = MastSolver.Solve(mast, new("heavy top") { PointLoads = [new(15, new(30, 10, -60000))] });
        Assert.Equal(Outcome.Unstable, s.Outcome);
        Assert.InRange(s.LoadShare, 0.05, 0.6);
        Assert.Contains(s.Findings, f => f.Code == "unstable");
        AllFinite(s);
    }

    [Fact]
    public void Mast_that_cannot_carry_itself_says_so()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        mast = mast with { Segments = [mast.Segments[0] with { WeightNPerM = 20000 }] };
        var s = MastSolver.Solve(mast, ReferenceMasts.Still);
        Assert.Equal(Outcome.Unstable, s.Outcome);
        Assert.InRange(s.OwnWeightShare, 0.001, 0.9);
        Assert.Contains(s.Findings, f => f.Code == "own-weight-unstable");
        AllFinite(s);
    }

    [Fact]
    public void Mast_on_a_pivot_without_guys_is_a_mechanism()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastA(), ReferenceMasts.Still);
        Assert.Equal(Outcome.Mechanism, s.Outcome);
        Assert.Contains(s.Findings, f => f.Code == "mechanism");
        AllFinite(s);
    }

    [Fact]
    public void Two_guys_on_one_side_do_not_hold_a_mast()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastA(80, 100), ReferenceMasts.Still);
        Assert.NotEqual(Outcome.Stable, s.Outcome);
        AllFinite(s);
    }

    [Fact]
    public void Slack_guys_hang_and_pull_little()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        mast = mast with { Guys = [.. mast.Guys.Select(g => g.AttachmentHeightM < 20 ? g with { Setting = GuySetting.OfLength(18.6) } : g)] };
        var s = MastSolver.Solve(mast, ReferenceMasts.Still);
        Assert.Equal(Outcome.Stable, s.Outcome);
        Assert.True(s.Guy("14/0").IsSlack);
        Assert.Equal(3, s.Findings.Count(f => f.Code == "guy-slack"));
        Assert.False(s.Guy("28/0").IsSlack);
        Assert.InRange(s.Guy("14/0").LargestTensionN, 10, 200);
    }

    [Fact]
    public void All_guys_slack_lets_a_mast_on_a_pivot_go()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        mast = mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfLength(19.5) })] };
        var s = MastSolver.Solve(mast, ReferenceMasts.Still);
        Assert.NotEqual(Outcome.Stable, s.Outcome);
        AllFinite(s);
    }

    [Fact]
    public void A_ball_with_guys_on_the_axis_is_told_that_nothing_holds_the_twist()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastA(0, 120, 240) with { Foot = FootFixity.Ball }, ReferenceMasts.Still);
        Assert.Equal(Outcome.Stable, s.Outcome);
        Assert.Contains(s.Findings, f => f.Code == "twist-unrestrained");
    }

    [Fact]
    public void Bad_input_is_named()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var above = mast with { Guys = [mast.Guys[0] with { AnchorM = new(10, 0, 16) }, .. mast.Guys.Skip(1)] };
        Assert.Contains(MastSolver.Solve(above, ReferenceMasts.Still).Findings, f => f.Code == "anchor-above-attachment");
        Assert.Contains(MastSolver.Solve(mast, new("hot", 900)).Findings, f => f.Code == "temperature");
        Assert.Contains(MastSolver.Solve(mast, new("x") { AbsentGuys = ["none"] }).Findings, f => f.Code == "unknown-guy");
        Assert.Contains(MastSolver.Solve(mast, new("x") { PointLoads = [new(5, new(double.NaN, 0, 0))] }).Findings, f => f.Code == "load-number");
        var gap = mast with { Segments = [ReferenceMasts.Tube(9, 0.1, 0.004), ReferenceMasts.Tube(20, 0.1, 0.004, 10)] };
        var refused = MastSolver.Solve(gap, ReferenceMasts.Still);
        Assert.Equal(Outcome.InvalidInput, refused.Outcome);
        Assert.Contains(refused.Findings, f => f.Code == "segment-gap");
    }

    [Fact]
    public void A_mast_that_pulls_on_its_foot_is_told()
    {
        var s = MastSolver.Solve(ReferenceMasts.MastA(0, 120, 240), new("lift") { PointLoads = [new(15, new(0, 0, 15000))] });
        Assert.Equal(Outcome.Stable, s.Outcome);
        Assert.Contains(s.Findings, f => f.Code == "foot-lifts");
    }

    [Fact]
    public void A_mast_bent_far_over_is_told_that_it_has_failed_in_practice()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var s = MastSolver.Solve(mast, ReferenceMasts.Wind(mast, 6 * 960, 20, LineLoad.Uniform(0, 20, 660 * ReferenceMasts.Anchor(1, 20))));
        Assert.True(!s.IsStable || s.Findings.Any(f => f.Code == "bends-far-over"));
        AllFinite(s);
    }

    [Fact]
    public void Cancelling_stops_the_work()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        Assert.Throws<OperationCanceledException>(() => MastSolver.Solve(ReferenceMasts.MastA(0, 120, 240), ReferenceMasts.Still, null, source.Token));
    }

    private static void AllFinite(MastSolution s)
    {
        Assert.All(s.Nodes, n => Assert.True(double.IsFinite(n.DisplacementM.Length) && double.IsFinite(n.RotationRad.Length)));
        Assert.All(s.Sections, x => Assert.True(double.IsFinite(x.AxialN) && double.IsFinite(x.BendingMomentNm)));
        Assert.All(s.Guys, g => Assert.True(double.IsFinite(g.AnchorTensionN) && double.IsFinite(g.SagM)));
        Assert.True(double.IsFinite(s.Foot.ReactionN.Length));
    }
}
