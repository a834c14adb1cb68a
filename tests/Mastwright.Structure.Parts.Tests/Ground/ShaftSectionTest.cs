using Mastwright.Structure.Ground;

namespace Mastwright.Structure.Parts.Tests.Ground;

public class ShaftSectionTest
{
    [Fact]
    public void Empty_tube_reaches_its_plastic_moment()
    {
        // Mechanics of materials: Z = (D³ - d³)/6.
        var tube = new ShaftSection(0.1683) { WallM = 0.005, TubeYieldPa = 235e6 };
        var z = (Math.Pow(0.1683, 3) - Math.Pow(0.1583, 3)) / 6;
        Assert.Equal(235e6 * z, tube.NominalMoment(0).Value, 235e6 * z * 2e-3);
    }

    [Theory]
    [InlineData(0.1683, 0.005, 25e6)]
    [InlineData(0.2191, 0.0063, 35e6)]
    public void Filled_tube_in_pure_bending_by_the_closed_form(double d, double t, double fc)
    {
        // AISC's point B for round filled tubes (companion to the 14th edition, from memory), solved here for its angle θ by equilibrium:
        // 0.95·f'c·h²/8·(θ - sin θ) = Fy·t·rm·2·(π - θ); M = Fy·(d³ - h³)/6·sin(θ/2) + 0.95·f'c·h³·sin³(θ/2)/12.
        const double fy = 235e6;
        var h = d - (2 * t);
        var rm = (d - t) / 2;
        var (low, high) = (0.0, Math.PI);
        for (var i = 0; i < 100; i++)
        {
            var theta = (low + high) / 2;
            var surplus = (0.95 * fc * h * h / 8 * (theta - Math.Sin(theta))) - (fy * t * rm * 2 * (Math.PI - theta));
            (low, high) = surplus < 0 ? (theta, high) : (low, theta);
        }

        var s = Math.Sin(low / 2);
        var moment = (fy * (Math.Pow(d, 3) - Math.Pow(h, 3)) / 6 * s) + (0.95 * fc * Math.Pow(h * s, 3) / 12);
        var section = new ShaftSection(d) { WallM = t, TubeYieldPa = fy, ConcretePa = fc };
        // The closed form takes the same half angle for core and wall; the section measures both from one neutral axis.
        Assert.Equal(moment, section.NominalMoment(0).Value, moment * 0.015);
    }

    [Fact]
    public void Reinforced_shaft_balances_force_and_moment_by_hand()
    {
        // ACI 318 by hand for a 400 mm shaft, f'c 28 MPa (β1 0.85), four 20 mm bars of 420 MPa at 45° on a ring of 140 mm; neutral axis 110 mm deep.
        const double c = 0.110;
        var half = Math.Acos(1 - (0.85 * c / 0.2));
        var concrete = 0.85 * 28e6 * 0.04 * (half - (Math.Sin(half) * Math.Cos(half)));
        var concreteMoment = 0.85 * 28e6 * 2 / 3 * Math.Pow(0.2 * Math.Sin(half), 3);
        var y = 0.14 * Math.Sqrt(0.5);
        var bar = Math.PI * 1e-4;
        // Upper bars at depth 101 mm: strain 0.003·(110 - 101.005)/110 = 0.00024531, 49.06 MPa; lower ones at 298.995 mm are past yield.
        var upper = 2 * bar * 200e9 * 0.003 * (c - (0.2 - y)) / c;
        var lower = -2 * bar * 420e6;
        var axial = concrete + upper + lower;
        var moment = concreteMoment + (upper * y) - (lower * y);
        var shaft = new ShaftSection(0.4) { ConcretePa = 28e6, Bars = 4, BarDiameterM = 0.02, BarRingRadiusM = 0.14 };
        Assert.Equal(moment, shaft.NominalMoment(axial).Value, 1);
    }

    [Fact]
    public void Filling_and_bars_strengthen_a_tube_and_pulling_weakens_a_shaft()
    {
        var empty = new ShaftSection(0.1683) { WallM = 0.005 };
        var filled = empty with { ConcretePa = 25e6 };
        var barred = filled with { Bars = 6, BarDiameterM = 0.016, BarRingRadiusM = 0.05 };
        Assert.True(empty.NominalMoment(0).Value < filled.NominalMoment(0).Value);
        Assert.True(filled.NominalMoment(0).Value < barred.NominalMoment(0).Value);
        var shaft = new ShaftSection(0.4) { ConcretePa = 28e6, Bars = 8, BarDiameterM = 0.02, BarRingRadiusM = 0.14 };
        Assert.True(shaft.NominalMoment(-100e3).Value < shaft.NominalMoment(0).Value);
    }

    [Fact]
    public void Axial_force_beyond_all_strength_leaves_no_moment_and_says_so()
    {
        var trail = new ShaftSection(0.4) { ConcretePa = 28e6, Bars = 4, BarDiameterM = 0.02, BarRingRadiusM = 0.14 }.NominalMoment(-2e6);
        Assert.Equal(0, trail.Value);
        Assert.NotEmpty(trail.RangeWarnings());
    }
}
