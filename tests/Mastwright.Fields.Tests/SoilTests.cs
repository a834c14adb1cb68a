using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Wires in the air over real soil: the exact half-space.</summary>
public class SoilTests
{
    private static readonly Soil Average = new("average", 13, 0.005);

    // εr, σ, frequency, height in wavelengths, then 1 + (Z − Zfs)/R0 of a vertical and of a horizontal Hertzian dipole.
    // Two independent contour quadratures in Python agree on every value to 4e-14; integrand after Sommerfeld's closed forms.
    public static TheoryData<double, double, double, double, double, double, double, double> Dipoles => new()
    {
        { 30, 0.01, 1.9e6, 0.05, 2.920425, 14.395441, 0.755371, 5.635576 },
        { 30, 0.01, 1.9e6, 0.25, 1.266601, -0.132868, 1.177259, 0.339185 },
        { 30, 0.01, 7.1e6, 0.05, 3.354044, 13.870152, 1.172057, 5.534493 },
        { 30, 0.01, 7.1e6, 0.50, 0.943034, 0.020198, 0.952248, -0.166222 },
        { 13, 0.005, 1.9e6, 0.10, 2.209695, 2.100170, 0.671293, 0.865801 },
        { 13, 0.005, 3.6e6, 0.05, 3.826085, 14.019607, 1.323826, 5.736133 },
        { 13, 0.005, 3.6e6, 0.20, 1.452172, -0.010414, 1.035183, 0.388098 },
        { 13, 0.005, 3.6e6, 0.50, 0.944720, 0.025101, 0.938514, -0.157888 },
        { 13, 0.005, 7.1e6, 0.15, 1.727868, 0.374403, 0.897312, 0.418920 },
        { 5, 0.001, 1.9e6, 0.05, 5.228599, 12.994230, 2.078160, 5.569013 },
        { 5, 0.001, 3.6e6, 0.10, 2.371836, 1.420283, 1.089770, 0.680017 },
        { 5, 0.001, 7.1e6, 0.05, 4.405465, 10.280383, 2.010790, 4.437202 },
        { 5, 0.001, 7.1e6, 0.40, 0.949827, -0.035307, 1.083593, -0.083342 },
    };

    [Theory]
    [MemberData(nameof(Dipoles))]
    public void Short_dipole_over_soil_agrees_with_contour_quadrature(
        double permittivity, double conductivity, double frequencyHz, double height, double vr, double vx, double hr, double hx)
    {
        var soil = new Soil("test", permittivity, conductivity);
        Complex vertical = new(vr, vx), horizontal = new(hr, hx);
        Near(vertical, Ratio(Vec3.Up, soil, frequencyHz, height), 2e-4);
        Near(horizontal, Ratio(new(1, 0, 0), soil, frequencyHz, height), 2e-4);

        // The cross terms cancel in the mean: a dipole at 45 degrees is half of each. It exercises the turning kernel.
        var slope = Math.Sqrt(0.5);
        Near(0.5 * (vertical + horizontal), Ratio(new(slope, 0, slope), soil, frequencyHz, height), 2e-4);
    }

    [Fact]
    public void Endless_conductivity_is_the_perfect_ground()
    {
        var model = ElevatedMast(Ground.Perfect);
        var perfect = Solve(model).FeedImpedance();
        var nearly = Solve(model with { Ground = Ground.Over(new("metal", 1, 1e5)) }).FeedImpedance();
        Near(perfect, nearly, 2e-3);
    }

    [Fact]
    public void Empty_soil_is_free_space()
    {
        var model = ElevatedMast(Ground.FreeSpace);
        var free = Solve(model).FeedImpedance();
        Near(free, Solve(model with { Ground = Ground.Over(new("nothing", 1 + 1e-6, 1e-10)) }).FeedImpedance(), 1e-5);
    }

    [Fact]
    public void Reciprocity_holds_over_soil()
    {
        var model = ElevatedMast(Ground.Over(Average))
            .With(new Wire("slope", new(20, 0, 1), new(25, 8, 12), 0.002)).WithFeed("second", "slope", 0.4);
        var z = Solve(model).PortImpedances;
        Near(z[0, 1], z[1, 0], 1e-8);
    }

    [Fact]
    public void Sky_wave_carries_less_than_the_feed_gives_and_nearly_all_over_a_good_reflector()
    {
        var lossy = Solve(ElevatedMast(Ground.Over(Average))).DrivePower(1000);
        Assert.InRange(FarField.Of(lossy).RadiatedPowerW, 100, 800);
        var metal = Solve(ElevatedMast(Ground.Over(new("metal", 1, 1e5)))).DrivePower(1000);
        Near(metal.InputPowerW - metal.LossPowerW, FarField.Of(metal).RadiatedPowerW, 0.03);
    }

    [Fact]
    public void Finer_kernel_integration_changes_nothing()
    {
        var coarse = Solve(ElevatedMast(Ground.Over(Average))).FeedImpedance();
        var fine = Solve(ElevatedMast(Ground.Over(Average)), new(new Meshing.MeshOptions(Refinement: 2))).FeedImpedance();
        Near(fine, coarse, 0.02);
    }

    [Theory]
    [InlineData(70, 5, 1.8e6, 1, 109.54)]
    [InlineData(70, 5, 3.5e6, 30, 79.84)]
    [InlineData(30, 0.01, 1.8e6, 3, 96.52)]
    [InlineData(30, 0.01, 3.5e6, 10, 69.53)]
    [InlineData(22, 0.003, 1.9e6, 10, 70.24)]
    [InlineData(15, 0.001, 3.5e6, 3, 77.78)]
    [InlineData(3, 0.0001, 1.8e6, 30, 31.95)]
    public void Ground_wave_falls_off_as_Norton_says(double permittivity, double conductivity, double frequencyHz, double km, double decibelMicrovolt)
    {
        // Flat-earth Sommerfeld-Norton factor, reference 300 mV/m at 1 km (computed in Python from Norton 1936; ITU-R P.368 soils).
        var f = GroundWave.Attenuation(new("test", permittivity, conductivity), frequencyHz, km * 1000).Magnitude;
        Assert.Equal(decibelMicrovolt, 20 * Math.Log10(300e3 / km * f), 0.01);
    }

    [Fact]
    public void Wire_in_the_surface_is_refused_by_name()
    {
        var result = WireSolver.Solve(ElevatedMast(Ground.Over(Average)).With(new Wire("strip", new(40, 0, 0.001), new(45, 0, 0), 0.01)), 3.6e6);
        Assert.Contains("\"strip\"", Assert.Single(result.Findings).Message);
    }

    internal static WireModel ElevatedMast(Ground ground)
    {
        var model = WireModel.Over(ground).With(new Wire("mast", new(0, 0, 3), new(0, 0, 22), 0.05)).WithFeed("base", "mast");
        for (var i = 0; i < 4; i++)
            model = model.With(new Wire($"radial {i}", new(0, 0, 3), new(20 * Math.Cos(i * Math.PI / 2), 20 * Math.Sin(i * Math.PI / 2), 3), 0.001));
        return model;
    }

    private static Complex Ratio(Vec3 direction, Soil soil, double frequencyHz, double height)
    {
        var wavelength = Vacuum.WavelengthM(frequencyHz);
        Complex Z(Ground ground)
        {
            Vec3 centre = new(0, 0, height * wavelength), half = 0.0005 * wavelength * direction;
            var model = WireModel.Over(ground).With(new Wire("dipole", centre - half, centre + half, 0.0001)).WithFeed("middle", "dipole", 0.5);
            return WireSolver.Solve(model, frequencyHz, Uniform(16)).Require().FeedImpedance();
        }

        var free = Z(Ground.FreeSpace);
        return 1 + ((Z(Ground.Over(soil)) - free) / free.Real);
    }
}
