using Mastwright.Structure.Members;

namespace Mastwright.Structure.Parts.Tests.Members;

public class MemberRulesTest
{
    private const double Ksi = Metals.Ksi;
    private static readonly RoundSection Tube = new(0.1143, 0.0045);

    [Theory]
    // AISC Manual table 4-22 (available critical stress, from memory), Fy 50 ksi: φc·Fcr in ksi at Lc/r.
    [InlineData(50, 37.5)]
    [InlineData(100, 21.7)]
    [InlineData(150, 10.0)]
    [InlineData(200, 5.65)]
    public void Aisc_column_stress_by_slenderness(double slenderness, double ksi)
    {
        var member = Column(Tube, Metals.Steel50, slenderness);
        Assert.Equal(ksi, AiscRules.Lrfd.Strength(member).Compression.Value / Tube.AreaM2 / Ksi, 0.06);
    }

    [Fact]
    public void Aisc_formats_differ_by_the_factor_of_one_and_a_half()
    {
        // φ/(1/Ω) = 0.9·1.67 = 1.503 (AISC 360 commentary: Ω = 1.5/φ).
        var member = Column(Tube, Metals.Steel50, 80);
        var (lrfd, asd) = (AiscRules.Lrfd.Strength(member), AiscRules.Asd.Strength(member));
        Assert.Equal(1.5, lrfd.Compression.Value / asd.Compression.Value, 0.01);
        Assert.Equal(1.5, lrfd.Bending.Value / asd.Bending.Value, 0.01);
        Assert.Equal(1.5, lrfd.Tension.Value / asd.Tension.Value, 0.01);
    }

    [Fact]
    public void Aisc_pipe_bending_is_plastic()
    {
        // Pipe 4 in standard, A53B: Z 4.05 in³ by AISC's design wall (0.93 t); φMn = 0.9·35·4.05/12 = 10.6 kip·ft (AISC Manual table 3-15, from memory).
        var pipe = new RoundSection(4.5 * 0.0254, 0.221 * 0.0254);
        var kipFeet = AiscRules.Lrfd.Strength(new(pipe, Metals.Pipe35, 3)).Bending.Value / (1000 * 4.4482216 * 0.3048);
        Assert.Equal(10.6, kipFeet, 0.1);
    }

    [Theory]
    [InlineData(0.3, 0.5, 0.3 + (8.0 / 9 * 0.5))]
    [InlineData(0.1, 0.5, 0.05 + 0.5)]
    [InlineData(0.2, 0.9, 0.2 + 0.8)]
    public void Aisc_interaction_has_its_two_branches(double axialShare, double momentShare, double use)
    {
        var member = Column(Tube, Metals.Steel50, 70);
        var strength = AiscRules.Lrfd.Strength(member);
        var forces = new MemberForces(axialShare * strength.Compression.Value * (1 + 1e-12), momentShare * strength.Bending.Value);
        Assert.Equal(use, AiscRules.Lrfd.Use(member, forces).Value, 1e-9);
    }

    [Theory]
    // Aluminum Design Manual table 2-19, 6061-T6 (from memory), allowable stress in ksi with Ω = 1.65:
    // columns 21.2 up to S1, 51350/(kL/r)² from S = 66.
    [InlineData(10, 21.2)]
    [InlineData(80, 51350.0 / 6400)]
    [InlineData(120, 51350.0 / 14400)]
    public void Aluminium_column_stress_of_the_manuals_table(double slenderness, double ksi)
    {
        var member = Column(new(0.0508, 0.003048), Metals.Al6061, slenderness);
        Assert.Equal(ksi, AluminumManualRules.Asd.Strength(member).Compression.Value / member.Section.AreaM2 / Ksi, 0.03);
    }

    [Theory]
    // Same table: tube walls 21.2 to Rb/t 27.6; 26.2 - 0.944·√(Rb/t) to 141; 3776/[(Rb/t)(1 + √(Rb/t)/35)²] above.
    [InlineData(15, 21.2)]
    [InlineData(60, 18.888)]
    [InlineData(200, 9.578)]
    public void Aluminium_wall_stress_of_the_manuals_table(double radiusOverWall, double ksi)
    {
        var wall = 0.003;
        var tube = new RoundSection((2 * radiusOverWall * wall) + wall, wall);
        var member = Column(tube, Metals.Al6061, 5);
        Assert.Equal(ksi, AluminumManualRules.Asd.Strength(member).Compression.Value / tube.AreaM2 / Ksi, 0.03);
    }

    [Theory]
    // Same table, bending of tubes: 39.3 - 2.70·√(Rb/t) up to 55.4.
    [InlineData(30, 39.3, 2.70)]
    [InlineData(50, 39.3, 2.70)]
    public void Aluminium_tube_bending_stress_of_the_manuals_table(double radiusOverWall, double a, double b)
    {
        var wall = 0.003;
        var tube = new RoundSection((2 * radiusOverWall * wall) + wall, wall);
        var stress = AluminumManualRules.Asd.Strength(new(tube, Metals.Al6061, 1)).Bending.Value / tube.ElasticModulusM3 / Ksi;
        // The table prints its coefficients to 0.1 and 0.01, which leaves this much room.
        Assert.Equal(a - (b * Math.Sqrt(radiusOverWall)), stress, 0.05 + (0.005 * Math.Sqrt(radiusOverWall)));
    }

    [Fact]
    public void Weld_softens_aluminium_to_the_weld_zones_strength()
    {
        var plain = new RoundMember(new(0.0508, 0.003048), Metals.Al6061, 0.2);
        var welded = plain with { WeldedShare = 1 };
        var (a, b) = (AluminumManualRules.Lrfd.Strength(plain), AluminumManualRules.Lrfd.Strength(welded));
        // A short column falls from 35 to 15 ksi, rupture from 38 to 24 ksi.
        Assert.Equal(15.0 / 35, b.Compression.Value / a.Compression.Value, 1e-6);
        Assert.Equal(0.75 * 24 * Ksi * plain.Section.AreaM2, b.Tension.Value, 1);
        // A long column with welds at its ends only keeps its strength.
        var longColumn = plain with { LengthM = 2.5 };
        Assert.Equal(
            AluminumManualRules.Lrfd.Strength(longColumn).Compression.Value,
            AluminumManualRules.Lrfd.Strength(longColumn with { WeldedShare = 0.5 }).Compression.Value, 1e-6);
        Assert.True(AluminumManualRules.Lrfd.Strength(longColumn with { LengthM = 1.0, WeldedShare = 1, WeldAwayFromEnds = true }).Compression.Value
            < AluminumManualRules.Lrfd.Strength(longColumn with { LengthM = 1.0, WeldedShare = 1 }).Compression.Value);
    }

    [Theory]
    // EN 1993-1-1 figure 6.4, values of χ as tabled in design handbooks: curve a and curve c.
    [InlineData(0.5, 0.924, 0.843)]
    [InlineData(1.0, 0.666, 0.540)]
    [InlineData(1.5, 0.372, 0.315)]
    [InlineData(2.0, 0.223, 0.196)]
    public void European_buckling_curves(double relativeSlenderness, double curveA, double curveC)
    {
        var slenderness = relativeSlenderness * Math.PI * Math.Sqrt(210e9 / 355e6);
        var member = Column(Tube, Metals.S355, slenderness);
        var squash = Tube.AreaM2 * 355e6;
        var rules = EurocodeSteelRules.Carbon;
        Assert.Equal(curveC, rules.Strength(member).Compression.Value / squash, 6e-4);
        Assert.Equal(curveA, rules.Strength(member with { HotFinished = true }).Compression.Value / squash, 6e-4);
    }

    [Fact]
    public void European_stainless_column_by_hand()
    {
        // EN 1993-1-4 (from memory), λ̄ = 1, α 0.49, plateau 0.40: Φ = ½(1 + 0.49·0.6 + 1) = 1.147, χ = 1/(1.147 + √0.315609) = 1/1.708791 = 0.58521; over γM1 = 1.1.
        var member = Column(Tube, Metals.Stainless, Math.PI * Math.Sqrt(200e9 / 210e6));
        Assert.Equal(0.58521 / 1.1, EurocodeSteelRules.Stainless.Strength(member).Compression.Value / (Tube.AreaM2 * 210e6), 1e-4);
        Assert.Equal("EN 1993-1-4", EurocodeSteelRules.Stainless.Name);
    }

    [Fact]
    public void European_aluminium_column_by_hand()
    {
        // λ̄ = 1, α 0.20, plateau 0.1: Φ = ½(1 + 0.2·0.9 + 1) = 1.09, χ = 1/(1.09 + √(1.1881 - 1)) = 0.6563 (EN 1999-1-1 eq. 6.50 by hand).
        var member = Column(new(0.05, 0.003), Metals.Al6082, Math.PI * Math.Sqrt(70e9 / 250e6));
        var strength = new EurocodeAluminiumRules().Strength(member);
        Assert.Equal(0.6563, strength.Compression.Value / (member.Section.AreaM2 * 250e6 / 1.1), 1e-4);
        // Welded all round at the middle: half of it, 125 over 250 MPa.
        var welded = new EurocodeAluminiumRules().Strength(member with { WeldedShare = 1, WeldAwayFromEnds = true });
        Assert.Equal(0.5, welded.Compression.Value / strength.Compression.Value, 1e-9);
    }

    [Fact]
    public void Long_columns_end_at_eulers_load_in_every_rule()
    {
        // Euler: π²EI/L². Codes take 0.877 (AISC), 0.85 (ADM) or approach 1 from below (EN) of it, before factors.
        foreach (var (rules, metal, low, high) in new (IMemberRules, MemberMetal, double, double)[]
        {
            (AiscRules.Lrfd, Metals.Steel50, 0.876, 0.878),
            (AluminumManualRules.Lrfd, Metals.Al6061, 0.849, 0.851),
            (EurocodeSteelRules.Carbon, Metals.S355, 0.80, 1.0),
            (new EurocodeAluminiumRules(), Metals.Al6082, 0.90, 1.0),
        })
        {
            var member = Column(Tube, metal, 250);
            var euler = Math.PI * Math.PI * metal.ModulusPa * Tube.SecondMomentM4 / Math.Pow(member.LengthM, 2);
            Assert.InRange(rules.Strength(member).Compression.Value / rules.Factors.Compression / euler, low, high);
        }
    }

    [Fact]
    public void Factors_can_be_changed_and_are_shown()
    {
        var member = Column(Tube, Metals.Steel50, 80);
        var mine = AiscRules.Lrfd.With(AiscRules.Lrfd.Factors with { Compression = 0.6 });
        var trail = mine.Strength(member).Compression;
        Assert.Equal(AiscRules.Lrfd.Strength(member).Compression.Value * 0.6 / 0.9, trail.Value, 1e-6);
        Assert.Equal(0.6, trail.Inputs[0].Value);
        Assert.Equal("AISC 360-16 LRFD", mine.Name);
    }

    [Fact]
    public void Rules_are_found_by_name_and_refuse_the_wrong_metal()
    {
        Assert.All(MemberRules.All, r => Assert.Same(r, MemberRules.Find(r.Name.ToUpperInvariant())));
        Assert.Throws<ArgumentException>(() => AiscRules.Lrfd.Strength(Column(Tube, Metals.Al6061, 50)));
    }

    private static RoundMember Column(RoundSection section, MemberMetal metal, double slenderness) =>
        new(section, metal, slenderness * section.RadiusOfGyrationM);
}
