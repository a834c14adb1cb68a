using System.CommandLine;
using Mastwright.Analysis;
using Mastwright.Model.Text;
using Mastwright.Report.Terminal;
using Spectre.Console;

namespace Mastwright.App.Commands;

/// <summary><c>list</c>: shows catalogue parts with their data and sources.</summary>
internal static class ListCommand
{
    public static Command Create()
    {
        var list = new Argument<string?>("list") { Description = "Which list; left out, the lists there are.", Arity = ArgumentArity.ZeroOrOne, DefaultValueFactory = _ => null };
        var us = new Option<bool>("--us") { Description = "Show US customary units." };
        var command = new Command("list", "Show catalogue parts.") { list, us };
        command.SetAction(parsed => Run(parsed.GetValue(list), parsed.GetValue(us)));
        return command;
    }

    private static int Run(string? list, bool us)
    {
        if (list is null)
        {
            foreach (var name in CatalogueNames.All)
            {
                Console.Out.WriteLine($"{name,-20} {CatalogueNames.Parts(name)!.Count} parts");
            }

            return ExitCode.Pass;
        }

        if (CatalogueNames.Parts(list) is not { } parts)
        {
            var near = NearMiss.Of(list, CatalogueNames.All);
            Shared.Messages().MarkupLineInterpolated($"[red]error[/]  There is no list “{list}”.{(near is null ? "" : $" Did you mean “{near}”?")} The lists: {string.Join(", ", CatalogueNames.All)}.");
            return ExitCode.WrongInput;
        }

        PartsView.Write(Shared.Output(), list, parts, us ? Model.Units.UnitSystem.Us : Model.Units.UnitSystem.Metric);
        return ExitCode.Pass;
    }
}
