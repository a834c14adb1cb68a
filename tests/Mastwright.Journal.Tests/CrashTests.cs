using System.Diagnostics;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;

namespace Mastwright.Journal.Tests;

public class CrashTests
{
    [Theory]
    [InlineData(5)]
    [InlineData(40)]
    [InlineData(90)]
    public async Task A_process_killed_in_the_middle_of_writing_loses_nothing_it_reported(int reports)
    {
        using var folder = new Samples.Folder();
        var path = folder.File("j.db");
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "Mastwright.Journal.CrashWriter.dll"));
        start.ArgumentList.Add(path);
        using var writer = Process.Start(start)!;
        var reported = new List<Guid>();
        for (var i = 0; i < reports; i++)
        {
            var line = await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
            Assert.NotNull(line);
            reported.Add(Guid.Parse(line));
        }
        writer.Kill();
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        // What it reported after the last line read and before it died counts too.
        while (await writer.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken) is { } more)
            if (Guid.TryParse(more, out var id)) reported.Add(id);

        using var store = JournalStore.Open(path).Value!;
        Assert.True(store.CheckIntegrity().Done);
        var entries = store.Entries().Value!;
        Assert.Empty(reported.Except(entries.Select(e => e.Id)));
        // At most the one under way when it died was written without being reported, and none is there in part.
        Assert.InRange(entries.Count, reported.Count, reported.Count + 1);
        Assert.All(entries, e => Assert.Equal(200, Assert.IsType<SweepEntry>(e).Samples.Length));
    }
}
