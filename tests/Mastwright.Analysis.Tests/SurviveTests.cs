using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Protection.Lightning;
using Mastwright.Protection.People;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Sparks, strikes, static, earth and people of a whole design.</summary>
public class SurviveTests
{
    private static readonly string Lattice = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));

    private static (Station Station, Mast Mast, MastResult Result) Of(string example)
    {
        var result = Examples.Result(example);
        return (result.Station, result.Station.Masts[0], result.Masts[0]);
    }

    /// <summary>IEC 62305-1:2010 table 3, from memory: level I 200 kA, 100 C, 10 MJ/Ω in the first positive stroke; level II three quarters (75 C, 5.6 MJ/Ω).</summary>
    [Theory]
    [InlineData("i", 200e3, 100, 10e6)]
    [InlineData("ii", 150e3, 75, 5.625e6)]
    [InlineData("iv", 100e3, 50, 2.5e6)]
    public void The_levels_of_the_file_are_those_of_the_standard(string level, double crestA, double chargeC, double energy)
    {
        var station = Examples.Read(Lattice.Replace("level: ii ", $"level: {level} ")).Station!;
        var stroke = StrikeRun.Strokes(station)[0];

        // The table's charge and energy are rounded; the waveform of annex B gives them within a few per cent.
        Assert.Equal(crestA, stroke.CrestFoundA(), 0.01 * crestA);
        Assert.Equal(chargeC, stroke.ChargeC(), 0.03 * chargeC);
        Assert.Equal(energy, stroke.SpecificEnergyJPerOhm(), 0.04 * energy);
    }

    /// <summary>The correction of an own stroke must come out as the 0.986 of IEC 62305-1 table B.1 (from memory) for that table's time constants.</summary>
    [Fact]
    public void An_own_stroke_has_its_crest_and_the_published_correction()
    {
        var station = Examples.Read(Lattice.Replace("  strap-length: 0.4 m", "  strap-length: 0.4 m\n  stroke: { crest: 30 kA, front: 1.82 µs, tail: 285 µs }")).Station!;
        var own = StrikeRun.Strokes(station)[^1];

        Assert.Equal(30e3, own.CrestFoundA(), 1);
        Assert.Equal(0.986, own.Correction, 0.001);
    }

    /// <summary>Dwight 1936 by hand: two rods of 2.4 m and 16 mm, 4.8 m apart, in 200 Ω·m.</summary>
    [Fact]
    public void Two_rods_agree_with_the_hand_formula_and_with_the_sum_done_here()
    {
        var station = Examples.Read(Lattice.Replace("\nearth:", "\nearth:\n  resistivity: 200 Ω·m")).Station!;
        var report = EarthRun.Of(station, station.Masts[0], Examples.Result("lattice-22m").Masts[0]);
        var rods = report.Rows.Single(r => r.Name == "2 rods");
        const double l = 2.4, a = 0.008, s = 4.8, rho = 200;
        var hand = (rho / (4 * Math.PI * l) * (Math.Log(4 * l / a) - 1)) + (rho / (4 * Math.PI * s) * (1 - (l * l / (3 * s * s)) + (0.4 * Math.Pow(l / s, 4))));

        Assert.Equal(hand, rods.Hand!.Value, 1e-6 * hand);
        Assert.Equal(hand, rods.Solved.Value, 0.03 * hand);
    }

    [Theory]
    [InlineData("lattice-22m")]
    [InlineData("pair-80m")]
    [InlineData("ice-27m")]
    public void Bonding_electrodes_lowers_their_resistance_but_never_below_their_outline(string example)
    {
        var (station, mast, result) = Of(example);
        var report = EarthRun.Of(station, mast, result);

        Assert.All(report.Rows, r => Assert.True(report.Together.Value <= r.Solved.Value * 1.001));
        // Mutual effect only ever raises the resistance of electrodes in parallel.
        Assert.True(report.Together.Value >= 1 / report.Rows.Where(r => r.Name != "all bonded together").Sum(r => 1 / r.Solved.Value) * 0.999);
        // A disc on the surface as wide as the radials (ρ/4r) encloses them all but for their depth.
        Assert.True(report.Together.Value > 0.95 * report.Limits[0].Value);
        Assert.True(report.Around.Zip(report.Around.Skip(1), (p, q) => q.SurfaceV.Value < p.SurfaceV.Value).All(x => x));
    }

    [Fact]
    public void A_bonded_panel_takes_the_strike_off_the_radio()
    {
        var (station, mast, result) = Of("lattice-22m");
        var report = StrikeRun.Of(station, mast, result);

        Assert.Equal(3, report.Cases.Length);
        Assert.True(report.PanelBonded!.Result.House!.EquipmentChargeC.Value < 0.5 * report.PanelMissing!.Result.House!.EquipmentChargeC.Value);
        Assert.True(report.PanelBonded.Result.House.EquipmentPeakA.Value < report.PanelMissing.Result.House.EquipmentPeakA.Value);
        Assert.True(report.StrapCost!.Value > 0);
        Assert.All(report.Cases, c => Assert.InRange(c.Result.CableShare.Value, 0.01, 0.99));
        // common practice, no source: a few hundred volts across the arc at tens of kiloamperes.
        Assert.All(report.Cases.Where(c => c.Result.ArcDropV is not null), c => Assert.InRange(c.Result.ArcDropV!.Value, 200, 1000));
    }

    [Fact]
    public void A_longer_strap_shows_more_across_the_base_in_a_steep_stroke()
    {
        var station = Examples.Read(Lattice.Replace("strap-length: 0.4 m", "strap-length: 1.5 m")).Station!;
        var (_, mast, result) = Of("lattice-22m");
        double Peak(Station s) => StrikeSimulation.Run(StrikeRun.Scenario(s, mast, result, LightningCurrents.Of(LightningLevel.II, StrokeKind.Subsequent)))!.Parts[0].PeakV.Value;

        Assert.True(Peak(station) > 1.3 * Peak(Examples.Result("lattice-22m").Station));
    }

    /// <summary>The hand formula of a plain rod (Edgcombe and Valdrè 2001, from memory, good to a few per cent) beside the boundary elements.</summary>
    [Theory]
    [InlineData("lattice-22m")]
    [InlineData("tube-12m")]
    public void A_bare_top_agrees_with_the_hand_formula_of_a_rod(string example)
    {
        var (station, mast, result) = Of(example);
        var report = StaticsRun.Of(station, mast, result);

        Assert.Equal(report.Static!.HandEnhancement.Value, report.Static.Places[0].Enhancement.Value, 0.06 * report.Static.HandEnhancement.Value);
        // A uniform field over an insulated upright rod: it floats near the potential of its middle (any electrostatics text).
        Assert.InRange(report.Static.EffectiveHeightM!.Value, 0.45 * mast.TopM, 0.55 * mast.TopM);
        Assert.True(report.Drain!.LowestOhm.Value < report.Drain.HighestOhm.Value);
    }

    [Fact]
    public void A_whip_on_the_top_sprays_early_and_a_ring_quiets_it()
    {
        var (_, _, result) = Of("lattice-22m");
        var station = Examples.Read(Lattice.Replace("    crossings:", "    top: { rod-length: 1 m, rod-diameter: 6 mm }\n    crossings:")).Station!;
        var report = StaticsRun.Of(station, station.Masts[0], result);

        Assert.True(report.Static!.Places[0].OnsetField.Value < 5000);
        Assert.True(report.Ring!.AlreadyQuiet || report.Ring.Smallest!.OnsetFieldVPerM >= station.Statics.QuietFieldVPerM);
        Assert.True(report.Current!.Value > 0);
    }

    /// <summary>
    /// The fence is where the limits are met. 47 CFR 1.1310 for the public at 7.1 MHz: 824/7.1 V/m and 2.19/7.1 A/m; ICNIRP 2020 table 5 (from memory): 300/7.1^0.7 V/m.
    /// </summary>
    [Fact]
    public void The_fence_satisfies_every_limit_and_the_limits_are_the_published_ones()
    {
        var (station, _, result) = Of("tube-12m");
        var report = ExposureRun.Of(station, 0, result);
        var forty = report.Bands.Single(b => b.Band.Name == "40 m" && b.Population == Population.Public).Between;
        var fcc = forty.Single(d => d.Limit.Rule == ExposureRule.Fcc1310).Limit;

        Assert.Equal(824 / 7.1, fcc.ElectricVPerM.Value, 1e-6);
        Assert.Equal(2.19 / 7.1, fcc.MagneticAPerM.Value, 1e-9);
        Assert.Equal(1800, fcc.AveragingS);
        Assert.Equal(300 / Math.Pow(7.1, 0.7), forty.Single(d => d.Limit.Rule == ExposureRule.IcnirpWholeBody).Limit.ElectricVPerM.Value, 1e-6);
        var known = report.Bands.Where(b => b.Population == Population.Public).ToList();
        Assert.All(known, b => Assert.All(b.Between.Concat(b.Along), d => Assert.True(d.Governing.Value <= report.FenceM.Value + 1e-9)));
        Assert.All(known, b => Assert.All(b.Between, d => Assert.True(d.Governing.Value <= report.BetweenM.Value + 1e-9)));
    }
}
