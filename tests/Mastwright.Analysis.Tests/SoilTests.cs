using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>The exact earth of a design file: limits, energy, and the quick estimate held against it.</summary>
public class SoilTests
{
    private static readonly Lazy<Station> Tube = new(() => Examples.Read(File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))).Station!);

    private static Station With(Func<Radials, Radials> change) => Tube.Value with { Masts = [Tube.Value.Masts[0] with { Radials = change(Tube.Value.Masts[0].Radials) }] };

    /// <summary>Limit: soil as good as metal leaves the impedance over a perfect plane, within 1 %.</summary>
    [Fact]
    public void Soil_as_good_as_metal_is_perfect_ground()
    {
        var station = With(r => r with { Count = 3, LengthM = 1 });
        var perfect = WireSolver.Solve(WireModels.Of(station), 7.1e6).Require().FeedImpedance();
        var metal = WireSolver.Solve(SoilModels.Of(station, new Soil("as good as metal", 1, 300)).Model, 7.1e6).Require().FeedImpedance();

        Assert.InRange((metal - perfect).Magnitude, 0, 0.01 * perfect.Magnitude);
    }

    /// <summary>
    /// Conservation of energy: what neither the sky wave, integrated from the far field, nor the heat in the wires accounts for went into the ground. In soil that conducts
    /// very well that goes with its surface resistance √(ω·μ/2σ) (skin effect, any field text), so it doubles when the conductivity falls to a quarter, and nothing is
    /// left of it at none. Worse soil takes more; the flux through the ground itself is tested where the solver lives.
    /// </summary>
    [Fact]
    public void The_shares_of_the_power_make_up_the_whole()
    {
        var station = With(r => r with { Count = 3, LengthM = 1 });
        double Accounted(Soil soil)
        {
            var driven = WireSolver.Solve(SoilModels.Of(station, soil).Model, 7.1e6).Require().DrivePower(1);
            Assert.InRange(driven.LossPowerW, 0, 0.1);
            return driven.LossPowerW + FarField.Of(driven).RadiatedPowerW;
        }

        var (good, quarter, own) = (Accounted(new Soil("better than sea water", 1, 30)), Accounted(new Soil("a quarter of it", 1, 7.5)), Accounted(Soils.Of(station.Site)));

        // Powers in resistances that add to those of the rest: what is fed over what is accounted for, carried to no surface resistance.
        Assert.Equal(1, (2 / good) - (1 / quarter), 0.01);
        Assert.True(good > 0.9 && quarter < good && own < quarter, $"{good:F4} {quarter:F4} {own:F4}");
    }

    /// <summary>
    /// The estimate states ±35 % of the loss for radials in its range and masts up to about 0.4 wavelength (docs/theory/fields-radial-loss.md). The low-band
    /// examples where nothing warns keep to it.
    /// </summary>
    [Fact]
    public void Estimate_and_exact_agree_within_the_stated_range()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "pair-80m.yaml"))).Station!;
        var alone = station with { Masts = [station.Masts[0]], Groups = [] };
        var band = SoilRun.Of(alone).Bands.Single();

        Assert.Empty(band.EstimateEfficiency.RangeWarnings());
        var estimateOhm = band.EstimateEfficiency.Inputs.Single(i => i.Symbol == "R_g").Value;
        Assert.InRange(band.Exact!.EarthLoss.Value, 0.65 * estimateOhm, 1.35 * estimateOhm);
    }

    [Fact]
    public void More_wire_never_costs_efficiency_and_better_soil_wins_at_equal_wire()
    {
        var low = Tube.Value with { Bands = [Tube.Value.Bands[0]] };
        var answer = RadialRun.Of(low).Single();

        Assert.All(answer.Curves, c => Assert.Equal(c.Best.Select(b => b.Efficiency).Order(), c.Best.Select(b => b.Efficiency)));
        Assert.All(answer.Curves.SelectMany(c => c.Best), b => Assert.InRange(b.Efficiency, 0.05, 1));
        Assert.All(answer.SameWire, c => Assert.Equal(answer.PresentWireM, c.WireM, 1e-6 * answer.PresentWireM));
    }

    [Fact]
    public void Elevated_radials_are_solved_exactly_in_the_verdict()
    {
        var text = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))
            .Replace("radials: { count: 32, length: 33 ft, wire: 14 AWG }", "radials: { count: 3, length: 33 ft, wire: 14 AWG, lay: elevated, height: 1 ft }");
        var station = Examples.Read(text).Station!;
        Assert.Equal(RadialLay.Elevated, station.Masts[0].Radials.Lay);

        // A mast of a quarter wave over four elevated radials of a quarter wave is near resonance (common practice, no source): three of 10 m hold that for 7.1 MHz.
        var solution = WireSolver.Solve(SoilModels.Of(station).Model, 7.1e6).Require();
        Assert.InRange(solution.FeedImpedance().Real, 20, 250);
        var result = StationAnalysis.Run(Examples.Read(text.Replace("  - { frequency: 10.12 MHz, power: 400 W }\n", "")));
        Assert.Contains(result.Masts[0].Bands[0].Efficiency.Inputs, i => i.Symbol == "(E/E0)²");
    }

    [Theory]
    [InlineData("lay: elevated", "radials-without-height")]
    [InlineData("lay: buried", "radials-without-depth")]
    [InlineData("height: 1 ft, depth: 2 in", "radials-two-ways")]
    [InlineData("height: 9 ft", "radials-above-base")]
    [InlineData("lay: surface, height: 1 ft", "radials-two-ways")]
    [InlineData("lay: elevated, height: 1 ft, screen: { width: 2 m }", "screen-under-elevated")]
    public void Contradictions_about_radials_give_one_message(string words, string code)
    {
        var text = File.ReadAllText(Repository.File("examples", "tube-12m.yaml")).Replace("wire: 14 AWG }", "wire: 14 AWG, " + words + " }");
        var reading = DesignReader.Read(text, "test", CatalogueNames.Of);

        Assert.Equal(code, Assert.Single(reading.Findings, f => f.Severity == Severity.Error).Code);
    }

    [Fact]
    public void A_sheet_at_the_base_and_a_fence_change_the_loss_the_way_they_should()
    {
        var solution = WireSolver.Solve(WireModels.Of(Tube.Value), 7.1e6).Require();
        double Loss(Func<Radials, Radials> change) => BandRun.EarthLosses(With(change).Masts[0], solution, 0, Soils.Of(Tube.Value.Site), 1)[0];

        var plain = Loss(r => r);
        Assert.True(Loss(r => r with { Screen = new GroundScreen { WidthM = 3 } }) < plain);
        Assert.True(Loss(r => r with { Shortened = [new ShortRadials { FromRad = 0, ToRad = Math.PI, LengthM = 2 }] }) > plain);
    }

    [Fact]
    public void Radials_run_short_in_the_bearings_the_design_names()
    {
        var radials = Tube.Value.Masts[0].Radials with { LengthM = 10, Shortened = [new ShortRadials { FromRad = 350 * Math.PI / 180, ToRad = 20 * Math.PI / 180, LengthM = 4 }] };

        Assert.Equal([4.0, 4.0, 10.0, 10.0], new[] { 355, 10, 30, 200 }.Select(d => radials.LengthTowards(d * Math.PI / 180)));
    }

    [Fact]
    public void A_sweep_passes_through_the_solved_impedance()
    {
        var station = Tube.Value with { Bands = [Tube.Value.Bands[0]], Masts = With(r => r with { Count = 9, LengthM = 5 }).Masts };
        var (bands, _) = BandImpedanceRun.Of(station);
        var band = bands.Single();
        var exact = WireSolver.Solve(SoilModels.Of(station).Model, band.Band.FrequencyHz).Require().FeedImpedance();
        var shunt = 1 / new Complex(0, 2 * Math.PI * band.Band.FrequencyHz * BandRun.BaseCapacitanceF(station, station.Masts[0]));
        var seen = exact * shunt / (exact + shunt);

        Assert.True(band.Converged);
        Assert.InRange(band.Solved, 3, 12);
        Assert.InRange((band.Points.Single(p => p.FrequencyHz == band.Band.FrequencyHz).FeedOhm - seen).Magnitude, 0, 0.01 * seen.Magnitude);
        Assert.InRange(band.Points.Single(p => p.FrequencyHz == band.Band.FrequencyHz).MatchedSwr!.Value, 1, 1.05);
    }
}
