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
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        foreach (var path in Pages)
        {
            await reader.Go(path);
            Assert.NotEqual("", (await page.Locator("h1").First.InnerTextAsync()).Trim());
            Assert.True((await page.Locator("main").InnerTextAsync()).Length > 300, path);
        }

        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task ANumberAnswersWhy()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("radiate");
        await page.Locator("table.bands td[data-label='Efficiency'] button").First.ClickAsync();
        var why = page.Locator("aside.why");
        await Assertions.Expect(why).ToContainTextAsync("Source");
        await Assertions.Expect(why.Locator(".formula").First).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(why).ToHaveCountAsync(0);
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AStudyIsWorkedOutOnItsPage()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("studies/tension");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("main table.sheet").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work it out again" })).ToBeVisibleAsync();
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AnEditChangesTheVerdictAndUndoBringsItBack()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("stand");
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
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AWrongValueIsToldAtItsFieldAndTheFiguresStay()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("site");
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
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("text");
        await page.Locator(".cm-content").ClickAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("cheese: yes");
        await Assertions.Expect(page.Locator("section.findings li.error")).ToContainTextAsync("cheese");
        await Assertions.Expect(page.Locator(".cm-lint-marker-error").First).ToBeVisibleAsync();
        await reader.UndoAll();
        await Assertions.Expect(page.Locator("section.findings li.error")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".cm-content")).Not.ToContainTextAsync("cheese");
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AnAnchorIsMovedWithTheMouse()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("site");
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
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("text");
        await page.Locator(".cm-content").ClickAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync("notes: '<img src=x onerror=window.hurt=1><script>window.hurt=1</script>'");
        await page.Locator(".bar .name").ClickAsync();
        await page.WaitForTimeoutAsync(400);
        Assert.False(await page.EvaluateAsync<bool>("() => 'hurt' in window"));
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task UnitsAndLookAreSwitchedAndRemembered()
    {
        await using var reader = await Reader.Open(fixture);
        var page = reader.Page;
        await reader.Go("site");
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
        await using var reader = await Reader.Open(fixture, look);
        var page = reader.Page;
        foreach (var path in Pages)
        {
            await reader.Go(path);
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
            await using var reader = await Reader.Open(fixture, look, width, height);
            var page = reader.Page;
            foreach (var path in Pages)
            {
                await reader.Go(path);
                Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} at {width}");
                if (Pictures is not null)
                {
                    await page.WaitForTimeoutAsync(700);
                    await page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"{(path.Length == 0 ? "overview" : path)}-{width}-{look}.png"), FullPage = true });
                }
            }
        }
    }
}
