using Mastwright.Numerics;
using Mastwright.Numerics.Banded;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Stability;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Stability;

/// <summary>Buckling loads from the books: Timoshenko and Gere, Theory of Elastic Stability, 2nd ed. 1961.</summary>
public class BucklingTests
{
    private const double Ei = 205e9 * 2.343194e-6;

    private static MastSegment Column(double length, double weight = 0) => new("column", 0, length, 1e11, Ei, Ei, weight);

    // Stiff level guys make a support at a height that leaves the mast free up and down; their stiffness may be given.
    private static IEnumerable<Guy> Support(double height, double springNPerM = 4e8)
    {
        var cable = new GuyCable(springNPerM / 2 * 100 / 2e11, 2e11, 0.01, 1e-7);
        return new double[] { 0, 90, 180, 270 }.Select(a => new Guy($"{height}/{a}", ReferenceMasts.Anchor(100, a, height - 1e-6), height, cable, GuySetting.OfAnchorTension(springNPerM / 2 * 1e-3)));
    }

    private static double CriticalLoad(GuyedMast mast, double load)
    {
        var c = new LoadCase("down") { PointLoads = [new(mast.HeightM, new(0, 0, -load))] };
        var prepared = MastSolver.Prepare(mast, [c]);
        var solution = prepared.Solve(c);
        Assert.Equal(Outcome.Stable, solution.Outcome);
        return Buckling.Of(prepared, solution)!.LoadFactor * load;
    }

    /// <summary>Sec. 2.1 and 2.2: pinned, built-in with free top, built-in with held top.</summary>
    [Theory]
    [InlineData(false, true, 47409.116)]
    [InlineData(true, false, 11852.279)]
    [InlineData(true, true, 96987.033)]
    public void Euler_columns(bool builtIn, bool held, double expected)
    {
        var mast = new GuyedMast(Vec3.Zero, [Column(10)], held ? [.. Support(10)] : [], builtIn ? FootFixity.BuiltIn : FootFixity.PivotTwistHeld);
        Near.Relative(expected, CriticalLoad(mast, 0.1 * expected), 1e-3);
    }

    /// <summary>Sec. 2.5: two spans on rigid supports; Pcr L1²/EI by the ratio of the spans.</summary>
    [Theory]
    [InlineData(1.0, 9.869604)]
    [InlineData(0.8, 11.900269)]
    [InlineData(0.5, 14.874133)]
    [InlineData(0.2, 17.833104)]
    public void Two_spans(double ratio, double expected)
    {
        const double L1 = 8;
        var l2 = ratio * L1;
        var mast = new GuyedMast(Vec3.Zero, [Column(L1 + l2)], [.. Support(L1), .. Support(L1 + l2)]);
        Near.Relative(expected * Ei / (L1 * L1), CriticalLoad(mast, 0.1 * expected * Ei / (L1 * L1)), 1.5e-3);
    }

    /// <summary>Sec. 2.6: an elastic support halfway; Pcr l²/EI by k l³/EI, l half the length.</summary>
    [Theory]
    [InlineData(1, 2.87158)]
    [InlineData(5, 4.46442)]
    [InlineData(10, 6.39207)]
    public void Elastic_support_halfway(double spring, double expected)
    {
        const double Half = 5;
        var mast = new GuyedMast(Vec3.Zero, [Column(2 * Half)], [.. Support(Half, spring * Ei / (Half * Half * Half)), .. Support(2 * Half)]);
        Near.Relative(expected * Ei / (Half * Half), CriticalLoad(mast, 0.05 * expected * Ei / (Half * Half)), 3e-3);
    }

    /// <summary>Sec. 2.14: tapered cantilever, I = I2 (x/a)^n, Pcr = m E I2/L², tip over base I1/I2.</summary>
    [Theory]
    [InlineData(1, 0.1, 1.6211)]
    [InlineData(2, 0.2, 1.5912)]
    [InlineData(2, 0.6, 2.1282)]
    [InlineData(3, 0.4, 1.8811)]
    [InlineData(4, 0.1, 1.2030)]
    [InlineData(4, 0.8, 2.3084)]
    public void Tapered_cantilever(int n, double ratio, double expected)
    {
        // Short prismatic steps with the inertia halfway each.
        const double L = 10;
        const int Steps = 160;
        var a = L / (1 - Math.Pow(ratio, 1.0 / n));
        var segments = Enumerable.Range(0, Steps).Select(i =>
        {
            double bottom = L * i / Steps, top = L * (i + 1) / Steps, x = a - (0.5 * (bottom + top));
            return new MastSegment($"{i}", bottom, top, 1e11, Ei * Math.Pow(x / a, n), Ei, 0);
        });
        var mast = new GuyedMast(Vec3.Zero, [.. segments], [], FootFixity.BuiltIn);
        Near.Relative(expected * Ei / (L * L), CriticalLoad(mast, 0.1 * expected * Ei / (L * L)), 1e-3);
    }

    /// <summary>Sec. 2.12: cantilever under its own weight, (qL)cr = 7.8373 EI/L²; longest tube of the section 31.5833 m.</summary>
    [Fact]
    public void Own_weight()
    {
        var tube = ReferenceMasts.Tube(20, 0.1143, 0.0045);
        var prepared = MastSolver.Prepare(new GuyedMast(Vec3.Zero, [tube], [], FootFixity.BuiltIn), []);
        var factor = Buckling.Of(prepared, prepared.Solve(ReferenceMasts.Still))!.LoadFactor;
        Near.Relative(Math.Pow(31.5833 / 20, 3), factor, 2e-3);
    }

    [Fact]
    public void Factor_shrinks_as_the_load_grows_and_the_walk_up_agrees()
    {
        const double Pe = 47409.116;
        var mast = new GuyedMast(Vec3.Zero, [Column(10)], [.. Support(10)]);
        Near.Relative(CriticalLoad(mast, 0.2 * Pe), CriticalLoad(mast, 0.8 * Pe), 1e-4);
    }

    [Fact]
    public void Guyed_mast_mode_bows_between_its_supports()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var prepared = MastSolver.Prepare(mast, [ReferenceMasts.Still]);
        var b = Buckling.Of(prepared, prepared.Solve(ReferenceMasts.Still))!;

        // Between a pinned 14 m span with the compression at its middle and the same span built in at the guys.
        var compression = prepared.Solve(ReferenceMasts.Still).Sections.First(s => s.HeightM > 7).AxialN * -1;
        var pinned = Math.PI * Math.PI * mast.Segments[0].BendingStiffnessNm2 / (14 * 14);
        Assert.InRange(b.LoadFactor * compression, pinned, 2.05 * pinned);
        Assert.InRange(b.WorstHeightM, 4, 26);
        Assert.Equal(1, b.Mode.Max(m => m.Movement.Length), 1e-12);
        Assert.NotNull(b.Explain());
    }

    /// <summary>Counting negative pivots needs no iteration: none just below the factor, some just above (Sylvester).</summary>
    [Theory]
    [InlineData(10)]
    [InlineData(45)]
    public void Counting_pivots_agrees(double azimuth)
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var c = ReferenceMasts.WindB(mast, azimuth);
        var prepared = MastSolver.Prepare(mast, [c]);
        var s = prepared.Solve(c);
        var factor = Buckling.Of(prepared, s)!.LoadFactor;
        var loaded = LoadedState.Of(prepared, s)!;
        var geometric = loaded.Assembly.GeometricStiffness(loaded.State, loaded.Load.WarmingK);
        int Negative(double mu) => BandLdl.TryFactor(loaded.Assembly.Tangent.Plus(mu - 1, geometric), out _)!.NegativePivots;
        Assert.Equal(0, Negative(factor * (1 - 1e-6)));
        Assert.True(Negative(factor * (1 + 1e-6)) > 0);
    }

    [Fact]
    public void A_mast_hung_from_above_does_not_buckle()
    {
        var mast = new GuyedMast(Vec3.Zero, [Column(10)], [], FootFixity.BuiltIn);
        var c = new LoadCase("up") { PointLoads = [new(10, new(0, 0, 1000))] };
        var prepared = MastSolver.Prepare(mast, [c]);
        Assert.True(double.IsPositiveInfinity(Buckling.Of(prepared, prepared.Solve(c))!.LoadFactor));
    }

    [Fact]
    public void An_unstable_solution_has_no_factor()
    {
        var mast = ReferenceMasts.MastA();
        var prepared = MastSolver.Prepare(mast, []);
        Assert.Null(Buckling.Of(prepared, prepared.Solve(ReferenceMasts.Still)));
    }
}
