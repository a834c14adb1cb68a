using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>The studies of sparks, strikes, static, metals and people, from the command line.</summary>
public class SurviveCommandTests
{
    public static TheoryData<string, string, string> Runs => new()
    {
        { "strike", "lattice-22m", "panel not bonded" },
        { "crossing", "tube-12m", "names no cable across the base" },
        { "metals", "ice-27m", "How long zinc lasts" },
        { "gap", "fails", "No gap fits" },
    };

    [Theory]
    [MemberData(nameof(Runs))]
    public async Task A_study_answers_with_its_caution(string study, string example, string says)
    {
        var run = await Cli.Start(study, Repository.File("examples", example + ".yaml"));

        Assert.InRange(run.ExitCode, 0, 1);
        Assert.Contains(says, string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Contains("Caution:", run.Output);
        Assert.DoesNotContain("   at ", run.Errors);
    }

    [Fact]
    public async Task A_fault_in_a_new_block_is_one_clear_message()
    {
        var file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".yaml");
        await File.WriteAllTextAsync(file, File.ReadAllText(Repository.File("examples", "lattice-22m.yaml")).Replace("route: buried", "route: berried").Replace("radius: 6 m", "radius: 6 kg"));
        var run = await Cli.Start("strike", file);
        File.Delete(file);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("Did you mean “buried”?", run.Errors.ReplaceLineEndings(" "));
        Assert.Contains("fence.radius", run.Errors);
        Assert.DoesNotContain("   at ", run.Errors);
    }
}
