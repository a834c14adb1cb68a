using Mastwright.Model.Trails;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Parts.Tests.Loads;

/// <summary>Peak velocity pressure and drag by EN 1991-1-4.</summary>
public class EurocodeWindTest
{
    private static readonly EurocodeWind Method = new();

    [Theory]
    // A published worked example: vb 25 m/s, category 0 (values printed to three digits).
    [InlineData(77.36, 39.624, 0.098, 1658)]
    [InlineData(28, 35.659, 0.109, 1403)]
    public void Published_example(double z, double vm, double iv, double qp)
    {
        var trail = Method.Pressure(new(25, "0"), z, BodyKind.Tube);
        Assert.Equal(qp, trail.Value, 1.5);
        Assert.Equal(iv, trail.Inputs[0].Value, 0.0006);
        Assert.Equal(vm, trail.Inputs[2].Value, 0.03);
    }

    [Theory]
    // Independent computation, vb 26 m/s.
    [InlineData("0", 10, 1260.96)]
    [InlineData("I", 20, 1351.21)]
    [InlineData("II", 10, 993.84)]
    [InlineData("II", 30, 1307.11)]
    [InlineData("III", 20, 921.94)]
    [InlineData("IV", 30, 820.72)]
    public void Peak_pressure_by_terrain(string terrain, double z, double qp) =>
        Assert.Equal(qp, Method.Pressure(new(26, terrain), z, BodyKind.Tube).Value, 0.01);

    [Fact]
    public void Pressure_stays_level_below_the_least_height() =>
        Assert.Equal(Method.Pressure(new(26, "IV"), 10, BodyKind.Tube).Value, Method.Pressure(new(26, "IV"), 2, BodyKind.Tube).Value, 1e-9);

    [Theory]
    // Curves of figure 7.28, independent computation: b, qp, k in mm, cf0.
    [InlineData(0.1143, 1100, 0.2, 0.8056)]
    [InlineData(0.1143, 1100, 0.02, 0.5811)]
    [InlineData(0.0603, 900, 0.2, 1.2)]
    [InlineData(0.300, 1100, 0.2, 0.7960)]
    public void Tube_drag_follows_the_reynolds_number(double b, double qp, double k, double cf)
    {
        var q = Trail.Given("pressure", "qp", qp, QuantityKind.Pressure, Source.DesignFile);
        Assert.Equal(cf, Method.TubeDrag(new(b) { RoughnessM = k / 1000 }, q).Value, 5e-5);
    }

    [Fact]
    public void Hill_is_refused_with_a_way_out()
    {
        var finding = Assert.Single(Method.Examine(new(26, "II") { Hill = new(HillKind.Ridge, 30, 100, 0) }));
        Assert.Equal("wind-hill", finding.Code);
        Assert.NotNull(finding.WayOut);
    }

    [Fact]
    public void Stated_pressure_is_the_same_at_every_height()
    {
        var stated = new StatedPressure();
        var site = new WindSite(0, "") { StatedPressurePa = 1200 };
        Assert.Equal(1200, stated.Pressure(site, 3, BodyKind.Tube).Value);
        Assert.Equal(1200, stated.Pressure(site, 30, BodyKind.Lattice).Value);
        // Half of 1.226 kg/m³ times 40²: the textbook's stagnation pressure at sea level.
        Assert.Equal(0.5 * 1.226 * 1600, stated.Pressure(new(40, ""), 3, BodyKind.Tube).Value, 0.1);
    }
}
