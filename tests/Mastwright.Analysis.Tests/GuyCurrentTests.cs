using Mastwright.Analysis.Radiate;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Guys at radio frequency.</summary>
public class GuyCurrentTests
{
    /// <summary>common practice, no source: guy pieces near half a wavelength ring; cut in halves they fall silent.</summary>
    [Fact]
    public void Pieces_that_ring_are_found_and_the_cuts_proposed_lower_the_current()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))).Station!;
        var guys = GuyCurrentRun.Of(station).Single();
        double Worst(IEnumerable<GuyDrive> drives) => drives.SelectMany(d => d.Pieces).Where(p => !p.Bonded).Max(p => p.OfMast);

        Assert.Contains(guys.Drives.SelectMany(d => d.Pieces), p => p.Rings);
        Assert.NotEmpty(guys.Cuts);
        Assert.True(Worst(guys.AfterCuts) < 0.5 * Worst(guys.Drives));
    }

    [Fact]
    public void The_verdict_holds_guy_insulators_against_their_flashover_and_notes_guys_that_ring()
    {
        var result = Examples.Result("lattice-22m");
        var checks = result.Checks.Where(c => c.Id.StartsWith("survive.guy-insulator[", StringComparison.Ordinal)).ToList();

        // ANSI C29.4 class 54-2: 15 kV wet, RMS; half its peak is allowed.
        Assert.Equal(2, checks.Count);
        Assert.All(checks, c => Assert.Equal(15e3 * Math.Sqrt(2) / 2, c.Capacity.Value, 1));
        Assert.Contains(result.Findings, f => f.Code == "guys-carry-current" && f.Severity == Severity.Note);
    }

    /// <summary>Voltages follow the square root of the power.</summary>
    [Fact]
    public void Four_times_the_power_doubles_the_voltage_across_an_insulator()
    {
        var text = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));
        double Peak(string t) => GuyCurrentRun.Of(Examples.Read(t).Station!).Single().Drives[0].Insulators.Max(i => i.PeakV);

        Assert.Equal(2 * Peak(text), Peak(text.Replace("power: 400 W", "power: 1600 W")), 1e-6 * Peak(text) * 2);
    }
}
