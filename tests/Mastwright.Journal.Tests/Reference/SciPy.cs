using System.Diagnostics;
using System.Text.Json;

namespace Mastwright.Journal.Tests.Reference;

/// <summary>Runs a small script in SciPy, the outside reference engine for numbers; skips where it is not installed.</summary>
internal static class SciPy
{
    private const string Interpreter = "/usr/bin/python3";

    public static JsonElement Run(string script, object input)
    {
        if (!File.Exists(Interpreter)) Assert.Skip("no python3 here");
        var start = new ProcessStartInfo(Interpreter) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Reference", script));
        using var process = Process.Start(start)!;
        process.StandardInput.Write(JsonSerializer.Serialize(input));
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (error.Result.Contains("No module named 'scipy'", StringComparison.Ordinal)) Assert.Skip("no SciPy here");
        Assert.True(process.ExitCode == 0, error.Result);
        return JsonDocument.Parse(output).RootElement;
    }
}
