using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>The ring search: what it finds is quiet, and a smaller one is not.</summary>
public class QuietRingTests
{
    private static readonly AirState Air = new(300, 303.15);
    private static readonly MastOutline Mast = new(18, 0.04, 0.3, 0.6, 0.008);

    [Fact]
    public void The_ring_found_is_quiet_on_a_finer_mesh_and_a_smaller_one_is_not()
    {
        const double field = 6400;
        var answer = QuietRing.Search(Mast, Air, CoronaOnset.Weathered, field, [0.010]);
        var choice = Assert.IsType<QuietRingChoice>(answer.Smallest);
        Assert.True(StaticStudy.Solve(Mast with { Ring = choice.Ring }, Air, CoronaOnset.Weathered, [], 2)!.Places[0].OnsetField.Value > 0.99 * field);
        var smaller = choice.Ring with { RingDiameterM = 0.93 * choice.Ring.RingDiameterM };
        Assert.True(choice.Ring.RingDiameterM > 0.15); // larger than what just clears the shaft
        Assert.True(StaticStudy.Solve(Mast with { Ring = smaller }, Air, CoronaOnset.Weathered, [], 2)!.Places[0].OnsetField.Value < field);
    }

    [Fact]
    public void A_quiet_top_needs_no_ring() =>
        Assert.True(QuietRing.Search(Mast, Air, 1, 100).AlreadyQuiet);

    [Fact]
    public void When_no_ring_is_enough_it_says_so()
    {
        var answer = QuietRing.Search(Mast, Air, CoronaOnset.Wet, 60e3, [0.010]);
        Assert.Null(answer.Smallest);
        Assert.Contains(answer.Findings, f => f.Code == "no-quiet-ring" && f.WayOut is not null);
    }
}
