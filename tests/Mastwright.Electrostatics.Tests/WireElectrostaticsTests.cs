using Mastwright.Fields.Electrostatics;
using Mastwright.Model.Units;

namespace Mastwright.Electrostatics.Tests;

/// <summary>The charge simulation of wires against closed forms and against the axisymmetric engine, which shares no code with it but the linear solver.</summary>
public class WireElectrostaticsTests
{
    private const double FourPiEps = 4 * Math.PI * Vacuum.PermittivityFPerM;

    // Isolated torus by toroidal functions; the ring here is a polygon of thin wires.
    [Theory]
    [InlineData(10, .7216898805, 0.01)]
    [InlineData(20, .6202954000, 0.006)]
    [InlineData(50, .5245648755, 0.004)]
    public void Ring_has_the_capacitance_of_a_torus(double ratio, double c, double within)
    {
        var basis = WireElectrostatics.Solve([new("ring", Wire.LevelRing(default, 1, 1 / ratio))], false);
        Assert.Equal(1, basis.SelfCapacitanceF(0) / (FourPiEps * c), within);
    }

    [Theory]
    [InlineData(10, 0.05)]
    [InlineData(2, 0.005)]
    [InlineData(20, 0.03)]
    public void Rod_on_the_plane_agrees_with_the_axisymmetric_engine(double heightM, double radiusM)
    {
        var axial = AxisymmetricElectrostatics.Solve([AxisymmetricBody.Rod("rod", 0, heightM, radiusM)], refinement: 2);
        var wire = WireElectrostatics.Solve([new("rod", [new(default, new(0, 0, heightM), radiusM, true)])]);
        Assert.Equal(1, wire.ChargePerFieldCM[0] / axial.ChargePerFieldCM[0], 0.002);
        var tip = wire.With([ConductorState.Earthed], 1).Strongest(0);
        Assert.Equal(heightM, tip.Point.Position.Z, 1e-9);
        Assert.Equal(1, tip.FieldVPerM / axial.With([ConductorState.Earthed], 1).Strongest(0).FieldVPerM, 0.04);
    }

    // Two long parallel wires in free space: pi eps0 / acosh(D/2a) per metre (any field text), corrected for the ends by doubling the length.
    [Fact]
    public void Two_parallel_wires_have_the_textbook_capacitance_per_metre()
    {
        double Between(double length)
        {
            var basis = WireElectrostatics.Solve(
                [new("one", [new(new(0, 0, 0), new(0, length, 0), 0.005)]), new("two", [new(new(1, 0, 0), new(1, length, 0), 0.005)])], false, 0.5);
            return basis.With([ConductorState.At(0.5), ConductorState.At(-0.5)], 0).ChargeC[0];
        }

        var perMetre = (Between(60) - Between(30)) / 30;
        Assert.Equal(1, perMetre / (Math.PI * Vacuum.PermittivityFPerM / Math.Acosh(1 / 0.01)), 0.01);
    }

    [Fact]
    public void A_floating_guy_takes_the_potential_of_its_middle()
    {
        // A straight wire without charge in a uniform field floats where the field's potential is at its middle, by symmetry, away from the plane.
        var basis = WireElectrostatics.Solve([new("guy", [new(new(0, 0, 1000), new(10, 0, 1010), 0.003)])]);
        var field = basis.With([ConductorState.Floating], 100);
        Assert.Equal(-100_500, field.PotentialV[0], 1.0);
    }

    [Fact]
    public void Guys_shield_the_mast()
    {
        WireConductor mast = new("mast", [new(default, new(0, 0, 20), 0.03, true)]);
        WireConductor guys = new("guys", [.. new[] { 0, 120, 240 }.Select(d =>
        {
            var (s, c) = Math.SinCos(d * Math.PI / 180);
            return new Wire(new(0.5 * c, 0.5 * s, 19), new(14 * c, 14 * s, 0.5), 0.003);
        })]);
        var alone = WireElectrostatics.Solve([mast]).ChargePerFieldCM[0];
        var earthedGuys = WireElectrostatics.Solve([mast, guys]).ChargePerFieldCM[0];
        Assert.True(earthedGuys < 0.85 * alone);
    }
}
