using System.Diagnostics;
using Mastwright.Tests.Shared;

namespace Mastwright.Workbench.Tests;

/// <summary>The program serving the workbench, as a user would start it.</summary>
public sealed class Served : IAsyncDisposable
{
    private readonly Process process;
    private readonly string[] arguments;
    private bool goesOn;

    private Served(Process process, Uri address, string folder, string[] arguments) => (this.process, Address, Folder, this.arguments) = (process, address, folder, arguments);

    public Uri Address { get; }

    /// <summary>The folder it was started in.</summary>
    public string Folder { get; }

    public static async Task<Served> Start(string? designText = null, params string[] more)
    {
        var folder = Directory.CreateTempSubdirectory("served").FullName;
        if (designText is not null)
        {
            await File.WriteAllTextAsync(Path.Combine(folder, "station.yaml"), designText);
        }

        return await Launch(folder, 0, [.. designText is null ? Array.Empty<string>() : ["station.yaml"], .. more]);
    }

    /// <summary>Ends the program at once, as a crash or a power cut would.</summary>
    public async Task Kill()
    {
        process.Kill(true);
        await process.WaitForExitAsync();
    }

    /// <summary>Starts it again in the same folder, at the same address.</summary>
    /// <param name="others">Other arguments; none for those it was started with.</param>
    public async Task<Served> Again(params string[] others)
    {
        await Kill();
        goesOn = true;
        return await Launch(Folder, Address.Port, others.Length > 0 ? others : arguments);
    }

    private static async Task<Served> Launch(string folder, int port, string[] arguments)
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, WorkingDirectory = folder };
        info.Environment["XDG_DATA_HOME"] = folder;
        var build = new DirectoryInfo(AppContext.BaseDirectory);
        info.ArgumentList.Add(Repository.File("src", "Mastwright.App", "bin", build.Parent!.Name, build.Name, "mastwright.dll"));
        info.ArgumentList.Add("serve");
        info.ArgumentList.Add("--port");
        info.ArgumentList.Add(port.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Array.ForEach(arguments, info.ArgumentList.Add);
        var process = Process.Start(info)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(" at ") is [_, var address])
            {
                return new Served(process, new Uri(address), folder, arguments);
            }
        }

        throw new InvalidOperationException("The workbench did not start.");
    }

    public async ValueTask DisposeAsync()
    {
        await Kill();
        process.Dispose();
        if (!goesOn)
        {
            Directory.Delete(Folder, true);
        }
    }
}
