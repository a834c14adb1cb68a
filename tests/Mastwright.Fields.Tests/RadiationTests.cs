using System.Numerics;
using Mastwright.Fields.Results;
using Mastwright.Fields.Wires;
using Mastwright.Model.Units;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Far field, field at 1 km, pattern shapes and near fields.</summary>
public class RadiationTests
{
    [Theory]
    [InlineData(10, 0.306, 300.05)]
    [InlineData(30, 2.844, 301.28)]
    [InlineData(60, 12.827, 305.65)]
    [InlineData(90, 36.540, 313.67)]
    [InlineData(120, 101.020, 326.74)]
    [InlineData(150, 414.696, 347.48)]
    [InlineData(190, 3017.615, 394.52)]
    [InlineData(225, 106.463, 443.64)]
    public void Sinusoidal_mast_radiates_as_pattern_integration_says(double degrees, double baseOhm, double fieldMilliVoltPerM)
    {
        // Independent pattern integration of the sinusoidal current (textbook; 313.7 mV/m for the quarter wave, 47 CFR 73).
        var mesh = Mesh(OverGround(degrees * Math.PI / 180, 1e6), 96);
        var far = FarField.Of(Carrying(mesh, SinusoidOn(mesh, 0)));
        Near(baseOhm, far.RadiatedPowerW, 2e-3);
        var field = Math.Sqrt(far.At(Math.PI / 2, 0.3).SquaredV2 * 1000 / far.RadiatedPowerW);
        Near(fieldMilliVoltPerM, field, 3e-4);
    }

    [Theory]
    [InlineData(0.02, 299.9)]
    [InlineData(0.25, 313.67)]
    public void One_kilowatt_lays_down_the_standard_field_at_one_kilometre(double height, double milliVoltPerM)
    {
        // 300 mV/m: short monopole, Rec. ITU-R BS.561; 313.7 mV/m: quarter wave, 47 CFR 73.
        var far = FarField.Of(Solve(OverGround(2 * Math.PI * height, 20000)).DrivePower(1000));
        Near(milliVoltPerM, 1000 * far.FieldAt1KmVPerM(1000, 0), 2e-3);
    }

    [Theory]
    [InlineData(90, new[] { 1.0, 0.97789, 0.91426, 0.8165, 0.69464, 0.55894, 0.41779, 0.27656, 0.13741 })]
    [InlineData(120, new[] { 1.0, 0.97115, 0.88981, 0.7698, 0.62891, 0.48373, 0.34584, 0.22041, 0.10675 })]
    [InlineData(225, new[] { 1.0, 0.8824, 0.58151, 0.21944, -0.08281, -0.25883, -0.30399, -0.25034, -0.13798 })]
    public void Vertical_pattern_follows_the_broadcast_rule(double degrees, double[] expected)
    {
        // 47 CFR 73.160(b): f = [cos(G sin θ) − cos G]/[(1 − cos G) cos θ].
        var mesh = Mesh(OverGround(degrees * Math.PI / 180, 1e6), 96);
        var far = FarField.Of(Carrying(mesh, SinusoidOn(mesh, 0)));
        var horizon = far.At(Math.PI / 2, 0).Theta;
        for (var i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], (far.At(Math.PI / 2 - (i * Math.PI / 18), 1.1).Theta / horizon).Real, 3e-4);
    }

    [Fact]
    public void Power_balance_holds_for_a_guyed_lossy_loaded_mast()
    {
        var model = GuyedMast().WithLoad("coil", "mast", 0.5, new LoadElement.Coil(8e-6, 250));
        foreach (var f in (double[])[1.9e6, 3.6e6, 7.1e6, 14.2e6, 28.5e6])
        {
            var driven = Solving.WireSolver.Solve(model, f).Require().DrivePower(1000);
            var far = FarField.Of(driven);
            Near(driven.InputPowerW, far.RadiatedPowerW + driven.LossPowerW, 0.005);
            Assert.True(driven.LossPowerW > 1);
        }
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.2)]
    [InlineData(0.3)]
    public void Short_dipoles_over_perfect_ground_change_as_the_closed_form_says(double height)
    {
        // ΔZ/R0 of a Hertzian dipole at height z over a perfect conductor, x = 2kz (textbook closed forms).
        var x = 4 * Math.PI * height;
        var turn = Complex.FromPolarCoordinates(1, -x);
        var vertical = 3 * turn * (new Complex(0, 1) / (x * x * x) - (1 / (x * x)));
        var horizontal = new Complex(0, -1.5) * turn * ((1 / x) - (new Complex(0, 1) / (x * x)) - (1 / (x * x * x)));
        Near(1 + vertical.Real, ResistanceRatio(new(0, 0, 1), height), 0.01);
        Near(1 + horizontal.Real, ResistanceRatio(new(1, 0, 0), height), 0.01);
    }

    [Fact]
    public void Magnetic_field_close_to_the_base_is_Amperes()
    {
        var driven = Solve(OverGround(0.3, 3000)).DriveCurrents(2);
        var h = NearField.At(driven, new(0.02, 0, 0.0)).Magnetic;
        Near(2 / (2 * Math.PI * 0.02), h.Y.Magnitude, 0.01);
    }

    [Fact]
    public void Near_field_becomes_the_far_field()
    {
        var driven = Solve(GuyedMast()).DrivePower(1000);
        var far = FarField.Of(driven);
        foreach (var (theta, phi) in ((double, double)[])[(0.4, 0.2), (1.2, 2.0), (1.5, 4.0)])
        {
            const double r = 3e5;
            Vec3 point = new(r * Math.Sin(theta) * Math.Cos(phi), r * Math.Sin(theta) * Math.Sin(phi), r * Math.Cos(theta));
            var near = NearField.At(driven, point);
            Near(Math.Sqrt(far.At(theta, phi).SquaredV2) / r, near.Electric.Magnitude, 2e-3);
            Near(near.Electric.Magnitude / Vacuum.WaveImpedanceOhm, near.Magnetic.Magnitude, 2e-3);
        }
    }

    /// <summary>Boundary conditions on a perfect conductor; on the plane itself half of the sum is taken, so the whole sum just above it holds it to account.</summary>
    [Fact]
    public void On_a_perfect_ground_the_field_is_what_the_whole_sum_tends_to_and_its_electric_part_stands_upright()
    {
        var driven = Solve(GuyedMast()).DrivePower(1000);
        NearFieldSample on = NearField.At(driven, new(7, 3, 0)), above = NearField.At(driven, new(7, 3, 1e-6));
        Assert.True(above.Electric.X.Magnitude < 1e-5 * above.Electric.Magnitude && above.Electric.Y.Magnitude < 1e-5 * above.Electric.Magnitude);
        Assert.True(above.Magnetic.Z.Magnitude < 1e-5 * above.Magnetic.Magnitude);
        Near(above.Electric.Z, on.Electric.Z);
        Near(above.Magnetic.X, on.Magnetic.X);
        Near(above.Magnetic.Y, on.Magnetic.Y);
        Assert.Equal(Complex.Zero, on.Electric.X);

        static void Near(Complex expected, Complex actual) => Assert.True((expected - actual).Magnitude < 1e-5 * expected.Magnitude, $"{expected} against {actual}");
    }

    internal static WireModel GuyedMast()
    {
        var model = WireModel.Over(Ground.Perfect)
            .With(new Wire("mast", Vec3.Zero, new(0, 0, 22), 0.12, 0.08, Conductor.Zinc)).WithFeed("base", "mast");
        for (var g = 0; g < 3; g++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * g / 3);
            foreach (var (level, anchor) in ((double, double)[])[(10, 12), (20, 14)])
            {
                Vec3 top = new(0, 0, level), bottom = new(anchor * c, anchor * s, 0.3);
                for (var p = 0; p < 3; p++)
                {
                    var from = p == 0 ? top : top + ((p + 0.02) / 3 * (bottom - top));
                    model = model.With(new Wire($"guy {g} {level} {p}", from, top + ((p + 0.98) / 3 * (bottom - top)), 0.003, Conductor.Steel));
                }
            }
        }

        return model;
    }

    private static double ResistanceRatio(Vec3 direction, double height)
    {
        WireModel Dipole(Ground ground)
        {
            Vec3 centre = new(0, 0, height * Wavelength), half = 0.005 * Wavelength * direction;
            return WireModel.Over(ground).With(new Wire("dipole", centre - half, centre + half, 0.0005)).WithFeed("middle", "dipole", 0.5);
        }

        return Solve(Dipole(Ground.Perfect)).FeedImpedance().Real / Solve(Dipole(Ground.FreeSpace)).FeedImpedance().Real;
    }
}
