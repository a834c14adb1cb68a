using System.Globalization;

namespace Mastwright.Bench.Workbench;

/// <summary>From pressing Enter in a field to the first look at the structure, to its whole verdict, and to all verdicts, of that very text on the screen.</summary>
internal static class EditToVerdict
{
    public static async Task Run(int edits)
    {
        foreach (var example in Machine.Examples)
        {
            await using var served = await Served.Start(example);
            var page = await served.Open("site");
            await Settled(page);
            List<double> looks = [], stand = [], all = [];

            // A few edits warm up the compiler, as the first minutes at a desk do.
            for (var i = -3; i < edits; i++)
            {
                await page.Locator("#f-site-elevation").FillAsync(string.Create(CultureInfo.InvariantCulture, $"{100 + ((i + 3) * 3)} m"));

                // The page itself keeps the time: the strip's mark for "older figures" goes when the figures are of this text.
                var times = await page.EvaluateAsync<double[]>("""
                    () => new Promise(done => {
                      const field = document.querySelector('#f-site-elevation');
                      const trade = i => document.querySelectorAll('nav.strip a.trade')[i];
                      const start = performance.now();
                      let old = false, looked = 0, stood = 0;
                      const look = () => {
                        const now = performance.now() - start;
                        old ||= trade(1).classList.contains('old') || trade(2).classList.contains('old');
                        if (old && !looked && ['firstlook', 'fresh'].includes(trade(1).dataset.state)) { looked = now; }
                        if (old && !stood && !trade(1).classList.contains('old')) { stood = now; }
                        if (old && stood && !trade(2).classList.contains('old')) { watch.disconnect(); done([looked, stood, now]); }
                      };
                      const watch = new MutationObserver(look);
                      watch.observe(document.querySelector('nav.strip'), { subtree: true, attributes: true, childList: true, characterData: true });
                      field.dispatchEvent(new Event('change', { bubbles: true }));
                      setTimeout(() => { watch.disconnect(); done([-1, -1, -1]); }, 60000);
                    })
                    """);
                if (i >= 0)
                {
                    looks.Add(times[0]);
                    stand.Add(times[1]);
                    all.Add(times[2]);
                }
            }

            Console.WriteLine($"{Path.GetFileName(example)}: first look at the structure {Machine.Spread(looks)}");
            Console.WriteLine($"{new string(' ', Path.GetFileName(example).Length)}  structural verdict {Machine.Spread(stand)}");
            Console.WriteLine($"{new string(' ', Path.GetFileName(example).Length)}  all verdicts {Machine.Spread(all)}; load {Machine.Load()}");
        }
    }

    private static async Task Settled(Microsoft.Playwright.IPage page) =>
        await page.WaitForFunctionAsync("() => document.querySelectorAll('nav.strip a.trade').length === 7 && !document.querySelector('.working.desk')", null, new() { Timeout = 120_000 });
}
