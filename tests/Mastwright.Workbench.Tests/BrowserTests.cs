using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Mastwright.Tests.Shared;
using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>A person at the workbench, in Debian's Chromium. Set MASTWRIGHT_PICTURES to a folder to keep screenshots.</summary>
[Collection("one at a time")]
public sealed class BrowserTests(BrowserTests.Fixture fixture) : IClassFixture<BrowserTests.Fixture>
{
    private static readonly string? Pictures = Environment.GetEnvironmentVariable("MASTWRIGHT_PICTURES") is { Length: > 0 } folder ? folder : null;

    private static readonly string[] Pages = ["", "site", "stand", "radiate", "feed", "survive", "build", "keep", "text", "start"];

    public sealed class Fixture : IAsyncLifetime
    {
        private IPlaywright? playwright;

        public Served? Served { get; private set; }

        public IBrowser? Browser { get; private set; }

        public async ValueTask InitializeAsync()
        {
            var chromium = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, "chromium")).FirstOrDefault(File.Exists);
            if (chromium is null)
            {
                return;
            }

            // Pictures show the whole sample; the walk through it needs only a few bands.
            Served = Pictures is not null
                ? await Served.Start(await File.ReadAllTextAsync(Repository.File("examples", "lattice-22m.yaml")))
                : await Served.Start(string.Join('\n', (await File.ReadAllLinesAsync(Repository.File("examples", "tube-12m.yaml"))).Where(l => !Regex.IsMatch(l, "frequency: (10|18|21|24|28)"))) + "\n");
            // A busy machine takes its time; a page that never answers still fails.
            Assertions.SetDefaultExpectTimeout(45_000);
            playwright = await Playwright.CreateAsync();
            Browser = await playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
            {
                ExecutablePath = chromium,
                Args = ["--no-sandbox", "--disable-dev-shm-usage", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"],
            });
        }

        public async ValueTask DisposeAsync()
        {
            if (Browser is not null)
            {
                await Browser.CloseAsync();
            }

            playwright?.Dispose();
            if (Served is not null)
            {
                await Served.DisposeAsync();
            }
        }
    }

    [Fact]
    public async Task TheFirstVisitShowsAComputedStationAndEveryPageHasSomethingToSay()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        foreach (var path in Pages)
        {
            await Go(page, path);
            Assert.NotEqual("", (await page.Locator("h1").First.InnerTextAsync()).Trim());
            Assert.True((await page.Locator("main").InnerTextAsync()).Length > 300, path);
        }

        Assert.Empty(complaints);
    }

    [Fact]
    public async Task ANumberAnswersWhy()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        await Go(page, "radiate");
        await page.Locator("table.bands td[data-label='Efficiency'] button").First.ClickAsync();
        var why = page.Locator("aside.why");
        await Assertions.Expect(why).ToContainTextAsync("Source");
        await Assertions.Expect(why.Locator(".formula").First).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(why).ToHaveCountAsync(0);
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AStudyIsWorkedOutOnItsPage()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        await Go(page, "studies/tension");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("main table.sheet").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work it out again" })).ToBeVisibleAsync();
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AnEditChangesTheVerdictAndUndoBringsItBack()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        await Go(page, "stand");
        var strip = page.Locator("nav.strip a.trade").Nth(1);
        var before = await strip.InnerTextAsync();
        var input = page.Locator("#f-masts-0-guys-0-initial-tension");
        await input.FillAsync("25 %");
        await input.PressAsync("Enter");
        await Assertions.Expect(page.Locator(".bar .file")).ToContainTextAsync("not saved");
        await Assertions.Expect(strip).Not.ToHaveTextAsync(before, new() { Timeout = 30_000, UseInnerText = true });
        await page.Locator("button[data-key='undo']").ClickAsync();
        await Assertions.Expect(strip).ToHaveTextAsync(before, new() { Timeout = 30_000, UseInnerText = true });
        await Assertions.Expect(page.Locator(".bar .file")).Not.ToContainTextAsync("not saved");
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AWrongValueIsToldAtItsFieldAndTheFiguresStay()
    {
        var (page, _) = await Open();
        await Fresh(page);
        await Go(page, "site");
        var input = page.Locator("#f-site-elevation");
        await input.FillAsync("very high");
        await input.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#f-site-elevation-p")).ToContainTextAsync("number");
        await Assertions.Expect(page.Locator(".notice.bad")).ToContainTextAsync("error");
        Assert.NotEqual("", await page.Locator("nav.strip a.trade").First.InnerTextAsync());
        await page.Locator("button[data-key='undo']").ClickAsync();
        await Assertions.Expect(page.Locator(".notice.bad")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task TheTextShowsErrorsAtTheirLinesAndStaysInStep()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        await Go(page, "text");
        await page.Locator(".cm-content").ClickAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("cheese: yes");
        await Assertions.Expect(page.Locator("section.findings li.error")).ToContainTextAsync("cheese");
        await Assertions.Expect(page.Locator(".cm-lint-marker-error").First).ToBeVisibleAsync();
        await UndoAll(page);
        await Assertions.Expect(page.Locator("section.findings li.error")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".cm-content")).Not.ToContainTextAsync("cheese");
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AnAnchorIsMovedWithTheMouse()
    {
        var (page, _) = await Open();
        await Fresh(page);
        await Go(page, "site");
        var distance = page.Locator("#f-masts-0-anchors-0-distance");
        var before = await distance.InputValueAsync();
        var box = (await page.Locator("g.anchor rect").First.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + 40, box.Y - 40, new() { Steps = 5 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(distance).Not.ToHaveValueAsync(before);
        await page.Locator("button[data-key='undo']").ClickAsync();
        await Assertions.Expect(distance).ToHaveValueAsync(before);
    }

    [Fact]
    public async Task HostileNamesStayText()
    {
        var (page, complaints) = await Open();
        await Fresh(page);
        await Go(page, "text");
        await page.Locator(".cm-content").ClickAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("notes: '<img src=x onerror=window.hurt=1><script>window.hurt=1</script>'");
        await page.Locator(".bar .name").ClickAsync();
        await page.WaitForTimeoutAsync(400);
        Assert.False(await page.EvaluateAsync<bool>("() => 'hurt' in window"));
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task UnitsAndLookAreSwitchedAndRemembered()
    {
        var (page, _) = await Open();
        await Fresh(page);
        await Go(page, "site");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("units") }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(" ft");
        await page.GetByRole(AriaRole.Button, new() { Name = "Dark" }).ClickAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-theme", "dark");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-theme", "dark");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(" ft");
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task NothingSeriousStandsInTheWayOfAnyReader(string look)
    {
        var (page, _) = await Open(look);
        await Fresh(page);
        foreach (var path in Pages)
        {
            await Go(page, path);
            var report = await page.RunAxe();
            var grave = report.Violations.Where(v => v.Impact is "serious" or "critical").ToList();
            Assert.True(grave.Count == 0, path + ": " + string.Join("\n", grave.Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}")));
        }
    }

    [Theory]
    [InlineData(1440, 900)]
    [InlineData(1024, 768)]
    [InlineData(390, 844)]
    public async Task NoPageIsWiderThanItsWindow(int width, int height)
    {
        foreach (var look in (string[])["light", "dark"])
        {
            var (page, _) = await Open(look, width, height);
            await Fresh(page);
            foreach (var path in Pages)
            {
                await Go(page, path);
                Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} at {width}");
                if (Pictures is not null)
                {
                    await page.WaitForTimeoutAsync(700);
                    await page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"{(path.Length == 0 ? "overview" : path)}-{width}-{look}.png"), FullPage = true });
                }
            }
        }
    }

    private async Task<(IPage Page, List<string> Complaints)> Open(string look = "light", int width = 1280, int height = 900)
    {
        if (fixture.Browser is null)
        {
            Assert.Skip("chromium is not installed");
        }

        var context = await fixture.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ReducedMotion = ReducedMotion.Reduce });
        context.SetDefaultTimeout(90_000);
        await context.AddCookiesAsync([new Cookie { Name = "mastwright-look", Value = look, Url = fixture.Served!.Address.ToString() }]);
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
        await page.GotoAsync(fixture.Served.Address.ToString());
        return (page, complaints);
    }

    private async Task Go(IPage page, string path)
    {
        await page.EvaluateAsync("path => Blazor.navigateTo('/' + path)", path);
        await page.WaitForURLAsync(new Uri(fixture.Served!.Address, path).ToString());
        await Assertions.Expect(page.Locator("h1").First).ToBeVisibleAsync();
        if (path == "text")
        {
            await Assertions.Expect(page.Locator(".cm-content")).ToBeVisibleAsync(new() { Timeout = 20_000 });
        }
    }

    // All pages share one desk: each test finds it as the first did.
    private static async Task UndoAll(IPage page)
    {
        await page.WaitForFunctionAsync("() => window.Blazor && document.querySelector('nav.strip')");
        var undo = page.Locator("button[data-key='undo']");
        for (var i = 0; i < 60 && await undo.IsEnabledAsync(); i++)
        {
            await undo.ClickAsync(new() { Timeout = 5000 });
            await page.WaitForTimeoutAsync(120);
        }
    }

    private static async Task Fresh(IPage page)
    {
        await UndoAll(page);
        await page.WaitForTimeoutAsync(700);
        await Assertions.Expect(page.Locator(".working.desk")).ToHaveCountAsync(0, new() { Timeout = 90_000 });
        await page.WaitForFunctionAsync("() => window.Blazor && document.querySelector('nav.strip')");
    }
}
