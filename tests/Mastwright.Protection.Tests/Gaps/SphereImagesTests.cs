using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Tests.Gaps;

/// <summary>Field factors of sphere gaps against an independent high-precision image series (mpmath).</summary>
public class SphereImagesTests
{
    [Theory]
    [InlineData(0.05, 1.033557803, 1.016722495)]
    [InlineData(0.5, 1.358996328, 1.172614326)]
    [InlineData(2, 2.677705287, 1.770281195)]
    public void Field_factor_matches_the_series(double spacingOverRadius, double plate, double pair)
    {
        Assert.Equal(plate, SphereImages.FieldFactor(1, spacingOverRadius, true), 1e-8);
        Assert.Equal(pair, SphereImages.FieldFactor(1, spacingOverRadius, false), 1e-8);
    }

    [Fact]
    public void Field_along_the_axis_adds_up_to_one_volt()
    {
        foreach (var plate in new[] { true, false })
        {
            var n = 2000;
            var x = Enumerable.Range(0, n).Select(i => (i + 0.5) * 0.03 / n).ToArray();
            var sum = SphereImages.AxisFieldPerVolt(0.02, 0.03, plate, x).Sum() * 0.03 / n;
            Assert.Equal(1, sum, 1e-6);
        }
    }
}
