using System.CommandLine;
using Mastwright.Analysis;
using Mastwright.Analysis.Results;
using Mastwright.App.Files;
using Mastwright.Report.Terminal;
using Spectre.Console;

namespace Mastwright.App.Commands;

/// <summary>What several commands need: the file argument, consoles, and analysing with progress.</summary>
internal static class Shared
{
    /// <summary>The design file; left out, the built-in station is taken.</summary>
    public static Argument<string?> FileArgument() => new Argument<string?>("file")
    {
        Description = "The design file; left out, the station built into the program.",
        Arity = ArgumentArity.ZeroOrOne,
        DefaultValueFactory = _ => null,
    }.NamesFile();

    /// <summary>The terminal for results.</summary>
    public static IAnsiConsole Output() => On(Console.Out, Console.IsOutputRedirected);

    /// <summary>The terminal for messages and progress.</summary>
    public static IAnsiConsole Messages() => On(Console.Error, Console.IsErrorRedirected);

    // Piped output is as wide as the widest table needs: a file has no edge to wrap at.
    private static IAnsiConsole On(TextWriter writer, bool redirected)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(writer) });
        if (redirected)
        {
            console.Profile.Width = 200;
        }

        return console;
    }

    /// <summary>Reads and analyses a design with progress on the error stream; null after the findings were shown.</summary>
    public static StationResult? Analyse(string? path, CancellationToken cancellation)
    {
        var reading = DesignFile.Read(path);
        if (!reading.Ok)
        {
            FindingsView.Write(Messages(), reading.Findings);
            return null;
        }

        return WithProgress(progress => StationAnalysis.Run(reading, progress, cancellation));
    }

    /// <summary>Does some work while the error stream shows what is being done; silent when that is no terminal.</summary>
    public static T WithProgress<T>(Func<IProgress<AnalysisStep>?, T> work)
    {
        if (Console.IsErrorRedirected)
        {
            return work(null);
        }

        var result = default(T);
        Messages().Status().Start("Reading", status =>
        {
            var progress = new Steps(step => status.Status(Markup.Escape(step.Words)));
            result = work(progress);
        });
        return result!;
    }

    private sealed class Steps(Action<AnalysisStep> show) : IProgress<AnalysisStep>
    {
        public void Report(AnalysisStep value) => show(value);
    }
}
