using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>Static and corona of whole masts.</summary>
public class StaticStudyTests
{
    private static readonly AirState Air = new(300, 303.15);

    // Edgcombe and Valdrè 2001 (from memory): 1.2 (2.15 + h/a)^0.90, fitted to finite-element solutions of rods with half-ball ends on a plane, within a few per cent.
    [Theory]
    [InlineData(10, 0.05)]
    [InlineData(20, 0.03)]
    [InlineData(5, 0.25)]
    public void A_plain_rod_agrees_with_the_published_enhancement(double heightM, double radiusM)
    {
        var result = StaticStudy.Solve(new(heightM, radiusM, 0), Air, 1, [], 2)!;
        Assert.Equal(1, result.Places[0].Enhancement.Value / result.HandEnhancement.Value, 0.03);
    }

    [Fact]
    public void An_insulated_slender_mast_floats_near_half_its_height()
    {
        // common practice, no source: the electrical height of a short thin monopole is near half its height.
        var result = StaticStudy.Solve(new(20, 0.05), Air, 0.93, Weather.Usual)!;
        Assert.InRange(result.EffectiveHeightM!.Value / 20, 0.42, 0.52);
        Assert.Equal(result.EffectiveHeightM.Value * 5000, result.FloatingV[2].Volts.Value, 1e-6);
    }

    [Fact]
    public void A_thin_rod_sprays_before_a_bare_top()
    {
        var bare = StaticStudy.Solve(new(20, 0.05), Air, 0.93, Weather.Usual)!;
        var rod = StaticStudy.Solve(new(20, 0.05, RodLengthM: 1.5, RodRadiusM: 0.004), Air, 0.93, Weather.Usual)!;
        Assert.True(rod.Places[0].OnsetField.Value < 0.5 * bare.Places[0].OnsetField.Value);
        Assert.Contains(rod.Places[0].Checks, c => c.Verdict == Verdict.Fail && c.Cure.Length > 0);
    }

    [Fact]
    public void Refining_changes_little()
    {
        var mast = new MastOutline(18, 0.06, 0.3, 1, 0.008, new(0.9, 0.03, 18.5));
        var coarse = StaticStudy.Solve(mast, Air, 0.93, [], 1)!;
        var fine = StaticStudy.Solve(mast, Air, 0.93, [], 3)!;
        Assert.Equal(1, coarse.CapacitanceF.Value / fine.CapacitanceF.Value, 0.005);
        Assert.Equal(1, coarse.Places[0].OnsetField.Value / fine.Places[0].OnsetField.Value, 0.01);
    }

    [Fact]
    public void Impossible_outlines_have_findings_and_no_solution()
    {
        var bad = new MastOutline(10, 0.1, Ring: new(0.15, 0.03, 10));
        Assert.Null(StaticStudy.Solve(bad, Air, 1, []));
        Assert.Contains(bad.Faults(), f => f.Code == "ring-size");
    }
}
