using Mastwright.Structure.Ground;

namespace Mastwright.Structure.Parts.Tests.Ground;

/// <summary>Closed forms of soil mechanics against independently computed tables and published cases.</summary>
public class SoilMechanicsTest
{
    [Theory]
    // φ, Ka, Kp, K0, Nq, Nc, Nγ Meyerhof, Nγ Vesic; Ka, Kp, Nq, Nc and Vesic's Nγ agree with the tables of any soil mechanics handbook.
    [InlineData(20, 0.49029, 2.03961, 0.65798, 6.3994, 14.8347, 2.8709, 5.3863)]
    [InlineData(25, 0.40586, 2.46391, 0.57738, 10.6621, 20.7205, 6.7655, 10.8763)]
    [InlineData(30, 0.33333, 3.00000, 0.50000, 18.4011, 30.1396, 15.6680, 22.4025)]
    [InlineData(35, 0.27099, 3.69017, 0.42642, 33.2961, 46.1236, 37.1524, 48.0288)]
    public void Coefficients_by_friction_angle(double phi, double ka, double kp, double k0, double nq, double nc, double meyerhof, double vesic)
    {
        var soil = Soils.Sand(18, phi);
        Assert.Equal(ka, EarthPressure.Active(soil).Value, 1e-5);
        Assert.Equal(kp, EarthPressure.Passive(soil).Value, 1e-5);
        Assert.Equal(k0, EarthPressure.AtRest(soil).Value, 1e-5);
        Assert.Equal(nq, BearingCapacity.Nq(soil).Value, 1e-4);
        Assert.Equal(nc, BearingCapacity.Nc(soil).Value, 1e-4);
        Assert.Equal(meyerhof, BearingCapacity.Ngamma(soil).Value, 1e-4);
        Assert.Equal(vesic, BearingCapacity.NgammaVesic(soil).Value, 1e-4);
    }

    [Fact]
    public void Strip_on_clay_bears_prandtls_pressure() =>
        // A long strip at the surface of clay: (2 + π)·cu (Prandtl 1921).
        Assert.Equal((2 + Math.PI) * 50e3, BearingCapacity.Ultimate(Soils.Clay(50), 1, 1e9, 0).Value, 1);

    [Theory]
    // Broms 1964, clay: cu kPa, D, L, e; H kN, f, Mmax kN·m (independent computation).
    [InlineData(50, 0.4, 2, 0, 63.5336, 0.35296, 49.3327)]
    [InlineData(50, 0.4, 2, 1, 37.4987, 0.20833, 63.9039)]
    [InlineData(50, 0.3, 1.5, 0.5, 24.4746, 0.18129, 25.4695)]
    [InlineData(100, 0.6, 3, 0, 285.9013, 0.52945, 332.9960)]
    public void Short_post_in_clay(double cu, double d, double l, double e, double h, double f, double m)
    {
        var post = Broms.FreeHead(Soils.Clay(cu), d, l, e);
        Assert.Equal(LateralMode.ShortPost, post.Mode);
        Assert.Equal(h, post.Ultimate.Value / 1e3, 1e-4);
        Assert.Equal(f, post.HingeDepth.Value, 1e-5);
        Assert.Equal(m, post.GreatestMoment.Value / 1e3, 1e-4);
        // The method's own second equation: the soil below the hinge balances the moment, 2.25·cu·D·g².
        var g = l - (1.5 * d) - f;
        Assert.Equal(2.25 * cu * d * g * g, m, 0.002);
        Assert.Equal(m, Broms.MomentUnder(Soils.Clay(cu), post.Ultimate, d, e).Value / 1e3, 1e-4);
    }

    [Theory]
    // Broms 1964, sand: γ kN/m³, φ, D, L, e; H kN, f, Mmax kN·m (independent computation).
    [InlineData(18, 30, 0.4, 2, 0, 43.20000, 1.15470, 33.25538)]
    [InlineData(18, 30, 0.4, 2, 1, 28.80000, 0.94281, 46.90193)]
    [InlineData(17, 35, 0.3, 1.5, 0.5, 15.87927, 0.75000, 15.87927)]
    public void Short_post_in_sand(double gamma, double phi, double d, double l, double e, double h, double f, double m)
    {
        var soil = Soils.Sand(gamma, phi);
        var post = Broms.FreeHead(soil, d, l, e);
        Assert.Equal(h, post.Ultimate.Value / 1e3, 1e-5);
        Assert.Equal(f, post.HingeDepth.Value, 1e-5);
        Assert.Equal(m, post.GreatestMoment.Value / 1e3, 1e-5);
        Assert.Equal(m, Broms.MomentUnder(soil, post.Ultimate, d, e).Value / 1e3, 1e-5);
    }

    [Fact]
    public void Long_post_bends_before_the_soil_gives_way()
    {
        // My 30 kN·m, D 0.2 m, e 0.5 m: 30.87857 kN in clay of cu 50 kPa, 23.13572 kN in sand of 18 kN/m³ and 30° (independent computation).
        var clay = Broms.FreeHead(Soils.Clay(50), 0.2, 6, 0.5, 30e3);
        var sand = Broms.FreeHead(Soils.Sand(), 0.2, 6, 0.5, 30e3);
        Assert.Equal((LateralMode.LongPost, LateralMode.LongPost), (clay.Mode, sand.Mode));
        Assert.Equal(30.87857, clay.Ultimate.Value / 1e3, 1e-5);
        Assert.Equal(0.34310, clay.HingeDepth.Value, 1e-5);
        Assert.Equal(23.13572, sand.Ultimate.Value / 1e3, 1e-5);
        Assert.Equal(30, sand.GreatestMoment.Value / 1e3, 1e-6);
        Assert.Equal(30, clay.GreatestMoment.Value / 1e3, 1e-6);
    }

    [Fact]
    public void Post_whose_head_is_held_in_clay() =>
        Assert.Equal(252.0, Broms.ShortFixedHeadInClay(Soils.Clay(50), 0.4, 2).Value / 1e3, 1e-9);

    [Fact]
    public void Plate_uplift_in_sand()
    {
        // Meyerhof and Adams 1968 (from memory), independent computation, kN.
        Assert.Equal(46.3724, PlateUplift.Rectangle(Soils.Sand(18, 30), 0.6, 0.6, 1.5).Value / 1e3, 1e-4);
        Assert.Equal(69.9985, PlateUplift.Rectangle(Soils.Sand(17, 35), 1.0, 0.5, 1.5).Value / 1e3, 1e-4);
        Assert.Equal(36.4208, PlateUplift.Circle(Soils.Sand(18, 30), 0.6, 1.5).Value / 1e3, 1e-4);
        Assert.Equal(122.8239, PlateUplift.Circle(Soils.Sand(17.4, 35), 1.5, 1.5).Value / 1e3, 1e-4);
    }

    [Theory]
    // Published break-out factors of square plates in dense sand with Ku·tan φ = 0.92 (Soil Reinforcement for Anchor Plates and Uplift Response,
    // appendix G, after Meyerhof and Adams): 3.70, 8.20, 14.47, 22.51 at H/B 1 to 4. Their m is 0.48; the table's row at this angle gives 0.472.
    [InlineData(1, 3.70)]
    [InlineData(2, 8.20)]
    [InlineData(3, 14.47)]
    [InlineData(4, 22.51)]
    public void Break_out_factor_of_a_published_table(double ratio, double factor)
    {
        var soil = Soils.Sand(17, Math.Atan(0.92 / 0.95) / Soils.Degree);
        var uplift = PlateUplift.Rectangle(soil, 0.1, 0.1, 0.1 * ratio).Value;
        Assert.Equal(factor, uplift / (17e3 * 0.01 * 0.1 * ratio), factor * 0.015);
    }

    [Theory]
    // Greatest s by friction angle as tabled with the paper (from memory).
    [InlineData(20, 1.12)]
    [InlineData(30, 1.60)]
    [InlineData(35, 2.25)]
    [InlineData(40, 3.45)]
    [InlineData(45, 5.50)]
    [InlineData(48, 7.60)]
    public void Shape_factor_stops_growing_where_failure_turns_deep(double phi, double s) =>
        Assert.Equal(s, PlateUplift.Shape(phi * Soils.Degree, 0.3, 30).Shape, 0.006);

    [Fact]
    public void Deep_plate_joins_the_shallow_one_without_a_step()
    {
        var soil = Soils.Sand(18, 30);
        Assert.Equal(PlateUplift.Rectangle(soil, 0.3, 0.3, 1.2 - 1e-9).Value, PlateUplift.Rectangle(soil, 0.3, 0.3, 1.2 + 1e-9).Value, 0.01);
        Assert.Contains("deep", PlateUplift.Rectangle(soil, 0.3, 0.3, 1.3).Formula);
    }

    [Fact]
    public void Continuous_deadman_feels_rankines_difference()
    {
        // γ 18 kN/m³, φ 30°: 34.5600 kN/m from the surface to 1.2 m; 25.9200 kN/m on a strip 0.6 m high with its bottom at 1.2 m (independent computation).
        Assert.Equal(34.56, EarthPressure.NetPassive(Soils.Sand(), 0, 1.2).Value / 1e3, 1e-9);
        Assert.Equal(25.92, EarthPressure.NetPassive(Soils.Sand(), 0.6, 1.2).Value / 1e3, 1e-9);
    }

    [Fact]
    public void Short_deadman_gains_from_its_ends() =>
        // Teng 1962 (from memory), L 1.0 m, H 1.2 m, K0 0.4: 40.0896 kN (independent computation).
        Assert.Equal(40.0896, new Deadman(1.0, 0.6, 0.4, 0.6).Ultimate(Soils.Sand()).Value / 1e3, 1e-4);

    [Fact]
    public void Ground_water_takes_weight_away()
    {
        var wet = Soils.Sand(20) with { Submerged = true };
        var ratio = EarthPressure.NetPassive(wet, 0, 1).Value / EarthPressure.NetPassive(Soils.Sand(20), 0, 1).Value;
        Assert.Equal((20 - 9.80665) / 20, ratio, 1e-9);
    }

    [Fact]
    public void Code_embedment_satisfies_its_own_formula()
    {
        // IBC 1807.3.2.1 (from memory) in feet and pounds by hand: P 1000 lb, h 3 ft, b 1 ft, S 150 psf/ft.
        const double foot = 0.3048, pound = 4.4482216;
        var d = AnchorPost.RequiredDepth(1000 * pound, 150 * pound / (foot * foot * foot), foot, 3 * foot) / foot;
        var a = 2.34 * 1000 / (150 * d / 3 * 1);
        Assert.Equal(d, 0.5 * a * (1 + Math.Sqrt(1 + (4.36 * 3 / a))), 1e-6);
        Assert.InRange(d, 6, 10);
    }
}
