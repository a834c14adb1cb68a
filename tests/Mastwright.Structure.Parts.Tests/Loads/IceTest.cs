using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Loads;

namespace Mastwright.Structure.Parts.Tests.Loads;

public class IceTest
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;
    private const double PoundPerFoot = 4.4482216 / Foot;

    [Theory]
    // ASCE 7 (from memory), ice of 56 pcf, independent computation: t in, Dc in, z ft, td and lb/ft with factor 2.0, and without.
    [InlineData(0.5, 0.25, 33, 1.00000, 1.52716, 0.50000, 0.45815)]
    [InlineData(0.5, 0.25, 66, 1.07177, 1.73075, 0.53589, 0.51453)]
    [InlineData(0.5, 4.5, 66, 1.07177, 7.29578, 0.53589, 3.29704)]
    [InlineData(0.75, 0.25, 98.4, 1.67317, 3.93126, 0.83658, 1.11058)]
    public void Freezing_rain_over_height(double t, double dc, double z, double td2, double w2, double td1, double w1)
    {
        const double fiftySixPcf = 56 * 16.018463;
        var site = new IceSite { NominalThicknessM = t * Inch, ConcurrentWindMps = 20, DensityKgPerM3 = fiftySixPcf };
        foreach (var (method, td, w) in new[] { (AsceIce.Edition2010, td2, w2), (AsceIce.Edition2016, td1, w1), (AsceIce.Edition2022, td1, w1) })
        {
            var layer = method.At(site, z * Foot);
            Assert.Equal(td, layer.Thickness.Value / Inch, 1e-5);
            var bare = Trail.Given("diameter", "D", dc * Inch, QuantityKind.FineLength, Source.DesignFile);
            Assert.Equal(w, layer.WeightOn(bare).Value / PoundPerFoot, w * 1e-4);
        }
    }

    [Theory]
    // ISO 12494 table 3 as printed (from memory), kg/m on objects of 10, 30, 100 and 300 mm; the table gives one decimal.
    [InlineData(1, 0.6, 1.1, 3.1, 8.8)]
    [InlineData(2, 1.7, 2.8, 6.8, 18.1)]
    [InlineData(3, 3.4, 5.1, 11.0, 28.0)]
    [InlineData(4, 5.7, 7.9, 15.8, 38.5)]
    [InlineData(5, 8.5, 11.3, 21.2, 49.5)]
    public void Glaze_class_mass(int iceClass, double on10, double on30, double on100, double on300)
    {
        var layer = new IsoGlaze().At(new() { GlazeClass = iceClass }, 30);
        foreach (var (diameterM, kgPerM) in new[] { (0.010, on10), (0.030, on30), (0.100, on100), (0.300, on300) })
        {
            Assert.Equal(kgPerM, layer.WeightNPerM(diameterM) / 9.80665, 0.051);
        }
    }

    [Fact]
    public void Ice_widens_the_mast_and_slows_the_wind()
    {
        var ice = new IceCase(AsceIce.Edition2022, new() { NominalThicknessM = 0.02, ConcurrentWindMps = 18 });
        var bare = new LoadCase(AsceWind.Edition2022, new(18, "C"), new(0));
        var iced = new LoadCase(AsceWind.Edition2022, new(52, "C"), new(0), ice);
        var tube = new TubeShape(0.05);
        var ratio = MastLoads.Wind(iced, tube, 33 * Foot).Magnitude.Value / MastLoads.Wind(bare, tube, 33 * Foot).Magnitude.Value;
        // Same drag of 1.2 on 90 mm instead of 50 mm, the gust of the ice map in the place of the basic speed.
        Assert.Equal(90.0 / 50, ratio, 1e-9);
    }

    [Fact]
    public void Iso_ice_takes_its_share_of_the_pressure()
    {
        var wind = new WindSite(26, "II");
        var ice = new IceCase(new IsoGlaze(), new() { GlazeClass = 3 });
        var guy = CableLoads.Wind(new(new EurocodeWind(), wind, new(0), ice), Vec3.Zero, new(10, 0, 15), 0.00635);
        var bare = CableLoads.Wind(new(new EurocodeWind(), wind, new(0)), Vec3.Zero, new(10, 0, 15), 0.00635);
        // k = 0.5 for G3 and 30 mm of glaze all round (ISO 12494, from memory).
        Assert.Equal(0.5 * 66.35 / 6.35, guy.Magnitude.Value / bare.Magnitude.Value, 1e-9);
    }

    [Fact]
    public void Iced_tube_takes_the_drag_of_the_slower_wind()
    {
        // EN figure 7.28 by hand at k/b = 2/90: qp 1000 Pa over G1's k = 0.40 leaves 400 Pa, v 25.30 m/s, Re 1.518e5; the rough curve gives
        // 1.2 + 0.18·lg(0.2222)/(1 + 0.4·lg 0.1518) = 1.0256 and the drag-crisis branch is over the cap: 1.2.
        var load = new LoadCase(new StatedPressure(), new(0, "") { StatedPressurePa = 1000 }, new(0), new(new IsoGlaze(), new() { GlazeClass = 1 }));
        Assert.Equal(400 * 1.2 * 0.09, MastLoads.Wind(load, new TubeShape(0.07), 10).Magnitude.Value, 1e-9);
        // Without the reduction Re would be 2.4e5, past the crisis, and the drag about 1.05.
        var full = load with { Ice = new(new StatedIce(), new() { NominalThicknessM = 0.01, PressureShare = 1 }) };
        Assert.True(MastLoads.Wind(full, new TubeShape(0.07), 10).Magnitude.Value < 1000 * 1.15 * 0.09);
    }

    [Fact]
    public void Ice_on_a_lattice_is_the_sum_over_its_members()
    {
        var ice = new IceCase(new StatedIce(), new() { NominalThicknessM = 0.01 });
        var lattice = new LatticeShape(3, 0.45, 0.5, 0.038, 0.012, 0.012, Bracing.Cross);
        static double Ring(double d) => 900 * 9.80665 * Math.PI / 4 * (((d + 0.02) * (d + 0.02)) - (d * d));
        var expected = 3 * (Ring(0.038) + (2 * Math.Sqrt((0.45 * 0.45) + 0.25) / 0.5 * Ring(0.012)) + (0.45 / 0.5 * Ring(0.012)));
        Assert.Equal(-expected, MastLoads.Ice(ice, lattice, 10).NPerM.Z, 1e-9);
    }

    [Fact]
    public void Thick_ice_closes_a_lattice_and_says_so()
    {
        var ice = new IceCase(new StatedIce(), new() { NominalThicknessM = 0.06, PressureShare = 0.5 });
        var load = new LoadCase(new EurocodeWind(), new(26, "II"), new(0), ice);
        var wind = MastLoads.Wind(load, new LatticeShape(3, 0.3, 0.3, 0.03, 0.01, 0.01, Bracing.Cross), 10);
        Assert.Contains(wind.Magnitude.RangeWarnings(), w => w.Contains("solid shaft"));
    }

    [Fact]
    public void Missing_concurrent_gust_is_asked_for()
    {
        var finding = Assert.Single(AsceIce.Edition2022.Examine(new() { NominalThicknessM = 0.01 }));
        Assert.Equal("ice-wind", finding.Code);
    }

    [Fact]
    public void Methods_are_found_by_name()
    {
        Assert.All(WindMethods.All, m => Assert.Same(m, WindMethods.Find(" " + m.Name.ToLowerInvariant())));
        Assert.All(IceMethods.All, m => Assert.Same(m, IceMethods.Find(m.Name)));
        Assert.Null(WindMethods.Find("none such"));
    }
}
