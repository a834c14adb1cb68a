using Microsoft.Playwright;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>What was typed survives: a killed program, a closed tab, a file changed by someone else.</summary>
[Collection("one at a time")]
public sealed class NeverLostTests(Keeping keeping)
{
    [Fact]
    public async Task AKilledProgramGivesBackWhatWasTyped()
    {
        var served = await Served.Start(Keeping.OneBand);
        Served? again = null;
        try
        {
            var (page, _) = await keeping.Open(served.Address, "text");
            await Type(page, "# before the crash");
            await Until(() => File.Exists(Path.Combine(served.Folder, "station.yaml.unsaved")));
            again = await served.Again();
            Assert.Equal(Keeping.OneBand, await File.ReadAllTextAsync(Path.Combine(again.Folder, "station.yaml")));
            await page.GotoAsync(new Uri(again.Address, "text").ToString());
            await Keeping.Ready(page);
            await Assertions.Expect(page.Locator(".notice")).ToContainTextAsync("was never saved");
            await page.GetByRole(AriaRole.Button, new() { Name = "Take it up" }).ClickAsync();
            await Assertions.Expect(page.Locator(".cm-content")).ToContainTextAsync("before the crash");
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

    [Fact]
    public async Task AnOpenPageComesBackByItselfAfterACrashWithTheTextStillOffered()
    {
        var served = await Served.Start(Keeping.OneBand);
        Served? again = null;
        try
        {
            var (page, _) = await keeping.Open(served.Address, "site");
            await Keeping.Ready(page);
            await page.Locator("#f-site-elevation").FillAsync("321 ft");
            await page.Locator("#f-site-elevation").PressAsync("Enter");
            await Until(() => File.Exists(Path.Combine(served.Folder, "station.yaml.unsaved")));
            again = await served.Again();

            // The page tries again by itself; a person who sees it has gone reloads, which is all that is needed.
            await page.ReloadAsync();
            await Keeping.Ready(page);
            await page.GetByRole(AriaRole.Button, new() { Name = "Take it up" }).ClickAsync();
            await Assertions.Expect(page.Locator("#f-site-elevation")).ToHaveValueAsync("321 ft");
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

    [Fact]
    public async Task AClosedTabAndAFileChangedOutsideLoseNothing()
    {
        await using var served = await Served.Start(Keeping.OneBand);
        var (page, _) = await keeping.Open(served.Address, "text");
        await Type(page, "# closed at once");
        await page.CloseAsync(new() { RunBeforeUnload = false });
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(new Uri(served.Address, "text").ToString());
        await Assertions.Expect(other.Locator(".cm-content")).ToContainTextAsync("# closed at once", new() { Timeout = 20_000 });

        // Another program writes the file meanwhile: the reader is asked, and either answer can be taken back.
        var file = Path.Combine(served.Folder, "station.yaml");
        await File.WriteAllTextAsync(file, "# theirs\n" + Keeping.OneBand);
        await Assertions.Expect(other.Locator(".notice.warn")).ToContainTextAsync("Another program has changed the file", new() { Timeout = 20_000 });
        await other.GetByRole(AriaRole.Button, new() { Name = "Take the file" }).ClickAsync();
        await Assertions.Expect(other.Locator(".cm-content")).ToContainTextAsync("# theirs");
        await other.Locator("button[data-key='undo']").ClickAsync();
        await Assertions.Expect(other.Locator(".cm-content")).ToContainTextAsync("# closed at once");
        Assert.StartsWith("# theirs\n", await File.ReadAllTextAsync(file));
    }

    [Fact]
    public async Task WhatIsTypedWhileTheProgramIsGoneIsOfferedByTheBrowser()
    {
        var served = await Served.Start(Keeping.OneBand);
        Served? again = null;
        try
        {
            var (page, _) = await keeping.Open(served.Address, "text");
            await Type(page, "# before");
            await Until(() => File.Exists(Path.Combine(served.Folder, "station.yaml.unsaved")));
            await served.Kill();
            await page.Locator(".cm-content").PressAsync("Control+Home");
            await page.Keyboard.TypeAsync("# meanwhile\n");
            again = await served.Again();
            await page.GotoAsync(new Uri(again.Address, "text").ToString());
            await Keeping.Ready(page);
            await page.GetByRole(AriaRole.Button, new() { Name = "Take up what was typed" }).ClickAsync();
            await Assertions.Expect(page.Locator(".cm-content")).ToContainTextAsync("# meanwhile");
            await Assertions.Expect(page.Locator(".cm-content")).ToContainTextAsync("# before");
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

    private static async Task Type(IPage page, string words)
    {
        await Keeping.Ready(page);
        await page.Locator(".cm-content").ClickAsync();
        await page.Keyboard.PressAsync("Control+Home");
        await page.Keyboard.TypeAsync(words + "\n");
    }
}
