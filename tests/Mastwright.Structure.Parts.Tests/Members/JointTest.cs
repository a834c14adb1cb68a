using Mastwright.Model.Trails;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

public class JointTest
{
    private static readonly TelescopedJoint Joint = new(
        new(0.0508, 0.003048), Metals.Al6061, new(0.0445, 0.003048), Metals.Al6061, 0.12, new(2, 0.25 * 0.0254, 120 * Metals.Ksi));

    [Fact]
    public void Bolts_in_double_shear_have_the_manuals_strength()
    {
        // AISC Manual table 7-1 (from memory): a 3/4 in A325-N bolt in double shear, φrn = 35.8 kips.
        var bolt = Joint with { Bolts = new(1, 0.75 * 0.0254, 120 * Metals.Ksi) };
        var shear = JointChecks.Telescoped("x", bolt, new(1e3, 0), AiscRules.Lrfd.Factors, "case").Single(c => c.Id.Contains("joint-bolts"));
        Assert.Equal(35.8, shear.Capacity.Value / 4448.2216, 0.05);
    }

    [Fact]
    public void Bolts_in_tension_have_the_manuals_strength()
    {
        // AISC Manual table 7-2 (from memory): a 3/4 in A325 bolt in tension, φrn = 29.8 kips.
        var splice = JointChecks.LegSplice("x", new(1, 0.75 * 0.0254, 120 * Metals.Ksi), -10e3, AiscRules.Lrfd.Factors, "case");
        Assert.Equal(29.8, splice.Capacity.Value / 4448.2216, 0.05);
        Assert.Equal(10e3, splice.Demand.Value);
        Assert.Equal(0, JointChecks.LegSplice("x", new(1, 0.02, 400e6), 10e3, AiscRules.Lrfd.Factors, "case").Demand.Value);
    }

    [Fact]
    public void Stop_takes_compression_off_the_bolts_but_not_pull()
    {
        var stopped = Joint with { StandsOnStop = true };
        Check Bolts(TelescopedJoint j, double axial) => JointChecks.Telescoped("x", j, new(axial, 0), AluminumManualRules.Lrfd.Factors, "case").ElementAt(1);
        Assert.Equal(5e3, Bolts(Joint, 5e3).Demand.Value);
        Assert.Equal(0, Bolts(stopped, 5e3).Demand.Value);
        Assert.Equal(5e3, Bolts(stopped, -5e3).Demand.Value);
    }

    [Fact]
    public void Short_overlap_fails_and_bearing_is_by_the_thinner_tube()
    {
        var checks = JointChecks.Telescoped("x", Joint with { OverlapM = 0.06 }, new(5e3, 0), AluminumManualRules.Lrfd.Factors, "case").ToArray();
        Assert.Equal(Verdict.Fail, checks[0].Verdict);
        Assert.Equal(checks.Length, checks.Select(c => c.Id).Distinct().Count());
        // 0.75·2 walls·2 bolts·2·6.35 mm·3.048 mm·38 ksi by hand.
        Assert.Equal(0.75 * 2 * 2 * 2 * 0.00635 * 0.003048 * 38 * 6.894757e6, checks[2].Capacity.Value, 1);
    }

    [Fact]
    public void Tapered_tube_weighs_what_the_frustum_weighs()
    {
        // Thin frustum of constant wall: volume π·t·(mean diameter - t)·L, exact for any number of slices.
        var tube = new TaperedTube(0.15, 0.05, 0.003, 6);
        var volume = tube.Slices(8, 2).Sum(s => s.Section.AreaM2 * (s.TopM - s.BottomM));
        Assert.Equal(Math.PI * 0.003 * (0.10 - 0.003) * 6, volume, 1e-12);
        Assert.Equal((2.0, 8.0), (tube.Slices(8, 2)[0].BottomM, tube.Slices(8, 2)[^1].TopM));
        // The integral of the second moment settles with the square of the number of slices.
        double Inertia(int n) => tube.Slices(n).Sum(s => s.Section.SecondMomentM4 * (s.TopM - s.BottomM));
        var exact = Inertia(4000);
        Assert.Equal(4, (Inertia(8) - exact) / (Inertia(16) - exact), 0.05);
    }
}
