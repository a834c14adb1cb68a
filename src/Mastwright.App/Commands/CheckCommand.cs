using System.CommandLine;
using Mastwright.Model.Trails;
using Mastwright.Report.Json;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary><c>check</c>: a design file in, a verdict out.</summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var file = Shared.FileArgument();
        var json = new Option<bool>("--json") { Description = "Print the result as JSON (see `mastwright schema result`)." };
        var all = new Option<bool>("--all") { Description = "Show every check, not just the worst of each kind." };
        var command = new Command("check", "Check a station: will it stand, radiate, survive.") { file, json, all };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed.GetValue(file), parsed.GetValue(json), parsed.GetValue(all), cancellation)));
        return command;
    }

    private static int Run(string? path, bool json, bool all, CancellationToken cancellation)
    {
        try
        {
            var result = Shared.Analyse(path, cancellation);
            if (result is null)
            {
                return ExitCode.WrongInput;
            }

            if (json)
            {
                Console.Out.WriteLine(ResultJson.Write(result));
            }
            else
            {
                new CheckReport(Shared.Output(), result).Write(all);
            }

            return result.Verdict is Verdict.Pass or Verdict.Caution ? ExitCode.Pass : ExitCode.CheckFails;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }
}
