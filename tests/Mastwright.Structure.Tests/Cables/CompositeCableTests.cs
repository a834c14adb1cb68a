using Mastwright.Numerics;
using Mastwright.Structure.Cables;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Cables;

public class CompositeCableTests
{
    private static readonly Vec3 Chord = new(10, 0, 15);

    [Theory]
    [InlineData(18.01323)]
    [InlineData(18.3)]
    [InlineData(25)]
    public void Cutting_an_even_cable_changes_nothing(double length)
    {
        var q = new Vec3(1, 3, -1.766);
        var whole = ElasticCatenary.Solve(Chord, length, 3.73e6, q);
        var cut = CompositeCable.Solve(Chord, [new(0.2 * length, 3.73e6, q), new(0.5 * length, 3.73e6, q), new(0.3 * length, 3.73e6, q)]);
        Assert.True(cut.Converged);
        Near.Absolute(whole.StartPullN, cut.StartPullN, 1e-6 * whole.StartTensionN, "start");
        Near.Absolute(whole.EndPullN, cut.EndPullN, 1e-6 * whole.StartTensionN, "end");
        Near.Absolute(whole.Stiffness * new Vec3(1, 2, 3), cut.Stiffness * new Vec3(1, 2, 3), 1e-5 * (whole.Stiffness * new Vec3(1, 2, 3)).Length, "stiffness");
        Near.Absolute(whole.PointAt(0.6 * length), cut.PointAt(0.6 * length), 1e-8, "shape");
        Near.Absolute(whole.TensionAt(0.6 * length), cut.TensionAt(0.6 * length), 1e-6 * whole.StartTensionN, "tension");
        Near.Relative(whole.SagM(), cut.SagM(), 1e-6, "sag");
    }

    /// <summary>The isolated cable of the literature (O'Brien and Francis 1964; Jayaraman and Knudson 1981): the point load is a lump between two pieces.</summary>
    [Fact]
    public void Isolated_cable_with_a_point_load()
    {
        const double Ea = 131.0e9 * 548.4e-6;
        var w = new Vec3(0, 0, -46.12);
        Vec3 Node(double p) => CompositeCable.Solve(new(304.8, 0, 0), [new(125.84701, Ea, w, new(0, 0, -p)), new(186.85526, Ea, w)]).PointAt(125.84701);
        Near.Absolute(new Vec3(121.92, 0, -29.276), Node(0), 2e-4, "before");
        Near.Absolute(new Vec3(-0.859, 0, -5.626), Node(35586) - Node(0), 8e-4, "movement");
    }

    [Fact]
    public void Lumps_and_pieces_balance_and_close()
    {
        CableSpan[] spans = [new(3, 2e6, new(0, 0, -4), new(0, 0, -12)), new(9, 3.73e6, new(0.5, 2, -1.8), new(0, 0, -12)), new(6.05, 1e6, new(0, 1, -0.5))];
        var c = CompositeCable.Solve(Chord, spans);
        Assert.True(c.Converged);
        var load = new Vec3(0, 0, -12 - 24) + (9 * new Vec3(0.5, 2, -1.8)) + (6.05 * new Vec3(0, 1, -0.5));
        Near.Absolute(load, c.StartPullN + c.EndPullN, 1e-9);
        Near.Absolute(Chord, c.PointAt(18.05), 1e-8);
        const double H = 1e-5;
        foreach (var axis in new[] { new Vec3(1, 0, 0), new Vec3(0, 1, 0), new Vec3(0, 0, 1) })
        {
            var numeric = (CompositeCable.Solve(Chord - (H * axis), spans).EndPullN - CompositeCable.Solve(Chord + (H * axis), spans).EndPullN) / (2 * H);
            Assert.True((numeric - (c.Stiffness * axis)).Length < 1e-5 * (c.Stiffness * axis).Length);
        }
    }

    [Fact]
    public void A_mast_held_by_guys_of_pieces()
    {
        var even = ReferenceMasts.MastA(0, 120, 240);
        var wind = ReferenceMasts.WindA(even, 25);

        // The same strand in three lengths: nothing changes.
        GuyPiece Strand(double length) => new("strand", length, 3.73e6, 1.766);
        var cut = even with { Guys = [.. even.Guys.Select(g => g with { Pieces = [Strand(5), Strand(10), Strand(3.01323)] })] };
        var a = MastSolver.Solve(even, wind);
        var b = MastSolver.Solve(cut, wind);
        Near.Absolute(a.NodeAt(20).DisplacementM, b.NodeAt(20).DisplacementM, 1e-7);
        Near.Relative(a.Guy("15/120").AnchorTensionN, b.Guy("15/120").AnchorTensionN, 1e-7);

        // Heavy insulators: the tension at the mast exceeds that at the anchor by about the weight times the sine of the slope.
        var heavy = even with { Guys = [.. even.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(3000), Pieces = [Strand(6) with { EndWeightN = 60 }, Strand(6) with { EndWeightN = 60 }, Strand(6.02)] })] };
        var prepared = MastSolver.Prepare(heavy, []);
        var s = prepared.Solve(ReferenceMasts.Still);
        Assert.True(s.IsStable);
        var g0 = s.Guy("15/0");
        Near.Relative(120 + (18.02 * 1.766), (g0.ForceOnAnchorN + g0.ForceOnMastN).Length, 1e-3, "weight");
        Near.Relative((120 + (18.02 * 1.766)) * 15 / Math.Sqrt(325), g0.MastTensionN - g0.AnchorTensionN, 0.02, "difference of tension");
        Assert.True(g0.SagM > 3 * MastSolver.Solve(even, ReferenceMasts.Still).Guy("15/0").SagM);

        // A soft rope in line makes the guy softer than strand alone.
        var soft = even with { Guys = [.. even.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(3000), Pieces = [Strand(12), new GuyPiece("rope", 6, 4e5, 1)] })] };
        Assert.True(MastSolver.Solve(soft, wind).NodeAt(15).DisplacementM.Length > a.NodeAt(15).DisplacementM.Length);
    }

    [Fact]
    public void Pieces_that_cannot_be_are_named()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var bad = mast with { Guys = [mast.Guys[0] with { Pieces = [new("rod", 0, 1e6, 1)] }, .. mast.Guys.Skip(1)] };
        Assert.Contains(MastSolver.Solve(bad, ReferenceMasts.Still).Findings, f => f.Code == "guy-piece");
    }
}
