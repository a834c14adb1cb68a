using System.Diagnostics;
using Microsoft.Playwright;

namespace Mastwright.Bench.Workbench;

/// <summary>The program serving a station as a user would start it, and a browser before it.</summary>
internal sealed class Served : IAsyncDisposable
{
    private readonly Process process;
    private readonly IPlaywright playwright;
    private readonly IBrowser browser;
    private readonly string folder;

    private Served(Process process, Uri address, string folder, IPlaywright playwright, IBrowser browser, double startedMs) =>
        (this.process, Address, this.folder, this.playwright, this.browser, StartedMs) = (process, address, folder, playwright, browser, startedMs);

    public Uri Address { get; }

    public int ProcessId => process.Id;

    /// <summary>Time from starting the program to its first address line, ms.</summary>
    public double StartedMs { get; }

    public static async Task<Served> Start(string example)
    {
        var folder = Directory.CreateTempSubdirectory("bench").FullName;
        File.Copy(example, Path.Combine(folder, "station.yaml"));
        var info = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, WorkingDirectory = folder };
        info.Environment["XDG_DATA_HOME"] = folder;
        var build = new DirectoryInfo(AppContext.BaseDirectory);
        foreach (var argument in new[] { Path.Combine(Machine.Root, "src", "Mastwright.App", "bin", build.Parent!.Name, build.Name, "mastwright.dll"), "serve", "station.yaml", "--port", "0" })
        {
            info.ArgumentList.Add(argument);
        }

        var watch = Stopwatch.StartNew();
        var process = Process.Start(info)!;
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.Split(" at ") is [_, var address])
            {
                var started = watch.Elapsed.TotalMilliseconds;
                var playwright = await Playwright.CreateAsync();
                var browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
                {
                    ExecutablePath = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, "chromium")).First(File.Exists),
                    Args = ["--no-sandbox", "--disable-dev-shm-usage"],
                });
                return new Served(process, new Uri(address), folder, playwright, browser, started);
            }
        }

        throw new InvalidOperationException("The workbench did not start.");
    }

    /// <summary>A page in a browser profile of its own, with nothing cached.</summary>
    public async Task<IPage> Open(string path)
    {
        var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1440, Height = 900 }, ReducedMotion = ReducedMotion.Reduce });
        context.SetDefaultTimeout(120_000);
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(Address, path).ToString());
        await page.Locator("html[data-live]").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        await browser.CloseAsync();
        playwright.Dispose();
        process.Kill(true);
        await process.WaitForExitAsync();
        process.Dispose();
        Directory.Delete(folder, true);
    }
}
