using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Microsoft.Extensions.Logging.Abstractions;

namespace Mastwright.Workbench.Tests;

/// <summary>The strip's verdict on how the station is kept follows the journal.</summary>
public sealed class KeepWatchTests : IDisposable
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private readonly string folder = Directory.CreateTempSubdirectory("watch").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task TheVerdictFollowsWhatIsNoted()
    {
        var options = new DeskOptions(null, Sample, folder, folder);
        await using var desk = new Desk(options, new QuickSolver(), NullLogger<Desk>.Instance);
        var journal = new JournalDesk(desk, options);
        await using var watch = new KeepWatch(desk, journal, NullLogger<KeepWatch>.Instance);
        Assert.Null(watch.Worst);
        var told = 0;
        watch.Changed += () => Interlocked.Increment(ref told);

        journal.Keep(new NoteEntry(Guid.NewGuid(), JournalDesk.Clock(), "T", "me", "put up today", Weather.NotNoted));
        await Waiting.Until(() => watch.Worst?.Verdict == Verdict.Pass);
        Assert.True(told > 0);

        // A tension far off its table is found in the background.
        journal.Keep(new TensionEntry(Guid.NewGuid(), JournalDesk.Clock(), "T", "me", "", new Weather(288.15), "1/back", 20, null, "gauge", "20 N"));
        await Waiting.Until(() => watch.Worst?.Verdict == Verdict.Fail);
        var check = watch.Worst!;
        Assert.StartsWith("keep.drift[", check.Id, StringComparison.Ordinal);
        Assert.NotNull(check.Caution);
    }
}
