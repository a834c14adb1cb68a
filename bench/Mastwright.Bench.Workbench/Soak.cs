using System.Globalization;
using System.Net.Http.Json;

namespace Mastwright.Bench.Workbench;

/// <summary>An hour at the desk compressed: an edit for each ten seconds of it, each computed to the end, 200 journal entries in between, a page open all the time.</summary>
internal static class Soak
{
    private const int Edits = 360;
    private const int Entries = 200;
    private const int Every = 60;

    public static async Task Run()
    {
        // One band: each edit is computed whole, so that every kind of result comes and goes.
        var text = string.Join('\n', (await File.ReadAllLinesAsync(Path.Combine(Machine.Root, "examples", "tube-12m.yaml"))).Where(l => !l.Contains("frequency:", StringComparison.Ordinal) || l.Contains("7.1 MHz", StringComparison.Ordinal))) + "\n";
        var file = Path.Combine(Directory.CreateTempSubdirectory("soak").FullName, "soak.yaml");
        await File.WriteAllTextAsync(file, text);
        await using var served = await Served.Start(file);
        using var client = new HttpClient { BaseAddress = served.Address };
        var page = await served.Open("site");
        Console.WriteLine("soak: an hour at one edit in ten seconds, run as fast as it computes");
        for (var i = 1; i <= Edits; i++)
        {
            await page.Locator("#f-site-elevation").FillAsync(string.Create(CultureInfo.InvariantCulture, $"{300 + i} ft"));
            await page.Locator("#f-site-elevation").PressAsync("Enter");
            await page.WaitForFunctionAsync("() => ![...document.querySelectorAll('nav.strip a.trade')].slice(0, 5).some(t => t.classList.contains('old'))", null, new() { Timeout = 60_000 });
            if (i * Entries / Edits != (i - 1) * Entries / Edits)
            {
                using var answer = await client.PostAsJsonAsync("/api/journal/entries", new[] { new { id = Guid.NewGuid(), kind = "tension", guy = "1/back", way = "gauge", reading = $"{390 + (i % 20)} lbf", temperature = $"{40 + (i % 40)} °F" } });
                answer.EnsureSuccessStatusCode();
            }

            if (i % Every == 0)
            {
                Console.WriteLine($"  after {i,4} edits {Machine.HeldMb(served.ProcessId):F0} MB; load {Machine.Load()}");
            }
        }

        Directory.Delete(Path.GetDirectoryName(file)!, true);
    }
}
