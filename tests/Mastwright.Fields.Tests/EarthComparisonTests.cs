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
