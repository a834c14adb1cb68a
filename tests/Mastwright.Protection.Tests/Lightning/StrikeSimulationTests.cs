using Mastwright.Circuits.Transient;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;

namespace Mastwright.Protection.Tests.Lightning;

/// <summary>The whole strike: conservation laws, closed forms at late time, the trade's rules, and what changes do.</summary>
public class StrikeSimulationTests
{
    private static readonly StruckGap Gap = new(
        new(GapShape.BallToBall, 0.05), 3.0 / 16 * 0.0254, new AirState(300, 263.15), 0.6, 0.05, 0.001, StrikeMetal.Copper);

    private static StrikeScenario Scenario(StrokeKind kind = StrokeKind.FirstNegative, bool bonded = true) => new(
        LightningCurrents.Of(LightningLevel.III, kind), new(20, 0.05), Gap, new(100, 16, 20, 1e-3, 0.02, 2),
        [new("series coil", FeedElement.Coil, true, 5e-6, 20e3), new("shunt capacitor", FeedElement.Capacitor, false, 500e-12, 10e3)],
        new(40, CableRoute.OnGround, 50, 0.005, 600), new(bonded))
    { EndS = 60e-6 };

    private static readonly Lazy<StrikeResult> Usual = new(() => StrikeSimulation.Run(Scenario())!);

    [Fact]
    public void Current_is_conserved_at_the_plate()
    {
        var raw = Usual.Value.Raw;
        string[] into = ["gap strap", "series coil"];
        string[] away = ["radials 1 L", "rods L", "shield 1 L", "inner 1 L"];
        var at = Enumerable.Range(0, raw.TimesS.Length).MinBy(i => Math.Abs(raw.TimesS[i] - 20e-6));
        var sumIn = into.Sum(p => raw.Current(p)[at]);
        Assert.Equal(1, away.Sum(p => raw.Current(p)[at]) / sumIn, 0.01);
    }

    // At late time inductances and capacitances no longer matter: current divides as the resistances do (Ohm), ionisation being over.
    [Fact]
    public void Late_currents_divide_as_the_resistances_do()
    {
        var scenario = Scenario() with { House = null, Cable = null, EndS = 1400e-6 };
        var raw = StrikeSimulation.Run(scenario)!.Raw;
        var earth = new RadialEarth(scenario.Earth, Protection.Earthing.SoilIonisation.CriticalFieldCigre);
        var (rods, radials) = (raw.Current("rods L")[^1], raw.Current("radials 1 L")[^1]);
        Assert.Equal(1, rods / radials / (earth.RadialsOhm.Value / earth.RodsOhm!.Value), 0.03);
    }

    // common practice, no source: a few hundred volts across the arc at tens of kiloamperes.
    [Fact]
    public void Arc_holds_a_few_hundred_volts_at_the_crest() =>
        Assert.InRange(StrikeSimulation.Run(Scenario(StrokeKind.FirstPositive))!.ArcDropV!.Value, 200, 700);

    // common practice, no source: a rounded 3/16 in gap fires near 15 kV (static) within about 500 ns at a modest overvoltage.
    [Fact]
    public void The_gap_fires_within_500_ns_at_a_fifth_over_its_static_voltage()
    {
        var spark = GapBreakdown.PeakVolts(Gap.Electrodes, Gap.SpacingM, AirState.Reference).Value;
        var result = new TransientCircuit()
            .VoltageSource("u", "s", "0", Waveform.Constant(1.2 * spark))
            .Resistor("r", "s", "a", 1000)
            .Gap("gap", "a", "0", new(new DisruptiveEffect(new(spark), 1, spark * Gap.FormativeLagS), new ConstantArc(0.1)))
            .Run(new(2e-6));
        Assert.InRange(Assert.Single(result.Events).TimeS, 0.45e-6, 0.55e-6);
    }

    [Fact]
    public void A_steeper_stroke_raises_the_impulse_ratio() =>
        Assert.True(StrikeSimulation.Run(Scenario(StrokeKind.Subsequent))!.ImpulseRatio!.Value > 1.3 * StrikeSimulation.Run(Scenario(StrokeKind.FirstPositive))!.ImpulseRatio!.Value);

    [Fact]
    public void A_bonded_panel_takes_the_current_off_the_radio()
    {
        var with = Usual.Value.House!;
        var without = StrikeSimulation.Run(Scenario(bonded: false))!;
        Assert.True(with.EquipmentPeakA.Value < 0.5 * without.House!.EquipmentPeakA.Value);
        Assert.True(with.EquipmentPeakV.Value < 0.5 * without.House.EquipmentPeakV.Value);
        Assert.Contains(without.Findings, f => f.Code == "no-entry-panel");
    }

    // A metre more of 50 mm strap is about 0.9 µH, and the subsequent stroke of level III rises at most 140 kA/µs: some tens of kilovolts a metre, never more than L di/dt.
    [Fact]
    public void Each_metre_of_strap_costs_tens_of_kilovolts()
    {
        var scenario = Scenario(StrokeKind.Subsequent);
        var cost = StrikeSimulation.CostOfLongerStrap(scenario)!.Value;
        var bound = (StraightInductance.Strap(1.6, 0.05, 0.001).Value - StraightInductance.Strap(0.6, 0.05, 0.001).Value) * scenario.Stroke.GreatestSteepnessAPerS();
        Assert.InRange(cost, 10e3, bound);
    }

    [Fact]
    public void Tighter_tolerance_changes_the_peaks_by_less_than_a_hundredth()
    {
        var scenario = Scenario() with { EndS = 5e-6 };
        var usual = StrikeSimulation.Run(scenario)!;
        var tight = StrikeSimulation.Run(scenario, tolerance: 1e-5)!;
        Assert.Equal(1, usual.PlatePeakV.Value / tight.PlatePeakV.Value, 0.01);
        for (var i = 0; i < usual.Parts.Length; i++)
            Assert.Equal(1, usual.Parts[i].PeakV.Value / tight.Parts[i].PeakV.Value, 0.01);
    }

    // Ohm: late in a slow stroke the inductances are over, and what the shield's resistance drops drives the matched conductor: half of it lies across the radio when the network end is matched too.
    [Fact]
    public void The_drop_along_the_shield_reaches_the_radio()
    {
        var scenario = Scenario(StrokeKind.FirstPositive) with
        {
            Cable = new(40, CableRoute.OnGround, 50, 0.05),
            Feed = [new("block", FeedElement.Resistor, true, 1e8), new("match", FeedElement.Resistor, false, 50)],
            EndS = 400e-6,
        };
        var raw = StrikeSimulation.Run(scenario)!.Raw;
        var at = Enumerable.Range(0, raw.TimesS.Length).MinBy(i => Math.Abs(raw.TimesS[i] - 300e-6));
        var drop = 0.05 * 40 * raw.Current("shield R")[at];
        Assert.Equal(1, Math.Abs(raw.VoltageAcross("radio input")[at] / (0.5 * drop)), 0.03);
    }

    [Fact]
    public void An_arrester_at_each_end_takes_its_share()
    {
        double Radio(double? mast, double? house) => StrikeSimulation.Run(Scenario() with
        {
            Cable = new(40, CableRoute.OnGround, 50, 0.005, mast) { HouseArresterSparkoverV = house },
            EndS = 20e-6,
        })!.House!.RadioPeakV.Value;
        Assert.True(Radio(600, null) < Radio(null, null));
        Assert.InRange(Radio(600, 600), 300, 900);
    }

    // A series part carries only what flows through it: into an open end nothing does, into a line something does.
    [Fact]
    public void A_network_without_a_cable_ends_in_its_line()
    {
        var scenario = Scenario() with { Feed = [new("series capacitor", FeedElement.Capacitor, true, 500e-12)], Cable = null, House = null, EndS = 5e-6 };
        Assert.True(StrikeSimulation.Run(scenario)!.Parts[^1].PeakV.Value < 1);
        Assert.True(StrikeSimulation.Run(scenario with { LineOhm = 50 })!.Parts[^1].PeakV.Value > 1000);
    }

    [Fact]
    public void A_cable_across_the_base_sees_the_gap_voltage()
    {
        var scenario = Scenario() with { Feed = [new("rotator coil", FeedElement.Coil, false, 90e-6, 20e3)], EndS = 10e-6 };
        var result = StrikeSimulation.Run(scenario)!;
        Assert.Equal(result.Parts[0].PeakV.Value, result.Parts.Single(p => p.Name == "rotator coil").PeakV.Value, 1);
        Assert.Contains(result.Checks, c => c.Id == "survive.strike.voltage[rotator coil]");
    }

    [Fact]
    public void A_bonded_mast_without_gap_runs_too()
    {
        var result = StrikeSimulation.Run(Scenario() with { Gap = null, Feed = [] })!;
        Assert.Null(result.FiredAtS);
        Assert.Empty(result.Raw.Findings);
    }

    [Fact]
    public void Touch_voltage_grows_and_step_voltage_falls_off_outwards()
    {
        var ground = Usual.Value.Ground;
        Assert.True(ground[^1].TouchV.Value > ground[0].TouchV.Value);
        Assert.True(ground[^1].SurfaceV.Value < 0.8 * ground[0].SurfaceV.Value);
        Assert.All(ground, g => Assert.InRange(g.SurfaceV.Value, 0, Usual.Value.PlatePeakV.Value));
    }

    [Fact]
    public void Bad_scenarios_have_findings_and_no_result()
    {
        var bad = Scenario() with { Earth = new(100, 0, 20, 1e-3, 0.02), Cable = null };
        Assert.Null(StrikeSimulation.Run(bad));
        Assert.Equal(["strike-radials", "strike-house-without-cable"], bad.Faults().Select(f => f.Code));
    }

    [Fact]
    public void Checks_carry_the_storm_caution() =>
        Assert.All(Usual.Value.Checks, c => Assert.Equal(StrikeCautions.Storm, c.Caution));
}
