using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>Feeding from the command line.</summary>
public sealed class FeedCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Feed_shows_parts_line_choke_and_relays()
    {
        var run = await Cli.Start("feed", Design(), "--by", "loss");
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        string[] wanted = ["Networks that can be built, by loss", "Coils to wind", "path of the match over the Smith chart", "SWR stays under 2 on", "Feed line at full power", "Transmitter to sky", "Current on the outside of the cable", "At drop-off"];
        Assert.All(wanted, w => Assert.Contains(w, run.Output));
        Assert.DoesNotContain("NaN", run.Output);
    }

    [Fact]
    public async Task Export_writes_the_network_in_open_formats()
    {
        string At(string name) => Path.Combine(folder, name);
        var run = await Cli.Start("export", Design(), "--band", "40 m", "--netlist", At("a.cir"), "--at-line", At("a.s1p"), "--ports", At("a.s2p"));
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        Assert.Contains(".ac lin", await File.ReadAllTextAsync(At("a.cir"), TestContext.Current.CancellationToken));
        Assert.Contains("# MHz S RI R 50", await File.ReadAllTextAsync(At("a.s1p"), TestContext.Current.CancellationToken));
        var two = (await File.ReadAllLinesAsync(At("a.s2p"), TestContext.Current.CancellationToken)).Where(l => l.Length > 0 && l[0] is not ('!' or '#')).ToList();
        Assert.Equal(101, two.Count);
        Assert.All(two, l => Assert.Equal(9, l.Split(' ').Length));
        Assert.DoesNotContain(Directory.GetFiles(folder), f => f.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Export_draws_any_kind_of_network_that_can_match()
    {
        string At(string name) => Path.Combine(folder, name);
        var run = await Cli.Start("export", Design(), "--band", "40 m", "--network", "pi", "--drawing", At("pi.svg"), "--smith", At("smith.svg"));
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        Assert.Contains("pi network", run.Output);
        Assert.StartsWith("<svg", (await File.ReadAllTextAsync(At("pi.svg"), TestContext.Current.CancellationToken)).TrimStart());
        Assert.Contains("L1", await File.ReadAllTextAsync(At("smith.svg"), TestContext.Current.CancellationToken));
        var cannot = await Cli.Start("export", Design(), "--band", "40 m", "--network", "series-capacitor", "--drawing", At("no.svg"));
        Assert.Equal(2, cannot.ExitCode);
        Assert.Contains("tapped-coil", cannot.Errors);
        Assert.False(File.Exists(At("no.svg")));
    }

    [Theory]
    [InlineData("--band", "43 m", "40 m")]
    [InlineData("--group", "pair", "the design has none")]
    public async Task Export_of_what_is_not_there_says_what_is(string option, string value, string words)
    {
        var run = await Cli.Start("export", Design(), option, value, "--netlist", Path.Combine(folder, "a.cir"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(words, run.Errors);
        Assert.False(File.Exists(Path.Combine(folder, "a.cir")));
    }

    [Fact]
    public async Task Feed_of_a_group_shows_parts_and_switching()
    {
        var path = Path.Combine(folder, "pair.yaml");
        await File.WriteAllTextAsync(path, (await File.ReadAllTextAsync(Repository.File("examples", "pair-80m.yaml"), TestContext.Current.CancellationToken)).Replace("count: 60, length: 20 m", "count: 4, length: 8 m"), TestContext.Current.CancellationToken);
        var run = await Cli.Start("group-feed", path);
        Assert.True(run.ExitCode == 0, run.Errors + run.Output);
        string[] wanted = ["quadrature hybrid", "current forcing", "Lines to cut", "Lines against their working voltages", "Switch positions on one box", "Error of phase"];
        Assert.All(wanted, w => Assert.Contains(w, run.Output));
        Assert.DoesNotContain("NaN", run.Output);
    }

    private string Design()
    {
        var text = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));
        string[] others = ["1.85", "3.65", "10.12", "14.15", "18.1", "21.2", "24.94"];
        var path = Path.Combine(folder, "station.yaml");
        File.WriteAllText(path, string.Join('\n', text.Split('\n').Where(l => !others.Any(o => l.Contains($"frequency: {o} MHz")))));
        return path;
    }
}
