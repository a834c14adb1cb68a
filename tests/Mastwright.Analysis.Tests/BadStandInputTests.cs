using Mastwright.Analysis.Stand;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Bad input through the design file: a named finding or a failing check with the cause, never a NaN and never an exception.</summary>
public class BadStandInputTests
{
    private static readonly string Lattice = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")).ReplaceLineEndings("\n");

    /// <summary>A reading that may be refused.</summary>
    internal static DesignReading Raw(string text) => DesignReader.Read(text, "test", CatalogueNames.Of);

    /// <summary>What the reader refuses, with code, place and a way out.</summary>
    [Theory]
    [InlineData("  coldest: -25 °C", "  coldest: -400 °C", "out-of-range")]
    [InlineData("  hottest: 40 °C", "  hottest: 900 °C", "out-of-range")]
    [InlineData("  hottest: 40 °C", "  hottest: 5 °C", "temperature-order")]
    [InlineData("bearing: 0 °\n        distance: 14 m\n", "bearing: 0 °\n        distance: 14 m\n        rise: 12 m\n", "anchor-above-attachment")]
    [InlineData("{ name: south-east, bearing: 120 °", "{ name: south-east, bearing: 20 °", "guys-one-sided")]
    public void The_reader_names_it(string was, string isNow, string code)
    {
        Assert.Contains(was, Lattice);
        var reading = Raw(Lattice.Replace(was, isNow));

        var finding = reading.Findings.First(f => f.Code == code);
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.True(finding.Place!.Line > 0);
        Assert.False(string.IsNullOrEmpty(finding.WayOut ?? finding.Allowed));
        Assert.Null(reading.Station);
    }

    /// <summary>What only the solved mast shows: slack guys, a mast that gives way, tensions a rope cannot have.</summary>
    [Theory]
    [InlineData("initial-tension: 10 %", "initial-tension: 0.6 %", "guy-slack")]
    [InlineData("lattice: tri-300-steel ", "tube: { diameter: 25 mm, wall: 1 mm, metal: 6063-T6 } ", "mechanism")]
    [InlineData("initial-tension: 10 %", "initial-tension: 10 N", "guy-tension-too-low")]
    public void The_solved_mast_names_it(string was, string isNow, string code)
    {
        var station = Examples.Read(Lattice.Replace(was, isNow)).Station!;
        var answer = StandRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken, 6);

        Assert.Contains(answer.Findings, f => f.Code == code);
        Assert.Contains(answer.Checks, c => c.Verdict is Verdict.Fail or Verdict.Caution);
        Assert.All(answer.Checks, c => Assert.False(double.IsNaN(c.Ratio) || double.IsNaN(c.Demand.Value)));
    }

    /// <summary>An unstable mast: the only guys reach it near its foot, so a wind tips it.</summary>
    [Fact]
    public void An_unstable_mast_is_named()
    {
        var text = Lattice[..Lattice.IndexOf("    guys:\n", StringComparison.Ordinal)] + "    guys:\n      - { height: 0.96 m, strand: 1/4 in EHS, initial-tension: 10 % }\n" + Lattice[Lattice.IndexOf("    radials:\n", StringComparison.Ordinal)..];
        var station = Examples.Read(text).Station!;
        var answer = StandRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken, 6);

        Assert.Contains(answer.Findings, f => f.Code == "unstable");
        Assert.Contains(answer.Checks, c => c.Id.StartsWith("stand.stability", StringComparison.Ordinal) && c.Verdict == Verdict.Fail);
    }

    /// <summary>A wind that no map shows is refused where it is written, not by an exception further down.</summary>
    [Theory]
    [InlineData("speed: 90 mph", "speed: 5 mph")]
    [InlineData("speed: 90 mph", "speed: 260 mph")]
    public void A_wind_no_map_shows_is_named(string was, string isNow)
    {
        var reading = Raw(Lattice.Replace(was, isNow));

        Assert.Contains(reading.Findings, f => f.Severity == Severity.Error && f.Place?.Line > 0);
    }
}
