using Mastwright.Analysis.Results;
using Mastwright.Analysis.Stand;
using Mastwright.Catalog;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>What a design file says of base, joints, conduits, side antennas, fittings and raising, and what comes of it.</summary>
public class StandPartsTests
{
    private const double G = 9.80665;

    private static string Text(string name) => File.ReadAllText(Repository.File("examples", name + ".yaml")).ReplaceLineEndings("\n");

    private static StandAnswer Stand(string text, bool screens = false)
    {
        var station = Examples.Read(text).Station!;
        return StandRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken, 6, screens);
    }

    private static Check One(StandAnswer answer, string kind) => answer.Checks.First(c => c.Id.StartsWith(kind + "[", StringComparison.Ordinal));

    private static CaseResult Case(StandAnswer answer, string name) => answer.Result.Cases.Single(c => c.Name == name);

    /// <summary>Statics by hand: a conduit of 2 kg/m over the lowest 10 m of a mast whose foot is 0.45 m high weighs 2·(10 - 0.45)·g on the foot.</summary>
    [Fact]
    public void A_conduit_weighs_and_catches_wind()
    {
        var text = Text("lattice-22m");
        var with = Stand(text.Replace("    radials:\n", "    conduits:\n      - { name: lamp conduit, diameter: 50 mm, mass: 2 kg/m, up-to: 10 m }\n    radials:\n"));
        var without = Stand(text);

        var heavier = Case(with, "still air, tensioning day").BaseCompressionN - Case(without, "still air, tensioning day").BaseCompressionN;
        Assert.InRange(heavier, 0.97 * 2 * 9.55 * G, 2 * 9.55 * G);
        Assert.True(Case(with, "wind, coldest, from 0°").LargestMomentNm > 1.1 * Case(without, "wind, coldest, from 0°").LargestMomentNm);
    }

    /// <summary>Statics by hand: 40 kg reaching 2 m out bend the mast by 40·g·2 N·m where it sits, in still air too.</summary>
    [Fact]
    public void A_side_antenna_bends_the_mast_by_its_weight()
    {
        var text = Text("lattice-22m").Replace("    radials:\n", "    attachments:\n      - { name: side antenna, height: 22.4 m, mass: 40 kg, drag-area: 0.3 m², rods: 25 mm, reach: 2 m, bearing: 90 ° }\n    radials:\n");
        var still = Case(Stand(text), "still air, tensioning day");

        // Above the top guys nothing holds it: the moment there is the whole of it.
        Assert.InRange(still.LargestMomentNm, 0.999 * 40 * G * 2, 1.02 * 40 * G * 2);
        Assert.True(still.TopDeflectionM > 0);
    }

    /// <summary>Ice weighs on rods: ρ·g·π·t·(d + t) a metre, and a drag area A = 1.2·d·L tells their length L (ASCE 7 equation 10.4-1 for a round member).</summary>
    [Fact]
    public void Ice_on_a_top_hat_weighs()
    {
        var station = Examples.Read(Text("ice-27m").Replace("    radials:", "    attachments:\n      - { name: top hat, height: 27.6 m, mass: 0 kg, drag-area: 1 m², rods: 20 mm }\n    radials:")
            .Replace("method: asce-7-22, speed: 100 mph", "method: stated-pressure, pressure: 800 Pa")).Station!;
        var iced = LoadCases.Of(station, StandModel.Of(station, station.Masts[0]), 6).Single(c => c.Case.Name == "ice, still air").Case;

        var length = 1 / 1.2 / 0.020;
        Assert.Equal(-900 * G * Math.PI * 0.030 * 0.050 * length, Assert.Single(iced.PointLoads).ForceN.Z, 0.01);
    }

    /// <summary>
    /// Statics by hand: a rod of 3 m and 20 mm, solid copper of 8960 kg/m³, and a ring of 1 m of 22 mm tube with 1 mm wall weigh on the foot. Under a stated pressure of
    /// 1 kPa the rod takes 1.2·1000·0.020·3 N in its middle, 1.5 m above the top, the ring 1.2·1000·0.022·2·1 N at the top. Glaze weighs ρ g π t (d + t) a metre.
    /// </summary>
    [Fact]
    public void A_rod_and_a_ring_on_the_top_weigh_catch_wind_and_carry_ice()
    {
        var text = Text("ice-27m").Replace("method: asce-7-22, speed: 100 mph", "method: stated-pressure, pressure: 1000 Pa");
        var with = text.Replace("    radials:", "    top: { rod-length: 3 m, rod-diameter: 20 mm, ring-diameter: 1 m, ring-tube: 22 mm }\n    radials:");
        Assert.NotEqual(text, with);
        var byHand = G * 8960 * Math.PI / 4 * ((3 * 0.020 * 0.020) + (Math.PI * ((0.022 * 0.022) - (0.020 * 0.020))));

        var heavier = Case(Stand(with), "still air, tensioning day").BaseCompressionN - Case(Stand(text), "still air, tensioning day").BaseCompressionN;
        Assert.InRange(heavier, 0.97 * byHand, byHand);

        var station = Examples.Read(with).Station!;
        var cases = LoadCases.Of(station, StandModel.Of(station, station.Masts[0]), 4);
        var north = cases.Single(c => c.Case.Name == "wind, coldest, from 0°").Case.PointLoads;
        Assert.Equal(-((1.2 * 1000 * 0.020 * 3) + (1.2 * 1000 * 0.022 * 2)), north.Sum(l => l.ForceN.Y), 0.01);
        Assert.Equal(1.2 * 1000 * 0.020 * 3 * 1.5, north.Sum(l => l.MomentNm.Length), 0.01);

        // Wind from the north bends the top to the south: about the axis to the east, by the right hand.
        Assert.True(north.Sum(l => l.MomentNm.X) > 0);
        Assert.Equal(
            -900 * G * Math.PI * 0.030 * ((0.050 * 3) + (0.052 * Math.PI)),
            cases.Single(c => c.Case.Name == "ice, still air").Case.PointLoads.Sum(l => l.ForceN.Z), 0.01);
    }

    /// <summary>A first look takes long load steps; what carries more than half of its load by them is known as well as in the whole analysis.</summary>
    [Fact]
    public void A_first_look_knows_what_a_mast_carries_that_nearly_stands()
    {
        var text = string.Join('\n', Text("fails").Replace("speed: 120 mph", "speed: 88 mph").Replace("hottest: 110 °F", "hottest: 60 °F").Split('\n').Where(l => !l.StartsWith("  ice:", StringComparison.Ordinal)));
        var station = Examples.Read(text).Station!;
        var first = QuickLook.Stand(station, TestContext.Current.CancellationToken).Checks.Single(c => c.Id.StartsWith("stand.stability", StringComparison.Ordinal));
        var fine = One(Stand(text), "stand.stability");

        Assert.InRange(fine.Demand.Value, 0.5, 0.99);
        Assert.Equal(fine.Demand.Value, first.Demand.Value, (1.0 / 128) + 1e-12);
    }

    /// <summary>Statics by hand: three top wires of 9 m and 4 mm, copper as in the catalogue, weigh on the foot.</summary>
    [Fact]
    public void Top_wires_weigh_as_the_copper_of_the_catalogue()
    {
        var text = Text("tube-12m");
        var bare = StandModel.Of(Examples.Read(text).Station!, Examples.Read(text).Station!.Masts[0]);
        var wired = Examples.Read(text.Replace("    radials:", "    top-wires: { count: 3, length: 9 m, slope: 60 °, wire: 4 mm }\n    radials:")).Station!;
        var weight = StandModel.Of(wired, wired.Masts[0]).Structure.Weights.Sum(w => w.WeightN) - bare.Structure.Weights.Sum(w => w.WeightN);

        Assert.Equal(3 * 9 * Math.PI / 4 * 0.004 * 0.004 * Catalogue.Default.Metals["copper"].DensityKgPerM3 * G, weight, 1e-9);
    }

    /// <summary>A tube that tapers weighs the mean of its ends: π·(D - t)·t·ρ a metre with D the mean diameter.</summary>
    [Fact]
    public void A_tapered_tube_weighs_the_mean_of_its_ends()
    {
        var mast = Examples.Read(Text("tube-12m").Replace("- { length: 20 ft, tube: { diameter: 4 in, wall: 1/8 in, metal: 6061-T6 } }\n      - {", "- { length: 20 ft, tube: { diameter: 5 in, top-diameter: 3 in, wall: 1/8 in, metal: 6061-T6 } }\n      - {")).Station!.Masts[0];
        var runs = MastSections.Of(mast).Where(r => r.Section == 0).ToList();

        Assert.True(runs.Count >= 6);
        Assert.Equal(20 * 0.3048, runs.Sum(r => r.TopM - r.BottomM), 1e-9);
        Assert.Equal(Math.PI * (4 - 0.125) * 0.125 * 0.0254 * 0.0254 * 2700, runs.Sum(r => r.MassKgPerM * (r.TopM - r.BottomM)) / (20 * 0.3048), 1e-3);
        Assert.True(runs[0].Properties.BendingStiffness.Value > 3 * runs[^1].Properties.BendingStiffness.Value);
    }

    [Theory]
    [InlineData("telescoped", "bolts: 1, bolt: 4 mm, overlap: 2 in", "stand.mast.overlap", Verdict.Fail)]
    [InlineData("telescoped", "bolts: 4, bolt: 3/8 in, overlap: 12 in", "stand.mast.overlap", Verdict.Pass)]
    [InlineData("telescoped", "bolts: 1, bolt: 3 mm, bolt-strength: 100 MPa, overlap: 12 in", "stand.mast.joint-bolts", Verdict.Fail)]
    [InlineData("swaged", "bolts: 2, bolt: 8 mm, overlap: 12 in", "stand.mast.joint-bolts", Verdict.Pass)]
    public void Joints_of_tubes_are_checked(string kind, string fields, string check, Verdict verdict)
    {
        var answer = Stand(Text("tube-12m").Replace("metal: 6061-T6 } }\n      - { length", $"metal: 6061-T6 }}, joint: {{ kind: {kind}, {fields} }} }}\n      - {{ length"));

        var found = One(answer, check);
        Assert.Equal(verdict, found.Verdict);
        Assert.NotNull(One(answer, "stand.mast.joint-bending"));
        if (check != "stand.mast.overlap")
        {
            Assert.Contains("joint at 21.5 ft", found.GoverningCase);
        }
    }

    [Fact]
    public void Leg_bolts_of_a_lattice_are_checked_and_a_tube_cannot_have_them()
    {
        var answer = Stand(Text("lattice-22m").Replace("        lattice: tri-300-steel ", "        joint: { kind: leg-bolts, bolts: 2, bolt: 10 mm }\n        lattice: tri-300-steel "));
        Assert.Equal(Verdict.Pass, One(answer, "stand.mast.leg-splice").Verdict);

        var wrong = BadStandInputTests.Raw(Text("tube-12m").Replace("metal: 6061-T6 } }\n      - { length", "metal: 6061-T6 }, joint: { kind: leg-bolts, bolt: 10 mm } }\n      - { length"));
        Assert.Contains(wrong.Findings, f => f.Code == "joint-kind" && f.Place?.Line > 0);
    }

    [Theory]
    [InlineData("ball-and-cone", false)]
    [InlineData("rocker-and-pin", false)]
    [InlineData("hinged", true)]
    public void Every_pivot_is_held_to_what_it_may_do(string pivot, bool hinge)
    {
        var answer = Stand(Text("lattice-22m").Replace("pivot: ball-and-cone", "pivot: " + pivot));

        Assert.Contains(answer.Checks, c => c.Id.StartsWith("stand.base.bending", StringComparison.Ordinal));
        Assert.Contains(answer.Checks, c => c.Id.StartsWith("stand.base.pivot", StringComparison.Ordinal));
        Assert.Equal(hinge, answer.Checks.Any(c => c.Id.StartsWith("stand.base.hinge", StringComparison.Ordinal)));
    }

    /// <summary>The ceramic's core: by hand M = H·h + μ·N·r against N·d/8 (mechanics of materials: core of a circle).</summary>
    [Fact]
    public void The_moment_in_the_ceramic_by_hand()
    {
        var answer = Stand(Text("lattice-22m"));
        var check = One(answer, "stand.base.bending");
        var (n, h) = (In(check.Capacity, "N"), In(check.Demand, "H"));
        Assert.Equal((h * 0.160) + (0.15 * n * 0.020), check.Demand.Value, 1e-6 * check.Demand.Value);
        Assert.Equal(n * 0.090 / 8, check.Capacity.Value, 1e-6 * check.Capacity.Value);
    }

    [Fact]
    public void A_jump_off_the_seat_when_a_guy_is_lost_cautions_until_there_is_a_hold_down()
    {
        Check Lost(string foot) => One(Stand(Text("lattice-22m").Replace("footing-width: 0.9 m", foot), screens: true), "stand.base.lift-lost");

        Assert.Equal(Verdict.Caution, Lost("footing-width: 0.9 m").Verdict);
        Assert.Equal(Verdict.Pass, Lost("hold-down: 8 kN\n      footing-width: 0.9 m").Verdict);
    }

    [Fact]
    public void A_thin_plate_fails_and_a_thick_one_passes()
    {
        Check Plate(string thickness) => One(Stand(Text("lattice-22m").Replace("footing-width: 0.9 m", $"plate: {{ width: 300 mm, thickness: {thickness} }}\n      footing-width: 0.9 m")), "stand.base.plate");

        Assert.Equal(Verdict.Fail, Plate("3 mm").Verdict);
        Assert.Equal(Verdict.Pass, Plate("20 mm").Verdict);
    }

    [Fact]
    public void Frost_reaches_under_a_shallow_footing()
    {
        Assert.Equal(Verdict.Fail, One(Stand(Text("lattice-22m").Replace("  power-line-distance: 45 m", "  frost-depth: 1.4 m\n  power-line-distance: 45 m")), "stand.footing.frost").Verdict);
    }

    [Fact]
    public void A_long_free_top_is_cautioned()
    {
        var answer = Stand(Text("lattice-22m").Replace("      - height: 21 m", "      - height: 15 m").Replace("[0.4 m, 5.5 m, 11 m, 16.5 m]", "[0.4 m, 5.5 m, 11 m]"));

        Assert.Equal(Verdict.Caution, One(answer, "stand.mast.free-top").Verdict);
    }

    /// <summary>The rules of making up a guy, each broken through the design file.</summary>
    [Theory]
    [InlineData("thimbles: none", "chain-no-thimble")]
    [InlineData("turnbuckle-locked: no", "chain-turnbuckle-loose")]
    [InlineData("back-up-clip: no", "chain-top-grip")]
    [InlineData("end-fitting: clips, clips: 1", "chain-clip-count")]
    [InlineData("end-fitting: clips, clips: 4, clip-torque: 2 N·m", "chain-clip-torque")]
    [InlineData("side-loaded: yes", "chain-shackle-side")]
    [InlineData("pins-secured: no", "chain-shackle-pin")]
    [InlineData("metal: stainless", "chain-unlike-metals")]
    public void A_guy_made_up_wrong_is_named(string field, string code)
    {
        var keys = field.StartsWith("back-up", StringComparison.Ordinal) ? field : field + ", back-up-clip: yes";
        var text = Text("lattice-22m").Replace(
            "        hardware:\n          shackle: 3/8 in screw-pin shackle\n          turnbuckle: 3/8x6 in jaw-eye turnbuckle\n          back-up-clip: yes         # ice can unwrap a grip at the top\n",
            $"        hardware: {{ shackle: 3/8 in screw-pin shackle, turnbuckle: 3/8x6 in jaw-eye turnbuckle, {keys} }}\n");

        Assert.Contains(Stand(text, screens: true).Findings, f => f.Code == code && f.WayOut is { Length: > 0 });
    }

    /// <summary>Clear length by hand: level 1 is cut at 0.4, 5.5 and 11 m from the mast, and egg insulators let their loops interlock.</summary>
    [Fact]
    public void The_clear_length_is_what_fittings_and_insulators_leave()
    {
        var chain = Stand(Text("lattice-22m"), screens: true).Result.Chains.Single(c => c.Level == 1);

        var hardware = chain.Chain.Pieces.Where(p => p is not Structure.Chains.StrandPiece).Sum(p => p is Structure.Chains.TurnbucklePiece t ? t.ClosedLengthM + (t.OpenShare * t.TakeUpM) : p.LengthM);
        Assert.Equal(chain.Demand.LengthM - hardware - 0.4 - 5.1 - 5.5, chain.Report.ClearLength!.Value, 1e-9);
        Assert.Equal("3/16 in EHS", chain.Report.Weakest!.Piece.Name);
    }

    [Fact]
    public void Factors_on_members_and_ground_can_be_changed()
    {
        var text = Text("lattice-22m");
        var usual = Stand(text);
        var strict = Stand(text + "\nlimits:\n  member-factors: { yielding: 0.45, rupture: 0.375, compression: 0.45, bending: 0.45 }\n  ground-factors: { sliding: 3 }\n");

        Assert.Equal(0.90, In(One(usual, "stand.mast.leg").Demand, "φc"));
        Assert.Equal(0.45, In(One(strict, "stand.mast.leg").Demand, "φc"));
        Assert.Equal(2 * One(usual, "stand.footing.sliding").Ratio, One(strict, "stand.footing.sliding").Ratio, 1e-9);
    }

    private static double In(Trail t, string symbol) => t.Symbol == symbol ? t.Value : t.Inputs.Select(i => In(i, symbol)).FirstOrDefault(v => !double.IsNaN(v), double.NaN);

    [Fact]
    public void Lift_checks_follow_the_plan()
    {
        var text = Text("lattice-22m").Replace("    radials:\n",
            "    raising: { line-strength: 30 kN, pole: { diameter: 60 mm, wall: 4 mm, metal: S235 }, lug: { thickness: 10 mm, width: 60 mm, hole: 18 mm } }\n    radials:\n");
        var station = Examples.Read(text).Station!;
        var checks = LiftChecks.Of(station, station.Masts[0]).ToDictionary(c => StationResult.KindOf(c.Id));

        Assert.Equal(["stand.raise.line", "stand.raise.lug", "stand.raise.mast", "stand.raise.pole"], checks.Keys.Order());
        var lift = RaisingRun.LiftOf(station, station.Masts[0]);
        Assert.Equal(lift.Forces.WorstHaul.HaulLineN / (30e3 / 5), checks["stand.raise.line"].Ratio, 1e-9);
        Assert.All(checks.Values, c => Assert.NotEmpty(c.Caution!));
    }

    /// <summary>Stacking: the joints lie where the pieces end, every step is guyed, and the rope carries one piece times the dynamic factor.</summary>
    [Fact]
    public void Stacking_goes_piece_by_piece()
    {
        var station = Examples.Read(Text("lattice-22m").Replace("    radials:\n", "    raising: { method: stacking }\n    radials:\n")).Station!;
        var answer = StackingRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken);

        // 22 m of 3 m pieces: seven joints, the last piece 1 m long.
        Assert.Equal(new[] { 3, 6, 9, 12, 15, 18, 21.0 }, answer.Rows.Select(r => Math.Round(r.Step.HeightM, 6)));
        Assert.All(answer.Rows, r => Assert.True(r.Stands && r.Step.FreeTopM <= 6 + 1e-9));
        Assert.Equal(1.3 * 8.25 * 3 * G, answer.Rows[0].Step.RopeN, 0.01 * answer.Rows[0].Step.RopeN);
        Assert.Contains(LiftChecks.Of(station, station.Masts[0]), c => c.Id.StartsWith("stand.raise.steps", StringComparison.Ordinal));
    }

    [Fact]
    public void Governing_cases_speak_the_units_of_the_station()
    {
        var checks = Stand(Text("tube-12m"), screens: true).Checks;

        Assert.DoesNotContain(checks, c => System.Text.RegularExpressions.Regex.IsMatch(c.GoverningCase + " " + c.Id, @"\d m\b|\d m/s|\d N\b"));
        Assert.Contains(checks, c => c.GoverningCase.Contains(" ft", StringComparison.Ordinal));
    }

    /// <summary>
    /// ISO 12494 tables 3 and 6 (from memory): class G3 is 30 mm of glaze with half of the wind pressure, and weighs 3.4 kg/m on 10 mm, 5.1 kg/m on 30 mm.
    /// A guy of 1/4 in keeps the drag of a thin round line, so it takes half of the pressure on 6.35 mm and twice 30 mm.
    /// </summary>
    [Fact]
    public void A_glaze_class_brings_its_thickness_and_its_share_of_the_wind()
    {
        var station = Examples.Read(Text("pair-80m").Replace("  coldest: -20 °C", "  ice: { glaze-class: 3 }\n  coldest: -20 °C")).Station!;
        var picture = WindPicture.Of(station, station.Masts[0], null);

        Assert.Equal("ISO 12494 glaze", picture.Ice);
        Assert.Equal(0.030, picture.Layer!.Thickness.Value, 1e-12);
        Assert.Equal(0.030, station.Site.Ice.ThicknessM, 1e-12);
        var guy = picture.Guys.Single(g => g.Strand == "1/4 in EHS");
        Assert.Equal(0.5 * (6.35 + 60) / 6.35, guy.IcedPerM!.Value / guy.AcrossPerM.Value, 1e-6);

        // Table 3 rises by 1.7 kg/m for 20 mm of diameter.
        Assert.Equal((3.4 - (1.7 * 3.65 / 20)) * G, guy.IceNPerM, 0.1 * G);
    }
}
