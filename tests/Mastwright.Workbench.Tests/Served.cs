using System.Diagnostics;
using Mastwright.Tests.Shared;

namespace Mastwright.Workbench.Tests;

/// <summary>The program serving the workbench, as a user would start it.</summary>
public sealed class Served : IAsyncDisposable
{
    private readonly Process process;

    private Served(Process process, Uri address, string folder) => (this.process, Address, Folder) = (process, address, folder);

    public Uri Address { get; }

    /// <summary>The folder it was started in.</summary>
    public string Folder { get; }

    public static async Task<Served> Start(string? designText = null, params string[] more)
    {
        var folder = Directory.CreateTempSubdirectory("served").FullName;
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, WorkingDirectory = folder };
        info.Environment["XDG_DATA_HOME"] = folder;
        var build = new DirectoryInfo(AppContext.BaseDirectory);
        info.ArgumentList.Add(Repository.File("src", "Mastwright.App", "bin", build.Parent!.Name, build.Name, "mastwright.dll"));
        info.ArgumentList.Add("serve");
        if (designText is not null)
        {
            await File.WriteAllTextAsync(Path.Combine(folder, "station.yaml"), designText);
            info.ArgumentList.Add("station.yaml");
        }

        info.ArgumentList.Add("--port");
        info.ArgumentList.Add("0");
        Array.ForEach(more, info.ArgumentList.Add);
        var process = Process.Start(info)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(" at ") is [_, var address])
            {
                return new Served(process, new Uri(address), folder);
            }
        }

        throw new InvalidOperationException("The workbench did not start.");
    }

    public async ValueTask DisposeAsync()
    {
        process.Kill(true);
        await process.WaitForExitAsync();
        process.Dispose();
        Directory.Delete(Folder, true);
    }
}
