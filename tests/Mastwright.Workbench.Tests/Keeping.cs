using System.Text.RegularExpressions;
using Mastwright.Tests.Shared;
using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>The tests that start the program or a browser take turns, and share what they started.</summary>
[CollectionDefinition("one at a time")]
public sealed class OneAtATime : ICollectionFixture<Keeping>;

/// <summary>One server and one browser for the tests of journal, sweep and book; each is started when first asked for.</summary>
public sealed class Keeping : IAsyncDisposable
{
    private IPlaywright? playwright;
    private IBrowser? browser;
    private Served? served;
    private HttpClient? client;

    /// <summary>A folder for screenshots; null when none are wanted.</summary>
    public static string? Pictures { get; } = Environment.GetEnvironmentVariable("MASTWRIGHT_PICTURES") is { Length: > 0 } folder ? folder : null;

    /// <summary>The tube mast on its lowest band: computed in a moment.</summary>
    public static string OneBand { get; } = string.Join('\n', File.ReadAllLines(Repository.File("examples", "tube-12m.yaml")).Where(l => !Regex.IsMatch(l, "frequency: (10|14|18|21|24|28)"))) + "\n";

    public async Task<Served> Served() => served ??= await global::Mastwright.Workbench.Tests.Served.Start(OneBand);

    public async Task<HttpClient> Client() => client ??= new HttpClient(new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = (await Served()).Address };

    public async Task<IBrowser> Browser()
    {
        var chromium = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, "chromium")).FirstOrDefault(File.Exists);
        if (chromium is null)
        {
            Assert.Skip("chromium is not installed");
        }

        Assertions.SetDefaultExpectTimeout(45_000);
        playwright ??= await Playwright.CreateAsync();
        return browser ??= await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = chromium, Args = ["--no-sandbox", "--disable-dev-shm-usage"] });
    }

    /// <summary>A page of its own, with everything its console complains about.</summary>
    public async Task<(IPage Page, List<string> Complaints)> Open(Uri address, string path, string look = "light", int width = 1280, int height = 900, bool phone = false)
    {
        var context = await (await Browser()).NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ReducedMotion = ReducedMotion.Reduce, HasTouch = phone, IsMobile = phone });
        context.SetDefaultTimeout(90_000);
        await context.AddCookiesAsync([new Cookie { Name = "mastwright-look", Value = look, Url = address.ToString() }]);
        var page = await context.NewPageAsync();
        var complaints = new List<string>();
        page.PageError += (_, e) => complaints.Add(e);
        page.Console += (_, m) =>
        {
            if (m.Type == "error")
            {
                complaints.Add(m.Text);
            }
        };
        await page.GotoAsync(new Uri(address, path).ToString());
        return (page, complaints);
    }

    /// <summary>Waits until the page answers to clicks.</summary>
    public static Task Ready(IPage page) => Assertions.Expect(page.Locator("html[data-live]")).ToHaveCountAsync(1, new() { Timeout = 60_000 });

    public async ValueTask DisposeAsync()
    {
        client?.Dispose();
        if (browser is not null)
        {
            await browser.CloseAsync();
        }

        playwright?.Dispose();
        if (served is not null)
        {
            await served.DisposeAsync();
        }
    }
}
