using System.CommandLine;
using Mastwright.Analysis.Results;
using Mastwright.Model.Text;
using Mastwright.Report.Terminal;
using Spectre.Console;

namespace Mastwright.App.Commands;

/// <summary><c>explain</c>: asks a check or a number "why?".</summary>
internal static class ExplainCommand
{
    public static Command Create()
    {
        var what = new Argument<string>("what") { Description = "Name of a check or a number, or the beginning of one; `names` lists them all." };
        var file = Shared.FileArgument();
        var command = new Command("explain", "Ask a check or a number why: formula, inputs, source, range.") { what, file };
        command.SetAction((parsed, cancellation) => Task.FromResult(Run(parsed.GetValue(what)!, parsed.GetValue(file), cancellation)));
        return command;
    }

    private static int Run(string what, string? path, CancellationToken cancellation)
    {
        try
        {
            return Shared.Analyse(path, cancellation) is { } result ? Explain(what, result) : ExitCode.WrongInput;
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("Stopped.");
            return ExitCode.Cancelled;
        }
    }

    private static int Explain(string what, StationResult result)
    {
        var console = Shared.Output();
        var names = result.Checks.Select(c => c.Id).Concat(result.Quantities.Select(q => q.Id)).ToList();
        if (what == "names")
        {
            names.ForEach(Console.Out.WriteLine);
            return ExitCode.Pass;
        }

        var exact = names.Any(n => n.Equals(what, StringComparison.OrdinalIgnoreCase));
        bool Matches(string id) => exact ? id.Equals(what, StringComparison.OrdinalIgnoreCase) : id.StartsWith(what, StringComparison.OrdinalIgnoreCase);
        var checks = result.Checks.Where(c => Matches(c.Id)).ToList();
        var numbers = result.Quantities.Where(q => Matches(q.Id)).ToList();
        if (checks.Count + numbers.Count == 0)
        {
            var near = NearMiss.Of(what, names.Select(StationResult.KindOf)) ?? NearMiss.Of(what, names);
            Shared.Messages().MarkupLineInterpolated($"[red]error[/]  Nothing here is called “{what}”.{(near is null ? "" : $" Did you mean “{near}”?")} `mastwright explain names` lists every name.");
            return ExitCode.WrongInput;
        }

        var view = new ExplainView(console, result.Station.UnitSystem);
        foreach (var check in checks)
        {
            view.Write(check);
            console.WriteLine();
        }

        foreach (var number in numbers)
        {
            console.MarkupLineInterpolated($"[grey]{number.Id}[/]");
            view.Write(number.Trail);
            console.WriteLine();
        }

        return ExitCode.Pass;
    }
}
