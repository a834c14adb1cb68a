using System.Diagnostics;

namespace Mastwright.App.Tests;

/// <summary>Runs the program as a user's shell would.</summary>
internal static class Cli
{
    public sealed record Run(int ExitCode, string Output, string Errors);

    public static async Task<Run> Start(params string[] args)
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
