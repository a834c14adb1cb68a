using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using NodaTime;

// Writes entries as fast as it can and says after each one that it is done, until it is killed.
var opened = JournalStore.Open(args[0]);
if (opened.Value is not { } store)
{
    Console.Error.WriteLine(opened.Problem!.Code);
    return 1;
}
using var closing = store;
for (var n = 0; ; n++)
{
    var id = Guid.CreateVersion7();
    var at = Instant.FromUnixTimeSeconds(1_800_000_000 + n).WithOffset(Offset.Zero);
    var samples = Enumerable.Range(1, 200).Select(i => new SweepSample(i * 1e4, n, i));
    var outcome = store.Add(new SweepEntry(id, at, "A", "writer", n.ToString(CultureInfo.InvariantCulture), Weather.NotNoted, "base", 50, [.. samples], "", ""));
    if (!outcome.Done)
    {
        Console.Error.WriteLine(outcome.Problem!.Code);
        return 1;
    }
    Console.WriteLine(id);
    Console.Out.Flush();
}
