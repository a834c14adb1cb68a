using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Tuning;

namespace Mastwright.Workbench.Tests;

/// <summary>What is asked of a dropped sweep: a field that was emptied is named, never filled in silently.</summary>
public sealed class SweepFormTests
{
    private const string Sweep = "# Hz S RI R 50\n1.80e6 0.1 0.2\n1.85e6 0.1 0.1\n1.90e6 0.1 0.0\n1.95e6 0.1 -0.1\n2.00e6 0.1 -0.2\n";

    private static readonly Station Lattice = DesignReader.Read(File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")), "design", CatalogueNames.Of).Station!;

    [Theory]
    [InlineData("Cable impedance")]
    [InlineData("Cable loss")]
    [InlineData("Frequency of the loss")]
    [InlineData("Velocity factor")]
    [InlineData("Choke inductance")]
    [InlineData("Choke resistance")]
    [InlineData("Coil diameter")]
    [InlineData("Coil length")]
    [InlineData("Coil wire")]
    public void AnEmptiedFieldIsNamed(string field)
    {
        string Or(string name, string filled) => name == field ? " " : filled;
        var form = Full();
        (form.CableImpedance, form.CableLoss, form.CableLossAt, form.CableVelocity) = (Or("Cable impedance", "50 Ω"), Or("Cable loss", "2 dB"), Or("Frequency of the loss", "10 MHz"), Or("Velocity factor", "0.66"));
        (form.ChokeInductance, form.ChokeResistance) = (Or("Choke inductance", "2.5 mH"), Or("Choke resistance", "8 Ω"));
        (form.CoilDiameter, form.CoilLength, form.CoilWire) = (Or("Coil diameter", "100 mm"), Or("Coil length", "160 mm"), Or("Coil wire", "4 mm"));

        var (request, findings) = form.Ask(Lattice, "a.s1p", Sweep);

        Assert.Null(request);
        var finding = Assert.Single(findings);
        Assert.StartsWith(field, finding.Message);
        Assert.NotNull(finding.WayOut);
    }

    [Fact]
    public void WhatIsNotWantedMayStayEmpty()
    {
        Assert.Equal(2, Full().Ask(Lattice, "a.s1p", Sweep).Request!.Between.Length);
        var bare = new SweepForm { CableImpedance = "", CableLoss = "", CableLossAt = "", ChokeInductance = "", ChokeResistance = "", CoilDiameter = "", CoilLength = "", CoilWire = "" };
        Assert.Empty(bare.Ask(Lattice, "a.s1p", Sweep).Request!.Between);
    }

    private static SweepForm Full() => new() { CableLength = "25 m", Choke = "drain", CoilTurns = "12" };
}
