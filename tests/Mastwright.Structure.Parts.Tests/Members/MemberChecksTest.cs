using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

public class MemberChecksTest
{
    private static readonly LatticeSection Triangle = new(
        3, 0.45, 0.5, new(0.038, 0.0032), new(0.012, 0), null, Bracing.Zigzag, Metals.S355, true);

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Leg_forces_balance_the_force_and_moment_on_the_mast(int legs)
    {
        // Statics: no direction of the moment may load a leg more than the check says, and one must load it as much.
        var lattice = Triangle with { Legs = legs };
        const double axial = 30e3, moment = 4e3;
        var check = MemberChecks.Leg("x", EurocodeSteelRules.Carbon, lattice, new(axial, moment, 0), "case");
        var worst = 0.0;
        for (var degree = 0; degree < 360; degree++)
        {
            var direction = degree * Math.PI / 180;
            var distances = Enumerable.Range(0, legs).Select(k => lattice.LegRadiusM * Math.Cos((2 * Math.PI * k / legs) - direction)).ToArray();
            var inertia = distances.Sum(y => y * y);
            worst = Math.Max(worst, distances.Max(y => (axial / legs) + (moment * y / inertia)));
        }

        Assert.Equal(worst, check.Demand.Inputs[0].Value, worst * 1e-4);
    }

    [Fact]
    public void Leg_pulled_more_than_pushed_is_checked_in_tension()
    {
        // Aluminium legs with welded nodes: rupture in the weld zone governs when the guys barely press.
        var lattice = Triangle with { Metal = Metals.Al6061, PanelHeightM = 0.2 };
        var check = MemberChecks.Leg("x", AluminumManualRules.Lrfd, lattice, new(-5e3, 3e3, 0), "case");
        Assert.True(check.Demand.Inputs[0].Value < 0);
    }

    [Fact]
    public void Brace_carries_at_least_two_percent_of_the_axial_force()
    {
        var still = MemberChecks.Brace("x", EurocodeSteelRules.Carbon, Triangle, new(50e3, 0, 0), "still air");
        var shear = MemberChecks.Brace("x", EurocodeSteelRules.Carbon, Triangle, new(0, 0, 1e3), "wind");
        Assert.Equal(still.Demand.Value, shear.Demand.Value, 1e-9);
        // Two thirds of 1 kN in the worst face of a triangle, along a diagonal of 0.6727 m over 0.45 m.
        Assert.Equal(2.0 / 3 * 1000 * 0.672681 / 0.45, shear.Demand.Inputs[0].Value, 0.01);
    }

    [Fact]
    public void Overloaded_tube_fails_with_a_cure_and_a_caution()
    {
        var member = new RoundMember(new(0.0603, 0.0036), Metals.S355, 6);
        var fail = MemberChecks.Tube("mast A", EurocodeSteelRules.Carbon, member, new(60e3, 500), "wind from 030");
        Assert.Equal(Verdict.Fail, fail.Verdict);
        Assert.NotEqual("", fail.Cure);
        Assert.Contains("engineer", fail.Caution);
        Assert.Equal("stand.mast.tube[mast A]", fail.Id);
        var pass = MemberChecks.Tube("mast A", EurocodeSteelRules.Carbon, member, new(5e3, 100), "wind from 030");
        Assert.Equal(Verdict.Pass, pass.Verdict);
    }
}
