using Mastwright.Protection.Gaps;
using Mastwright.Protection.Statics;

namespace Mastwright.Protection.Tests.Statics;

/// <summary>Peek's laws, Peek 1929 (from memory), evaluated outside.</summary>
public class CoronaOnsetTests
{
    [Theory]
    [InlineData(0.05, 69.91417, 92.88673)]
    [InlineData(0.1, 58.16500, 73.64753)]
    [InlineData(0.5, 42.48521, 47.97197)]
    [InlineData(2, 36.14261, 37.58598)]
    [InlineData(5, 33.81142, 33.76867)]
    public void Laws_of_wires_and_spheres(double radiusCm, double wireKvPerCm, double sphereKvPerCm)
    {
        var r = radiusCm / 100;
        Assert.Equal(wireKvPerCm, CoronaOnset.GradientVPerM(r, double.PositiveInfinity, AirState.Reference, 1).Value / 1e5, 1e-4);
        Assert.Equal(sphereKvPerCm, CoronaOnset.GradientVPerM(r, r, AirState.Reference, 1).Value / 1e5, 1e-4);
    }

    [Fact]
    public void Thin_air_and_rough_metal_spray_sooner()
    {
        var smooth = CoronaOnset.GradientVPerM(0.005, 0.005, AirState.Reference, 1).Value;
        Assert.Equal(0.82 * smooth, CoronaOnset.GradientVPerM(0.005, 0.005, AirState.Reference, CoronaOnset.Stranded).Value, 1);
        Assert.True(CoronaOnset.GradientVPerM(0.005, 0.005, new AirState(3000, 293.15), 1).Value < 0.85 * smooth);
    }

    [Fact]
    public void A_needle_is_outside_peeks_radii() =>
        Assert.NotNull(CoronaOnset.GradientVPerM(2e-5, 2e-5, AirState.Reference, 1).OutOfRange);
}
