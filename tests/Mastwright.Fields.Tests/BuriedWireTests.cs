using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Wires in the soil and through its surface.</summary>
public class BuriedWireTests
{
    private static readonly Soil Average = new("average", 13, 0.005);

    [Fact]
    public void Empty_soil_around_buried_radials_is_free_space()
    {
        var model = BuriedScreen(Ground.FreeSpace, 4);
        var free = Solve(model).FeedImpedance();
        Near(free, Solve(model with { Ground = Ground.Over(new("nothing", 1 + 1e-6, 1e-10)) }).FeedImpedance(), 1e-4);
    }

    [Fact]
    public void Dipole_deep_in_the_soil_is_the_free_dipole_scaled()
    {
        // In an endless medium of index n a wire behaves as in vacuum at n times the frequency, with impedances divided by n.
        var soil = new Soil("dense", 9, 0);
        var length = 0.25 * Wavelength / 3;
        WireModel At(double z, Ground ground) => WireModel.Over(ground)
            .With(new Wire("dipole", new(0, 0, z), new(length, 0, z), 0.003)).WithFeed("middle", "dipole", 0.5);
        var free = WireSolver.Solve(At(0, Ground.FreeSpace), 3 * FrequencyHz, Uniform(40)).Require().FeedImpedance() / 3;

        // Ten soil wavelengths down the surface's echo is a few parts in a thousand.
        var deep = WireSolver.Solve(At(-10 * Wavelength / 3, Ground.Over(soil)), FrequencyHz, Uniform(40)).Require().FeedImpedance();
        Near(free, deep, 0.01);
    }

    [Theory]
    [InlineData(0.1, 1.0682516, 3.5609)]
    [InlineData(1, 0.9156819, -32.7938)]
    public void Vertical_field_along_the_surface_agrees_with_contour_integration(double wavelengths, double magnitude, double degrees)
    {
        // Ez at the surface from a vertical dipole on it, relative to perfect ground (two contour methods in Python, agreeing to 1e-12).
        var ratio = Coupling(Ground.Over(Average), Vec3.Up, 0, wavelengths) / Coupling(Ground.Perfect, Vec3.Up, 0, wavelengths);
        Near(Complex.FromPolarCoordinates(magnitude, degrees * Math.PI / 180), ratio, 0.02);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.7)]
    public void Fields_pass_the_surface_as_Maxwell_demands(double wavelengths)
    {
        // Tangential E is continuous, normal E falls by n²: a short probe just above and just below.
        var n2 = Average.ComplexPermittivity(FrequencyHz);
        Vec3 sideways = new(1, 0, 0);
        Complex above = Coupling(Ground.Over(Average), sideways, 0.00003, wavelengths), below = Coupling(Ground.Over(Average), sideways, -0.00003, wavelengths);
        Near(above, below, 0.01);
        above = Coupling(Ground.Over(Average), Vec3.Up, 0.00022, wavelengths);
        below = Coupling(Ground.Over(Average), Vec3.Up, -0.00022, wavelengths);
        Near(above / n2, below, 0.01);
    }

    [Fact]
    public void Reciprocity_holds_through_the_surface()
    {
        var model = BuriedScreen(Ground.Over(Average), 3)
            .With(new Wire("pipe", new(6, 9, -0.6), new(12, 14, -0.3), 0.02)).WithFeed("pipe gap", "pipe", 0.4);
        var z = Solve(model).PortImpedances;
        Near(z[0, 1], z[1, 0], 1e-6);
    }

    [Fact]
    public void Finer_mesh_changes_little()
    {
        var model = BuriedScreen(Ground.Over(Average), 8);
        var coarse = Solve(model).FeedImpedance();
        Near(Solve(model, new(new Meshing.MeshOptions(Refinement: 1.6))).FeedImpedance(), coarse, 0.02);
    }

    [Fact]
    public void Radials_bring_the_field_up_as_measured_in_1937()
    {
        // Brown, Lewis and Epstein 1937, quarter wave, field relative to perfect ground, read from the redrawn figure: 15 radials of
        // a quarter wave 154/195 and 113 of them 186/195. Their soil is unknown, so the comparison is for order and trend.
        double Field(int radials)
        {
            var h = 0.25 * Wavelength;
            var driven = Solve(BuriedScreen(Ground.Over(Average), radials, h, h)).DrivePower(1000);
            return FarField.Of(driven).FieldAt1KmVPerM(1000, 0.02) / 0.31367;
        }

        double few = Field(15), many = Field(113);
        Assert.InRange(few, 0.70, 0.90);
        Assert.InRange(many, 0.92, 1.0);
    }

    [Fact]
    public void Heat_in_the_ground_is_what_the_wave_lacks()
    {
        var driven = Solve(BuriedScreen(Ground.Over(Average), 8)).DrivePower(1000);
        var far = FarField.Of(driven);
        Assert.InRange(far.RadiationEfficiency, 0.15, 0.5);
        Assert.True(far.RadiatedPowerW + driven.LossPowerW < driven.InputPowerW);
    }

    internal static WireModel BuriedScreen(Ground ground, int radials, double heightM = 20, double lengthM = 20)
    {
        const double depthM = 0.1;
        var model = WireModel.Over(ground)
            .With(new Wire("mast", Vec3.Zero, new(0, 0, heightM), 0.05), new Wire("stub", new(0, 0, -depthM), Vec3.Zero, 0.01)).WithFeed("base", "mast");
        for (var i = 0; i < radials; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / radials);
            model = model.With(new Wire($"radial {i}", new(0, 0, -depthM), new(lengthM * c, lengthM * s, -depthM), 0.001, Conductor.Copper));
        }

        return model;
    }

    // Two segments make one triangle, so the current's shape, and with it the effective length, is the same in both media.
    // Mutual impedance of a short vertical dipole just above the surface and a short probe at a distance and height in wavelengths.
    private static Complex Coupling(Ground ground, Vec3 direction, double probeHeight, double distance)
    {
        Vec3 probe = new(distance * Wavelength, 0, probeHeight == 0 ? 0.0012 * Wavelength : probeHeight * Wavelength);
        Vec3 half = (probeHeight == 0 ? 0.001 : 0.0002) * Wavelength * direction, source = new(0, 0, 0.0012 * Wavelength);
        var model = WireModel.Over(ground)
            .With(
                new Wire("source", source - (0.001 * Wavelength * Vec3.Up), source + (0.001 * Wavelength * Vec3.Up), 0.0005),
                new Wire("probe", probe - half, probe + half, 0.0005))
            .WithFeed("drive", "source", 0.5).WithFeed("sense", "probe", 0.5);
        return Solve(model, Uniform(2)).PortImpedances[1, 0];
    }
}
