using System.Diagnostics;

namespace Mastwright.App.Tests;

/// <summary>
/// Runs the program. Most tests call its entry point in this process, where the compiled code is warm; a few start the program as a
/// user's shell would.
/// </summary>
internal static class Cli
{
    private static readonly RoutedWriter Output = RoutedWriter.InPlaceOf(Console.Out, Console.SetOut);
    private static readonly RoutedWriter Errors = RoutedWriter.InPlaceOf(Console.Error, Console.SetError);

    public sealed record Run(int ExitCode, string Output, string Errors);

    /// <summary>Calls the entry point. Falls back to a process of its own when this one writes to a terminal, whose width the program would ask for.</summary>
    public static async Task<Run> Start(params string[] args)
    {
        if (!Console.IsOutputRedirected || !Console.IsErrorRedirected)
        {
            return await StartProcess(args);
        }

        using var output = new StringWriter();
        using var errors = new StringWriter();
        return await Task.Run(async () =>
        {
            Output.To(TextWriter.Synchronized(output));
            Errors.To(TextWriter.Synchronized(errors));
            var code = await Program.Main(args);
            return new Run(code, output.ToString(), errors.ToString());
        });
    }

    /// <summary>Starts the program as a shell would.</summary>
    public static async Task<Run> StartProcess(params string[] args)
    {
        using var process = Process.Start(Info(args))!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        return new Run(process.ExitCode, await output, await errors);
    }

    public static ProcessStartInfo Info(params string[] args)
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        info.ArgumentList.Add(typeof(Program).Assembly.Location);
        Array.ForEach(args, info.ArgumentList.Add);
        return info;
    }
}
