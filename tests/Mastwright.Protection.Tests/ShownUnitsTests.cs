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

    [Theory]
    [InlineData(52e-6, QuantityKind.PeakCurrent, "52 µA")]
    [InlineData(0.020, QuantityKind.RmsCurrent, "20 mA")]
    [InlineData(4.163, QuantityKind.RmsCurrent, "4.163 A")]
    [InlineData(150e3, QuantityKind.PeakCurrent, "150 kA")]
    [InlineData(10e6, QuantityKind.SpecificEnergy, "10 MJ/Ω")]
    [InlineData(1556, QuantityKind.SpecificEnergy, "1556 J/Ω")]
    [InlineData(0.0768, QuantityKind.MagneticField, "76.8 mA/m")]
    [InlineData(0.0085, QuantityKind.Density, "8.5 g/m³")]
    public void Small_and_large_values_are_shown_as_people_say_them(double si, QuantityKind kind, string shown) =>
        Assert.Equal(shown, QuantityFormat.Show(si, kind, UnitSystem.Metric));

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
