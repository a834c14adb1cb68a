using System.Numerics;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>
/// The wave along the ground over sea and land of Recommendation ITU-R P.368 (70, 5 S/m; 40, 0.03 S/m; 22, 0.003 S/m, from memory) at short distances, against Sommerfeld's
/// integral itself (own reference computation by contour integration, scripts/ground_wave.py, NumPy and SciPy).
/// </summary>
public class GroundWaveTests
{
    // Permittivity, conductivity, frequency, distance, then field over that on perfect ground: size, degrees.
    public static TheoryData<double, double, double, double, double, double> Sommerfeld => new()
    {
        { 70, 5, 1.9e6, 200, 1.002278, -0.929 },
        { 70, 5, 1.9e6, 1000, 1.000820, -2.084 },
        { 70, 5, 7.1e6, 200, 1.001625, -3.482 },
        { 70, 5, 7.1e6, 1000, 0.998126, -7.784 },
        { 40, 0.03, 1.9e6, 200, 1.008805, -12.007 },
        { 40, 0.03, 1.9e6, 1000, 0.951686, -26.459 },
        { 40, 0.03, 3.6e6, 1000, 0.818757, -47.702 },
        { 40, 0.03, 7.1e6, 1000, 0.512389, -79.138 },
        { 22, 0.003, 1.9e6, 200, 0.857143, -31.554 },
        { 22, 0.003, 1.9e6, 1000, 0.571857, -62.362 },
        { 22, 0.003, 3.6e6, 200, 0.643414, -43.199 },
        { 22, 0.003, 3.6e6, 1000, 0.312071, -77.728 },
        { 22, 0.003, 7.1e6, 1000, 0.154828, -84.334 },
    };

    [Theory]
    [MemberData(nameof(Sommerfeld))]
    public void Solved_field_along_sea_and_land_falls_off_as_Sommerfelds_integral(double permittivity, double conductivity, double frequencyHz, double distanceM, double size, double degrees)
    {
        var wavelength = Vacuum.WavelengthM(frequencyHz);
        Complex Field(Ground ground)
        {
            Vec3 foot = new(0, 0, 2e-4 * wavelength), head = new(0, 0, 2.2e-3 * wavelength);
            var model = WireModel.Over(ground).With(new Wire("dipole", foot, head, 2e-6 * wavelength)).WithFeed("middle", "dipole", 0.5);
            return NearField.At(WireSolver.Solve(model, frequencyHz).Require().DriveCurrents(1), new Vec3(distanceM, 0, 0.01)).Electric.Z;
        }

        Near(Complex.FromPolarCoordinates(size, degrees * Math.PI / 180), Field(Ground.Over(new("test", permittivity, conductivity))) / Field(Ground.Perfect), 0.01);
    }

    /// <summary>Norton's factor, which is quick, against the same integral: within 0.3 dB from a kilometre on.</summary>
    [Theory]
    [MemberData(nameof(Sommerfeld))]
    public void Nortons_factor_comes_near_the_integral_from_a_kilometre_on(double permittivity, double conductivity, double frequencyHz, double distanceM, double size, double degrees)
    {
        var factor = GroundWave.Attenuation(new("test", permittivity, conductivity), frequencyHz, distanceM);
        Assert.InRange(20 * Math.Log10(factor.Magnitude / size), distanceM < 1000 ? -0.7 : -0.3, 0.05);
        Assert.InRange(factor.Phase - (degrees * Math.PI / 180), -0.15, 0.15);
    }

    /// <summary>1 kW from a short mast lays down 300 mV/m, 109.5 dB over 1 µV/m, one kilometre out over the sea (ITU-R P.368 and BS.561; the curve from memory).</summary>
    [Theory]
    [InlineData(1.9e6)]
    [InlineData(3.6e6)]
    public void One_kilowatt_over_the_sea_is_109_5_decibels_at_one_kilometre(double frequencyHz)
    {
        var wavelength = Vacuum.WavelengthM(frequencyHz);
        var sea = new Soil("sea", 70, 5);
        var model = WireModel.Over(Ground.Over(sea)).With(new Wire("dipole", new(0, 0, 0.01 * wavelength), new(0, 0, 0.07 * wavelength), 1e-4 * wavelength)).WithFeed("middle", "dipole", 0.5);
        var driven = WireSolver.Solve(model, frequencyHz).Require().DrivePower(1000);

        Assert.Equal(109.54, 20 * Math.Log10(1e6 * NearField.At(driven, new Vec3(1000, 0, 0.01)).Electric.Z.Magnitude), 0.15);
        Assert.Equal(109.54, 20 * Math.Log10(1e6 * GroundWave.FieldVPerM(FarField.Of(driven), sea, frequencyHz, 1000, 0, 1000)), 0.15);
    }
}
