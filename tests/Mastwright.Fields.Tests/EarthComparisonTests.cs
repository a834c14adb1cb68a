using Mastwright.Fields.Earth;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Real earth against perfect ground, through the front door.</summary>
public class EarthComparisonTests
{
    private static readonly Soil Average = new("average", 13, 0.005);

    [Theory]
    [InlineData(113, 0.412, -0.35, 0.35)]
    [InlineData(113, 0.274, -0.75, -0.05)]
    [InlineData(60, 0.274, -0.95, -0.2)]
    [InlineData(15, 0.274, -2.6, -1.2)]
    public void Quarter_wave_over_radials_loses_what_was_measured_in_1937(int radials, double length, double low, double high)
    {
        // Brown, Lewis and Epstein 1937: about -0.18 dB for 113 of 0.41, 186/195 (-0.41 dB) for 113 of a quarter wave, 154/195
        // (-2.05 dB) for 15; read by third parties from redrawn figures, soil unknown, so the bands are wide.
        var comparison = Compare(WireModel.Over(Ground.Perfect).With(new Wire("mast", Vec3.Zero, new(0, 0, 0.25 * Wavelength), 0.05)).WithFeed("base", "mast"), radials, length);
        Assert.InRange(10 * Math.Log10(comparison.Efficiency.Value), low, high);
    }

    [Fact]
    public void Parts_add_up()
    {
        var comparison = Compare(RadiationTests.GuyedMast(), 15, 0.2);
        Assert.InRange(comparison.Efficiency.Value, 0.2, 0.95);
        Near(comparison.LossResistance.Value, comparison.WireLoss.Value + comparison.EarthLoss.Value, 1e-12);
        Assert.True(comparison.WireLoss.Value > 0 && comparison.EarthLoss.Value > 1);
        Assert.NotEmpty(comparison.EarthLoss.Inputs);
    }

    [Fact]
    public void Insulated_radials_do_nearly_as_well_as_bare_ones()
    {
        // Common practice, no source: for many radials a thin jacket makes little difference.
        double With(Jacket? jacket)
        {
            var model = WireModel.Over(Ground.Perfect).With(new Wire("mast", Vec3.Zero, new(0, 0, 20), 0.05)).WithFeed("base", "mast");
            var laid = EarthScreens.Lay(model, Average, new ScreenUnderMast(Vec3.Zero, new(32, 18, 0.001, -0.05), Conductor.Copper, jacket));
            return EarthComparison.Of(Solve(laid), Solve(model)).Efficiency.Value;
        }

        Near(With(null), With(new Jacket(0.0008, 3.5, 0.03)), 0.1);
    }

    [Theory]
    [InlineData(1.5, 0.005)]
    [InlineData(3.0, 0.005)]
    [InlineData(2.4, 0.02)]
    public void Two_rods_have_Dwights_earth_resistance_at_low_frequency(double lengthM, double conductivity)
    {
        // R = ρ/(2πL)·[ln(4L/a) − 1] for each, less ρ/(2πd) shared between them: Dwight 1936 (from memory). Fed through a wire above,
        // so that the current really has to cross the soil from rod to rod.
        const double apart = 60, radius = 0.009;
        Vec3 far = new(apart, 0, 0), up = new(0, 0, 1);
        var model = WireModel.Over(Ground.Over(new Soil("test", 13, conductivity)))
            .With(
                new Wire("rod 1", new(0, 0, -lengthM), Vec3.Zero, radius), new Wire("riser 1", Vec3.Zero, up, radius),
                new Wire("rod 2", far - new Vec3(0, 0, lengthM), far, radius), new Wire("riser 2", far, far + up, radius),
                new Wire("line", up, far + up, radius))
            .WithFeed("feed", "riser 1", 0.5);
        var z = Fields.Solving.WireSolver.Solve(model, 5e3).Require().FeedImpedance();
        var rho = 1 / conductivity;
        var one = rho / (2 * Math.PI * lengthM) * (Math.Log(4 * lengthM / radius) - 1);
        Near(2 * (one - (rho / (2 * Math.PI * apart))), z.Real, 0.04);
    }

    [Fact]
    public void Elevated_screen_is_refused()
    {
        Assert.Throws<ArgumentException>(() => EarthScreens.Lay(RadiationTests.GuyedMast(), Average, new ScreenUnderMast(Vec3.Zero, new(4, 20, 0.001, 3), Conductor.Copper)));
    }

    private static EarthComparison Compare(WireModel model, int radials, double length)
    {
        var laid = EarthScreens.Lay(model, Average, new ScreenUnderMast(Vec3.Zero, new(radials, length * Wavelength, 0.0013, -0.15), Conductor.Copper));
        return EarthComparison.Of(Solve(laid), Solve(model));
    }
}
