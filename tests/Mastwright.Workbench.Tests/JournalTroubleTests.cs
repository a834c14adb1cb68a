using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>A journal that cannot be written, that another program writes, or that belongs to a design without a name.</summary>
public sealed class JournalTroubleTests : IDisposable
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private readonly string folder = Directory.CreateTempSubdirectory("trouble").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task WhatAPhoneSendsWaitsWhileTheJournalCannotBeWritten()
    {
        await using var desk = Open(Named());
        var journal = new JournalDesk(desk, Options(Named()));
        var inbox = new FieldInbox(desk, journal);
        var note = new FieldNote { Id = Guid.NewGuid(), Kind = "note", At = "2026-05-01T14:30:00+02:00", Text = "words" };
        Directory.CreateDirectory(journal.Path);

        var answer = inbox.Take(note, Stop);
        Assert.Equal("later", answer.State);
        Assert.Contains("sent again", answer.Says);

        Directory.Delete(journal.Path);
        Assert.Equal("kept", inbox.Take(note, Stop).State);
    }

    [Fact]
    public async Task AChangedStateOrGustIsNotTakenForWhatTheJournalHas()
    {
        await using var desk = Open(Named());
        var inbox = new FieldInbox(desk, new JournalDesk(desk, Options(Named())));
        var look = new FieldNote { Id = Guid.NewGuid(), Kind = "inspection", Mast = "T", At = "2026-05-01T14:30:00+02:00", Items = [new FieldLook { Key = "T/gap", State = "good" }] };
        var storm = new FieldNote { Id = Guid.NewGuid(), Kind = "storm", Mast = "T", At = "2026-05-01T14:30:00+02:00", Gust = "30 m/s" };
        Assert.Equal("kept", inbox.Take(look, Stop).State);
        Assert.Equal("kept", inbox.Take(storm, Stop).State);

        desk.Set("masts[0].name", "renamed", "the name");

        Assert.Equal("already", inbox.Take(look, Stop).State);
        Assert.Equal("refused", inbox.Take(look with { Items = [new FieldLook { Key = "T/gap", State = "bad" }] }, Stop).State);
        Assert.Equal("already", inbox.Take(storm, Stop).State);
        Assert.Equal("refused", inbox.Take(storm with { Gust = "40 m/s" }, Stop).State);
    }

    [Fact]
    public async Task TheNextDesignWithoutANameBeginsWithAnEmptyJournal()
    {
        await using (var desk = Open(null))
        {
            var journal = new JournalDesk(desk, Options(null));
            Assert.Null(journal.Keep(Note("of the first")).Problem);
        }

        // After a start of the program the notes still go with the design when it gets its name.
        await using (var desk = Open(null))
        {
            var journal = new JournalDesk(desk, Options(null));
            Assert.True(desk.SaveAs("first").Saved);
            Assert.Equal("of the first", Assert.Single(journal.Entries().Value!).Text);
        }

        await using var next = Open(null);
        Assert.Empty(new JournalDesk(next, Options(null)).Entries().Value!);
    }

    [Fact]
    public async Task TheVerdictHearsOfOtherProgramsAndOfAJournalNobodyCanRead()
    {
        await using var desk = Open(Named());
        var journal = new JournalDesk(desk, Options(Named()));
        await using var watch = new KeepWatch(desk, journal, NullLogger<KeepWatch>.Instance);
        await Until(() => watch.State == Freshness.Fresh);
        Assert.Null(watch.Worst);
        using (var store = JournalStore.Open(journal.Path).Value!)
        {
            Assert.True(store.Add(new TensionEntry(Guid.NewGuid(), JournalDesk.Clock(), "T", "me", "", Weather.NotNoted, "1/back", 1800, null, "gauge", "1800 N")).Done);
        }

        watch.Look();
        await Until(() => watch.State == Freshness.Fresh && watch.Checks.Length > 0);
        Assert.Equal(("keep.unjudged", Verdict.Unknown), (watch.Worst!.Id, watch.Worst.Verdict));
        Assert.Contains("mast T, guy 1/back", watch.Worst.GoverningCase);

        foreach (var part in Directory.GetFiles(folder, Path.GetFileName(journal.Path) + "*"))
        {
            File.Delete(part);
        }

        await File.WriteAllTextAsync(journal.Path, new string('x', 5000), Stop);
        watch.Look();
        await Until(() => watch.Problem is not null);
        Assert.Null(watch.Worst);
    }

    [Fact]
    public async Task WhatIsOfferedStaysOnTheDiskWhenWhatIsOnTheDeskCannotBeKept()
    {
        var spare = Named() + ".unsaved";
        await File.WriteAllTextAsync(Named(), Sample, Stop);
        await File.WriteAllTextAsync(spare, "# older\n" + Sample, Stop);
        await using var desk = Open(Named());
        desk.Set("name", "Typed", "the name");
        await Until(() => File.Exists(spare + ".1"));
        await Until(() => File.Exists(spare));
        File.Delete(spare);
        Directory.CreateDirectory(spare);

        desk.TakeLeftBehind();

        Assert.Equal("no-unsaved-copy", desk.Notice!.Code);
        Assert.StartsWith("# older\n", await File.ReadAllTextAsync(spare + ".1", Stop));
        Directory.Delete(spare);
    }

    [Fact]
    public async Task ANewNameDoesNotWriteOverUnsavedTextOfAnEarlierDesignOfThatName()
    {
        await File.WriteAllTextAsync(Path.Combine(folder, "mine.yaml.unsaved"), "# theirs", Stop);
        await using var desk = Open(null);
        desk.Set("name", "Typed", "the name");

        Assert.True(desk.SaveAs("mine").Saved);

        Assert.Equal("# theirs", await File.ReadAllTextAsync(Path.Combine(folder, "mine.yaml.unsaved.1"), Stop));
    }

    private string Named() => Path.Combine(folder, "station.yaml");

    private DeskOptions Options(string? file) => new(file, Sample, folder, Path.Combine(folder, "spare"));

    private Desk Open(string? file)
    {
        if (file is not null && !File.Exists(file))
        {
            File.WriteAllText(file, Sample);
        }

        return new(Options(file), new QuickSolver(), NullLogger<Desk>.Instance);
    }

    private static NoteEntry Note(string text) => new(Guid.NewGuid(), JournalDesk.Clock(), "", "me", text, Weather.NotNoted);
}
