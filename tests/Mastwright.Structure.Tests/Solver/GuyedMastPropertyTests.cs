using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

public class GuyedMastPropertyTests
{
    /// <summary>Everything that pushes on mast and guys against everything that holds them: forces, and moments about the foot.</summary>
    [Fact]
    public void Applied_loads_and_reactions_balance_to_a_hundred_millionth()
    {
        var mast = TangentTests.OffAxisMast();
        var c = TangentTests.SkewCase(mast);
        var s = MastSolver.Solve(mast, c, new() { LongestElementM = 0.5 });
        Assert.True(s.RelativeResidual < 1e-9);
        var applied = Vec3.Zero;
        foreach (var l in c.MastLoads)
        {
            for (var i = 1; i < l.Points.Count; i++)
            {
                applied += 0.5 * (l.Points[i].HeightM - l.Points[i - 1].HeightM) * (l.Points[i].LoadNPerM + l.Points[i - 1].LoadNPerM);
            }
        }

        applied += c.PointLoads.Aggregate(Vec3.Zero, (sum, p) => sum + p.ForceN);
        applied += mast.Segments.Aggregate(Vec3.Zero, (sum, g) => sum + new Vec3(0, 0, -1.2 * g.WeightNPerM * (g.TopM - g.BottomM)));
        var size = applied.Length;
        foreach (var g in mast.Guys)
        {
            var q = new Vec3(0, 0, -1.2 * g.Cable.WeightNPerM) + c.GuyLoads.First(x => x.GuyName == g.Name).LoadNPerM;
            var r = s.Guy(g.Name);
            Near.Absolute(r.UnstressedLengthM * q, r.ForceOnAnchorN + r.ForceOnMastN, 1e-8 * size, g.Name);
            applied += r.ForceOnMastN;
        }

        Near.Absolute(-applied, s.Foot.ReactionN, 1e-8 * size, "foot");
    }

    [Fact]
    public void Moments_about_the_foot_balance_on_the_deformed_mast()
    {
        var mast = ReferenceMasts.MastB(180, 60, 300);
        var c = new LoadCase("points") { PointLoads = [new(14, new(900, 200, -100)), new(30, new(100, -300, -500), new(20, 30, 0))] };
        mast = mast with { Segments = [mast.Segments[0] with { WeightNPerM = 0 }] };
        var s = MastSolver.Solve(mast, c);
        var moment = c.PointLoads.Aggregate(Vec3.Zero, (sum, p) => sum + At(p.HeightM).Cross(p.ForceN) + p.MomentNm);
        moment += mast.Guys.Aggregate(Vec3.Zero, (sum, g) => sum + At(g.AttachmentHeightM).Cross(s.Guy(g.Name).ForceOnMastN));
        Assert.True(Math.Abs(moment.X) < 1e-6 && Math.Abs(moment.Y) < 1e-6, moment.ToString());
        Near.Absolute(-moment.Z, s.Foot.MomentNm.Z, 1e-6, "twist held at the foot");

        Vec3 At(double h) => new Vec3(0, 0, h) + s.NodeAt(h).DisplacementM;
    }

    [Fact]
    public void Section_forces_run_from_the_free_top_to_the_foot_reaction()
    {
        var mast = ReferenceMasts.MastB(180, 60, 300);
        var s = MastSolver.Solve(mast, ReferenceMasts.WindB(mast));
        var top = s.Sections[^1];
        Assert.True(Math.Abs(top.AxialN) < 1e-6 && top.ShearN < 1e-6 && top.BendingMomentNm < 1e-6, top.ToString());
        var foot = s.Sections[0];
        Assert.True(foot.BendingMomentNm < 1e-6);
        Near.Relative(s.Foot.ReactionN.Length, Math.Sqrt((foot.AxialN * foot.AxialN) + (foot.ShearN * foot.ShearN)), 1e-9);
        for (var i = 3; i < s.Sections.Count; i += 3)
        {
            // Where no guy pulls and no point load sits, both sides of a node agree.
            var jump = s.Sections[i].BendingVectorNm - s.Sections[i - 1].BendingVectorNm;
            Assert.True(jump.Length < 1e-6, $"{s.Sections[i].HeightM}: {jump}");
        }
    }

    [Fact]
    public void Three_way_design_answers_alike_every_120_degrees()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var a = MastSolver.Solve(mast, ReferenceMasts.WindB(mast, 30));
        var b = MastSolver.Solve(mast, ReferenceMasts.WindB(mast, 150));
        Near.Absolute(a.Guy("14/0").AnchorTensionN, b.Guy("14/120").AnchorTensionN, 1e-5);
        Near.Absolute(a.Guy("28/240").AnchorTensionN, b.Guy("28/0").AnchorTensionN, 1e-5);
        Near.Absolute(Turn(a.NodeAt(30).DisplacementM, 120), b.NodeAt(30).DisplacementM, 1e-9);
    }

    [Fact]
    public void Wind_along_a_plane_of_symmetry_stays_in_it()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var s = MastSolver.Solve(mast, ReferenceMasts.WindB(mast));
        Near.Absolute(s.Guy("28/120").AnchorTensionN, s.Guy("28/240").AnchorTensionN, 1e-6);
        Assert.True(s.Nodes.All(n => Math.Abs(n.DisplacementM.Y) < 1e-10 && Math.Abs(n.RotationRad.Z) < 1e-12));
    }

    [Fact]
    public void Turning_and_moving_everything_changes_nothing()
    {
        var mast = TangentTests.OffAxisMast();
        var c = TangentTests.SkewCase(mast);
        const double Deg = 47.3;
        var shift = new Vec3(100, -50, 7);
        var turned = mast with
        {
            FootM = Turn(mast.FootM, Deg) + shift,
            Guys = [.. mast.Guys.Select(g => g with { AnchorM = Turn(g.AnchorM, Deg) + shift })],
        };
        var turnedCase = c with
        {
            MastLoads = [.. c.MastLoads.Select(l => new LineLoad([.. l.Points.Select(p => new LineLoadPoint(p.HeightM, Turn(p.LoadNPerM, Deg)))]))],
            GuyLoads = [.. c.GuyLoads.Select(l => new GuyLoad(l.GuyName, Turn(l.LoadNPerM, Deg)))],
            PointLoads = [.. c.PointLoads.Select(p => new PointLoad(p.HeightM, Turn(p.ForceN, Deg), Turn(p.MomentNm, Deg)))],
        };
        var a = MastSolver.Solve(mast, c);
        var b = MastSolver.Solve(turned, turnedCase);
        for (var i = 0; i < a.Nodes.Count; i++)
        {
            Near.Absolute(Turn(a.Nodes[i].DisplacementM, Deg), b.Nodes[i].DisplacementM, 1e-8);
            Near.Absolute(Turn(a.Nodes[i].RotationRad, Deg), b.Nodes[i].RotationRad, 1e-8);
        }

        Near.Absolute(Turn(a.Foot.ReactionN, Deg), b.Foot.ReactionN, 1e-4);
    }

    [Fact]
    public void Halving_the_elements_quarters_the_error_or_better()
    {
        var mast = ReferenceMasts.MastA(180, 60, 300);
        var c = ReferenceMasts.WindA(mast);
        double Bow(double longest) => MastSolver.Solve(mast, c, new() { LongestElementM = longest }).NodeAt(10).DisplacementM.X;
        var limit = Bow(0.125);
        double coarse = Math.Abs(Bow(2.5) - limit), fine = Math.Abs(Bow(1.25) - limit);
        Assert.True(fine < 0.3 * coarse, $"{coarse:G4} then {fine:G4}");
        Assert.True(coarse < 5e-3 * limit, $"coarse mesh is off by {coarse / limit:P3}");
    }

    [Fact]
    public void Default_mesh_is_within_a_thousandth_of_a_fine_one()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var c = ReferenceMasts.WindA(mast);
        var a = MastSolver.Solve(mast, c);
        var b = MastSolver.Solve(mast, c, new() { LongestElementM = 0.1 });
        Near.Relative(b.LargestMoment!.BendingMomentNm, a.LargestMoment!.BendingMomentNm, 1e-3, "moment");
        Near.Relative(b.NodeAt(20).DisplacementM.X, a.NodeAt(20).DisplacementM.X, 1e-3, "top");
        Near.Relative(b.Guy("15/120").AnchorTensionN, a.Guy("15/120").AnchorTensionN, 1e-3, "tension");
    }

    [Fact]
    public void A_start_from_a_neighbour_arrives_at_the_same_place_sooner()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var c = ReferenceMasts.WindB(mast, 15);
        var prepared = MastSolver.Prepare(mast, [c]);
        var near = prepared.Solve(ReferenceMasts.WindB(mast, 0));
        var cold = prepared.Solve(c);
        var warm = prepared.Solve(c, near);
        Near.Absolute(cold.NodeAt(30).DisplacementM, warm.NodeAt(30).DisplacementM, 1e-9);
        Assert.True(warm.Iterations <= cold.Iterations);
    }

    private static Vec3 Turn(Vec3 v, double degrees)
    {
        var (s, c) = Math.SinCos(degrees * Math.PI / 180);
        return new((c * v.X) - (s * v.Y), (s * v.X) + (c * v.Y), v.Z);
    }
}
