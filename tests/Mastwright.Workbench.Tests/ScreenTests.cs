using System.Text;
using System.Text.RegularExpressions;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>The station part by part, plots, comparing, searching: a person at the workbench in Debian's Chromium.</summary>
[Collection("one at a time")]
public sealed class ScreenTests(BrowserTests.Fixture fixture) : IClassFixture<BrowserTests.Fixture>
{
    private static readonly string? Pictures = Environment.GetEnvironmentVariable("MASTWRIGHT_PICTURES") is { Length: > 0 } folder ? folder : null;

    // The pages of the trades are looked at by another test; pictures are taken of all that hold drawings.
    private static readonly string[] Pages = ["station?part=guy%2F0%2F0%2F0", "search", "compare", "studies/gap", .. Pictures is null ? (string[])[] : ["studies/materials", "studies/cut", "build", "feed", "radiate", "stand", "survive", ""]];

    [Fact]
    public async Task APartFromTheListTellsItsNumbersChecksAndWhereTheyComeFrom()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("station");
        await reader.Page.Locator(".part select").First.SelectOptionAsync("guy/0/0/1");
        var panel = reader.Page.Locator("section.part");
        await Assertions.Expect(panel.Locator(".partfacts").First).ToContainTextAsync("Largest tension");
        var check = panel.Locator("details.partcheck").Filter(new() { HasText = "strand" }).First;
        await check.Locator("summary").First.ClickAsync();
        await Assertions.Expect(check.Locator(".trail .source").First).ToContainTextAsync("Source");
        await Assertions.Expect(reader.Page.Locator(".drawing g.picked .guy")).ToHaveCountAsync(1);
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AClickInSpacePicksThePartUnderIt()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("station");
        var canvas = reader.Page.Locator(".space canvas");
        await Assertions.Expect(canvas).ToBeVisibleAsync();
        await canvas.ClickAsync();
        await Assertions.Expect(reader.Page.Locator("section.part h2")).ToHaveTextAsync(new Regex("Mast"));
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task TheDialTurnsTheWindAndTheMovementStatesItsFactor()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("station");
        await reader.Page.Locator(".controls select").First.SelectOptionAsync("wind, coldest");
        var dial = reader.Page.GetByRole(AriaRole.Slider, new() { Name = "Wind from" });
        var before = await dial.GetAttributeAsync("aria-valuetext");
        await dial.PressAsync("ArrowRight");
        await Assertions.Expect(dial).Not.ToHaveAttributeAsync("aria-valuetext", before!);
        await dial.PressAsync("ArrowLeft");
        await Assertions.Expect(dial).ToHaveAttributeAsync("aria-valuetext", before!);
        await dial.Locator(".sector").Nth(3).ClickAsync();
        await Assertions.Expect(dial).Not.ToHaveAttributeAsync("aria-valuetext", before!);
        await Assertions.Expect(reader.Page.Locator(".space figcaption")).ToContainTextAsync(new Regex("movement drawn \\d+ times"));
        await reader.Page.GetByLabel("Wires coloured by").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await Assertions.Expect(reader.Page.Locator(".space figcaption")).ToContainTextAsync("Current of mast");

        // Elevation and plan carry the same shades: the mast, whose current is the largest, the strongest one.
        await Assertions.Expect(reader.Page.Locator("svg[aria-label^='Elevation'] .currents line.shade4").First).ToBeAttachedAsync();
        await Assertions.Expect(reader.Page.Locator("svg[aria-label^='Plan'] .currents line").First).ToBeAttachedAsync();
        await Assertions.Expect(reader.Page.Locator("svg[aria-label^='Elevation'] .guy:not(.bare)")).ToHaveCountAsync(0);
        if (Pictures is not null)
        {
            await reader.Page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, "station-currents.png"), FullPage = true });
        }

        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AGuyLevelAndAnAnchorAreDraggedWrittenAndUndone()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("station");
        var text = await reader.Text();
        await reader.Drag(reader.Page.Locator("g.level .handle").First, 0, 30);
        await Assertions.Expect(reader.Page.Locator("button[data-key='undo']")).ToHaveAttributeAsync("title", "Undo moving guy level 1");
        Assert.NotEqual(text, await reader.Text());
        await reader.Undo();
        await reader.Drag(reader.Page.Locator("g.slide rect").First, 25, 0);
        await Assertions.Expect(reader.Page.Locator("button[data-key='undo']")).ToHaveAttributeAsync("title", new Regex("Undo moving anchor"));
        await Assertions.Expect(reader.Page.Locator("section.part h2")).ToHaveTextAsync(new Regex("Anchor"));
        await reader.Undo();
        await reader.Page.WaitForTimeoutAsync(150);
        Assert.Equal(text, await reader.Text());
    }

    [Fact]
    public async Task APlotTellsItsValuesAndIsSaved()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("stand");
        var rose = reader.Page.Locator(".drawing.round .plotbox").First;
        await rose.ScrollIntoViewIfNeededAsync();
        await rose.FocusAsync();
        await rose.PressAsync("ArrowRight");
        var tip = reader.Page.Locator(".plottip");
        await Assertions.Expect(tip).ToContainTextAsync("wind from");
        var first = await tip.InnerTextAsync();
        await rose.PressAsync("ArrowRight");
        await Assertions.Expect(tip).Not.ToHaveTextAsync(first, new() { UseInnerText = true });
        await rose.PressAsync("Tab");
        await Assertions.Expect(tip).ToBeHiddenAsync();

        var mark = (await reader.Page.Locator(".drawing.round path.series").First.BoundingBoxAsync())!;
        await reader.Page.Mouse.MoveAsync(mark.X + (mark.Width / 2), mark.Y + 1);
        await Assertions.Expect(tip).ToContainTextAsync("level");

        var figure = reader.Page.Locator("figure.drawing.round").First;
        var (name, csv) = await reader.Saved(figure.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Save as CSV") }));
        Assert.EndsWith(".csv", name);
        Assert.Contains("use of the tension allowed, %", Encoding.UTF8.GetString(csv));
        var (_, svg) = await reader.Saved(figure.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Save as SVG") }));
        Assert.StartsWith("<svg", Encoding.UTF8.GetString(svg));
        Assert.Contains("stroke:rgb", Encoding.UTF8.GetString(svg));
        var (_, png) = await reader.Saved(figure.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Save as PNG") }));
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task TheSmithChartOfTheFeedTellsImpedances()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("feed");
        var chart = reader.Page.Locator(".plotbox").Filter(new() { Has = reader.Page.Locator("img[alt*='Smith']") }).First;
        await chart.ScrollIntoViewIfNeededAsync();
        await chart.FocusAsync();
        await chart.PressAsync("ArrowRight");
        await Assertions.Expect(reader.Page.Locator(".plottip")).ToContainTextAsync("resistance");
        var figure = reader.Page.Locator("figure").Filter(new() { Has = reader.Page.Locator("img[alt*='Smith']") }).First;
        var (_, png) = await reader.Saved(figure.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Save as PNG") }));
        Assert.True(png.Length > 3000);
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task ThePatternIsDrawnInSpaceWhenAskedFor()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("radiate");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Draw the pattern in space" }).ClickAsync();
        var canvas = reader.Page.Locator(".space canvas");
        await Assertions.Expect(canvas).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await canvas.ScrollIntoViewIfNeededAsync();
        var box = (await canvas.BoundingBoxAsync())!;
        await reader.Page.Mouse.MoveAsync(box.X + (box.Width * 0.4f), box.Y + (box.Height * 0.55f));
        await Assertions.Expect(reader.Page.Locator(".plottip")).ToContainTextAsync("dBi");
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AVariantIsKeptComparedAndTakenUpAgain()
    {
        await using var reader = await Reader.Open(fixture);
        var text = await reader.Text();
        await reader.Go("compare");
        await reader.Page.GetByLabel("Name").FillAsync("first idea");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Keep the present design" }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator("main")).ToContainTextAsync("The texts are the same");
        await reader.Go("stand");
        var tension = reader.Page.Locator("#f-masts-0-guys-0-initial-tension");
        await tension.FillAsync("20 %");
        await tension.PressAsync("Enter");
        await reader.Go("compare");
        await Assertions.Expect(reader.Page.Locator("ul.lines .added")).ToContainTextAsync("20 %");
        await Assertions.Expect(reader.Page.Locator(".twin .verdict")).ToHaveCountAsync(2);
        await Assertions.Expect(reader.Page.Locator("main .state")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await Assertions.Expect(reader.Page.Locator("main")).ToContainTextAsync("Checks that changed");
        await Assertions.Expect(reader.Page.Locator("main")).ToContainTextAsync("Numbers that differ");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Put “first idea” on the desk" }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator("main")).ToContainTextAsync("The texts are the same");
        Assert.Equal(text, await reader.Text());
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Drop “first idea”" }).ClickAsync();
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task ASearchShowsWhatItFindsIsStoppedAndAResultAdopted()
    {
        await using var reader = await Reader.Open(fixture);
        var text = await reader.Text();
        await reader.Go("search");
        await reader.Page.GetByLabel("Look for").SelectOptionAsync("heights");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator(".found").First).ToBeAttachedAsync(new() { Timeout = 60_000 });

        // What was found before the stop stays, and any of it can be adopted.
        await reader.Go("keep");
        await reader.Go("search");
        var stop = reader.Page.Locator("main .working button");
        await stop.EvaluateAllAsync<int>("all => { all.forEach(b => b.click()); return 0; }");
        await Assertions.Expect(stop).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await Assertions.Expect(reader.Page.Locator(".found").First).ToBeAttachedAsync();
        var adopt = reader.Page.Locator("main table tbody tr").Filter(new() { HasNotText = "as it is" }).GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Adopt") });
        await Assertions.Expect(adopt.Or(reader.Page.Locator("main table tbody tr")).First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await reader.Page.Locator("main table tbody tr").GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Adopt") }).Last.ClickAsync();
        await Assertions.Expect(reader.Page.Locator("main .notice")).ToContainTextAsync("On the desk now");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await reader.Page.WaitForTimeoutAsync(150);
        Assert.Equal(text, await reader.Text());
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task AStudyGoesOnWhenThePageIsLeftAndFollowsTheUnits()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("studies/gap");
        await Assertions.Expect(reader.Page.Locator("main table.sheet").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await reader.Go("site");
        await reader.Go("studies/gap");
        await Assertions.Expect(reader.Page.Locator("main table.sheet").First).ToBeVisibleAsync();
        await reader.Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("units") }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator("main .state")).ToContainTextAsync("units have changed");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Work it out again" }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator("main .state")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await Assertions.Expect(reader.Page.Locator("main table.sheet").First).ToContainTextAsync("V");
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task TheTextCompletesAndTellsWhatANameMeans()
    {
        await using var reader = await Reader.Open(fixture);
        await reader.Go("text");
        var content = reader.Page.Locator(".cm-content");
        await Assertions.Expect(content).ToBeVisibleAsync(new() { Timeout = 20_000 });
        await content.ClickAsync();
        await reader.Page.Keyboard.PressAsync("Control+End");
        await reader.Page.Keyboard.TypeAsync("lim");
        await reader.Page.Keyboard.PressAsync("Control+Space");
        await Assertions.Expect(reader.Page.Locator(".cm-tooltip-autocomplete")).ToContainTextAsync("limits");
        await reader.Page.Keyboard.PressAsync("Escape");
        await reader.Page.Keyboard.PressAsync("Control+Home");
        var line = (await reader.Page.Locator(".cm-line", new() { HasTextRegex = new Regex("^site:") }).First.BoundingBoxAsync())!;
        await reader.Page.Mouse.MoveAsync(line.X + 14, line.Y + 8, new() { Steps = 3 });
        await Assertions.Expect(reader.Page.Locator(".cm-tooltip .help")).ToBeVisibleAsync(new() { Timeout = 10_000 });
        Assert.Empty(reader.Complaints);
    }

    [Fact]
    public async Task FiveAnswersMakeAStationThatIsComputed()
    {
        await using var reader = await Reader.Open(fixture);
        var text = await reader.Text();
        await reader.Go("start");
        await reader.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the desk" }).ClickAsync();
        await Assertions.Expect(reader.Page.Locator("h1").First).ToHaveTextAsync(new Regex("checks"), new() { Timeout = 90_000 });
        await reader.Undo();
        await reader.TextBecomes(text);
        Assert.Empty(reader.Complaints);
    }

    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    public async Task NothingSeriousStandsInTheWayOfAnyReader(string look)
    {
        await using var reader = await Reader.Open(fixture, look);
        foreach (var path in Pages)
        {
            await reader.Go(path);
            await reader.Page.WaitForTimeoutAsync(250);
            var report = await reader.Page.RunAxe();
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
        foreach (var look in Pictures is null ? (string[])["light"] : ["light", "dark"])
        {
            await using var reader = await Reader.Open(fixture, look, width, height);
            foreach (var path in Pages)
            {
                await reader.Go(path);
                Assert.True(await reader.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} at {width}");
                if (Pictures is not null)
                {
                    await reader.Page.WaitForTimeoutAsync(700);
                    await reader.Page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"{path.Split('?')[0].Replace('/', '-')}-{width}-{look}.png"), FullPage = true });
                }
            }
        }
    }
}
