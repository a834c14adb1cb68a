using Mastwright.Model.Trails;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>Heating against IEC 62305-1 table D.3, inductances and separation against published formulas worked outside.</summary>
public class ConductorTests
{
    private static StrikeMetal Metal(string name) => name switch
    {
        "Al" => StrikeMetal.Aluminium,
        "Fe" => StrikeMetal.MildSteel,
        "Cu" => StrikeMetal.Copper,
        _ => StrikeMetal.Stainless,
    };

    // IEC 62305-1:2010 table D.3 (from memory): section mm², level, rise K as printed.
    [Theory]
    [InlineData("Al", 16, LightningLevel.III, 146)]
    [InlineData("Al", 25, LightningLevel.I, 283)]
    [InlineData("Al", 50, LightningLevel.II, 28)]
    [InlineData("Fe", 25, LightningLevel.III, 211)]
    [InlineData("Fe", 50, LightningLevel.I, 211)]
    [InlineData("Cu", 10, LightningLevel.III, 169)]
    [InlineData("Cu", 16, LightningLevel.I, 309)]
    [InlineData("Cu", 25, LightningLevel.II, 51)]
    [InlineData("St", 50, LightningLevel.III, 190)]
    [InlineData("St", 100, LightningLevel.I, 190)]
    public void Rise_matches_the_standards_table(string metal, double mm2, LightningLevel level, double kelvin) =>
        Assert.Equal(kelvin, ConductorHeating.Rise(Metal(metal), mm2 * 1e-6, LightningCurrents.SpecificEnergy(level)).Value, Math.Max(0.6, 0.02 * kelvin));

    // The same table leaves these empty: they melt.
    [Theory]
    [InlineData("Al", 10, LightningLevel.II)]
    [InlineData("Fe", 16, LightningLevel.II)]
    [InlineData("Cu", 10, LightningLevel.I)]
    [InlineData("St", 16, LightningLevel.III)]
    public void Too_thin_a_conductor_melts(string metal, double mm2, LightningLevel level) =>
        Assert.True(ConductorHeating.Melts(Metal(metal), mm2 * 1e-6, LightningCurrents.SpecificEnergy(level)));

    // Rosa 1908, evaluated outside, µH.
    [Theory]
    [InlineData(1, 2.5e-3, 1.1374220)]
    [InlineData(3, 4e-3, 3.7887320)]
    [InlineData(10, 4e-3, 15.035186)]
    public void Wire_inductance(double length, double radius, double microhenry) =>
        Assert.Equal(microhenry * 1e-6, StraightInductance.Wire(length, radius).Value, 1e-12);

    [Theory]
    [InlineData(1, .05, .001, .83609507)]
    [InlineData(3, .1, .001, 2.7551512)]
    [InlineData(10, .05, .001, 12.945604)]
    public void Strap_inductance(double length, double width, double thickness, double microhenry) =>
        Assert.Equal(microhenry * 1e-6, StraightInductance.Strap(length, width, thickness).Value, 1e-12);

    // IEC 62305-3:2010 6.3, simple method: level III, one conductor, 10 m: 0.4 m in air; level I 0.8 m, through brick 1.6 m.
    [Theory]
    [InlineData(LightningLevel.III, SeparationMedium.Air, 0.4)]
    [InlineData(LightningLevel.I, SeparationMedium.Air, 0.8)]
    [InlineData(LightningLevel.I, SeparationMedium.Solid, 1.6)]
    public void Separation_distance(LightningLevel level, SeparationMedium medium, double metres) =>
        Assert.Equal(metres, SideFlash.Distance(level, 1, 10, medium).Value, 1e-12);

    [Fact]
    public void Heating_check_names_the_cure() =>
        Assert.Equal(Verdict.Fail, ConductorHeating.Check("strap", StrikeMetal.Stainless, 16e-6, LightningCurrents.SpecificEnergy(LightningLevel.III)).Verdict);
}
