using Mastwright.Model.Trails;
using Mastwright.Protection.People;

namespace Mastwright.Protection.Tests.People;

/// <summary>Fall circle and power lines: common practice, no source; clearances of 29 CFR 1926.1408 table A, from memory.</summary>
public class FallCircleTests
{
    [Theory]
    [InlineData(7.2e3, 3.048)]
    [InlineData(69e3, 4.572)]
    [InlineData(345e3, 6.096)]
    [InlineData(500e3, 7.62)]
    [InlineData(765e3, 13.716)]
    public void Clearance_follows_table_a(double volts, double metres) =>
        Assert.Equal(metres, FallCircle.WorkClearance(volts).Value, 1e-9);

    [Fact]
    public void An_unknown_line_is_taken_as_a_high_one() =>
        Assert.Equal(6.096, FallCircle.WorkClearance(null).Value, 1e-9);

    [Fact]
    public void A_line_inside_the_circle_plus_clearance_fails()
    {
        var mast = new FallingMast(20, 2, 14);
        var checks = FallCircle.PowerLines(mast, [new("near", 24, 10e3), new("far", 30, 10e3)]);
        Assert.Equal(Verdict.Fail, checks[0].Verdict);
        Assert.Equal(Verdict.Pass, checks[1].Verdict);
        Assert.All(checks, c => Assert.Equal(FallCircle.PowerLineCaution, c.Caution));
    }

    [Fact]
    public void Anchors_beyond_the_height_widen_the_circle() =>
        Assert.Equal(25, FallCircle.Radius(new(18, 1, 25)).Value);
}
