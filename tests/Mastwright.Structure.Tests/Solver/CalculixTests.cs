using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>Whole masts against a live run of CalculiX, within 2 % of the largest value of each kind.</summary>
public class CalculixTests
{
    [Fact]
    public void One_level_three_anchors_wind_askew()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        Compare(mast, ReferenceMasts.WindA(mast, 20), [8, 15, 20]);
    }

    [Fact]
    public void Two_levels_with_a_step_in_the_wind()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        Compare(mast, ReferenceMasts.WindB(mast, 40), [7, 14, 28, 30]);
    }

    [Fact]
    public void Four_anchors_on_uneven_ground_with_ice_and_cold()
    {
        var cable = ReferenceMasts.Strand with { ThermalExpansionPerK = 1.2e-5 };
        (double Azimuth, double Radius, double Z)[] anchors = [(20, 14, -1.5), (110, 12, 0.8), (200, 15, 2.0), (290, 13, -0.6)];
        var mast = new GuyedMast(
            Vec3.Zero,
            [ReferenceMasts.Tube(12, 0.1397, 0.005) with { ThermalExpansionPerK = 1.2e-5 }, ReferenceMasts.Tube(24, 0.1143, 0.0045, 12) with { ThermalExpansionPerK = 1.2e-5 }],
            [.. anchors.SelectMany(a => new[] { 11.0, 22.0 }.Select(h => new Guy($"{h}/{a.Azimuth}", ReferenceMasts.Anchor(a.Radius, a.Azimuth, a.Z), h, cable, GuySetting.OfAnchorTension(2500))))])
        {
            Weights = [new("cap", 24, 300)],
        };
        var c = ReferenceMasts.Wind(mast, 300, 75, LineLoad.Uniform(0, 24, (60 * ReferenceMasts.Anchor(1, 75)) + new Vec3(0, 0, -25)));
        c = c with { TemperatureK = 263.15, GuyLoads = [.. c.GuyLoads.Select(l => l with { LoadNPerM = l.LoadNPerM + new Vec3(0, 0, -6) })] };
        Compare(mast, c, [6, 11, 22, 24]);
    }

    internal static void Compare(GuyedMast mast, LoadCase c, double[] heights, double elementM = 0.5, int guyElements = 40)
    {
        if (!Calculix.IsThere)
        {
            Assert.Skip("CalculiX (ccx) is not installed.");
        }

        var other = Calculix.Run(mast, c, elementM, guyElements, heights);
        var own = MastSolver.Solve(mast, c);
        Assert.Equal(Outcome.Stable, own.Outcome);
        var move = heights.Max(h => own.NodeAt(h).DisplacementM.Length);
        foreach (var h in heights)
        {
            Near.Absolute(other.DisplacementM[h], own.NodeAt(h).DisplacementM, 0.02 * move, $"movement at {h} m");
        }

        Near.Absolute(other.FootReactionN, own.Foot.ReactionN, 0.02 * own.Foot.ReactionN.Length, "foot");
        var pull = own.Guys.Max(g => g.AnchorTensionN);
        foreach (var g in own.Guys)
        {
            Near.Absolute(other.ForceOnAnchorN[g.Name], g.ForceOnAnchorN, 0.02 * pull, g.Name);
        }
    }
}
