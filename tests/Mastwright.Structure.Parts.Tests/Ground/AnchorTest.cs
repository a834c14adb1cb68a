using Mastwright.Model.Trails;
using Mastwright.Structure.Ground;

namespace Mastwright.Structure.Parts.Tests.Ground;

public class AnchorTest
{
    private static readonly GroundFactors Factors = new();
    private static readonly AnchorPull Pull = new(8e3, 9e3);

    public static TheoryData<Anchor> Anchors() =>
    [
        new Deadman(1.5, 0.6, 0.6, 0.9) { BarAreaM2 = 400e-6 },
        new ConcreteBlock(1.2, 1.0, 0.8, 0.3),
        new PlateAnchor(0.6, 0.6, 1.5),
        new AnchorPost(new ShaftSection(0.1683) { WallM = 0.005, ConcretePa = 25e6 }, 2.0, 0.3) { HoleDiameterM = 0.45, WeightN = 8e3 },
        new ScrewAnchor([new(0.2, 2.0), new(0.25, 1.4)], 100e3) { InstallationTorqueNm = 1500 },
        new RockAnchor(0.05, 2, 0.02),
    ];

    [Theory]
    [MemberData(nameof(Anchors))]
    public void Anchor_says_what_must_hold_with_cure_and_caution(Anchor anchor)
    {
        foreach (var soil in new[] { Soils.Sand(), Soils.Clay(), Soils.Rock })
        {
            var checks = anchor.Examine(Duty(soil, new(40e3, 40e3))).ToArray();
            Assert.NotEmpty(checks);
            Assert.Equal(checks.Length, checks.Select(c => c.Id).Distinct().Count());
            Assert.All(checks, c =>
            {
                Assert.StartsWith("stand.anchor.", c.Id);
                Assert.EndsWith("[north]", c.Id);
                Assert.Contains("only a soil test knows", c.Caution);
                Assert.True(c.Verdict == Verdict.Pass || c.Cure.Length > 0, c.Id);
            });
        }
    }

    [Theory]
    [MemberData(nameof(Anchors))]
    public void Ten_times_the_pull_is_ten_times_the_use_or_more(Anchor anchor)
    {
        var small = anchor.Examine(Duty(Soils.Sand(), new(1e3, 1e3))).ToArray();
        var large = anchor.Examine(Duty(Soils.Sand(), new(10e3, 10e3))).ToArray();
        foreach (var (a, b) in small.Zip(large).Where(p => !p.First.Id.Contains("code-depth")))
        {
            Assert.True(b.Ratio >= a.Ratio * 9.99, $"{a.Id}: {a.Ratio} {b.Ratio}");
        }
    }

    [Fact]
    public void Soil_without_the_value_a_method_needs_gives_unknown_and_never_a_pass()
    {
        var checks = new PlateAnchor(1, 1, 2).Examine(Duty(new("fill", 12e3), Pull)).ToArray();
        var check = Assert.Single(checks);
        Assert.Equal(Verdict.Unknown, check.Verdict);
        Assert.Contains("tested", check.Cure);
    }

    [Fact]
    public void Block_by_hand()
    {
        // 1.2 × 1.0 × 0.8 m of 23.5 kN/m³: 22.56 kN, 0.3 m of sand on it 6.48 kN; W 29.04 kN.
        var checks = new ConcreteBlock(1.2, 1.0, 0.8, 0.3).Examine(Duty(Soils.Sand(), Pull)).ToDictionary(c => c.Id.Split('[')[0]);
        Assert.Equal(29.04e3 / 1.5, checks["stand.anchor.block-uplift"].Capacity.Value, 1e-6);
        // Friction 0.25·(29.04 - 9) = 5.01 kN; half of ½·18·(1.1² - 0.3²)·(3 - ⅓)·1.0 = 13.44 kN; over 1.5.
        Assert.Equal((5.01e3 + 13.44e3) / 1.5, checks["stand.anchor.block-sliding"].Capacity.Value, 1e-6);
        // Tipping about the front edge: 8·0.8 + 9·0.6 = 11.8 kN·m against 29.04·0.6/1.5 = 11.616 kN·m.
        Assert.Equal(11.8e3, checks["stand.anchor.block-tipping"].Demand.Value, 1e-6);
        Assert.Equal(11.616e3, checks["stand.anchor.block-tipping"].Capacity.Value, 1e-6);
        Assert.Equal(Verdict.Fail, checks["stand.anchor.block-tipping"].Verdict);
    }

    [Fact]
    public void Deadman_by_hand()
    {
        var checks = new Deadman(1.0, 0.6, 0.4, 0.6) { BarAreaM2 = 400e-6 }.Examine(Duty(Soils.Sand(), Pull)).ToDictionary(c => c.Id.Split('[')[0]);
        Assert.Equal(40.0896e3 / 2, checks["stand.anchor.deadman-pull"].Capacity.Value, 0.1);
        // Concrete 23.5·0.24 = 5.64 kN, sand 18·0.24 = 4.32 kN, over 1.5.
        Assert.Equal((5.64e3 + 4.32e3) / 1.5, checks["stand.anchor.deadman-uplift"].Capacity.Value, 1e-6);
        // M = T·L/8; As·fy·0.9·d/1.67 with d = 0.4 - 0.075.
        Assert.Equal(Math.Sqrt(145e6) / 8, checks["stand.anchor.deadman-bending"].Demand.Value, 1e-6);
        Assert.Equal(400e-6 * 420e6 * 0.9 * 0.325 / 1.67, checks["stand.anchor.deadman-bending"].Capacity.Value, 1e-6);
    }

    [Fact]
    public void Screw_anchor_by_hand()
    {
        // Clay of 50 kPa, two plates over five diameters deep: 9·cu·A each (Nc 9, common to every handbook).
        var screw = new ScrewAnchor([new(0.2, 2.0), new(0.25, 1.4)], 100e3);
        var area = Math.PI / 4 * ((0.2 * 0.2) + (0.25 * 0.25));
        Assert.Equal(9 * 50e3 * area, screw.Ultimate(Soils.Clay()).Value, 1e-6);
        Assert.NotEmpty(new ScrewAnchor([new(0.2, 2.0), new(0.2, 1.7)], 100e3).Ultimate(Soils.Clay()).RangeWarnings());
        // Torque correlation: 33 per metre (10 per foot), Hoyt and Clemence 1989 from memory: 2000 lb·ft gives 20000 lb.
        const double pound = 4.4482216, foot = 0.3048;
        var torqued = (screw with { InstallationTorqueNm = 2000 * pound * foot }).Examine(Duty(Soils.Clay(), Pull)).Single(c => c.Id.Contains("torque"));
        Assert.Equal(20000 * pound / 2, torqued.Capacity.Value, 20000 * pound / 2 * 0.01);
    }

    [Fact]
    public void Rock_anchor_by_hand()
    {
        var checks = new RockAnchor(0.05, 2, 0.02) { RockBondPa = 0.6e6, ConeAngleRad = Math.PI / 2 }.Examine(Duty(Soils.Rock, Pull)).ToDictionary(c => c.Id.Split('[')[0]);
        Assert.Equal(Math.PI * 0.05 * 2 * 0.6e6 / 3, checks["stand.anchor.rock-bond"].Capacity.Value, 1e-6);
        // 90° cone one metre deep: π/3 m³ of 25 kN/m³.
        Assert.Equal(25e3 * Math.PI / 3 / 1.5, checks["stand.anchor.rock-cone"].Capacity.Value, 1e-6);
        Assert.Equal(Math.PI / 4 * 4e-4 * 420e6 / 1.67, checks["stand.anchor.rock-bar"].Capacity.Value, 1e-6);
    }

    [Fact]
    public void Weak_post_in_good_soil_is_told_to_grow_and_a_stout_one_to_go_deeper()
    {
        var weak = new AnchorPost(new ShaftSection(0.0603) { WallM = 0.0032 }, 3, 0.6).Examine(Duty(Soils.Clay(100), Pull)).First();
        var stout = new AnchorPost(new ShaftSection(0.3239) { WallM = 0.01, ConcretePa = 30e6 }, 1.2, 0.6).Examine(Duty(Soils.Clay(20), Pull)).First();
        Assert.Contains("stronger post", weak.Cure);
        Assert.Contains("deeper", stout.Cure);
    }

    private static AnchorDuty Duty(Soil soil, AnchorPull pull) => new("north", soil, pull, "wind from 030", Factors);
}
