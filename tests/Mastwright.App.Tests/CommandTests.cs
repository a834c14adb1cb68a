using System.Diagnostics;
using System.Text.Json;
using Json.Schema;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

public sealed class CommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-test-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Check_without_a_file_checks_the_built_in_station_and_passes()
    {
        var run = await Cli.StartProcess("check");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("FIT", run.Output);
        Assert.Contains("160 m", run.Output);
        Assert.Contains("Base gap of mast A", run.Output);
        Assert.Contains("Assumed, because the file is silent", run.Output);
        Assert.Contains("licensed engineer", run.Output);
    }

    [Fact]
    public async Task Check_of_a_failing_station_exits_with_one_and_says_what_to_change()
    {
        var run = await Cli.StartProcess("check", Repository.File("examples", "fails.yaml"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("NOT FIT", run.Output);
        Assert.Contains("no gap fits", run.Output);
    }

    [Theory]
    [InlineData("lattice-22m")]
    [InlineData("pair-80m")]
    [InlineData("fails")]
    public async Task Json_agrees_with_the_published_schema(string example)
    {
        var run = await Cli.Start("check", Repository.File("examples", example + ".yaml"), "--json");
        var schema = JsonSchema.FromText((await Cli.Start("schema", "result")).Output);

        var result = schema.Evaluate(JsonDocument.Parse(run.Output).RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });

        Assert.True(result.IsValid, string.Join("; ", (result.Details ?? []).Where(d => d.Errors is not null).Select(d => d.InstanceLocation + " " + string.Join(", ", d.Errors!.Values))));
    }

    [Fact]
    public async Task The_result_schema_refuses_a_result_without_its_verdict()
    {
        var run = await Cli.Start("check", Repository.File("examples", "fails.yaml"), "--json");
        var schema = JsonSchema.FromText((await Cli.Start("schema", "result")).Output);

        Assert.False(schema.Evaluate(JsonDocument.Parse(run.Output.Replace("\"verdict\": \"fail\",", "")).RootElement).IsValid);
    }

    [Fact]
    public async Task Wrong_input_exits_with_two_and_shows_every_finding_without_a_stack_trace()
    {
        var file = Path.Combine(folder, "wrong.yaml");
        await File.WriteAllTextAsync(file, File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"))
            .Replace("speed: 90 mph", "spead: 90 mph").Replace("height: 21 m", "height: 40 m").Replace("1/4 in EHS", "1/4 in EHX").Replace("count: 60", "count: -60"));

        var run = await Cli.StartProcess("check", file);

        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        Assert.DoesNotContain("   at ", run.Errors);
        Approved.Matches(run.Errors.Replace(file, "wrong.yaml"), "tests", "Mastwright.App.Tests", "Approved", "wrong-input.txt");
    }

    [Theory]
    [InlineData("nowhere/station.yaml", "There is no such file")]
    [InlineData(".", "cannot be read")]
    public async Task A_file_that_cannot_be_read_is_one_clear_message(string path, string message)
    {
        var run = await Cli.StartProcess("check", path);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(message, run.Errors);
        Assert.Contains("way out", run.Errors);
    }

    [Fact]
    public async Task A_huge_file_is_refused_before_it_is_read()
    {
        var file = Path.Combine(folder, "huge.yaml");
        await using (var stream = File.Create(file))
        {
            stream.SetLength(50_000_000);
        }

        var run = await Cli.Start("check", file);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("too large", run.Errors);
    }

    [Fact]
    public async Task New_writes_a_file_that_checks_clean_and_never_overwrites()
    {
        var file = Path.Combine(folder, "mine.yaml");

        Assert.Equal(0, (await Cli.Start("new", file)).ExitCode);
        Assert.Equal(0, (await Cli.Start("check", file)).ExitCode);
        await File.WriteAllTextAsync(file, "precious");
        var again = await Cli.StartProcess("new", file);

        Assert.Equal(2, again.ExitCode);
        Assert.Contains("There is a file of this name already", again.Errors);
        Assert.Equal("precious", await File.ReadAllTextAsync(file));
        Assert.Single(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Explain_prints_formula_inputs_units_source_and_range()
    {
        var run = await Cli.Start("explain", "radiate.A.160 m.base-peak-voltage");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Vp = √2·V", run.Output);
        Assert.Contains("power into the mast", run.Output);
        Assert.Contains("1500 W", run.Output);
        Assert.Contains("source:", run.Output);
        Assert.Contains("holds for:", run.Output);
    }

    [Fact]
    public async Task Explain_takes_a_check_and_helps_with_a_mistyped_name()
    {
        var check = await Cli.Start("explain", "stand.guy.strength[A, level 2]");
        var wrong = await Cli.Start("explain", "stand.guy.strenght");

        Assert.Equal(0, check.ExitCode);
        Assert.Contains("breaking strength", check.Output);
        Assert.Equal(2, wrong.ExitCode);
        Assert.Contains("Did you mean “stand.guy.strength”?", wrong.Errors.ReplaceLineEndings(" "));
    }

    [Fact]
    public async Task List_shows_the_lists_and_every_list_shows_its_parts()
    {
        var lists = await Cli.Start("list");
        var strands = await Cli.Start("list", "strands", "--us");
        var wrong = await Cli.Start("list", "strand");

        Assert.Contains("strands", lists.Output);
        Assert.Contains("1/4 in EHS", strands.Output);
        Assert.Contains("6650 lbf", strands.Output); // ASTM A475: 6 650 lbf
        Assert.Equal(2, wrong.ExitCode);
        Assert.Contains("strands", wrong.Errors);
    }

    [Fact]
    public async Task Unknown_commands_are_refused_kindly()
    {
        var run = await Cli.StartProcess("chekc");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--help", run.Errors);
    }

    [Theory]
    [InlineData("check", "")]
    [InlineData("serve", "")]
    [InlineData("new", " ")]
    [InlineData("cut", "--csv", "")]
    [InlineData("sweep", "a.yaml", "")]
    [InlineData("materials", "--prices", "")]
    [InlineData("export", "--netlist", "")]
    [InlineData("journal", "backup", "--to", "")]
    [InlineData("journal", "export", "--to", "")]
    [InlineData("journal", "list", "--journal", "")]
    [InlineData("journal", "readings", "--from", "")]
    public async Task An_empty_name_of_a_file_is_one_clear_message(params string[] arguments)
    {
        var run = await Cli.Start(arguments);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("this is no name of a file. Name one", run.Errors);
        Assert.DoesNotContain("   at ", run.Errors + run.Output);
    }

    [Fact]
    public async Task A_file_too_large_to_be_a_design_is_not_served()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, new string('#', (4 * Model.Text.YamlText.MaxCharacters) + 1));
        var run = await Cli.Start("serve", file, "--port", "0");
        File.Delete(file);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("too large", run.Errors.ReplaceLineEndings(" "));
        Assert.DoesNotContain("   at ", run.Errors);
    }

    [Fact]
    public async Task Interrupting_a_check_stops_it_clean()
    {
        if (!OperatingSystem.IsLinux())
        {
            Assert.Skip("sends the signal with kill");
        }

        using var process = Process.Start(Cli.Info("check", Repository.File("examples", "pair-80m.yaml")))!;
        await Task.Delay(700);
        using (var kill = Process.Start("kill", ["-INT", process.Id.ToString()]))
        {
            await kill.WaitForExitAsync();
        }

        await process.WaitForExitAsync();
        var errors = await process.StandardError.ReadToEndAsync();
        Assert.DoesNotContain("   at ", errors);
        Assert.Contains(process.ExitCode, new[] { 0, 130 }); // a fast machine may have finished first
    }
}
