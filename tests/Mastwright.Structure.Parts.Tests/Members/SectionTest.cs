using Mastwright.Structure.Loads;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

public class SectionTest
{
    [Theory]
    // Exact annulus, independent computation; the steel rows agree with the printed EN 10219 tables (11.6, 25.9, 234, 481 cm4).
    // mm: diameter, wall; A mm², I cm4, S cm³, Z cm³, r mm, kg/m.
    [InlineData(48.3, 3.2, 453.39, 11.59, 4.797, 6.520, 15.985, 3.5591, false)]
    [InlineData(60.3, 3.6, 641.26, 25.87, 8.582, 11.589, 20.087, 5.0339, false)]
    [InlineData(114.3, 4.5, 1552.26, 234.32, 41.001, 54.283, 38.853, 12.1852, false)]
    [InlineData(139.7, 5.0, 2115.86, 480.54, 68.796, 90.762, 47.656, 16.6095, false)]
    [InlineData(50.8, 3.048, 457.25, 13.09, 5.152, 6.960, 16.917, 1.2346, true)]
    [InlineData(152.4, 3.175, 1488.45, 414.50, 54.396, 70.712, 52.771, 4.0188, true)]
    public void Tube_properties(double d, double t, double a, double i, double s, double z, double r, double m, bool aluminium)
    {
        var p = new RoundSection(d / 1000, t / 1000).Properties(aluminium ? Metals.Al6061 : Metals.S355);
        Assert.Equal(a, p.Area.Value * 1e6, 0.006);
        Assert.Equal(i, p.SecondMoment.Value * 1e8, 0.006);
        Assert.Equal(s, p.ElasticModulus.Value * 1e6, 0.0006);
        Assert.Equal(z, p.PlasticModulus!.Value * 1e6, 0.0006);
        Assert.Equal(r, p.RadiusOfGyration.Value * 1e3, 0.0006);
        Assert.Equal(m, p.MassPerLength.Value, 6e-5);
    }

    [Fact]
    public void Solid_round_is_the_limit_of_the_thickest_tube()
    {
        var solid = new RoundSection(0.025, 0);
        Assert.Equal(Math.PI * 0.025 * 0.025 / 4, solid.AreaM2, 1e-15);
        Assert.Equal(0.025 / 4, solid.RadiusOfGyrationM, 1e-12);
        Assert.Equal(1.6977, solid.PlasticModulusM3 / solid.ElasticModulusM3, 1e-4); // 16/(3π): textbook shape factor
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    public void Lattice_has_the_same_second_moment_about_every_axis(int legs)
    {
        var section = Lattice(legs, Bracing.Zigzag);
        foreach (var axis in new[] { 0.0, 0.3, 1.1 })
        {
            var sum = Enumerable.Range(0, legs).Sum(k =>
            {
                var y = section.LegRadiusM * Math.Sin((2 * Math.PI * k / legs) + axis);
                return (section.Leg.AreaM2 * y * y) + section.Leg.SecondMomentM4;
            });
            Assert.Equal(1, section.Properties().SecondMoment.Value / sum, 1e-12);
        }
    }

    [Theory]
    [InlineData(Bracing.Zigzag)]
    [InlineData(Bracing.Cross)]
    public void Lattice_bends_shears_and_twists_like_its_space_truss(Bracing pattern)
    {
        // Outside reference: a three-dimensional pin-jointed truss of the same members, solved by the stiffness method in SpaceTruss.
        const int panels = 8;
        var section = Lattice(3, pattern);
        var truss = SpaceTruss.Tower(section, panels);
        var length = panels * section.PanelHeightM;
        var p = section.Properties();
        const double force = 1000;

        var sway = truss.Sway(force);
        var beam = (force * Math.Pow(length, 3) / (3 * p.BendingStiffness.Value)) + (force * length / p.ShearStiffness.Value);
        Assert.Equal(1, beam / sway, 0.02);
        // The bending part alone must not explain the sway, or the shear stiffness would go untested.
        Assert.True(force * length / p.ShearStiffness.Value / beam > 0.1);

        var twist = truss.Twist(force);
        Assert.Equal(1, force * length / p.TorsionStiffness.Value / twist, 0.05);

        var shortening = truss.Shorten(force);
        // Crossing diagonals held by stiff horizontals press along with the legs; the beam leaves that out and is softer by at most their share.
        var along = Math.Pow(section.PanelHeightM / section.DiagonalLengthM, 3);
        var share = pattern == Bracing.Cross ? 2 * section.Diagonal.AreaM2 * along / section.Leg.AreaM2 : 0;
        Assert.InRange(force * length / p.AxialStiffness.Value / shortening, 0.99, 1.01 + share);
    }

    [Fact]
    public void Lattice_shape_hands_its_members_to_the_wind()
    {
        var shape = Lattice(4, Bracing.Cross).Shape(0.4);
        Assert.Equal(4, shape.Legs);
        Assert.Equal(0.4, shape.FaceAzimuthRad);
        // Bare solid area by hand: 2 legs and, between their inner edges, 2 diagonals and a horizontal a panel.
        var clear = 1 - (0.0483 / 0.6);
        var expected = (2 * 0.0483) + (clear * 2 * Math.Sqrt(0.36 + 0.25) / 0.5 * 0.010) + (clear * 0.6 / 0.5 * 0.060);
        Assert.Equal(expected, shape.SolidAreaPerM(null).Value, 1e-12);
    }

    private static LatticeSection Lattice(int legs, Bracing pattern) => new(
        legs, 0.6, 0.5, new(0.0483, 0.004), new(0.010, 0), new(0.060, 0), pattern, Metals.S355, true);
}
