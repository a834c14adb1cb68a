using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Structure.Chains;

namespace Mastwright.Structure.Parts.Tests.Chains;

public class ChainTest
{
    private const double Inch = 0.0254;
    private const double Quarter = 0.25 * Inch;

    // 1/4 in EHS: 6650 lb (ASTM A475); 1/2 in shackle 20000 lb (RR-C-271); 1/2 in turnbuckle 11000 lb (ASTM F1145, from memory).
    private const double Pound = 4.4482216;

    private static readonly ImmutableArray<ChainPiece> Good =
    [
        new AnchorEye("anchor eye", 60e3) { LengthM = 0.05, AnodicIndexV = 1.20, Metal = "zinc coat" },
        new ShacklePiece("lower shackle", 20000 * Pound) { LengthM = 0.06, PinSecured = true, AnodicIndexV = 1.20, Metal = "zinc coat" },
        new TurnbucklePiece("turnbuckle", 11000 * Pound, 12 * Inch) { ClosedLengthM = 0.45, OpenShare = 0.6, Locked = true, AnodicIndexV = 1.20, Metal = "zinc coat" },
        new ThimblePiece("lower thimble", Quarter, true) { LengthM = 0.04 },
        new EndFitting("lower grip", EndFittingKind.WrappedGrip, Quarter, 1.0),
        new StrandPiece("1/4 in EHS", 6650 * Pound, Quarter, 3.6e6),
        new EndFitting("upper grip", EndFittingKind.WrappedGrip, Quarter, 1.0) { BackUpClip = true },
        new ThimblePiece("upper thimble", Quarter, true) { LengthM = 0.04 },
        new ShacklePiece("upper shackle", 20000 * Pound) { LengthM = 0.06, PinSecured = true, AnodicIndexV = 1.20, Metal = "zinc coat" },
        new MastAttachment("guy lug", 50e3) { AnodicIndexV = 1.20, Metal = "zinc coat" },
    ];

    private static readonly ChainDemand Demand = new(10e3, "wind from 030", 665 * Pound, 980 * Pound, 360 * Pound, 24.0) { IcingCountry = true };

    [Fact]
    public void Well_made_chain_has_nothing_wrong_and_its_strand_is_weakest()
    {
        var report = Examine(Good);
        Assert.Empty(report.Findings);
        Assert.Equal("1/4 in EHS", report.Weakest!.Piece.Name);
        Assert.Equal(6650 * Pound / 2, report.Weakest.Capacity.Value, 1e-6);
        Assert.All(report.Checks, c => Assert.NotEqual(Verdict.Fail, c.Verdict));
    }

    [Fact]
    public void Shackle_pulled_from_the_side_keeps_half_its_strength()
    {
        // ASME B30.26, from memory: half the rating at a right angle. Half of 12 kip is under the strand's 6.65 kip.
        var report = Examine(Replace(1, new ShacklePiece("lower shackle", 12000 * Pound) { PinSecured = true, SideLoaded = true }));
        Assert.Equal("lower shackle", report.Weakest!.Piece.Name);
        Assert.Equal(6000 * Pound / 2, report.Weakest.Capacity.Value, 1e-6);
    }

    [Fact]
    public void Working_load_for_lifting_is_mentioned()
    {
        var found = Examine(Replace(2, (TurnbucklePiece)Good[2] with { WorkingLoadN = 2200 * Pound })).Findings;
        Assert.Equal(("chain-working-load", Severity.Note), (Assert.Single(found).Code, found[0].Severity));
    }

    [Fact]
    public void Clear_length_is_what_the_hardware_leaves()
    {
        var expected = 24.0 - (0.05 + 0.06 + 0.45 + (0.6 * 12 * Inch) + 0.04 + 0.04 + 0.06);
        Assert.Equal(expected, Examine(Good).ClearLength!.Value, 1e-12);
    }

    [Fact]
    public void Clear_length_that_is_used_up_says_so() =>
        Assert.NotEmpty(ChainAnalysis.Examine(new("short", Good), Demand with { LengthM = 0.5 }).ClearLength!.RangeWarnings());

    [Fact]
    public void Weakest_link_is_named_whatever_it_is()
    {
        var report = Examine(Replace(1, new ShacklePiece("small shackle", 5000 * Pound) { PinSecured = true }));
        Assert.Equal("small shackle", report.Weakest!.Piece.Name);
        Assert.Contains("small shackle", report.Checks[0].Title);
        Assert.Contains(report.Findings, f => f.Code == "chain-weak-piece");
        // Clips hold 80 % of the strand: 5320 lb, and that is the weakest when all else is stronger.
        var clips = Examine(Replace(4, Clips(3, 20.3)));
        Assert.Equal("clips", clips.Weakest!.Piece.Name);
        Assert.Equal(0.8 * 6650 * Pound / 2, clips.Weakest.Capacity.Value, 1e-6);
    }

    [Fact]
    public void Each_rule_is_broken_alone_and_found_by_its_name()
    {
        // Rules of the trade: common practice, no source, unless the finding names one.
        (string Code, ImmutableArray<ChainPiece> Pieces)[] faults =
        [
            ("chain-no-thimble", Good.RemoveAt(7)),
            ("chain-turnbuckle-loose", Replace(2, (TurnbucklePiece)Good[2] with { Locked = false })),
            ("chain-hook", Replace(2, (TurnbucklePiece)Good[2] with { HasHook = true })),
            ("chain-top-grip", Replace(6, (EndFitting)Good[6] with { BackUpClip = false })),
            ("chain-shackle-side", Replace(1, (ShacklePiece)Good[1] with { SideLoaded = true })),
            ("chain-shackle-pin", Replace(8, (ShacklePiece)Good[8] with { PinSecured = false })),
            ("chain-size", Replace(3, new ThimblePiece("small thimble", 0.1875 * Inch, true))),
            ("chain-unlike-metals", Replace(1, (ShacklePiece)Good[1] with { AnodicIndexV = 0.50, Metal = "stainless 304" })),
            ("chain-no-fitting", Good.RemoveAt(4).RemoveAt(3)),
            ("chain-no-turnbuckle", Good.RemoveAt(2)),
            ("chain-ends", Good.RemoveAt(0)),
        ];
        foreach (var (code, pieces) in faults)
        {
            Assert.Equal(code, Assert.Single(Examine(pieces).Findings.Select(f => f.Code).Distinct()));
        }
    }

    [Theory]
    [InlineData(2, 20.3, "chain-clip-count")]
    [InlineData(3, 12.0, "chain-clip-torque")]
    [InlineData(3, 30.0, "chain-clip-torque")]
    [InlineData(3, 20.3, null)]
    public void Clips_are_counted_and_their_torque_is_held_against_the_table(int count, double torque, string? code)
    {
        // 15 lb·ft = 20.3 N·m for 1/4 in (rigging tables); three clips on stiff strand (common practice, no source).
        var found = Examine(Replace(4, Clips(count, torque))).Findings.Where(f => f.Severity == Severity.Error).Select(f => f.Code);
        Assert.Equal(code is null ? [] : [code], found);
    }

    [Fact]
    public void Egg_insulator_needs_no_thimble()
    {
        ImmutableArray<ChainPiece> pieces =
        [
            .. Good.Take(5),
            new StrandPiece("lower piece", 6650 * Pound, Quarter, 3.6e6) { FixedLengthM = 8 },
            new EndFitting("grip", EndFittingKind.WrappedGrip, Quarter, 1.0),
            new InsulatorPiece("egg", 12000 * Pound, true) { LengthM = 0.1 },
            new EndFitting("grip", EndFittingKind.WrappedGrip, Quarter, 1.0),
            .. Good.Skip(5),
        ];
        Assert.Empty(Examine(pieces).Findings);
        var rod = pieces.SetItem(7, new InsulatorPiece("rod", 12000 * Pound, false) { LengthM = 0.6 });
        Assert.All(Examine(rod).Findings, f => Assert.Equal("chain-no-thimble", f.Code));
        Assert.Equal(2, Examine(rod).Findings.Length);
    }

    [Fact]
    public void Turnbuckle_travel_by_hand()
    {
        // (665 - 360) lb · 24 m / 3.6e6 N = 9.045 mm, and 0.05 % of 24 m = 12 mm to tighten; (980 - 665) lb gives 9.341 mm to slacken.
        var checks = Examine(Good).Checks;
        var tighten = checks.Single(c => c.Id.StartsWith("stand.guy.take-up", StringComparison.Ordinal));
        var slacken = checks.Single(c => c.Id.StartsWith("stand.guy.let-out", StringComparison.Ordinal));
        Assert.Equal(9.045 + 12, tighten.Demand.Value * 1000, 0.001);
        Assert.Equal(9.341, slacken.Demand.Value * 1000, 0.001);
        Assert.Equal(0.6 * 304.8, tighten.Capacity.Value * 1000, 1e-9);
        Assert.Equal(0.4 * 304.8, slacken.Capacity.Value * 1000, 1e-9);
        var closed = Examine(Replace(2, (TurnbucklePiece)Good[2] with { OpenShare = 0.05 }));
        Assert.Contains(closed.Checks, c => c.Verdict == Verdict.Fail && c.Id.StartsWith("stand.guy.take-up", StringComparison.Ordinal));
    }

    [Theory]
    // 10 % is the usual set tension, 8 to 15 % the usual range (TIA-222 commentary, from memory).
    [InlineData(0.10, Verdict.Pass, Verdict.Pass)]
    [InlineData(0.05, Verdict.Fail, Verdict.Pass)]
    [InlineData(0.20, Verdict.Pass, Verdict.Fail)]
    public void Set_tension_is_a_share_of_breaking_strength(double share, Verdict least, Verdict most)
    {
        var checks = ChainAnalysis.Examine(new("guy", Good), Demand with { SetTensionN = share * 6650 * Pound }).Checks;
        Assert.Equal(least, checks.Single(c => c.Id == "stand.guy.set-least[guy]").Verdict);
        Assert.Equal(most, checks.Single(c => c.Id == "stand.guy.set-most[guy]").Verdict);
    }

    [Fact]
    public void Chain_stretches_like_its_strands_in_a_row_and_weighs_all_its_pieces()
    {
        var chain = new GuyChain("guy",
        [
            new AnchorEye("eye", 60e3),
            new StrandPiece("steel", 30e3, Quarter, 3.6e6) { FixedLengthM = 8, MassKgPerM = 0.18 },
            new InsulatorPiece("egg", 50e3, true) { LengthM = 0.1, MassKg = 0.5 },
            new StrandPiece("aramid", 30e3, Quarter, 1.2e6) { MassKgPerM = 0.06 },
            new MastAttachment("lug", 50e3),
        ]);
        var cable = ChainAnalysis.Equivalent(chain, 20)!;
        // Springs in a row: 8 m of 3.6 MN and 11.9 m of 1.2 MN.
        Assert.Equal(20 / ((8 / 3.6e6) + (11.9 / 1.2e6)), cable.AxialStiffness.Value, 1e-6);
        Assert.Equal(((8 * 0.18) + (11.9 * 0.06) + 0.5) / 20, cable.MassPerLength.Value, 1e-12);
        Assert.Null(ChainAnalysis.Equivalent(chain, 5));
        Assert.NotEmpty(ChainAnalysis.Equivalent(new("guy", chain.Pieces.SetItem(2, new InsulatorPiece("heavy egg", 50e3, true) { MassKg = 3 })), 20)!.MassPerLength.RangeWarnings());
    }

    [Fact]
    public void Overloaded_guy_fails_with_its_caution()
    {
        var check = ChainAnalysis.Examine(new("guy", Good), Demand with { GreatestTensionN = 16e3 }).Checks[0];
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(16e3 / (6650 * Pound / 2), check.Ratio, 1e-9);
        Assert.Contains("stand clear", check.Caution);
    }

    [Fact]
    public void Empty_chain_is_reported_and_does_not_throw()
    {
        var report = Examine([]);
        Assert.Null(report.Weakest);
        Assert.Contains(report.Findings, f => f.Code == "chain-no-strand");
    }

    private static EndFitting Clips(int count, double torque) => new("clips", EndFittingKind.Clips, Quarter, 0.8)
    {
        Clips = count,
        ClipsNeeded = 3,
        ClipTorqueNm = torque,
        ClipTorqueNeededNm = 20.3,
    };

    private static ImmutableArray<ChainPiece> Replace(int at, ChainPiece piece) => Good.SetItem(at, piece);

    private static ChainReport Examine(ImmutableArray<ChainPiece> pieces) => ChainAnalysis.Examine(new("guy", pieces), Demand);
}
