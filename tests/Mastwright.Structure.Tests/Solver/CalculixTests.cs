using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;
using Mastwright.Structure.Vibration;

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

    [Fact]
    public void A_guy_lost_at_the_upper_level()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        Compare(mast, ReferenceMasts.Wind(mast, 200, 130, LineLoad.Uniform(0, 30, 30 * ReferenceMasts.Anchor(1, 130))) with { AbsentGuys = ["28/120"] }, [7, 14, 21, 28, 30], elementM: 0.75);
    }

    [Fact]
    public void Three_levels_of_a_light_slender_mast_in_heat()
    {
        // Thin aluminium tube with strand that expands less than the mast: heat tightens the guys.
        var strand = new GuyCable(1.363e-5, 1.586e11, 0.00476, 1.06, 1.17e-5);
        MastSegment Aluminium(double bottom, double top, double area, double second) => new("tube", bottom, top, 69.6e9 * area, 69.6e9 * second, 69.6e9 / 1.33 * second, area * 2700 * ReferenceMasts.G, 2.36e-5);
        double[] heights = [8, 16, 24];
        var mast = new GuyedMast(
            new(2, 3, 0.4),
            [Aluminium(0, 14, 9.8175e-4, 1.1901e-6), Aluminium(14, 27, 7.2839e-4, 4.865e-7)],
            [.. heights.SelectMany(h => new double[] { 30, 150, 270 }.Select(a => new Guy($"{h}/{a}", ReferenceMasts.Anchor(13, a) + new Vec3(2, 3, 0), h, strand, GuySetting.OfAnchorTension(900))))]);
        var c = ReferenceMasts.Wind(mast, 600, 260, new LineLoad([new(0, 25 * ReferenceMasts.Anchor(1, 260)), new(27, 55 * ReferenceMasts.Anchor(1, 260))])) with { TemperatureK = 313.15 };
        Compare(mast, c, [4, 8, 16, 20, 24, 27], guyElements: 40);
    }

    /// <summary>Guys on arms around the mast hold it against a twist at the top; the foot is a ball.</summary>
    [Fact]
    public void Guys_on_arms_hold_the_twist()
    {
        // Pairs of guys from each anchor to both sides of the mast.
        var mast = new GuyedMast(
            Vec3.Zero,
            [ReferenceMasts.Tube(20, 0.1397, 0.005)],
            [.. new double[] { 0, 120, 240 }.SelectMany(a => new[] { -1.2, 1.2 }.Select(t => new Guy($"{a}/{t}", ReferenceMasts.Anchor(12, a), 16, ReferenceMasts.Strand, GuySetting.OfAnchorTension(2000), 0.6, t)))],
            FootFixity.Ball);
        var c = new LoadCase("twist") { PointLoads = [new(20, new(300, 100, 0), new(0, 0, 150))] };
        var own = Compare(mast, c, [8, 16, 20]);
        Assert.InRange(own.NodeAt(16).RotationRad.Z, 1e-3, 0.2);
    }

    /// <summary>Guys nearly without mass, so that both models mean the same: springs of their tangent stiffness.</summary>
    [Fact]
    public void Natural_frequencies_of_a_mast_on_its_guys()
    {
        if (!Calculix.IsThere)
        {
            Assert.Skip("CalculiX (ccx) is not installed.");
        }

        var light = ReferenceMasts.Strand with { WeightNPerM = 0.05 };
        var mast = ReferenceMasts.MastB(0, 120, 240);
        mast = mast with { Guys = [.. mast.Guys.Select(g => g with { Cable = light, Setting = GuySetting.OfAnchorTension(3000) })] };
        var other = Calculix.Frequencies(mast, 0.5, 20, 6);
        var prepared = MastSolver.Prepare(mast, []);
        var own = MastVibration.Of(prepared, prepared.Solve(ReferenceMasts.Still), 6);
        Assert.Equal(6, other.Count);
        for (var i = 0; i < 6; i++)
        {
            Near.Relative(other[i], own[i].FrequencyHz, 0.02, $"mode {i + 1}");
        }
    }

    internal static MastSolution Compare(GuyedMast mast, LoadCase c, double[] heights, double elementM = 0.5, int guyElements = 24)
    {
        if (!Calculix.IsThere)
        {
            Assert.Skip("CalculiX (ccx) is not installed.");
        }

        var other = Calculix.Run(mast, c, elementM, guyElements, heights);
        var own = MastSolver.Solve(mast, c, new() { ExtraNodeHeightsM = heights });
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

        return own;
    }
}
