using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

public class SearchCommandTests
{
    [Fact]
    public async Task Search_names_the_lines_to_change_and_says_what_cost_means()
    {
        var run = await Cli.Start("search", Repository.File("examples", "tube-12m.yaml"), "--for", "strand");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("masts[0].guys[0].strand", run.Output);
        Assert.Contains("strand: 1/8 in EHS", run.Output);
        Assert.Contains("not a price", run.Output);
        Assert.Contains("licensed engineer", run.Output);
    }

    [Fact]
    public async Task Search_for_something_unknown_is_refused_with_the_words_there_are()
    {
        var run = await Cli.Start("search", "--for", "luck");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("radius", run.Errors);
        Assert.DoesNotContain("   at ", run.Errors);
    }

    [Fact]
    public async Task Sensitivity_ranks_the_inputs()
    {
        var run = await Cli.Start("sensitivity", Repository.File("examples", "tube-12m.yaml"));

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Most depends on", run.Output);
        Assert.Contains("wind speed +10 %", run.Output);
    }
}
