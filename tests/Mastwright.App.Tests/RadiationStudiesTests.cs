using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>The studies of radiation from the command line, on a station small enough to be quick.</summary>
public sealed class RadiationStudiesTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("soil", "Where the power goes")]
    [InlineData("radials", "The present wire laid otherwise")]
    [InlineData("guy-currents", "Peak voltage across each insulator")]
    [InlineData("band", "SWR with the network")]
    [InlineData("currents", "radials of T")]
    [InlineData("near-field", "Between two guys")]
    [InlineData("group", "The design has no group")]
    [InlineData("lattice", "No mast of this station is a lattice")]
    public async Task A_study_of_radiation_answers_for_a_design_file(string study, string words)
    {
        var run = await Cli.Start(study, Small());

        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        Assert.Contains(words, run.Output);
        Assert.DoesNotContain("NaN", run.Output);
    }

    [Fact]
    public async Task A_group_is_steered_from_a_design_file()
    {
        var path = Path.Combine(folder, "pair.yaml");
        await File.WriteAllTextAsync(path, (await File.ReadAllTextAsync(Repository.File("examples", "pair-80m.yaml"))).Replace("count: 60, length: 20 m", "count: 6, length: 8 m"));
        var run = await Cli.Start("group", path);

        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        Assert.Contains("Ways to feed it", run.Output);
        Assert.Contains("Seeded trials", run.Output);
    }

    [Fact]
    public async Task Tables_and_curves_come_out_as_comma_separated_text()
    {
        var into = Path.Combine(folder, "csv");
        var run = await Cli.Start("radials", Small(), "--csv", into);

        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        var files = Directory.GetFiles(into).Select(f => Path.GetFileName(f)).Order().ToList();
        Assert.Contains("radials-01-table.csv", files);
        var curves = await File.ReadAllLinesAsync(Path.Combine(into, files.First(f => f.EndsWith("-curves.csv", StringComparison.Ordinal))));
        Assert.StartsWith("curve,", curves[0], StringComparison.Ordinal);
        Assert.All(curves.Skip(1), l => Assert.True(double.TryParse(l.Split(',')[^1], System.Globalization.CultureInfo.InvariantCulture, out _), l));
    }

    private string Small()
    {
        var text = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))
            .Replace("count: 32, length: 33 ft", "count: 9, length: 16 ft");
        string[] others = ["10.12", "14.15", "18.1", "21.2", "24.94", "28.5"];
        var lines = text.Split('\n').Where(l => !others.Any(o => l.Contains($"frequency: {o} MHz")));
        var path = Path.Combine(folder, "small.yaml");
        File.WriteAllText(path, string.Join('\n', lines));
        return path;
    }
}
