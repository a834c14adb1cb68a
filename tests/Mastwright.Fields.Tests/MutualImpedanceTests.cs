using System.Numerics;
using Mastwright.Fields.Wires;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>Mutual impedance by the induced-EMF closed form (Carter 1932; Brown 1937; checked there by independent quadrature).</summary>
public class MutualImpedanceTests
{
    [Theory]
    [InlineData(90, 90, 0.05, 35.80375, 12.12595)]
    [InlineData(90, 90, 0.10, 33.64352, 3.76629)]
    [InlineData(90, 90, 0.25, 20.37875, -14.16472)]
    [InlineData(90, 90, 0.50, -6.26170, -14.95397)]
    [InlineData(90, 90, 1.00, 2.00443, 8.86488)]
    [InlineData(45, 45, 0.10, 6.19338, -7.58406)]
    [InlineData(45, 45, 0.50, -1.05143, -2.84114)]
    [InlineData(60, 60, 0.25, 7.22941, -5.84108)]
    [InlineData(75, 75, 0.10, 20.40831, -2.40476)]
    [InlineData(110, 110, 0.10, 65.16034, 17.09199)]
    [InlineData(135, 135, 0.25, 100.71010, -66.28511)]
    [InlineData(90, 60, 0.10, 19.93747, -0.52031)]
    [InlineData(90, 60, 0.25, 12.13161, -8.85546)]
    [InlineData(90, 60, 0.50, -3.59108, -8.94809)]
    public void Reaction_of_sinusoids_is_the_closed_form(double degrees1, double degrees2, double spacing, double r, double x)
    {
        var mesh = Mesh(Pair(degrees1 / 360, degrees2 / 360, spacing, 1e-6), 64);
        Near(new Complex(r, x), Reaction(mesh, SinusoidOn(mesh, 0), SinusoidOn(mesh, 1)), 1e-3);
    }

    [Theory]
    [InlineData(0.10, 33.64352, 3.76629)]
    [InlineData(0.25, 20.37875, -14.16472)]
    [InlineData(0.50, -6.26170, -14.95397)]
    [InlineData(0.75, -11.24062, 3.31382)]
    public void Solved_thin_masts_come_close_to_the_closed_form(double spacing, double r, double x)
    {
        // The true current of a thin wire differs from the sinusoid by about the reciprocal of its thickness parameter.
        var z = Solve(Pair(0.25, 0.25, spacing, 1e-12), Uniform(32)).PortImpedances;
        Near(new Complex(r, x), z[0, 1], 0.06);
    }

    [Fact]
    public void Reciprocity_holds_between_unlike_wires()
    {
        var model = Pair(0.22, 0.13, 0.17, 0.0008)
            .With(new Wire("slope", new(0, 0, 0.2 * Wavelength), new(0.1 * Wavelength, 0.15 * Wavelength, 0.05 * Wavelength), 0.004, Conductor.Steel))
            .WithLoad("coil", "two", 0.5, new LoadElement.Coil(5e-6, 200));
        var solution = Solve(model);
        Near(solution.PortImpedances[0, 1], solution.PortImpedances[1, 0], 1e-9);

        // And seen from outside: the current that one volt at each base drives through the other, short-circuited, base.
        Near(solution.DriveVoltages(1, 0).FeedCurrents[1], solution.DriveVoltages(0, 1).FeedCurrents[0], 1e-6);
    }
}
