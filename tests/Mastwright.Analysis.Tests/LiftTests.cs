using Mastwright.Analysis.Stand;
using Mastwright.Structure.Members;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Rules for members while a mast is raised.</summary>
public class LiftTests
{
    /// <summary>
    /// Weight in a lift carries no load factor, so the rules must hold the whole margin. Allowable strength divides the yield strength by 1.67 for carbon steel
    /// (AISC 360) and for stainless (AISC 370), and by 1.65 for aluminium (Aluminum Design Manual), all from memory: no metal may come out more than 2 % above.
    /// </summary>
    [Theory]
    [InlineData(MetalFamily.Steel, 1.67)]
    [InlineData(MetalFamily.Stainless, 1.67)]
    [InlineData(MetalFamily.Aluminium, 1.65)]
    public void Every_metal_is_lifted_with_the_margin_of_allowable_strength(MetalFamily family, double omega)
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"))).Station!;

        var factors = StandRules.Lifting(station, family).Factors;

        Assert.InRange(factors.Yielding, 0.9 / omega, 1.02 / omega);
        Assert.InRange(factors.Compression, 0.8 / omega, 1.02 / omega);
        Assert.InRange(factors.Bending, 0.9 / omega, 1.02 / omega);
        Assert.True(factors.Rupture < factors.Yielding);
    }

    [Fact]
    public void Checks_of_stacking_can_be_stopped()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")).ReplaceLineEndings("\n").Replace("    radials:\n", "    raising: { method: stacking }\n    radials:\n")).Station!;

        Assert.ThrowsAny<OperationCanceledException>(() => LiftChecks.Of(station, station.Masts[0], new CancellationToken(canceled: true)));
    }

    /// <summary>
    /// Statics by hand, a leg of three: bending M pulls one leg with 2M/(3r), r from the axis to the leg, the weight above and the guys press all three with N/3. The splice
    /// is held to the worst of the joints that exist at each step: none at the top of what stands, and bolts twice as thick carry four times.
    /// </summary>
    [Fact]
    public void Leg_bolts_are_checked_while_stacking()
    {
        static string Plan(string bolt) => File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")).ReplaceLineEndings("\n").Replace("        lattice: tri-300-steel ", $"        joint: {{ kind: leg-bolts, bolts: 2, bolt: {bolt} }}\n        lattice: tri-300-steel ").Replace("    radials:\n", "    raising: { method: stacking }\n    radials:\n");
        var station = Examples.Read(Plan("10 mm")).Station!;
        var answer = StackingRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken);
        var check = answer.Checks.Single(c => c.Id == "stand.raise.leg-splice[A, section 1]");

        var radius = 0.300 / Math.Sqrt(3);
        var pulls = from row in answer.Rows
                    from joint in new[] { 3.0, 6, 9, 12, 15, 18, 21 }.Where(j => j < row.Step.HeightM - 0.01)
                    from section in row.Step.Solution.Sections.Where(s => Math.Abs(s.HeightM - joint) < 0.01)
                    select (2 * section.BendingMomentNm / (3 * radius)) + (section.AxialN / 3);
        Assert.InRange(check.Demand.Value, 0.99 * Math.Max(1, pulls.Max()), 1.01 * pulls.Max());
        Assert.NotEmpty(check.Caution!);

        var thick = Examples.Read(Plan("20 mm")).Station!;
        var stronger = StackingRun.Of(thick, thick.Masts[0], TestContext.Current.CancellationToken).Checks.Single(c => c.Id == check.Id);
        Assert.Equal(4, stronger.Capacity.Value / check.Capacity.Value, 1e-9);
    }

    /// <summary>The temperature of a combination is the one the site states for it, whatever it is called.</summary>
    [Fact]
    public void Combinations_carry_the_temperature_of_the_site()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"))).Station!;
        var cases = StandRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken, 6, screens: false).Result.Cases;

        double[] Of(string kind) => [.. cases.Where(c => c.Kind == kind).Select(c => Math.Round(c.TemperatureK - 273.15, 9)).Distinct()];
        Assert.Equal([15], Of("still air, tensioning day"));
        Assert.Equal([-25], Of("wind, coldest"));
        Assert.Equal([40], Of("wind, hottest"));
        Assert.Equal([-2], Of("ice and wind"));
    }
}
