using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Poynting's theorem for masts on buried radials: heat in the soil right up to the wires, heat in the wires and what leaves make up the power fed.</summary>
public class SoilPowerBalanceTests
{
    private static BuriedRadials Radials(int count, double lengthM) => new(Vec3.Zero, 0, count, lengthM, 0.1, 0.001, 0.01);

    [Theory]
    [InlineData(12, 30, 0.03)]
    [InlineData(4, 4, 0.0003)]
    public void Heat_in_the_soil_and_what_leaves_are_the_power_fed_within_a_per_cent(int radials, double permittivity, double conductivity)
    {
        var driven = Solve(BuriedWireTests.BuriedScreen(Ground.Over(new Soil("test", permittivity, conductivity)), radials)).DrivePower(1000);
        var power = SoilPowerBalance.Of(driven, Radials(radials, 20), 30, TestContext.Current.CancellationToken);

        Assert.InRange(power.Closure, 0.99, 1.01);
        Assert.InRange(power.SoilW, 10, 900);
        Assert.InRange(power.OutwardW, FarField.Of(driven).RadiatedPowerW, 1000);
    }

    /// <summary>The sum does not depend on where the hood stands; only what counts as near does.</summary>
    [Fact]
    public void A_wider_hood_holds_more_of_the_soils_heat_and_the_same_whole()
    {
        var driven = Solve(BuriedWireTests.BuriedScreen(Ground.Over(new Soil("average", 13, 0.005)), 4)).DrivePower(1000);
        var (near, wide) = (SoilPowerBalance.Of(driven, Radials(4, 20), 26), SoilPowerBalance.Of(driven, Radials(4, 20), 60));

        Assert.True(wide.SoilW > near.SoilW * 1.02, $"{near.SoilW} {wide.SoilW}");
        Assert.InRange(near.Closure, 0.99, 1.01);
        Assert.InRange(wide.Closure - near.Closure, -0.01, 0.01);
    }
}
