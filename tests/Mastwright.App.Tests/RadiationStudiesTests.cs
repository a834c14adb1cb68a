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

    /// <summary>Wires that cannot be solved are told by the names the file gave them, with why and a way out, and the verdict is no.</summary>
    [Theory]
    [InlineData("rail, east: -3 m, north: 0 m, height: 3 m, end-east: 3 m, end-north: 0 m, end-height: 3 m", "\"mast T, run 1\" and \"metal rail\" cross without a joint", "End one of them at the crossing")]
    [InlineData("cap, east: 8 m, north: 5 m, height: 2 m, end-height: 2.02 m, diameter: 100 mm", "\"metal cap\" is shorter than its own radius", "Merge it with its neighbour")]
    [InlineData("tank, east: 8 m, north: 5 m, end-height: 4 m, diameter: 2 m", "\"metal tank\" is too fat", "Model it as a cage of thinner wires")]
    public async Task Wires_that_cannot_be_solved_are_refused_by_the_verdict(string metal, string why, string wayOut)
    {
        var path = Small();
        await File.WriteAllTextAsync(path, (await File.ReadAllTextAsync(path)).Replace("frequency: 7.1 MHz", "frequency: 29.6 MHz"));
        await File.AppendAllTextAsync(path, $"\nnearby-metal:\n  - {{ name: {metal} }}\n");
        var run = await Cli.Start("check", path);

        Assert.Equal(1, run.ExitCode);
        var said = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains(why, said);
        Assert.Contains(wayOut, said);
        Assert.DoesNotContain("   at ", run.Output + run.Errors);

        // The line of the first wire named.
        var lines = await File.ReadAllLinesAsync(path);
        var line = 1 + Array.FindIndex(lines, l => l.Contains(why.StartsWith("\"mast", StringComparison.Ordinal) ? "  sections:" : $"name: {metal.Split(',')[0]}", StringComparison.Ordinal));
        Assert.Contains($"small.yaml:{line + (why.StartsWith("\"mast", StringComparison.Ordinal) ? 1 : 0)}", said.Replace(" ", "", StringComparison.Ordinal));
    }

    /// <summary>Memory is told before it is taken, by the study and by a verdict over the real soil, which then says that it rests on the estimate.</summary>
    [Theory]
    [InlineData("soil")]
    [InlineData("currents")]
    [InlineData("check")]
    public async Task Unsolvable_sizes_are_refused_with_their_memory(string command)
    {
        var path = Small();
        var text = (await File.ReadAllTextAsync(path)).Replace("count: 9, length: 16 ft", "count: 360, length: 200 m, shortened: [ { from: 20 °, to: 100 °, length: 90 m } ]").Replace("soil: average land", "soil: average land\n  earth: exact");
        var lines = text.Split('\n').Where(l => !l.Contains("frequency: 3.65 MHz")).Select(l => l.Replace("7.1 MHz", "28.5 MHz"));
        await File.WriteAllTextAsync(path, string.Join('\n', lines));
        var run = await Cli.Start(command, path);

        var said = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Matches(@"unknown currents and needs [0-9.]+ GB of memory", said);
        Assert.DoesNotContain("   at ", run.Output + run.Errors);
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
