namespace Mastwright.Bench.Workbench;

/// <summary>From asking for the first page to its first words on the screen, and to its answering to clicks; nothing cached.</summary>
internal static class FirstPage
{
    private const int Times = 8;

    public static async Task Run()
    {
        foreach (var example in Machine.Examples)
        {
            await using var served = await Served.Start(example);
            List<double> drawn = [], live = [];
            for (var i = 0; i < Times; i++)
            {
                var page = await served.Open("");
                var marks = await page.EvaluateAsync<double[]>("() => [performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? -1, performance.getEntriesByName('mastwright-live')[0].startTime]");
                if (i == 0)
                {
                    Console.WriteLine($"{Path.GetFileName(example)}: program started in {served.StartedMs:F0} ms; the very first page drawn after {marks[0]:F0} ms, answers to clicks after {marks[1]:F0} ms");
                }
                else
                {
                    drawn.Add(marks[0]);
                    live.Add(marks[1]);
                }

                await page.Context.CloseAsync();
            }

            Console.WriteLine($"  later visits: drawn {Machine.Spread(drawn)}; answers to clicks {Machine.Spread(live)}; load {Machine.Load()}");
        }
    }
}
