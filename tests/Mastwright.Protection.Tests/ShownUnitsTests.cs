using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Protection.Lightning;
using Mastwright.Protection.People;

namespace Mastwright.Protection.Tests;

/// <summary>Every number this library gives can be shown in both unit systems.</summary>
public class ShownUnitsTests
{
    [Fact]
    public void Power_density_has_a_unit()
    {
        var s = FarFieldExposure.PowerDensity(100, 1.64, 10, GroundReflection.Typical);
        Assert.Equal("0.3341 W/m²", QuantityFormat.Show(s, UnitSystem.Metric));
    }

    [Fact]
    public void Every_kind_of_a_strike_can_be_shown()
    {
        static IEnumerable<Trail> All(Trail t) => t.Inputs.SelectMany(All).Append(t);
        var check = ConductorHeating.Check("strap", StrikeMetal.Copper, 50e-6, LightningCurrents.SpecificEnergy(LightningLevel.I));
        foreach (var trail in All(check.Demand).Concat(All(check.Capacity)))
        {
            Assert.NotEmpty(QuantityFormat.Show(trail, UnitSystem.Metric));
            Assert.NotEmpty(QuantityFormat.Show(trail, UnitSystem.Us));
        }
    }
}
