using System.Text.RegularExpressions;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>Every command in the how-to pages runs, in its order.</summary>
public sealed partial class HowToTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-howto-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("howto-tune.md", 2)]
    [InlineData("howto-keep.md", 17)]
    public async Task Every_command_of_the_page_runs(string page, int count)
    {
        File.Copy(Repository.File("examples", "lattice-22m.yaml"), Path.Combine(folder, "meadow.yaml"));
        var text = await File.ReadAllTextAsync(Repository.File("docs", page));
        var commands = Blocks().Matches(text).SelectMany(b => b.Groups[1].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries)).ToList();

        Assert.Equal(count, commands.Count);
        foreach (var command in commands)
        {
            string[] words = [.. Words().Matches(command).Select(w => Local(w.Value.Trim('"')))];
            var run = await Cli.Start(words[1..]);

            Assert.True(run.ExitCode == 0, $"{command}\n{run.Output}{run.Errors}");
        }
    }

    private string Local(string word) =>
        word.StartsWith("examples/", StringComparison.Ordinal) ? Repository.File(word.Split('/'))
        : word is "tables" || Files().IsMatch(word) ? Path.Combine(folder, word)
        : word;

    [GeneratedRegex("```sh\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Blocks();

    [GeneratedRegex("\"[^\"]*\"|\\S+")]
    private static partial Regex Words();

    [GeneratedRegex(@"^[\w-]+\.(yaml|json|ics|journal|svg|csv)$")]
    private static partial Regex Files();
}
