using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Parts.Tests.Loads;

/// <summary>Velocity pressure by ASCE 7: constants from memory of the standard, numbers by an independent computation; pressures in psf from mph and feet.</summary>
public class AsceWindTest
{
    private const double Psf = 47.880259;
    private const double Mph = 0.44704;
    private const double Foot = 0.3048;

    [Theory]
    // Kz as printed in the tables of ASCE 7-16 (2 digits, some rounded, some cut): allow 0.01.
    [InlineData("B", 15, 0.57)]
    [InlineData("B", 30, 0.70)]
    [InlineData("B", 100, 0.99)]
    [InlineData("C", 15, 0.85)]
    [InlineData("C", 30, 0.98)]
    [InlineData("C", 60, 1.13)]
    [InlineData("C", 100, 1.26)]
    [InlineData("D", 15, 1.03)]
    [InlineData("D", 70, 1.34)]
    [InlineData("D", 100, 1.43)]
    public void Exposure_factor_is_that_of_the_printed_table(string exposure, double feet, double kz)
    {
        var trail = AsceWind.Edition2016.Pressure(new(50, exposure), feet * Foot, BodyKind.Tube);
        Assert.Equal(kz, trail.Inputs[0].Value, 0.01);
    }

    [Theory]
    // Independent computation of the 7-22 profile.
    [InlineData("B", 30, 0.689)]
    [InlineData("C", 60, 1.129)]
    [InlineData("D", 140, 1.526)]
    [InlineData("C", 5, 0.851)]
    public void Exposure_factor_of_the_2022_edition(string exposure, double feet, double kz)
    {
        var trail = AsceWind.Edition2022.Pressure(new(50, exposure), feet * Foot, BodyKind.Tube);
        Assert.Equal(kz, trail.Inputs[0].Inputs[0].Value, 0.0006);
    }

    [Fact]
    public void Pressure_of_the_worked_numbers_in_psf()
    {
        // 115 mph, 66 ft, exposure C, Kd 0.95: 37.297 psf (7-16), 37.041 psf (7-22). 0.613 stands for 0.00256 to 0.15 %.
        var site = new WindSite(115 * Mph, "C") { Directionality = 0.95 };
        Assert.Equal(37.297, AsceWind.Edition2016.Pressure(site, 66 * Foot, BodyKind.Tube).Value / Psf, 0.06);
        Assert.Equal(37.041, AsceWind.Edition2022.Pressure(site, 66 * Foot, BodyKind.Tube).Value / Psf, 0.06);
        Assert.Equal(1784.8, AsceWind.Edition2016.Pressure(site, 66 * Foot, BodyKind.Tube).Value, 0.1);
        Assert.Equal(1772.6, AsceWind.Edition2022.Pressure(site, 66 * Foot, BodyKind.Tube).Value, 0.1);
    }

    [Fact]
    public void Lattice_takes_its_own_directionality() =>
        // 100 mph, 33 ft, exposure C, Kd 0.85: 21.807 psf.
        Assert.Equal(21.807, AsceWind.Edition2016.Pressure(new(100 * Mph, "C"), 33 * Foot, BodyKind.Lattice).Value / Psf, 0.04);

    [Theory]
    [InlineData(1000, 0.9644)]
    [InlineData(5000, 0.8344)]
    public void Thin_air_on_high_ground(double feet, double ke)
    {
        var low = AsceWind.Edition2016.Pressure(new(50, "C"), 20, BodyKind.Tube).Value;
        var high = AsceWind.Edition2016.Pressure(new(50, "C") { GroundElevationM = feet * Foot }, 20, BodyKind.Tube).Value;
        Assert.Equal(ke, high / low, 5e-5);
    }

    [Fact]
    public void Ridge_speeds_the_wind_up()
    {
        // 2-D ridge, exposure C, H/Lh 0.3, at the crest, z 20 m, Lh 100 m: K1 0.435, K3 0.54881, Kzt 1.53446.
        var site = new WindSite(50, "C") { Hill = new(HillKind.Ridge, 30, 100, 0) };
        var trail = AsceWind.Edition2016.Pressure(site, 20, BodyKind.Tube).Inputs[1];
        Assert.Equal("Kzt", trail.Symbol);
        Assert.Equal(1.53446, trail.Value, 1e-5);
    }

    [Theory]
    [InlineData(-150)]
    [InlineData(150)]
    public void Ridge_does_nothing_far_from_its_crest(double metres)
    {
        var site = new WindSite(50, "C") { Hill = new(HillKind.Ridge, 30, 100, metres) };
        Assert.Equal(1, AsceWind.Edition2016.Pressure(site, 20, BodyKind.Tube).Inputs[1].Value, 1e-12);
    }

    [Fact]
    public void Faulty_site_is_reported_and_not_computed()
    {
        var site = new WindSite(double.NaN, "X") { TopographicFactor = -1 };
        var findings = AsceWind.Edition2022.Examine(site);
        Assert.Equal(["wind-speed", "wind-exposure", "wind-topography"], findings.Select(f => f.Code));
        Assert.All(findings, f => Assert.Equal(Severity.Error, f.Severity));
        Assert.Throws<ArgumentException>(() => AsceWind.Edition2022.Pressure(site, 10, BodyKind.Tube));
    }
}
