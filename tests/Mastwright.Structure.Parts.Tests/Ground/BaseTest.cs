using Mastwright.Model.Trails;
using Mastwright.Structure.Ground;

namespace Mastwright.Structure.Parts.Tests.Ground;

public class BaseTest
{
    private static readonly GroundFactors Factors = new();

    [Theory]
    // Straight-line pressure, kN and m, by hand: footing 1.0 × 1.0 × 0.5 m weighs 11.75 kN; P 20 kN.
    [InlineData(0, 31.75)] // centred: N/A
    [InlineData(5, 31.75 * (1 + (6 * 2.5 / 31.75)))] // e = 0.0787 inside the core
    [InlineData(20, 2 * 31.75 / (3 * (0.5 - (10 / 31.75))))] // e = 0.315 outside the core
    public void Pressure_under_the_footing(double horizontalKn, double pressureKpa)
    {
        var check = Examine(Soils.Sand(), 20e3, horizontalKn * 1e3).First();
        Assert.Equal(pressureKpa, check.Demand.Value / 1e3, 1e-9);
        Assert.Equal(95.76e3, check.Capacity.Value, 1e-6);
    }

    [Fact]
    public void Tested_soil_is_judged_by_its_strength()
    {
        // Clay of 50 kPa, square on 0.5 m depth: qu = 5.14·50·1.2·1.1 + 18·0.5 = 348.3 kPa (Meyerhof 1963 by hand).
        var check = Examine(Soils.Clay() with { Tested = true }, 20e3, 0).First();
        Assert.Equal((((2 + Math.PI) * 50 * 1.2 * 1.1) + 9) / 3, check.Capacity.Value / 1e3, 1e-6);
    }

    [Fact]
    public void Footing_that_tips_slides_or_freezes_is_told()
    {
        var checks = Examine(Soils.Sand(), 2e3, 25e3, frost: 1.0).ToArray();
        Assert.Equal(
            ["stand.footing.bearing[base]", "stand.footing.sliding[base]", "stand.footing.tipping[base]", "stand.footing.frost[base]"], checks.Select(c => c.Id));
        Assert.All(checks, c => Assert.Equal(Verdict.Fail, c.Verdict));
        Assert.All(checks, c => Assert.NotEqual("", c.Cure));
    }

    [Fact]
    public void Plain_footing_bends_like_a_cantilever()
    {
        // ACI 318 chapter 14 (from memory) in pounds and inches: φ·5·√3000 psi over 1.6 = 102.7 psi; σ = q·c²/2 over h'²/6 per width.
        var footing = new BaseFooting(1, 1, 0.5, 0.5) { ConcretePa = 3000 * 6894.757, LoadedWidthM = 0.3 };
        var check = footing.Examine("base", Soils.Sand(), new(20e3, 0, "still air"), null, Factors).Single(c => c.Id == "stand.footing.concrete[base]");
        Assert.Equal(0.6 * 5 * Math.Sqrt(3000) / 1.6, check.Capacity.Value / 6894.757, 1.5);
        Assert.Equal(31.75e3 * 0.35 * 0.35 / 2 / (0.45 * 0.45 / 6), check.Demand.Value, 1e-6);
    }

    [Fact]
    public void Concrete_and_plate_by_hand()
    {
        // ACI 318: 0.85·20 MPa·0.3²·2 over 2.5; AISC Design Guide 1: m = (0.3 - 0.8·0.1)/2, t = m·√(2·1.67·P/(Fy·A)).
        var plate = new PlateBearing(0.3, 0.3, 0.016, 0.1) { SupportingAreaM2 = 1.0 };
        var checks = plate.Examine("base", 60e3, "case", Factors).ToArray();
        Assert.Equal(0.85 * 20e6 * 0.09 * 2 / 2.5, checks[0].Capacity.Value, 1e-6);
        Assert.Equal(0.11 * Math.Sqrt(2 * 1.67 * 60e3 / (235e6 * 0.09)), checks[1].Demand.Value, 1e-12);
    }

    [Fact]
    public void Insulator_keeps_the_force_inside_its_core()
    {
        // Core of a circle: d/8. 8 kN on 100 mm: 100 N·m; 300 N on 160 mm and 0.15·8 kN·20 mm: 48 + 24 = 72 N·m.
        var pivot = new BasePivot(PivotKind.BallAndCone, 60e3, 0.16, 0.10);
        var duty = new PivotDuty(9e3, 7e3, 8e3, 300, 0.03, "wind from 030", "guy 2 lost");
        var check = pivot.Examine("base", duty, Factors).Single(c => c.Id == "stand.base.bending[base]");
        Assert.Equal(72, check.Demand.Value, 1e-9);
        Assert.Equal(100, check.Capacity.Value, 1e-9);
        // A hollow one of the same diameter has a larger core: (d² + d0²)/(8·d).
        var hollow = (pivot with { InsulatorBoreM = 0.06 }).Examine("base", duty, Factors).Single(c => c.Id == "stand.base.bending[base]");
        Assert.Equal(8e3 * (0.01 + 0.0036) / 0.8, hollow.Capacity.Value, 1e-9);
        // A rocker rolls: N·r·θ = 8 kN·0.3 m·0.03 = 72 N·m more.
        var rocker = (pivot with { Kind = PivotKind.RockerAndPin, RadiusM = 0.3 }).Examine("base", duty, Factors).Single(c => c.Id == "stand.base.bending[base]");
        Assert.Equal(48 + 72, rocker.Demand.Value, 1e-9);
        Assert.Equal(Verdict.Fail, rocker.Verdict);
    }

    [Fact]
    public void Mast_that_lifts_needs_a_hold_down()
    {
        var pivot = new BasePivot(PivotKind.BallAndCone, 60e3, 0.16, 0.10);
        var lifting = new PivotDuty(9e3, -2e3, 8e3, 100, 0.01, "wind", "guy 2 lost");
        Check LiftOff(BasePivot p, PivotDuty d) => p.Examine("base", d, Factors).Single(c => c.Id == "stand.base.lift-off[base]");
        Assert.Equal(Verdict.Fail, LiftOff(pivot, lifting).Verdict);
        Assert.Equal("guy 2 lost", LiftOff(pivot, lifting).GoverningCase);
        Assert.Equal(Verdict.Pass, LiftOff(pivot with { HoldDownN = 6e3 }, lifting).Verdict);
        Assert.Equal(Verdict.Pass, LiftOff(pivot, lifting with { LeastCompressionN = 5e3 }).Verdict);
        Assert.Equal(Verdict.Fail, LiftOff(pivot, lifting with { LeastCompressionN = 0.5e3 }).Verdict);
    }

    [Fact]
    public void Hinge_that_is_bent_across_its_axis_is_refused()
    {
        var duty = new PivotDuty(9e3, 7e3, 8e3, 100, 0.01, "wind", "wind") { RotationAcrossHingeRad = 0.02 };
        var checks = new BasePivot(PivotKind.Hinge, 60e3, 0.16, 0.10).Examine("base", duty, Factors).ToArray();
        Assert.Equal(Verdict.Fail, checks.Single(c => c.Id == "stand.base.hinge[base]").Verdict);
        Assert.All(checks, c => Assert.Contains("Ceramic", c.Caution));
    }

    private static IEnumerable<Check> Examine(Soil soil, double down, double horizontal, double? frost = null) =>
        new BaseFooting(1, 1, 0.5, 0.5).Examine("base", soil, new(down, horizontal, "wind from 030"), frost, Factors);
}
