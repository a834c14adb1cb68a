using Microsoft.Playwright;

namespace Mastwright.Workbench.Tests;

/// <summary>A page of the shared workbench with the steps a person takes on it.</summary>
internal sealed class Reader : IAsyncDisposable
{
    private readonly Uri address;

    private Reader(IPage page, Uri address, List<string> complaints) => (Page, this.address, Complaints) = (page, address, complaints);

    public IPage Page { get; }

    /// <summary>What the browser complained of.</summary>
    public List<string> Complaints { get; }

    public static async Task<Reader> Open(BrowserTests.Fixture fixture, string look = "light", int width = 1280, int height = 900)
    {
        if (fixture.Browser is null)
        {
            Assert.Skip("chromium is not installed");
        }

        var address = fixture.Served!.Address;
        var context = await fixture.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, ReducedMotion = ReducedMotion.Reduce, AcceptDownloads = true });
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
        await page.GotoAsync(address.ToString());
        var reader = new Reader(page, address, complaints);
        await reader.Fresh();
        return reader;
    }

    /// <summary>Closes the page: one left open would be drawn anew with every later edit.</summary>
    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();

    public async Task Go(string path)
    {
        // The page before must not pass for the next one: its heading is marked, except where the same page stays with another subject.
        var wanted = new Uri(address, path);
        if (First(new Uri(Page.Url)) != First(wanted))
        {
            await Page.EvaluateAsync("() => document.querySelectorAll('main h1').forEach(h => h.dataset.left = '')");
        }

        await Page.EvaluateAsync("path => Blazor.navigateTo('/' + path)", path);
        await Page.WaitForURLAsync(wanted.ToString());
        await Assertions.Expect(Page.Locator("main h1:not([data-left])").First).ToBeVisibleAsync();
        if (path == "text")
        {
            await Assertions.Expect(Page.Locator(".cm-content")).ToBeVisibleAsync();
        }
    }

    private static string First(Uri page) => page.Segments.ElementAtOrDefault(1)?.TrimEnd('/') ?? "";

    /// <summary>The text on the desk.</summary>
    public async Task<string> Text() => await (await Page.APIRequest.GetAsync(new Uri(address, "api/design").ToString())).TextAsync();

    /// <summary>Takes every step back.</summary>
    public async Task UndoAll()
    {
        await Page.WaitForFunctionAsync("() => window.Blazor && document.querySelector('nav.strip')");
        var undo = Page.Locator("button[data-key='undo']");
        for (var i = 0; i < 60 && await undo.IsEnabledAsync(); i++)
        {
            // The last step back may empty the list between the look and the press.
            await undo.EvaluateAsync("button => button.disabled || button.click()");
            await Page.WaitForTimeoutAsync(120);
        }
    }

    // All pages share one desk: each test finds it as the first did. What a step back sets going begins a moment later.
    private async Task Fresh()
    {
        await UndoAll();
        await Page.WaitForTimeoutAsync(700);
        await Assertions.Expect(Page.Locator(".working.desk")).ToHaveCountAsync(0, new() { Timeout = 90_000 });
    }

    public async Task Undo() => await Page.Locator("button[data-key='undo']").ClickAsync();

    /// <summary>Waits until the text on the desk is this one.</summary>
    public async Task TextBecomes(string wanted)
    {
        for (var i = 0; i < 40 && await Text() != wanted; i++)
        {
            await Page.WaitForTimeoutAsync(150);
        }

        Assert.Equal(wanted, await Text());
    }

    public async Task Drag(ILocator what, float right, float down)
    {
        await what.ScrollIntoViewIfNeededAsync();
        var box = (await what.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        await Page.Mouse.MoveAsync(x, y);
        await Page.Mouse.DownAsync();
        await Page.Mouse.MoveAsync(x + right, y + down, new() { Steps = 5 });
        await Page.Mouse.UpAsync();
    }

    /// <summary>The text of a file that a press of a button saves, with its name.</summary>
    public async Task<(string Name, byte[] Bytes)> Saved(ILocator button)
    {
        var download = await Page.RunAndWaitForDownloadAsync(() => button.ClickAsync());
        return (download.SuggestedFilename, await File.ReadAllBytesAsync((await download.PathAsync())!));
    }
}
