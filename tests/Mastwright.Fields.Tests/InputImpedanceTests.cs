using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using Mastwright.Numerics;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>
/// Against an independent solution of another equation: Hallén's integral equation with the exact tubular kernel and collocation,
/// three mesh sizes (own reference computation in Python, from Hallén 1938), and against closed limits.
/// </summary>
public class InputImpedanceTests
{
    // Columns: thickness 2 ln(2h/a), kh, then G at the reference's mesh of equal fineness (24 an arm for
    // thick masts, whose segments may not be shorter; its finest for thin ones) and B at its coarse and finest mesh, all in mS.
    public static TheoryData<double, double, double, double, double> Hallen => new()
    {
        { 9, 2.0, 4.928, -2.492, -1.179 },
        { 9, 2.5, 3.003, 1.461, 3.033 },
        { 9, 3.0, 2.527, 4.400, 6.268 },
        { 10, 1.75, 7.812, -6.737, -6.028 },
        { 10, 2.0, 4.165, -3.349, -2.602 },
        { 10, 2.5, 2.411, 0.305, 1.175 },
        { 10, 3.1416, 1.936, 3.518, 4.592 },
        { 12.5, 1.0, 0.431, 6.167, 6.267 },
        { 12.5, 1.5708, 17.849, -9.695, -9.651 },
        { 12.5, 2.0, 2.826, -3.851, -3.656 },
        { 12.5, 2.5, 1.492, -0.693, -0.474 },
        { 12.5, 3.1416, 1.131, 1.703, 1.972 },
        { 15, 0.5, 0.006, 1.611, 1.622 },
        { 15, 1.3, 3.249, 11.465, 11.530 },
        { 15, 1.5708, 18.492, -10.340, -10.370 },
        { 15, 2.0, 2.030, -3.786, -3.730 },
        { 15, 3.1416, 0.734, 0.913, 0.982 },
        { 20, 0.5, 0.003, 1.111, 1.112 },
        { 20, 1.5, 24.528, 11.061, 10.954 },
        { 20, 1.5708, 19.187, -10.897, -10.924 },
        { 20, 2.5, 0.537, -1.004, -0.993 },
        { 30, 1.5, 13.452, 15.003, 14.999 },
        { 30, 1.5708, 19.715, -11.307, -11.318 },
        { 30, 2.0, 0.519, -2.317, -2.315 },
        { 30, 3.1416, 0.152, 0.128, 0.130 },
    };

    [Theory]
    [MemberData(nameof(Hallen))]
    public void Admittance_agrees_with_Hallens_equation(double thickness, double kh, double conductance, double susceptanceLow, double susceptanceHigh)
    {
        var y = 1000 * Solve(OverGround(kh, 0.5 * Math.Exp(thickness / 2)), Uniform(thickness <= 10 ? 24 : 64)).PortAdmittances[0, 0];

        // The table's last digit and the stated 1 % of the reference's own convergence.
        Assert.InRange(y.Real, (conductance * 0.99) - 0.0006, (conductance * 1.01) + 0.0006);

        // The delta gap leaves the susceptance free within the drift of the reference over its meshes, and as much again.
        var drift = Math.Abs(susceptanceHigh - susceptanceLow) + 0.02;
        Assert.InRange(y.Imaginary, Math.Min(susceptanceLow, susceptanceHigh) - drift, Math.Max(susceptanceLow, susceptanceHigh) + drift);
    }

    // The reference's own R moves by 1 % with the mesh in its two thick rows, and so may ours.
    [Theory]
    [InlineData(9, 1.4640, 37.40, 0.02)]
    [InlineData(10, 1.4718, 36.55, 0.02)]
    [InlineData(12.5, 1.4946, 36.03, 0.005)]
    [InlineData(15, 1.5107, 35.99, 0.005)]
    [InlineData(20, 1.5288, 36.06, 0.005)]
    [InlineData(30, 1.5445, 36.20, 0.005)]
    public void Resonant_length_and_resistance_agree_with_Hallens_equation(double thickness, double kh, double resistance, double tolerance)
    {
        double low = 1.3, high = 1.57;
        Complex z = default;
        for (var i = 0; i < 30; i++)
        {
            var middle = 0.5 * (low + high);
            z = Solve(OverGround(middle, 0.5 * Math.Exp(thickness / 2)), Uniform(48)).FeedImpedance();
            (low, high) = z.Imaginary > 0 ? (low, middle) : (middle, high);
        }

        Near(kh, 0.5 * (low + high), thickness > 10 ? 0.001 : 0.0025);
        Near(resistance, z.Real, tolerance);
    }

    [Fact]
    public void Quarter_wave_monopole_tends_to_the_sinusoidal_limit_as_it_thins()
    {
        // (η0/8π)[γ + ln 2π − Ci 2π] and (η0/8π) Si 2π: the zero-radius limit (Carter 1932, closed form).
        var limit = new Complex(36.53951, 21.25756);
        var last = double.PositiveInfinity;
        foreach (var thickness in (double[])[15, 30, 60, 120])
        {
            var error = (Solve(OverGround(Math.PI / 2, 0.5 * Math.Exp(thickness / 2)), Uniform(64)).FeedImpedance() - limit).Magnitude;
            Assert.True(error < 0.65 * last, $"thickness {thickness}: {error} after {last}");
            last = error;
        }

        Assert.True(last < 0.5, $"{last} ohm from the limit");
    }

    [Fact]
    public void Reaction_of_the_sinusoid_with_itself_is_the_closed_form_of_zero_radius()
    {
        var mesh = Mesh(OverGround(Math.PI / 2, 1e6), 160);
        var x = SinusoidOn(mesh, 0);
        Near(new Complex(36.53951, 21.25756), Reaction(mesh, x, x), 5e-4);
    }

    [Theory]
    [InlineData(0.005)]
    [InlineData(0.01)]
    [InlineData(0.02)]
    public void Short_monopole_has_forty_pi_squared_h_over_lambda_squared(double height)
    {
        // Rr = 40π²(h/λ)²: any antenna text. The triangle of current it rests on is reached as the wire thins.
        var expected = 40 * Math.PI * Math.PI * height * height * PerTextbookOhm;
        var last = double.PositiveInfinity;
        foreach (var thickness in (double[])[15, 30, 60, 120])
        {
            var r = Solve(OverGround(2 * Math.PI * height, 0.5 * Math.Exp(thickness / 2)), Uniform(64)).FeedImpedance().Real;
            Assert.True(Math.Abs(r - expected) < 0.7 * last, $"thickness {thickness}: {r}");
            last = Math.Abs(r - expected);
        }

        Assert.InRange(last / expected, 0, 0.01);
    }

    [Fact]
    public void Top_loading_raises_radiation_resistance_up_to_four_times()
    {
        // Rr = 160π²(h/λ)² for a current even from bottom to top: four times the bare mast's.
        var h = 0.01 * Wavelength;
        var bare = 40 * Math.PI * Math.PI * 1e-4 * PerTextbookOhm;
        var last = 0.9;
        foreach (var hat in (double[])[0.25, 0.5, 1, 2, 4])
        {
            var model = WireModel.Over(Ground.Perfect).With(new Wire("mast", Vec3.Zero, new(0, 0, h), h / 2000)).WithFeed("base", "mast");
            for (var i = 0; i < 8; i++)
                model = model.With(new Wire($"hat {i}", new(0, 0, h), new(hat * h * Math.Cos(i * Math.PI / 4), hat * h * Math.Sin(i * Math.PI / 4), h), h / 2000));
            var ratio = Solve(model).FeedImpedance().Real / bare;
            Assert.True(ratio > last && ratio < 4.1, $"hat of {hat} h: {ratio} after {last}");
            last = ratio;
        }

        Assert.InRange(last, 3.6, 4.1);
    }

    [Fact]
    public void Free_dipole_has_twice_the_impedance_of_the_monopole()
    {
        var h = 0.25 * Wavelength;
        var dipole = WireModel.Over(Ground.FreeSpace)
            .With(new Wire("dipole", new(0, 0, -h), new(0, 0, h), h / 904)).WithFeed("middle", "dipole", 0.5);
        var monopole = Solve(OverGround(Math.PI / 2, 904), Uniform(32)).FeedImpedance();
        Near(2 * monopole, Solve(dipole, Uniform(64)).FeedImpedance(), 1e-7);
    }

    [Theory]
    [InlineData(1.8e6, 0.12)]
    [InlineData(3.6e6, 0.12)]
    [InlineData(7.05e6, 0.05)]
    public void Refining_the_mesh_moves_the_default_answer_by_little(double frequencyHz, double radiusM)
    {
        var model = WireModel.Over(Ground.Perfect).With(new Wire("mast", Vec3.Zero, new(0, 0, 22), radiusM)).WithFeed("base", "mast");
        Assert.InRange(WireSolver.MeshError(model, frequencyHz, refinement: 2, cancellation: TestContext.Current.CancellationToken), 0, 0.02);
    }

    [Fact]
    public void Fast_factorisation_gives_the_plain_ones_admittance()
    {
        var mesh = WireMesh.Build(RadiationTests.GuyedMast(), FrequencyHz).Mesh!;
        var matrix = ImpedanceMatrix.Fill(mesh, FrequencyHz, TestContext.Current.CancellationToken);
        var n = mesh.UnknownCount;
        var rows = new Complex[n * n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                rows[(i * n) + j] = matrix[i, j];
        var x = new Complex[n];
        var feed = mesh.Basis.At(mesh.FeedEnds[0])[0].Unknown;
        x[feed] = 1;
        PlainLu.Factor(rows, n, TestContext.Current.CancellationToken).Solve(x);
        Near(x[feed], Solve(RadiationTests.GuyedMast()).PortAdmittances[0, 0], 1e-10);
    }

    [Fact]
    public void Uniform_refinement_converges()
    {
        var model = OverGround(Math.PI / 2, 11013.2);
        var z = new[] { 8.0, 16, 32, 64 }.Select(n => Solve(model, Uniform(n)).FeedImpedance()).ToArray();
        for (var i = 2; i < z.Length; i++)
            Assert.True((z[i] - z[i - 1]).Magnitude < 0.7 * (z[i - 1] - z[i - 2]).Magnitude);
    }

    [Fact]
    public void Cage_leg_by_leg_agrees_with_its_equivalent_radius()
    {
        // a_eq = (n·a·r^(n−1))^(1/n), cage of parallel wires (Schelkunoff and Friis 1952, from memory).
        double h = 0.2 * Wavelength, leg = 0.01, circle = 0.2;
        var cage = WireModel.Over(Ground.Perfect).With(new Wire("foot", Vec3.Zero, new(0, 0, 0.5), 0.02)).WithFeed("base", "foot");
        for (var i = 0; i < 3; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * i / 3);
            Vec3 low = new(circle * c, circle * s, 0.5), high = new(circle * c, circle * s, h);
            cage = cage.With(new Wire($"spoke {i}", new(0, 0, 0.5), low, leg), new Wire($"leg {i}", low, high, leg));
        }

        var radius = Shapes.EquivalentRadius.Cage(3, leg, circle).Value;
        var tube = WireModel.Over(Ground.Perfect)
            .With(new Wire("foot", Vec3.Zero, new(0, 0, 0.5), 0.02), new Wire("mast", new(0, 0, 0.5), new(0, 0, h), radius)).WithFeed("base", "foot");
        var options = new SolverOptions(new MeshOptions(60, 10));
        Near(Solve(tube, options).FeedImpedance(), Solve(cage, options).FeedImpedance(), 0.03);
    }
}
