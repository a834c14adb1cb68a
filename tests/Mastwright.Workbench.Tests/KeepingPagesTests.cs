using System.Globalization;
using System.Net.Http.Json;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Mastwright.Report.Studies;
using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>The pages of journal, sweep and station book in Debian's Chromium.</summary>
[Collection("one at a time")]
public sealed class KeepingPagesTests(Keeping keeping)
{
    private static readonly string[] Pages = ["journal", "journal/entries", "journal/drift", "journal/changes", "journal/files", "sweep", "book", "keep"];

    private static readonly AxeRunOptions ColourRules = new() { RunOnly = new() { Type = "rule", Values = ["color-contrast", "link-in-text-block"] } };

    [Fact]
    public async Task ASweepIsDroppedLaidOverThePredictionFittedAndKept()
    {
        var (page, complaints) = await Open("sweep");
        await Drop(page, "tube.csv", Sweep());
        await Assertions.Expect(page.Locator("h2:has-text('Keep it in the journal')")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Fitted, with 95 % confidence");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Next setting of the network");
        await Assertions.Expect(page.Locator("figure.plot path.series").First).ToBeVisibleAsync();

        // Moving the reference changes what stands at the feed terminal.
        var first = page.Locator("table.sheet td[data-label='X measured']").First;
        var before = await first.InnerTextAsync();
        await page.Locator("#sw-cable").FillAsync("12 m");
        await page.Locator("#sw-cable").PressAsync("Enter");
        await Assertions.Expect(first).Not.ToHaveTextAsync(before, new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Moved from the analyser to the feed terminal");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Kept as");
        await page.GotoAsync(new Uri((await keeping.Served()).Address, "journal/entries").ToString());
        await Assertions.Expect(page.Locator("table.sheet")).ToContainTextAsync("from tube.csv");
        Assert.Empty(complaints);
    }

    [Theory]
    [InlineData("picture.png", "\u0089PNG\r\n\u001a\n\0\0\0\rIHDR", "not a text file")]
    [InlineData("empty.csv", "", "is empty")]
    [InlineData("words.csv", "<script>window.hurt=1</script>,<img src=x onerror=window.hurt=1>\n1,2\n", "")]
    [InlineData("huge.s1p", "# MHz S RI R 50\n1 1e400 0\n2 nan 0\n", "")]
    [InlineData("kind.s1p", "# MHz Q RI R 50\n1 0 0\n", "")]
    public async Task AHostileSweepGetsOneClearMessage(string name, string text, string says)
    {
        var (page, complaints) = await Open("sweep");
        await Drop(page, name, System.Text.Encoding.Latin1.GetBytes(text));
        var message = page.Locator("main .notice.bad").First;
        await Assertions.Expect(message).ToBeVisibleAsync();
        await Assertions.Expect(message).ToContainTextAsync(says);
        Assert.DoesNotContain("   at ", await page.Locator("main").InnerTextAsync());
        Assert.False(await page.EvaluateAsync<bool>("() => 'hurt' in window"));
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AnOversizedSweepIsRefusedBeforeItIsRead()
    {
        var (page, _) = await Open("sweep");
        await Drop(page, "long.csv", new byte[4_100_000]);
        await Assertions.Expect(page.Locator("main .notice.bad")).ToContainTextAsync("too large");
    }

    [Fact]
    public async Task TheBookIsMadeInTheBackgroundAndTaken()
    {
        var (page, complaints) = await Open("book");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the book" }).ClickAsync();
        var pdf = page.Locator(".order a.primary").First;
        await Assertions.Expect(pdf).ToBeVisibleAsync(new() { Timeout = 60_000 });
        var download = await page.RunAndWaitForDownloadAsync(() => pdf.ClickAsync());
        Assert.Equal("garden-tube-book.pdf", download.SuggestedFilename);
        var bytes = await File.ReadAllBytesAsync(await download.PathAsync());
        Assert.Equal("%PDF"u8.ToArray(), bytes[..4]);
        var web = await page.RunAndWaitForDownloadAsync(() => page.Locator(".order a.tool").First.ClickAsync());
        Assert.DoesNotContain("<script", await File.ReadAllTextAsync(await web.PathAsync()));
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task TheDriftPictureAlarmsAndWhatChangedIsTold()
    {
        // A guy that has lost a quarter of its tension in two years, beside one that has not moved.
        var notes = Enumerable.Range(0, 6).SelectMany(i => new[] { ("2/back", 420 - (20 * i)), ("2/front", 420) }.Select(g => new Dictionary<string, object>
        {
            ["id"] = Guid.NewGuid(),
            ["kind"] = "tension",
            ["at"] = $"{2024 + (i / 3)}-0{1 + (3 * (i % 3))}-15T12:00:00+00:00",
            ["guy"] = g.Item1,
            ["way"] = "gauge",
            ["reading"] = $"{g.Item2} lbf",
            ["temperature"] = "59 °F",
            ["text"] = "<b>loose</b>",
        })).ToList();
        using var answer = await (await keeping.Client()).PostAsJsonAsync("/api/journal/entries", notes);
        Assert.DoesNotContain("refused", await answer.Content.ReadAsStringAsync());

        var (page, complaints) = await Open("journal/drift");
        await Assertions.Expect(page.Locator(".notice.bad")).ToContainTextAsync("guy 2/back", new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("figure.drift.fail circle.out").First).ToBeVisibleAsync();
        await page.GotoAsync(new Uri((await keeping.Served()).Address, "journal/changes").ToString());
        await Keeping.Ready(page);
        await page.Locator("input[type=date]").First.FillAsync("2024-02-01");
        await Assertions.Expect(page.Locator("table.sheet").First).ToContainTextAsync("2/back");

        // Words from outside stay words, and a struck entry is gone from the list.
        await page.GotoAsync(new Uri((await keeping.Served()).Address, "journal/entries").ToString());
        await Keeping.Ready(page);
        await page.Locator("input[type=search]").FillAsync("2/back");
        await Assertions.Expect(page.Locator("table.sheet caption")).ToContainTextAsync("6 of");
        Assert.Equal(0, await page.Locator("table.sheet b").CountAsync());
        await page.Locator("table.sheet tbody button").First.ClickAsync();
        await page.GetByLabel("Strike it out because").FillAsync("misread");
        await page.GetByRole(AriaRole.Button, new() { Name = "Strike it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("table.sheet caption")).ToContainTextAsync("5 of");
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task AnExportIsTakenInAgainAndAForeignFileIsNot()
    {
        var client = await keeping.Client();
        var export = await client.GetByteArrayAsync("/api/journal/export.json");
        var (page, complaints) = await Open("journal/files");
        await Drop(page, "journal.json", export);
        await Assertions.Expect(page.Locator("main .notice[role=status]")).ToContainTextAsync("Took in");
        await Drop(page, "other.json", "{\"format\":\"another\"}"u8.ToArray());
        await Assertions.Expect(page.Locator("main .notice.bad")).ToContainTextAsync("not an export");
        await Drop(page, "cut.json", export[..(export.Length / 2)]);
        await Assertions.Expect(page.Locator("main .notice.bad")).ToContainTextAsync("cannot be read");
        Assert.Empty(complaints);
    }

    /// <summary>The dark look has the same elements in other colours, so there only the colours are looked at again; what a study found is still there.</summary>
    [Fact]
    public async Task NothingSeriousStandsInTheWayOfAnyReader()
    {
        foreach (var look in (string[])["light", "dark"])
        {
            var (page, _) = await Open("keep", look);
            foreach (var path in Pages.Concat(["studies/tension", "studies/gap", "studies/cut"]))
            {
                await Go(page, path);
                if (path.StartsWith("studies/", StringComparison.Ordinal))
                {
                    if (look == "light")
                    {
                        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
                    }

                    await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work it out again" })).ToBeVisibleAsync(new() { Timeout = 60_000 });
                }

                await NothingGrave(page, $"{path}, {look}", look == "light" ? null : ColourRules);
            }

            await page.Context.CloseAsync();
        }
    }

    /// <summary>Every study worked out and looked at: minutes, so only when pictures are asked for.</summary>
    [Fact]
    public async Task EveryStudyCanBeReadByAnyone()
    {
        Assert.SkipUnless(Keeping.Pictures is not null, "MASTWRIGHT_PICTURES is not set");
        foreach (var look in (string[])["light", "dark"])
        {
            var (page, _) = await Open("keep", look);
            foreach (var study in Studies.All)
            {
                await Go(page, "studies/" + study.Name);
                await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
                await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work it out again" })).ToBeVisibleAsync(new() { Timeout = 300_000 });
                await NothingGrave(page, study.Name);
                await page.ScreenshotAsync(new() { Path = Path.Combine(Keeping.Pictures!, $"study-{study.Name}-{look}.png"), FullPage = true });
            }
        }
    }

    [Theory]
    [InlineData(1440, 900)]
    [InlineData(1024, 768)]
    [InlineData(390, 844)]
    public async Task NoPageIsWiderThanItsWindow(int width, int height)
    {
        foreach (var look in Keeping.Pictures is null ? ["light"] : (string[])["light", "dark"])
        {
            var (page, _) = await Open("keep", look, width, height);
            foreach (var path in Pages)
            {
                await Go(page, path);
                Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} at {width}");
                if (Keeping.Pictures is { } folder)
                {
                    await page.WaitForTimeoutAsync(700);
                    await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{path.Replace('/', '-')}-{width}-{look}.png"), FullPage = true });
                }
            }
        }
    }

    private static async Task NothingGrave(IPage page, string path, AxeRunOptions? rules = null)
    {
        var report = await page.RunAxe(rules);
        var grave = report.Violations.Where(v => v.Impact is "serious" or "critical").ToList();
        Assert.True(grave.Count == 0, path + ": " + string.Join("\n", grave.Select(v => $"{v.Id}: {v.Help} {string.Join(" | ", v.Nodes.Take(4).Select(n => n.Html))}")));
    }

    private async Task<(IPage Page, List<string> Complaints)> Open(string path, string look = "light", int width = 1280, int height = 900)
    {
        var opened = await keeping.Open((await keeping.Served()).Address, path, look, width, height);
        await Keeping.Ready(opened.Page);
        return opened;
    }

    private async Task Go(IPage page, string path)
    {
        await page.EvaluateAsync("path => Blazor.navigateTo('/' + path)", path);
        await page.WaitForURLAsync(new Uri((await keeping.Served()).Address, path).ToString());
        await Assertions.Expect(page.Locator("h1").First).ToBeVisibleAsync();
    }

    private static async Task Drop(IPage page, string name, byte[] bytes)
    {
        var input = page.Locator(".drop input");
        await Assertions.Expect(input).ToBeEnabledAsync(new() { Timeout = 30_000 });
        await input.SetInputFilesAsync(new FilePayload { Name = name, MimeType = "application/octet-stream", Buffer = bytes });
    }

    /// <summary>An invented sweep of a short vertical about its resonance near 7 MHz.</summary>
    internal static byte[] Sweep()
    {
        var rows = Enumerable.Range(0, 41).Select(i => 6.8e6 + (i * 15e3)).Select(hz => string.Create(CultureInfo.InvariantCulture, $"{hz:0},{38 + ((hz - 7e6) / 1e5):0.###},{((hz - 6.6e6) / 1e4) - 10:0.###}"));
        return System.Text.Encoding.ASCII.GetBytes("frequency Hz,R ohm,X ohm\n" + string.Join('\n', rows) + "\n");
    }
}
