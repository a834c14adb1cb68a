using Mastwright.Numerics;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>Guys and their insulators in the atmospheric field, and corona under power.</summary>
public class GuyStaticsTests
{
    private static readonly AirState Air = new(300, 303.15);

    private static InsulatedGuy Guy(double bearingDeg, params double[] shares)
    {
        var (s, c) = Math.SinCos(bearingDeg * Math.PI / 180);
        Vec3 At(double share) => new((0.05 + (13.95 * share)) * c, (0.05 + (13.95 * share)) * s, 17.5 - (17.3 * share));
        return new($"guy {bearingDeg}", [.. shares.Select(At)], 0.003);
    }

    [Fact]
    public void A_short_floating_section_takes_the_potential_of_the_air_at_its_middle()
    {
        // Far from the mast, and small, it hardly disturbs: V = −E·z of its middle (superposition, any field text).
        var far = new InsulatedGuy("lone", [new(60, 0, 5), new(60, 1, 6)], 0.002, LowerEarthed: false);
        var section = Assert.Single(GuyStatics.Solve(new(10, 0.05), [far], Air, 0.82).Sections);
        Assert.Equal(1, Math.Abs(section.PotentialPerFieldM.Value) / 5.5, 0.02);
    }

    [Fact]
    public void Guys_alike_by_symmetry_fare_alike()
    {
        var result = GuyStatics.Solve(new(18, 0.05), [Guy(0, 0.02, 0.48, 0.5, 1), Guy(120, 0.02, 0.48, 0.5, 1), Guy(240, 0.02, 0.48, 0.5, 1)], Air, 0.82);
        var upper = result.Sections.Where(s => s.Section == 1).Select(s => s.PotentialPerFieldM.Value).ToArray();
        Assert.Equal(3, upper.Length);
        Assert.Equal(1, upper.Max() / upper.Min(), 1e-6);
        Assert.Equal(6, result.Insulators.Length);
        // Each chain runs from the mast at zero through the floating section to the earthed one: both insulators see its whole potential.
        Assert.All(result.Insulators, i => Assert.Equal(1, i.VoltsPerFieldM.Value / Math.Abs(upper[0]), 1e-6));
    }

    [Fact]
    public void A_whisker_on_the_side_sprays_before_the_mast()
    {
        var bare = GuyStatics.Solve(new(18, 0.05), [], Air, 0.93).MastEnhancement.Value;
        var whisker = new Fields.Electrostatics.Wire(new(0.05, 0, 17.8), new(0.35, 0, 18.3), 0.002, true);
        Assert.True(GuyStatics.Solve(new(18, 0.05), [], Air, 0.93, [whisker]).MastEnhancement.Value > 2 * bare);
    }

    // A ball of radius r over a plane at potential U with a wide gap sprays at about U = E·r (Peek, isolated sphere, from memory): the foot here is such a half ball, held lower by the shaft.
    [Fact]
    public void Foot_and_top_onset_lie_above_the_lone_balls()
    {
        var places = RfCorona.Places(new(20, 0.05, 0.5), AirState.Reference, 1);
        var lone = 0.05 * CoronaOnset.GradientVPerM(0.05, 0.05, AirState.Reference, 1).Value;
        Assert.Equal(["foot", "top"], places.Select(p => p.Part));
        Assert.All(places, p => Assert.True(p.OnsetPeakV.Value > lone));
        Assert.True(places[0].OnsetPeakV.Value < places[1].OnsetPeakV.Value * 1.5);
    }
}
