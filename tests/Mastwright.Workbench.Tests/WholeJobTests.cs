using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>One person's whole job in the browser, from five questions to a crash.</summary>
[Collection("one at a time")]
public sealed class WholeJobTests(Keeping keeping)
{
    [Fact]
    public async Task FromFiveQuestionsToACrashAndBack()
    {
        var served = await Served.Start();
        Served? again = null;
        try
        {
            var (page, complaints) = await keeping.Open(served.Address, "start");
            await Keeping.Ready(page);
            await NewStation(page);
            await AFailingCheckIsMended(page);
            await SavedAs(page, "paddock");
            await AFoundDesignIsAdopted(page);
            await ASweepIsKept(page);
            await TheBookIsTaken(page);
            await AReadingIsNoted(page);
            await TheJournalHasBoth(page, served.Address);
            Assert.Empty(complaints);

            // Reloading finds everything where it was.
            await page.GotoAsync(new Uri(served.Address, "site").ToString());
            await Keeping.Ready(page);
            await Assertions.Expect(page.Locator(".bar .file")).ToHaveTextAsync("paddock.yaml");

            // An edit that was never saved, then a power cut.
            await page.Locator("#f-site-elevation").FillAsync("77 m");
            await page.Locator("#f-site-elevation").PressAsync("Enter");
            var spare = Path.Combine(served.Folder, "paddock.yaml.unsaved");
            for (var i = 0; i < 2000 && !File.Exists(spare); i++)
            {
                await Task.Delay(10);
            }

            again = await served.Again("paddock.yaml");
            await page.GotoAsync(new Uri(again.Address, "site").ToString());
            await Keeping.Ready(page);
            await page.GetByRole(AriaRole.Button, new() { Name = "Take it up" }).ClickAsync();
            await Assertions.Expect(page.Locator("#f-site-elevation")).ToHaveValueAsync("77 m");
            await page.Locator("button[data-key='save']").ClickAsync();
            await Assertions.Expect(page.Locator(".bar .file")).ToHaveTextAsync("paddock.yaml");
            Assert.Contains("77 m", await File.ReadAllTextAsync(Path.Combine(served.Folder, "paddock.yaml")));
            await TheJournalHasBoth(page, again.Address);
        }
        finally
        {
            await served.DisposeAsync();
            if (again is not null)
            {
                await again.DisposeAsync();
            }
        }
    }

    private static async Task NewStation(IPage page)
    {
        await page.GetByLabel("Shorter side").FillAsync("40 m");
        await page.GetByLabel("Height of the top").FillAsync("15 m");
        await page.GetByLabel("80 m").UncheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it on the desk" }).ClickAsync();
        await Computed(page);
        await Assertions.Expect(page.Locator(".bar .file")).ToContainTextAsync("not saved");
    }

    private static async Task AFailingCheckIsMended(IPage page)
    {
        // A power line within reach of the falling mast: the site fails until the line is farther away.
        var site = page.Locator("nav.strip a.trade").First;
        await Go(page, "site");
        var line = page.Locator("#f-site-power-line-distance");
        await line.FillAsync("5 m");
        await line.PressAsync("Enter");
        await Assertions.Expect(site).ToContainTextAsync("✕", new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("section.verdict.fail dl.governs")).ToContainTextAsync("Cheapest fix");
        await line.FillAsync("60 m");
        await line.PressAsync("Enter");
        await Assertions.Expect(site).Not.ToContainTextAsync("✕", new() { Timeout = 60_000 });
        await Computed(page);
    }

    private static async Task SavedAs(IPage page, string name)
    {
        await page.Locator("button[data-key='save']").ClickAsync();
        await page.GetByLabel("File name").FillAsync(name);
        await page.Locator(".mud-dialog-actions button").Filter(new() { HasText = "Save" }).ClickAsync();
        await Assertions.Expect(page.Locator(".bar .file")).ToHaveTextAsync(name + ".yaml");
    }

    private static async Task AFoundDesignIsAdopted(IPage page)
    {
        await Go(page, "search");
        await page.GetByRole(AriaRole.Button, new() { Name = "Radials:" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Search", Exact = true }).ClickAsync();
        var others = page.Locator("main table.sheet tbody tr").Filter(new() { HasNotText = "as it is" });
        await Assertions.Expect(others.First).ToBeVisibleAsync(new() { Timeout = 90_000 });

        // Enough is found: the rest of the search is stopped, if it is not done by now, and one of the designs is taken.
        await page.Locator("main .working button").EvaluateAllAsync<int>("all => { all.forEach(b => b.click()); return 0; }");
        await Assertions.Expect(page.Locator("main .working button")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        var found = (await others.Last.Locator("th").InnerTextAsync()).Split(" × ");
        Assert.Equal(2, found.Length);
        await others.Last.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(page.Locator("main .notice")).ToContainTextAsync("On the desk now");
        var text = await (await page.APIRequest.GetAsync(new Uri(new Uri(page.Url), "/api/design").ToString())).TextAsync();
        Assert.Matches($"count: {Regex.Escape(found[0])}\\b[\\s\\S]*length: {Regex.Escape(found[1])}", text);
        await Computed(page);
        await page.Locator("button[data-key='save']").ClickAsync();
        await Assertions.Expect(page.Locator(".bar .file")).ToHaveTextAsync("paddock.yaml");
    }

    private static async Task ASweepIsKept(IPage page)
    {
        await Go(page, "sweep");
        await Assertions.Expect(page.Locator(".drop input")).ToBeEnabledAsync();
        await page.Locator(".drop input").SetInputFilesAsync(new FilePayload { Name = "first.csv", MimeType = "text/csv", Buffer = KeepingPagesTests.Sweep() });
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it" }).ClickAsync(new() { Timeout = 60_000 });
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Kept as");
    }

    private static async Task TheBookIsTaken(IPage page)
    {
        await Go(page, "book");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the book" }).ClickAsync();
        var pdf = page.Locator(".order a.primary").First;
        await Assertions.Expect(pdf).ToBeVisibleAsync(new() { Timeout = 90_000 });
        var download = await page.RunAndWaitForDownloadAsync(() => pdf.ClickAsync());
        Assert.True(new FileInfo(await download.PathAsync()).Length > 50_000);
    }

    private static async Task AReadingIsNoted(IPage page)
    {
        await Go(page, "keep");
        await page.Locator("main a.primary").Filter(new() { HasText = "Enter a reading" }).ClickAsync();
        await page.Locator("button.big").Filter(new() { HasText = "Words" }).ClickAsync();
        await page.Locator("#v-text").FillAsync("first look after raising");
        await page.Locator("button.go").ClickAsync();
        await page.Locator("button.go").ClickAsync();

        // Before anything was entered the sign says the same: what counts is the entry among those taken.
        await Assertions.Expect(page.Locator("li.taken")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#sign")).ToContainTextAsync("Everything entered here is in the journal");
    }

    private static async Task TheJournalHasBoth(IPage page, Uri address)
    {
        await page.GotoAsync(new Uri(address, "journal/entries").ToString());
        await Assertions.Expect(page.Locator("table.sheet")).ToContainTextAsync("first look after raising");
        await Assertions.Expect(page.Locator("table.sheet")).ToContainTextAsync("from first.csv");
    }

    private static Task Computed(IPage page) => Assertions.Expect(page.Locator(".working.desk")).ToHaveCountAsync(0, new() { Timeout = 90_000 });

    private static async Task Go(IPage page, string path)
    {
        await page.EvaluateAsync("path => Blazor.navigateTo('/' + path)", path);
        await page.WaitForURLAsync("**/" + path);
        await Assertions.Expect(page.Locator("h1").First).ToBeVisibleAsync();
    }
}
