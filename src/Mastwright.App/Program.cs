using System.CommandLine;
using Mastwright.App.Commands;
using Mastwright.App.Commands.Journal;

namespace Mastwright.App;

/// <summary>The command line.</summary>
public static class Program
{
    /// <summary>Runs one command.</summary>
    public static async Task<int> Main(string[] args)
    {
        var root = new RootCommand("Mastwright: design, check, build and look after guyed vertical mast radiators.")
        {
            CheckCommand.Create(),
            ServeCommand.Create(),
            ExplainCommand.Create(),
            NewCommand.Create(),
            ListCommand.Create(),
            SchemaCommand.Create(),
            BookCommand.Create(),
            SweepCommand.Create(),
            TurnsCommand.Create(),
            ExportCommand.Create(),
            JournalCommand.Create(),
        };
        foreach (var command in StudyCommands.Create())
        {
            root.Add(command);
        }

        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
            {
                await Console.Error.WriteLineAsync(error.Message).ConfigureAwait(false);
            }

            await Console.Error.WriteLineAsync("`mastwright --help` shows the commands.").ConfigureAwait(false);
            return ExitCode.WrongInput;
        }

        return await parsed.InvokeAsync().ConfigureAwait(false);
    }
}
