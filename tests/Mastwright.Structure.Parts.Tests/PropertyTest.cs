using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Ground;
using Mastwright.Structure.Loads;
using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests;

/// <summary>What must hold whatever the numbers: drawn at random from a fixed seed, so that a failure can be repeated.</summary>
public class PropertyTest
{
    private static readonly LatticeSection Lattice = new(3, 0.45, 0.5, new(0.038, 0.0032), new(0.012, 0), null, Bracing.Zigzag, Members.Metals.S355, true);

    [Fact]
    public void Wind_blows_along_its_direction_and_grows_with_height_and_the_square_of_speed()
    {
        var random = new Random(20251);
        for (var i = 0; i < 200; i++)
        {
            var method = WindMethods.All[random.Next(3)];
            var exposure = method.Exposures[random.Next(method.Exposures.Length)];
            var direction = new WindDirection(random.NextDouble() * 2 * Math.PI);
            var (z, v) = (1 + (random.NextDouble() * 60), 15 + (random.NextDouble() * 25));
            LoadCase Case(double speed) => new(method, new(speed, exposure), direction);
            MastShape shape = Lattice.Shape(random.NextDouble());
            var load = MastLoads.Wind(Case(v), shape, z);
            Assert.Equal(load.Magnitude.Value, load.NPerM.Dot(direction.Towards), 1e-9);
            Assert.True(MastLoads.Wind(Case(v), shape, z + 5).Magnitude.Value >= load.Magnitude.Value);
            // Drag of a lattice does not follow the Reynolds number here, so force goes as speed squared.
            Assert.Equal(4, MastLoads.Wind(Case(2 * v), shape, z).Magnitude.Value / load.Magnitude.Value, 1e-9);
        }
    }

    [Fact]
    public void Wind_on_a_guy_stays_normal_to_it_and_never_pushes_against_the_wind()
    {
        var random = new Random(20252);
        for (var i = 0; i < 200; i++)
        {
            var high = new Vec3(random.NextDouble() - 0.5, random.NextDouble() - 0.5, 0.1 + random.NextDouble()) * 40;
            var load = new LoadCase(AsceWind.Edition2022, new(45, "C"), new(random.NextDouble() * 7));
            var wind = CableLoads.Wind(load, Vec3.Zero, high, 0.008).NPerM;
            Assert.Equal(0, wind.Dot(high.Unit()), 1e-9);
            Assert.True(wind.Dot(load.Direction.Towards) >= 0);
        }
    }

    [Fact]
    public void Members_lose_strength_with_length_and_use_grows_with_force()
    {
        var random = new Random(20253);
        foreach (var rules in MemberRules.All)
        {
            var metal = Members.Metals.Of(rules.Family);
            for (var i = 0; i < 50; i++)
            {
                var d = 0.03 + (0.12 * random.NextDouble());
                var member = new RoundMember(new(d, d * (0.02 + (0.1 * random.NextDouble()))), metal, 0.2 + (6 * random.NextDouble())) { WeldedShare = random.NextDouble() };
                var (a, b) = (rules.Strength(member), rules.Strength(member with { LengthM = member.LengthM * 1.1 }));
                Assert.True(b.Compression.Value <= a.Compression.Value * (1 + 1e-12), rules.Name);
                Assert.True(a.Compression.Value <= a.Tension.Value * 1.4, rules.Name);
                var forces = new MemberForces(0.4 * a.Compression.Value * random.NextDouble(), 0.4 * a.Bending.Value * random.NextDouble());
                Assert.True(rules.Use(member, new(forces.AxialN * 1.2, forces.MomentNm * 1.2)).Value > rules.Use(member, forces).Value, rules.Name);
            }
        }
    }

    [Fact]
    public void Posts_carry_more_the_deeper_they_go_and_less_the_higher_they_are_pulled()
    {
        var random = new Random(20254);
        for (var i = 0; i < 100; i++)
        {
            var soil = random.Next(2) == 0 ? Ground.Soils.Sand(16 + (4 * random.NextDouble()), 25 + (15 * random.NextDouble())) : Ground.Soils.Clay(20 + (80 * random.NextDouble()));
            var (d, l, e) = (0.15 + (0.4 * random.NextDouble()), 1.2 + (2 * random.NextDouble()), random.NextDouble());
            var post = Broms.FreeHead(soil, d, l, e).Ultimate.Value;
            Assert.True(Broms.FreeHead(soil, d, l * 1.1, e).Ultimate.Value > post);
            Assert.True(Broms.FreeHead(soil, d, l, e + 0.2).Ultimate.Value < post);
            Assert.True(Broms.FreeHead(soil, d, l, e, 5e3).Ultimate.Value <= post + 1e-6);
        }
    }

    [Fact]
    public void Every_number_of_a_load_names_its_source()
    {
        var ice = new IceCase(AsceIce.Edition2016, new() { NominalThicknessM = 0.02, ConcurrentWindMps = 18 });
        foreach (var method in WindMethods.All)
        {
            var site = new WindSite(40, method.Exposures.IsEmpty ? "" : method.Exposures[^1]);
            AllNamed(MastLoads.Wind(new(method, site, new(1), ice), new TubeShape(0.1), 12).Magnitude);
            AllNamed(MastLoads.Wind(new(method, site, new(1)), Lattice.Shape(), 12, [new("cable", 0.012)]).Magnitude);
        }

        foreach (var rules in MemberRules.All)
        {
            AllNamed(rules.Use(new(new(0.1, 0.004), Members.Metals.Of(rules.Family), 3), new(1e3, 1e2)));
        }

        static void AllNamed(Trail trail)
        {
            Assert.NotEqual("", trail.Source.Title);
            Assert.NotEqual("", trail.Name);
            Assert.NotEqual("", trail.Symbol);
            Assert.True(trail.Inputs.IsEmpty || trail.Formula.Length > 0, trail.Name);
            foreach (var input in trail.Inputs)
            {
                AllNamed(input);
            }
        }
    }

    [Fact]
    public void Slow_mast_is_told_that_the_gust_factor_is_not_meant_for_it()
    {
        static Trail Frequency(double hertz) => Trail.Given("lowest natural frequency", "f1", hertz, QuantityKind.VibrationFrequency, Source.DesignFile);
        Assert.Equal(Verdict.Pass, GustRange.RigidEnough("mast A", Frequency(2.5)).Verdict);
        Assert.Equal(Verdict.Fail, GustRange.RigidEnough("mast A", Frequency(0.6)).Verdict);
    }

    [Fact]
    public void Anchor_pull_of_a_force_that_presses_down_lifts_nothing()
    {
        Assert.Equal(new AnchorPull(5, 7), AnchorPull.Of(new(3, 4, 7)));
        Assert.Equal(new AnchorPull(5, 0), AnchorPull.Of(new(-3, 4, -7)));
    }
}
