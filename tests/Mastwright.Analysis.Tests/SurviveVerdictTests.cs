using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>What of sparks, static, metals and people stands in the verdict, and how the file changes it.</summary>
public class SurviveVerdictTests
{
    private static readonly string Tube = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private static IEnumerable<Check> Metals(string more) => MetalsRun.Checks(Examples.Read(Tube + "\n" + more).Station!);

    [Fact]
    public void Every_verdict_speaks_of_burns_static_metals_and_the_fence()
    {
        foreach (var name in Examples.Names)
        {
            var kinds = Examples.Result(name).Checks.Select(c => StationResult.KindOf(c.Id)).ToHashSet();
            Assert.Contains("survive.burn", kinds);
            Assert.Contains("survive.metals", kinds);
            Assert.Contains(kinds, k => k.StartsWith("survive.drain", StringComparison.Ordinal));
            Assert.Equal(Examples.Result(name).Station.Fence is not null, kinds.Contains("survive.fence.field"));
        }
    }

    [Fact]
    public void Touching_the_base_is_a_failure_only_where_the_file_says_the_gate_stands_open()
    {
        static Check Burn(string text)
        {
            var station = Examples.Read(text).Station!;
            return FenceRun.Burns(station, station.Masts[0], Examples.Result("tube-12m").Masts[0]).Single(c => c.Id.StartsWith("survive.burn", StringComparison.Ordinal));
        }

        Assert.Equal(Verdict.Caution, Burn(Tube).Verdict);
        Assert.Equal(Verdict.Fail, Burn(Tube.Replace("radius: 12 ft", "radius: 12 ft, locked: no")).Verdict);
        var silent = Burn(Tube.Replace("fence: { radius: 12 ft }", ""));
        Assert.Equal(Verdict.Caution, silent.Verdict);
        Assert.Contains("fence:", silent.Cure);
        Assert.Contains("Never energise", silent.Caution);
    }

    /// <summary>MIL-STD-889 practice (as reprinted): at most 0.15 V outdoors; copper on aluminium differs by far more.</summary>
    [Fact]
    public void A_pair_the_file_says_nothing_about_is_a_caution_and_one_it_lists_fails()
    {
        var silent = Metals("").Single(c => c.Id == "survive.metals[base lead of T]");
        var open = Metals("metals: { lead-joint: none }").Single(c => c.Id == "survive.metals[base lead of T]");
        var sealedUp = Metals("metals: { lead-joint: transition-metal }").Single(c => c.Id == "survive.metals[base lead of T]");

        Assert.Equal(0.55, silent.Demand.Value, 1e-9); // 0.9 − 0.35
        Assert.Equal([Verdict.Caution, Verdict.Fail, Verdict.Caution], [silent.Verdict, open.Verdict, sealedUp.Verdict]);
    }

    [Theory]
    [InlineData("{ where: a, first: stainless 316, second: 6061-T6, joint: thread }", "survive.metals.thread[a]", false)]
    [InlineData("{ where: a, first: stainless 316, second: 6061-T6, joint: thread, barrier: anti-seize }", "survive.metals.thread[a]", true)]
    [InlineData("{ where: a, first: copper, second: zinc coat, joint: above }", "survive.metals.runoff[a]", false)]
    [InlineData("{ where: a, first: 6061-T6, second: 6061-T6, joint: in-concrete }", "survive.metals.concrete[a]", false)]
    [InlineData("{ where: a, first: 6061-T6, second: 6061-T6, joint: in-concrete, barrier: insulated }", "survive.metals.concrete[a]", true)]
    [InlineData("{ where: a, first: copper, second: zinc coat, joint: in-soil }", "survive.metals.soil[a]", false)]
    public void The_rules_of_the_trade_are_reached_from_the_file(string contact, string id, bool passes) =>
        Assert.Equal(passes ? Verdict.Pass : Verdict.Fail, Metals($"metals: {{ contacts: [{contact}] }}").Single(c => c.Id == id).Verdict);

    /// <summary>MIL-STD-889 practice (as reprinted): 0.15 V outdoors, 0.25 V under cover, 0.50 V in a controlled room; 6061 on stainless differs by 0.40 V.</summary>
    [Theory]
    [InlineData("outdoors", 0.15, Verdict.Fail)]
    [InlineData("sheltered", 0.25, Verdict.Fail)]
    [InlineData("heated-room", 0.50, Verdict.Pass)]
    public void The_limit_goes_with_the_place(string place, double volts, Verdict verdict)
    {
        var check = Metals($"metals: {{ contacts: [{{ where: a, first: stainless 304, second: 6061-T6, place: {place} }}] }}").Single(c => c.Id == "survive.metals[a]");
        Assert.Equal(volts, check.Capacity.Value, 1e-12);
        Assert.Equal(verdict, check.Verdict);
    }

    [Fact]
    public void Clamps_screws_and_copper_overhead_are_found_in_the_design()
    {
        Assert.Equal(Verdict.Fail, Metals("metals: { radial-clamps: zinc coat, radial-joint: none }").Single(c => c.Id == "survive.metals[radial clamps of T]").Verdict);
        Assert.Equal(Verdict.Caution, Metals("metals: { radial-clamps: zinc coat }").Single(c => c.Id == "survive.metals[radial clamps of T]").Verdict);
        Assert.Contains(Metals("metals: { mast-screws: stainless 316, screw-joint: none }"), c => c.Id.StartsWith("survive.metals.thread[screws in", StringComparison.Ordinal) && c.Verdict == Verdict.Fail);
        Assert.Contains(Metals("metals: { mast-screws: stainless 316, screw-joint: anti-seize }"), c => c.Id.StartsWith("survive.metals.thread[screws in", StringComparison.Ordinal) && c.Verdict == Verdict.Pass);
        Assert.Contains(Metals(""), c => c.Id == "survive.metals[gap strap on T]");
        var station = Examples.Read(Tube).Station!;
        var hat = station with { Masts = [station.Masts[0] with { TopWires = new TopWires { Count = 4, LengthM = 3 } }] };
        Assert.Contains(MetalsRun.Checks(hat), c => c.Id.StartsWith("survive.metals.runoff[top wires above", StringComparison.Ordinal) && c.Verdict == Verdict.Caution && c.Cure.Length > 0);
    }

    [Fact]
    public void Galvanised_rods_among_copper_radials_and_an_aluminium_base_plate_are_caught()
    {
        Assert.Equal(Verdict.Fail, Metals("earth: { rods: 2, rod-metal: zinc coat }").Single(c => c.Id == "survive.metals.soil[earth rods and radials]").Verdict);
        Assert.Equal(Verdict.Fail, Metals("metals: { base-plate: 6061-T6 }").Single(c => c.Id == "survive.metals.concrete[base plate of T]").Verdict);
        Assert.Equal(Verdict.Fail, Metals("earth: { radial-bond: none }").Single(c => c.Id == "survive.earth.bond").Verdict);
    }

    [Fact]
    public void Rope_in_the_sun_is_counted_by_its_years()
    {
        var text = Tube.Replace("strand: 3/16 in EHS", "strand: 6 mm aramid").Replace("insulators-at: [1 ft, 10 ft, 20 ft, 30 ft]", "insulators-at: none").Replace("insulators-at: [1 ft, 10 ft, 20 ft]", "insulators-at: none");
        static IEnumerable<Verdict> Ropes(string t) => MetalsRun.Checks(Examples.Read(t).Station!).Where(c => c.Id.StartsWith("survive.rope-sun", StringComparison.Ordinal)).Select(c => c.Verdict);

        Assert.Equal([Verdict.Pass, Verdict.Pass], Ropes(text + "\nmetals: { rope-years: 5 }"));
        Assert.Equal([Verdict.Fail, Verdict.Fail], Ropes(text + "\nmetals: { rope-years: 5, rope-jacketed: no }"));
    }

    /// <summary>ISO 9223 rates, from memory: zinc lives ten times longer inland than by the sea.</summary>
    [Fact]
    public void Zinc_lives_longest_inland()
    {
        CoatLife Strand(string air) => MetalsRun.Coats(Examples.Read(Tube + $"\nmetals: {{ environment: {air} }}").Station!).First();

        Assert.True(Strand("rural").Least.Value > 10 * Strand("marine").Least.Value);
        Assert.All(new[] { "marine", "industrial", "rural" }, a => Assert.True(Strand(a).Least.Value < Strand(a).Most.Value));
    }

    [Fact]
    public void A_stated_drain_is_held_against_loss_and_static_voltage()
    {
        IEnumerable<Check> With(string drain)
        {
            var station = Examples.Read(Tube + $"\nstatics: {{ {drain} }}").Station!;
            return StaticsRun.DrainChecks(station, station.Masts[0], Examples.Result("tube-12m").Masts[0]);
        }

        Assert.All(With("drain-resistor: 1 MΩ"), c => Assert.Equal(Verdict.Pass, c.Verdict));
        Assert.Contains(With("drain-resistor: 10 kΩ"), c => c.Verdict == Verdict.Fail && c.Id.StartsWith("survive.drain.loss", StringComparison.Ordinal));
        Assert.Contains(With("drain-resistor: 900 MΩ"), c => c.Verdict == Verdict.Fail && c.Id.StartsWith("survive.drain.static", StringComparison.Ordinal));
        Assert.Contains(With("drain-choke: 5 µH"), c => c.Verdict == Verdict.Fail);
    }

    /// <summary>Circuit theory: 12 pF at 1.85 MHz is 1/(2πfC) = 7169 Ω; a shorted line a quarter wave long is nearly open, an eighth is +jZ0.</summary>
    [Fact]
    public void Crossings_have_the_impedance_of_circuit_theory()
    {
        var lamp = CrossingRun.DeviceOf(new CrossingSpec { Name = "lamp", Transformer = new IsolationTransformer { CapacitanceF = 12e-12 } });
        Assert.Equal(-1 / (2 * Math.PI * 1.85e6 * 12e-12), lamp.ImpedanceOhm(1.85e6).Imaginary, 1e-6);

        var stub = CrossingRun.DeviceOf(new CrossingSpec { Name = "aerial", Stub = new CableStub { LengthM = 299792458.0 * 0.95 / (4 * 3.65e6), LineOhm = 150, VelocityFactor = 0.95 } });
        Assert.True(stub.ImpedanceOhm(3.65e6).Magnitude > 3000);
        Assert.Equal(150, stub.ImpedanceOhm(1.825e6).Imaginary, 0.5);
    }

    [Theory]
    [InlineData("crossings: [ { name: lamp } ]", "crossing-kind")]
    [InlineData("crossings: [ { name: lamp, coil: { inductance: 90 µH }, transformer: { capacitance: 12 pF } } ]", "crossing-kind")]
    [InlineData("crossings: [ { name: lamp, coil: { inductance: 90 µH } }, { name: lamp, coil: { inductance: 90 µH } } ]", "name-twice")]
    public void A_crossing_is_one_kind_and_has_a_name_of_its_own(string lines, string code)
    {
        var reading = DesignReader.Read(Tube.Replace("    radials: { count: 32", $"    {lines}\n    radials: {{ count: 32"), "test", CatalogueNames.Of);

        Assert.Contains(reading.Findings, f => f.Code == code && f.Place is { Line: > 0 } && f.WayOut is not null);
    }
}
