using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>Columns and beams whose answers are in the books, modelled with what a guyed mast is made of.</summary>
public class BeamClosedFormTests
{
    private const double Ei = 205e9 * 2.343194e-6;

    private static MastSegment Column(double length, double weight = 0) => new("column", 0, length, 1e10, Ei, Ei / 1.3, weight);

    private static GuyedMast Cantilever(double length, double weight = 0) => new(Vec3.Zero, [Column(length, weight)], [], FootFixity.BuiltIn);

    /// <summary>Large bending of a cantilever under a tip load across it: Bisshopp and Drucker, Quart. Appl. Math. 3 (1945); figures from Mattiasson, Int. J. Num. Meth. Eng. 17 (1981), from memory.</summary>
    [Theory]
    [InlineData(1, 0.30172, 0.05643)]
    [InlineData(2, 0.49346, 0.16064)]
    [InlineData(5, 0.71379, 0.38763)]
    [InlineData(10, 0.81061, 0.55500)]
    public void Cantilever_bent_far_over(double load, double across, double along)
    {
        // EA large, so that only bending remains, as in the paper.
        var mast = new GuyedMast(Vec3.Zero, [new("c", 0, 10, 1e10, Ei, Ei, 0)], [], FootFixity.BuiltIn);
        var s = MastSolver.Solve(mast, new("tip") { PointLoads = [new(10, new(load * Ei / 100, 0, 0))] }, new() { LongestElementM = 0.1 });
        Assert.Equal(Outcome.Stable, s.Outcome);
        Near.Relative(across, s.NodeAt(10).DisplacementM.X / 10, 2e-4, "across");
        Near.Relative(along, -s.NodeAt(10).DisplacementM.Z / 10, 4e-4, "along");
        Near.Relative(load * Ei / 100 * (10 + s.NodeAt(10).DisplacementM.Z), s.Sections[0].BendingMomentNm, 1e-6, "moment at the foot");
    }

    /// <summary>A pure end moment bends a straight bar into a circle: tip at R sin θ, R (1 - cos θ), θ = ML/EI.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(1, 1.1)]
    public void End_moment_makes_a_circle(double angle, double azimuth)
    {
        const double L = 10;
        var axis = new Vec3(-Math.Sin(azimuth), Math.Cos(azimuth), 0);
        var mast = new GuyedMast(Vec3.Zero, [new("c", 0, L, 1e10, Ei, Ei, 0)], [], FootFixity.BuiltIn);
        var s = MastSolver.Solve(mast, new("m") { PointLoads = [new(L, Vec3.Zero, angle * Ei / L * axis)] }, new() { LongestElementM = 0.1 });
        var r = L / angle;
        var bulge = r * (1 - Math.Cos(angle));
        Near.Absolute(new Vec3(bulge * Math.Cos(azimuth), bulge * Math.Sin(azimuth), (r * Math.Sin(angle)) - L), s.NodeAt(L).DisplacementM, 1e-3, "tip");
    }

    /// <summary>Pinned beam-column under its axial load and a uniform or central load: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed. 1961, secs. 1.3 to 1.5.</summary>
    [Theory]
    [InlineData(0.10, 1.111494, 1.114271, 1.109648, 1.091265)]
    [InlineData(0.25, 1.334504, 1.342995, 1.328878, 1.273240)]
    [InlineData(0.50, 2.003620, 2.029945, 1.986288, 1.816828)]
    [InlineData(0.75, 4.011205, 4.092891, 3.957766, 3.441349)]
    [InlineData(0.90, 10.034265, 10.284459, 9.871230, 8.306885)]
    public void Pinned_beam_column(double r, double uniformDeflection, double uniformMoment, double pointDeflection, double pointMoment)
    {
        // Small side loads keep the deflection small, as the formulas ask.
        const double L = 10, Q = 0.05, F = 0.5;
        var pe = Math.PI * Math.PI * Ei / (L * L);
        var mast = PinnedBothEnds(L);
        var down = new PointLoad(L, new(0, 0, -r * pe));
        var uniform = MastSolver.Solve(mast, new("q") { MastLoads = [LineLoad.Uniform(0, L, new(Q, 0, 0))], PointLoads = [down] });
        var point = MastSolver.Solve(mast, new("f") { PointLoads = [down, new(L / 2, new(F, 0, 0))] });
        Near.Relative(uniformDeflection, uniform.NodeAt(L / 2).DisplacementM.X / (5 * Q * Math.Pow(L, 4) / (384 * Ei)), 1e-3, "uniform deflection");
        Near.Relative(uniformMoment, MidMoment(uniform) / (Q * L * L / 8), 1e-3, "uniform moment");
        Near.Relative(pointDeflection, point.NodeAt(L / 2).DisplacementM.X / (F * L * L * L / (48 * Ei)), 1e-3, "point deflection");
        Near.Relative(pointMoment, MidMoment(point) / (F * L / 4), 1e-3, "point moment");

        static double MidMoment(MastSolution s) => s.Sections.Where(x => Math.Abs(x.HeightM - (L / 2)) < 1e-6).Max(x => x.BendingMomentNm);
    }

    /// <summary>Euler loads of the same book, found by walking up until the tangent turns.</summary>
    [Theory]
    [InlineData(true, 47409.116)]
    [InlineData(false, 11852.279)]
    public void Straight_column_gives_way_at_the_Euler_load(bool pinned, double euler)
    {
        const double L = 10;
        var mast = pinned ? PinnedBothEnds(L) : Cantilever(L);
        var s = MastSolver.Solve(mast, new("down") { PointLoads = [new(L, new(0, 0, -2 * euler))] }, new() { SmallestLoadStep = 1e-5 });
        Assert.Equal(Outcome.Unstable, s.Outcome);
        Near.Relative(0.5, s.LoadShare, 1.5e-3, "share");
    }

    /// <summary>Cantilever under its own weight: (qL)cr = 7.8373 EI/L², same book sec. 2.12.</summary>
    [Fact]
    public void Own_weight_column()
    {
        const double L = 10;
        var critical = 7.8373 * Ei / (L * L * L);
        var s = MastSolver.Solve(Cantilever(L, 1.25 * critical), new("still"), new() { SmallestLoadStep = 1e-5 });
        Assert.Equal(Outcome.Unstable, s.Outcome);
        Near.Relative(0.8, s.OwnWeightShare, 1e-3, "share");
    }

    /// <summary>Cantilever of two stretches: twist FL/GJ, stretch FL/EA, heat αΔTL, shear FL/GA.</summary>
    [Fact]
    public void Twist_stretch_heat_and_shear()
    {
        var mast = new GuyedMast(
            Vec3.Zero,
            [new("a", 0, 4, 2e8, 5e5, 3e5, 0, 1.2e-5, 6e6), new("b", 4, 10, 1e8, 4e5, 2e5, 0, 2.3e-5, 3e6)],
            [],
            FootFixity.BuiltIn);
        var up = MastSolver.Solve(mast, new("up", 308.15) { PointLoads = [new(10, new(0, 0, 1000), new(0, 0, 500))] }).NodeAt(10);
        Near.Relative((1000 * ((4 / 2e8) + (6 / 1e8))) + (20 * ((4 * 1.2e-5) + (6 * 2.3e-5))), up.DisplacementM.Z, 1e-6, "stretch");
        Near.Relative(500 * ((4 / 3e5) + (6 / 2e5)), up.RotationRad.Z, 1e-5, "twist");
        var side = MastSolver.Solve(mast, new("side") { PointLoads = [new(10, new(0, 1, 0))] }).NodeAt(10);
        var bending = ((1000 - 216) / 5e5 / 3) + (216 / 4e5 / 3);
        Near.Relative(bending + (4 / 6e6) + (6 / 3e6), side.DisplacementM.Y, 1e-5, "side");
    }

    // Four level guys of great stiffness and little weight make the upper pin; they leave it free up and down.
    private static GuyedMast PinnedBothEnds(double length)
    {
        var cable = new GuyCable(0.1, 2e11, 0.01, 1e-4);
        return new(
            Vec3.Zero,
            [Column(length)],
            [.. new double[] { 0, 90, 180, 270 }.Select(a => new Guy($"{a}", ReferenceMasts.Anchor(100, a, length - 1e-3), length, cable, GuySetting.OfAnchorTension(1e4)))]);
    }
}
