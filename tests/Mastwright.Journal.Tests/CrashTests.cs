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

    /// <summary>A disk that really runs full: a small file system in memory where the system lets one be mounted, and a limit on the size of files everywhere else.</summary>
    [Theory]
    [InlineData("small disk", "mount -t tmpfs -o size=600k tmpfs \"$1\" && dotnet \"$0\" \"$1/j.db\"; code=$?; cp \"$1\"/* \"$2\" && exit $code", "journal-disk-full")]
    [InlineData("file limit", "trap '' XFSZ; ulimit -f 400; dotnet \"$0\" \"$2/j.db\"", "journal-io")]
    public async Task A_disk_that_runs_full_is_said_and_what_was_reported_is_there(string how, string script, string code)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs a Linux shell");
        using var folder = new Samples.Folder();
        var (disk, kept) = (Directory.CreateDirectory(folder.File("disk")).FullName, Directory.CreateDirectory(folder.File("kept")).FullName);

        // In a space of mounts of its own: it is gone with the process.
        var start = new ProcessStartInfo(how == "small disk" ? "unshare" : "sh") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in (string[])[.. how == "small disk" ? ["-m", "sh"] : Array.Empty<string>(), "-c", script, Path.Combine(AppContext.BaseDirectory, "Mastwright.Journal.CrashWriter.dll"), disk, kept])
        {
            start.ArgumentList.Add(argument);
        }

        // The runtime's own scratch files must not be what meets the limit.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        using var writer = Process.Start(start)!;
        var said = writer.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        var lines = (await writer.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken)).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        await writer.WaitForExitAsync(TestContext.Current.CancellationToken);
        var errors = await said;
        Assert.SkipWhen(how == "small disk" && lines.Length == 0 && !errors.Contains("journal-", StringComparison.Ordinal), "no file system may be mounted here: " + errors);

        Assert.Contains(code, errors, StringComparison.Ordinal);
        var reported = lines.Select(Guid.Parse).ToList();
        Assert.NotEmpty(reported);
        using var store = JournalStore.Open(Path.Combine(kept, "j.db")).Value!;
        Assert.True(store.CheckIntegrity().Done);
        Assert.Equal(reported.Order(), store.Entries().Value!.Select(e => e.Id).Order());

        // With room again it goes on.
        Assert.True(store.Add(Samples.Note(text: "after")).Done);
    }
}
