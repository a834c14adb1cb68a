using System.CommandLine;
using Mastwright.App.Files;
using Mastwright.Report.Terminal;

namespace Mastwright.App.Commands;

/// <summary><c>new</c>: writes a commented starter file.</summary>
internal static class NewCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The file to write; it must not exist yet.", DefaultValueFactory = _ => "station.yaml" }.NamesFile();
        var command = new Command("new", "Write a commented starter file.") { file };
        command.SetAction(parsed => Run(parsed.GetValue(file)!));
        return command;
    }

    private static int Run(string path)
    {
        if (DesignFile.WriteNew(path, DesignFile.StarterText()) is { } finding)
        {
            FindingsView.Write(Shared.Messages(), [finding]);
            return ExitCode.WrongInput;
        }

        Console.Out.WriteLine($"Wrote {path}. Edit it, then run: mastwright check {path}");
        return ExitCode.Pass;
    }
}
