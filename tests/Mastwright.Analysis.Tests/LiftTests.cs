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
