using System.Collections.Immutable;
using FsCheck.Xunit;
using Mastwright.Build.Cutting;
using Mastwright.Build.Tension;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Cutting;

public class GuyCutListTests
{
    private const double W = 1.766;
    private const double Ea = 3.73e6;

    private static Trail Tension(double n) => Trail.Given("tension", "Ta", n, QuantityKind.Force, Source.DesignFile);

    private static GuyToCut Plain(double l, double h, double tension, double cutting = 283.15) =>
        new("G", new(l, 0, 0), new(0, 0, h), [new StrandLink("strand", W, Ea, 12e-6, LowerAllowanceM: 0.3, UpperAllowanceM: 0.4)], Tension(tension), 283.15, cutting);

    private static GuyCutList Cut(GuyToCut guy)
    {
        var reading = GuyCutList.For(guy);
        Assert.True(reading.IsUsable, string.Join('\n', reading.Findings));
        return reading.Value!;
    }

    [Theory]
    [InlineData(10, 15, 3000.086, 18.01323)]
    [InlineData(12, 14, 3000.100, 18.424247)]
    [InlineData(18, 28, 3000.039, 33.259816)]
    public void A_plain_guy_has_the_reference_unstretched_length(double l, double h, double tension, double unstretched)
    {
        // Independent root-finding solve of the elastic catenary in SciPy.
        var piece = Cut(Plain(l, h, tension)).Pieces[0];
        Assert.Equal(unstretched, piece.Unstressed.Value, 2e-8 + (1e-3 / Ea * l * 3));
        Assert.Equal(unstretched + 0.7, piece.CutLength.Value, 1e-6);
        Assert.Equal(0.3, piece.LowerMarkM, 12);
        Assert.Equal(unstretched + 0.3, piece.UpperMarkM, 1e-6);
    }

    [Fact]
    public void Cold_strand_is_cut_shorter()
    {
        var cut = Cut(Plain(10, 15, 3000, 263.15)).Pieces[0];
        Assert.Equal((cut.Unstressed.Value * (1 - (12e-6 * 20))) + 0.7, cut.CutLength.Value, 1e-9);
    }

    [Property(MaxTest = 60)]
    public bool The_tension_comes_back_from_the_cut_lengths(int seed)
    {
        var random = new Random(seed);
        var insulators = random.Next(0, 5);
        var chain = ImmutableArray.CreateBuilder<GuyLink>();
        chain.Add(new FittingLink("turnbuckle", 0.3 + (0.3 * random.NextDouble()), 1.5));
        for (var i = 0; i < insulators; i++)
        {
            chain.Add(new StrandLink($"piece {i}", W, Ea, 12e-6, 1 + (2 * random.NextDouble())));
            chain.Add(new FittingLink($"insulator {i}", 0.1, 0.5));
        }
        chain.Add(new StrandLink("last", W, Ea, 12e-6));
        chain.Add(new FittingLink("shackle", 0.05, 0.3));
        var guy = new GuyToCut("G", new(10 + (20 * random.NextDouble()), 5, -2 + (4 * random.NextDouble())), new(0, 0, 15 + (30 * random.NextDouble())), chain.ToImmutable(), Tension(700 + (4000 * random.NextDouble())), 283.15, 283.15);
        var list = Cut(guy);
        var back = GuyCutList.TensionOf(guy, [.. list.Pieces.Select(p => p.Unstressed.Value)])!.Value;
        return Math.Abs(back - guy.AnchorTension.Value) < 1e-6 * guy.AnchorTension.Value;
    }

    [Fact]
    public void A_millimetre_is_worth_the_stiffness_of_the_guy()
    {
        // Chord stiffness of this guy 206340 N/m, from an independent tangent stiffness (SciPy): 206 N a millimetre. That is
        // for the force along the chord at the upper end; the tension at the anchor follows it closely in a taut guy.
        var list = Cut(Plain(10, 15, 3000.086));
        Assert.Equal(206340, list.TensionPerMillimetre.Value, 206340 * 0.002);
    }

    [Fact]
    public void An_insulator_string_hangs_like_the_spread_guy_when_it_weighs_as_much()
    {
        // A fitting with the weight and length of the strand it replaces changes the curve by its own lack of stretch only.
        var length = 0.2;
        var chain = ImmutableArray.Create<GuyLink>(
            new StrandLink("lower", W, Ea, 12e-6, 9),
            new FittingLink("insulator", length, W * length / 9.80665),
            new StrandLink("upper", W, Ea, 12e-6));
        var list = Cut(new("G", new(10, 0, 0), new(0, 0, 15), chain, Tension(3000), 283.15, 283.15));
        var plain = GuyCurve.ForAnchorTension(new("G", 10, 15, W, Ea), 3000)!.UnstretchedM;
        var stretchOfFitting = length * 3010 / Ea;
        Assert.Equal(plain, list.Pieces.Sum(p => p.Unstressed.Value) + length - stretchOfFitting, 1e-6);
    }

    [Fact]
    public void A_chain_with_no_room_or_no_free_piece_is_refused()
    {
        var noRoom = Plain(10, 15, 3000) with { Chain = [new FittingLink("long", 19, 5), new StrandLink("s", W, Ea, 12e-6)] };
        Assert.Equal("guy-no-room", Assert.Single(GuyCutList.For(noRoom).Errors).Code);
        var noFree = Plain(10, 15, 3000) with { Chain = [new StrandLink("s", W, Ea, 12e-6, 18)] };
        Assert.Equal("guy-no-free-strand", Assert.Single(GuyCutList.For(noFree).Errors).Code);
    }
}
