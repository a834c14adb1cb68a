using System.Globalization;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>Many pages at once and a long day, with the physics replaced: nothing is lost, and memory stays where it was. The browser's share is measured in the benchmarks.</summary>
[Collection("one at a time")]
public sealed class LoadTests : IDisposable
{
    private const int Sessions = 20;

    private readonly string folder = Directory.CreateTempSubdirectory("load").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task TwentyPagesThatEditAtOnceAllKeepWhatTheyWrote()
    {
        await using var desk = Open();
        using var together = new Barrier(Sessions);
        var told = 0;
        desk.Changed += () => Interlocked.Increment(ref told);

        // Each page adds a band of its own and then changes its power again and again.
        await Task.WhenAll(Enumerable.Range(0, Sessions).Select(i => Task.Factory.StartNew(() =>
        {
            together.SignalAndWait();
            Assert.True(desk.Add("bands", string.Create(CultureInfo.InvariantCulture, $"{{ frequency: {3 + (0.01 * i)} MHz, power: {100 + i} W }}"), $"band {i}"));
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default)));
        var bands = desk.Now.Reading.Station!.Bands;
        Assert.Equal(Sessions + 1, bands.Length);
        Assert.All(Enumerable.Range(0, Sessions), i => Assert.Contains(bands, b => Math.Abs(b.PowerW - (100 + i)) < 1e-9));
        Assert.True(told >= Sessions);

        await Task.WhenAll(Enumerable.Range(1, Sessions).Select(i => Task.Run(() =>
        {
            for (var round = 0; round < 5; round++)
            {
                Assert.True(desk.Set(string.Create(CultureInfo.InvariantCulture, $"bands[{i}].power"), string.Create(CultureInfo.InvariantCulture, $"{200 + (10 * i) + round} W"), $"power {i}.{round}"));
            }
        })));
        bands = desk.Now.Reading.Station!.Bands;
        Assert.All(Enumerable.Range(1, Sessions), i => Assert.Equal(200 + (10 * i) + 4, bands[i].PowerW, 9));
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
    }

    [Fact]
    public async Task AnHourOfEditsAndTwoHundredEntriesLeaveMemoryWhereItWas()
    {
        // An hour at one edit in five seconds, run as fast as it goes. Undo holds 200 texts and the desk 16 results: once both
        // are full, nothing may grow.
        const int Edits = 720;
        const int Full = 240;
        await using var desk = Open();
        var journal = new JournalDesk(desk, new DeskOptions(null, Keeping.OneBand, folder, folder));
        var inbox = new FieldInbox(desk, journal);
        long before = 0;
        for (var i = 0; i < Edits; i++)
        {
            Assert.True(desk.Set("site.elevation", string.Create(CultureInfo.InvariantCulture, $"{300 + (i % 97)} ft"), $"elevation {i}"));
            if (i % 5 == 0)
            {
                desk.Undo();
                desk.Redo();
            }

            if (i == Full)
            {
                before = Held();
            }

            // Two hundred entries over the hour, each sent twice.
            if (i * 200 / Edits != (i + 1) * 200 / Edits)
            {
                var note = new FieldNote { Id = Guid.NewGuid(), Kind = "note", At = "2026-05-01T14:30:00Z", Text = $"entry {i}" };
                Assert.Equal("kept", inbox.Take(note, CancellationToken.None).State);
                Assert.Equal("already", inbox.Take(note, CancellationToken.None).State);
                Assert.NotNull(journal.Entries().Value);
            }
        }

        await Until(() => desk.Now.FieldState == Freshness.Fresh);
        var grown = Held() - before;
        Assert.Equal(200, journal.Entries().Value!.Count);

        // 133 more entries are read by then: well under a megabyte; a text kept by mistake for each edit would be 2 MB, a result more.
        Assert.InRange(grown, -100_000_000, 1_000_000);
    }

    private static long Held()
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        return GC.GetTotalMemory(true);
    }

    private Desk Open() => new(new DeskOptions(null, Keeping.OneBand, folder, folder), new QuickSolver(), NullLogger<Desk>.Instance);
}
