using System.Diagnostics;
using System.Globalization;

namespace Mastwright.Bench.Workbench;

/// <summary>Twenty browser pages at one desk, all editing: memory for each, and how long an edit takes to reach every other page.</summary>
internal static class Sessions
{
    private const int Pages = 20;
    private const int Rounds = 5;

    public static async Task Run()
    {
        await using var served = await Served.Start(Path.Combine(Machine.Root, "examples", "tube-12m.yaml"));
        var first = await served.Open("site");
        await first.WaitForFunctionAsync("() => !document.querySelector('.working.desk')", null, new() { Timeout = 120_000 });
        await Task.Delay(3000);
        var alone = Machine.HeldMb(served.ProcessId);
        List<Microsoft.Playwright.IPage> pages = [first];
        while (pages.Count < Pages)
        {
            pages.Add(await served.Open("site"));
        }

        await Task.Delay(3000);
        var together = Machine.HeldMb(served.ProcessId);
        Console.WriteLine($"{Pages} pages of {Path.GetFileName("tube-12m.yaml")}: the program holds {alone:F0} MB with one page, {together:F0} MB with {Pages}: {(together - alone) / (Pages - 1):F2} MB a page");

        List<double> reach = [];
        for (var round = 0; round < Rounds; round++)
        {
            foreach (var page in pages)
            {
                var value = string.Create(CultureInfo.InvariantCulture, $"{300 + reach.Count} ft");
                var watch = Stopwatch.StartNew();
                await page.Locator("#f-site-elevation").FillAsync(value);
                await page.Locator("#f-site-elevation").PressAsync("Enter");
                await Task.WhenAll(pages.Select(p => p.WaitForFunctionAsync("v => document.querySelector('#f-site-elevation').value === v", value)));
                reach.Add(watch.Elapsed.TotalMilliseconds);
            }
        }

        await first.WaitForFunctionAsync("() => !document.querySelector('.working.desk')", null, new() { Timeout = 120_000 });
        await Task.Delay(3000);
        Console.WriteLine($"  an edit on one page stands on all {Pages}: {Machine.Spread(reach)}; afterwards {Machine.HeldMb(served.ProcessId):F0} MB; load {Machine.Load()}");
    }
}
