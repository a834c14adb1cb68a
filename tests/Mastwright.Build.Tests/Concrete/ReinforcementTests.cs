using FsCheck.Xunit;
using Mastwright.Build.Concrete;

namespace Mastwright.Build.Tests.Concrete;

/// <summary>Against hand calculation by the rules of ACI 318-19 named beside each (from memory).</summary>
public class ReinforcementTests
{
    private static readonly RebarSize[] Metric = [.. new[] { 8, 10, 12, 14, 16, 20, 25 }.Select(d => new RebarSize($"{d} mm bar", d / 1000.0, 500e6))];

    /// <summary>24.4.3.2: 0.0018 of 0.9 m × 1 m is 1620 mm², 810 mm² a layer: six bars of 14 mm (924 mm²) 150 mm apart; eight of 12 mm would stand 107 mm apart.</summary>
    [Fact]
    public void A_footing_gets_its_shrinkage_steel_both_ways_top_and_underside()
    {
        var footing = Reinforcement.For(new ConcreteBody("footing", BodyShape.Block, 0.9, 0.9, 1), Metric, 25e6);

        Assert.Empty(footing.Findings);
        Assert.Equal(1620e-6, footing.Needed!.Value, 1e-9);
        Assert.All(footing.Bars.Take(2), b => Assert.Equal(("14 mm bar", 12), (b.Bar.Name, b.Count)));
        Assert.Equal(0.15, footing.Bars[0].SpacingM, 1e-9);

        // 0.9 m less twice 75 mm, and twice twelve diameters of bend.
        Assert.Equal(0.75 + (24 * 0.014), footing.Bars[0].LengthM, 1e-9);

        // 3 m round the sides at most 0.6 m apart.
        Assert.Equal(5, footing.Bars[2].Count);
        Assert.Equal(0.85 + (24 * 0.014), footing.Bars[2].LengthM, 1e-9);
        Assert.Equal(((24 * (0.75 + 0.336)) + (5 * (0.85 + 0.336))) * 7850 * Math.PI / 4 * 0.014 * 0.014, footing.SteelKg, 1e-6);
    }

    /// <summary>9.6.1.2: the greater of 1.4 b d/fy and 0.25 √25 b d/fy = 1.25 b d/fy; d = 0.4 − 0.075 − 0.010 − 0.008 m.</summary>
    [Fact]
    public void A_beam_without_a_known_pull_gets_the_least_flexural_steel()
    {
        var beam = Reinforcement.For(new ConcreteBody("beam", BodyShape.Beam, 2, 0.4, 0.5), Metric, 25e6);

        Assert.Equal(1.4 / 500 * 0.5 * 0.307, beam.Needed!.Value, 1e-9);
        var along = beam.Bars[0];
        Assert.True(along.Count / 2 * along.Bar.AreaM2 >= beam.Needed.Value);
        Assert.Equal(0, along.Count % 2);

        // Stirrups every half depth at the most: 1.85 m in steps of 0.1535 m are thirteen spaces.
        Assert.Equal(14, beam.Bars[1].Count);
    }

    /// <summary>The rectangular stress block by hand: with As from the list, φ As fy (d − a/2), a = As fy/(0.85 f'c b), gives P L/8 back.</summary>
    [Theory]
    [InlineData(200e3)]
    [InlineData(600e3)]
    public void A_pulled_beam_carries_its_moment(double pullN)
    {
        var beam = Reinforcement.For(new ConcreteBody("beam", BodyShape.Beam, 2, 0.4, 0.5, PullN: pullN), Metric, 25e6);

        var (area, d) = (beam.Needed!.Value, 0.307);
        var block = area * 500e6 / (0.85 * 25e6 * 0.5);
        Assert.Equal(pullN * 2 / 8, 0.9 * area * 500e6 * (d - (block / 2)), pullN * 1e-6);
    }

    [Fact]
    public void What_cannot_be_reinforced_is_said()
    {
        Assert.Equal("concrete-no-bars", Assert.Single(Reinforcement.For(new ConcreteBody("slip", BodyShape.Block, 1, 1, 0.15), Metric, 25e6).Findings).Code);
        Assert.Equal("concrete-no-bars", Assert.Single(Reinforcement.For(new ConcreteBody("beam", BodyShape.Beam, 3, 0.3, 0.3, PullN: 5e6), Metric, 25e6).Findings).Code);
        Assert.Empty(Reinforcement.For(new ConcreteBody("post", BodyShape.RoundATube, 0.4, 0.4, 1), Metric, 25e6).Bars);
    }

    [Property(MaxTest = 200)]
    public bool Any_block_has_its_steel_at_spacings_that_can_be_cast(byte l, byte w, byte h)
    {
        var body = new ConcreteBody("b", BodyShape.Block, 0.3 + (l / 100.0), 0.3 + (w / 100.0), 0.3 + (h / 100.0));
        var made = Reinforcement.For(body, Metric, 25e6);
        return made.Findings.IsEmpty
            && made.Bars.Take(2).Zip(new[] { body.WidthM, body.LengthM }).All(p => p.First.Count * p.First.Bar.AreaM2 >= (0.0018 * p.Second * body.HeightM) - 1e-12)
            && made.Bars.All(b => b.SpacingM <= 0.6 + 1e-9 && b.LengthM > 0);
    }
}
