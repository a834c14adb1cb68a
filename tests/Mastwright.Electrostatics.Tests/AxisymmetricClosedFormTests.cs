using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Units;

namespace Mastwright.Electrostatics.Tests;

/// <summary>The axisymmetric engine against closed forms, evaluated outside with 30 digits.</summary>
public class AxisymmetricClosedFormTests
{
    private const double FourPiEps = 4 * Math.PI * Vacuum.PermittivityFPerM;

    private static AxisymmetricBody HalfSpheroid(double heightM, double radiusM) =>
        new("spheroid", [new MeridianArc(0, 0, radiusM, heightM, 0, Math.PI / 2)]);

    // Enhancement at the tip of an earthed half spheroid on a plane: 1/Lz (Landau and Lifshitz).
    [Theory]
    [InlineData(1, 3)]
    [InlineData(2, 5.761563540)]
    [InlineData(5, 17.91441466)]
    [InlineData(10, 49.29537122)]
    [InlineData(20, 148.1688972)]
    [InlineData(50, 693.0132882)]
    public void Tip_of_half_a_spheroid_on_a_plane(double aspect, double enhancement)
    {
        var field = AxisymmetricElectrostatics.Solve([HalfSpheroid(10, 10 / aspect)], refinement: 2).With([ConductorState.Earthed], 1);
        var (point, e) = field.Strongest(0);
        Assert.Equal(1, e / enhancement, 1e-3);
        Assert.Equal(10, point.Position.Z, 0.05);
    }

    // The charge of a lone ball is even, so only quadrature is left; the torus has an uneven charge and shows the order of the elements.
    [Fact]
    public void Error_falls_at_least_with_the_refinement_squared()
    {
        double Error(double refinement) =>
            Math.Abs((AxisymmetricElectrostatics.Solve([AxisymmetricBody.Ring("ring", 0, 1, 0.5)], false, refinement).SelfCapacitanceF(0) / (FourPiEps * 1.215835206)) - 1);
        Assert.True(Error(2) < 0.3 * Error(1), $"{Error(1):e2} {Error(2):e2}");
    }

    // Isolated prolate spheroid: C/(4 pi eps0 c) = e/atanh e.
    [Theory]
    [InlineData(2, .6575953611)]
    [InlineData(10, .3324134180)]
    [InlineData(50, .2171085223)]
    public void Isolated_spheroid(double aspect, double c)
    {
        var body = new AxisymmetricBody("spheroid", [new MeridianArc(0, 0, 1 / aspect, 1, -Math.PI / 2, Math.PI / 2)]);
        Assert.Equal(1, AxisymmetricElectrostatics.Solve([body], false, 2).SelfCapacitanceF(0) / (FourPiEps * c), 2e-3);
    }

    // Isolated torus by toroidal functions.
    [Theory]
    [InlineData(2, 1.215835206)]
    [InlineData(5, .8687103499)]
    [InlineData(10, .7216898805)]
    [InlineData(50, .5245648755)]
    public void Isolated_torus(double ratio, double c)
    {
        var basis = AxisymmetricElectrostatics.Solve([AxisymmetricBody.Ring("ring", 0, 1, 1 / ratio)], false);
        Assert.Equal(1, basis.SelfCapacitanceF(0) / (FourPiEps * c), 1e-5);
    }

    // Ball over a plane: capacitance by the sinh series and greatest field by images.
    [Theory]
    [InlineData(.1, 2.155086117, 1.067574867)]
    [InlineData(.5, 1.535370509, 1.358996328)]
    [InlineData(2, 1.201155285, 2.677705287)]
    [InlineData(10, 1.047623743, 10.54643831)]
    public void Ball_over_a_plane(double gap, double c, double f)
    {
        var basis = AxisymmetricElectrostatics.Solve([AxisymmetricBody.Ball("ball", 1 + gap, 1)], refinement: 2);
        Assert.Equal(1, basis.SelfCapacitanceF(0) / (FourPiEps * c), 2e-3);
        var (point, e) = basis.With([ConductorState.At(1)], 0).Strongest(0);
        Assert.Equal(1, e * gap / f, 5e-3);
        Assert.Equal(gap, point.Position.Z, 1e-3);
    }

    [Theory]
    [InlineData(.2, 1.077543059, 1.067574867)]
    [InlineData(1, .7676852544, 1.358996328)]
    public void Two_balls_in_free_space(double gap, double between, double f)
    {
        var basis = AxisymmetricElectrostatics.Solve(
            [AxisymmetricBody.Ball("lower", -1 - (gap / 2), 1), AxisymmetricBody.Ball("upper", 1 + (gap / 2), 1)], false, 2);
        var field = basis.With([ConductorState.At(-0.5), ConductorState.At(0.5)], 0);
        Assert.Equal(1, field.ChargeC[1] / (FourPiEps * between), 2e-3);
        Assert.Equal(1, Math.Abs(field.Strongest(1).FieldVPerM) * gap / f, 5e-3);
    }

    // A ball without charge in a uniform field: three times the field, and it floats at the potential of its centre.
    [Fact]
    public void Floating_ball_far_from_the_plane()
    {
        var basis = AxisymmetricElectrostatics.Solve([AxisymmetricBody.Ball("ball", 0, 1)], false, 2);
        var field = basis.With([ConductorState.Floating], 100);
        Assert.Equal(300, Math.Abs(field.Strongest(0).FieldVPerM), 1.5);
        Assert.Equal(0, field.PotentialV[0], 0.05);
        Assert.Equal(0, field.ChargeC[0], 1e-16);
    }

    [Fact]
    public void Capacitance_matrix_is_symmetric()
    {
        var c = AxisymmetricElectrostatics.Solve(
            [AxisymmetricBody.Rod("mast", 0.3, 20, 0.05), AxisymmetricBody.Ring("ring", 21, 0.4, 0.02), AxisymmetricBody.Rod("stub", 0, 0.2, 0.05)]).CapacitanceF;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < i; j++)
                Assert.Equal(1, c[i, j] / c[j, i], 0.02);
        }
    }

    [Fact]
    public void Isolated_ball_and_disc()
    {
        var ball = AxisymmetricElectrostatics.Solve([AxisymmetricBody.Ball("ball", 0, 0.1)], false, 2).SelfCapacitanceF(0);
        Assert.Equal(11.12650055e-12, ball, 0.01e-12);
        // A disc's charge runs away at its rim: the constant elements are slow there, hence the finer mesh.
        var disc = AxisymmetricElectrostatics.Solve([new("disc", [new MeridianLine(0, 0, 0.1, 0)])], false, 8).SelfCapacitanceF(0);
        Assert.Equal(1, disc / 7.08335025e-12, 0.01);
    }
}
