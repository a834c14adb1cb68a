using Mastwright.Journal.Entries;
using Mastwright.Journal.Store;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Desks;
using Mastwright.Workbench.Keeping;
using Mastwright.Workbench.Work;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>What was typed, noted or set aside survives a failing disk, a new name and a file nobody could read. The physics is replaced by one that answers at once.</summary>
public sealed class KeptWorkTests : IDisposable
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private readonly string folder = Directory.CreateTempSubdirectory("kept").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task AFileThatWasNeverReadIsNotWrittenOver()
    {
        var file = In("late.yaml");
        await using var desk = Open(file);
        Assert.NotNull(desk.Notice);
        await File.WriteAllTextAsync(file, "# theirs\n" + Sample, Stop);
        desk.Edit(Sample, "typing");

        var outcome = desk.Save();

        Assert.True(outcome.Conflict);
        Assert.StartsWith("# theirs\n", await File.ReadAllTextAsync(file, Stop));
        Assert.True(desk.Save(overwrite: true).Saved);
        Assert.Equal(Sample, await File.ReadAllTextAsync(file, Stop));
    }

    [Fact]
    public async Task TheUnsavedCopyStaysUntilTheTextStandsInItsNewFile()
    {
        await using var desk = Open(null, saveFolder: In("gone"));
        desk.Set("name", "Typed", "the name");
        var spare = Path.Combine(folder, "spare", "unnamed.yaml.unsaved");
        await Until(() => File.Exists(spare));

        Assert.Equal("file-unwritable", desk.SaveAs("mine").Finding!.Code);
        Assert.Contains("Typed", await File.ReadAllTextAsync(spare, Stop));

        Directory.CreateDirectory(In("gone"));
        Assert.True(desk.Save().Saved);
        Assert.Contains("Typed", await File.ReadAllTextAsync(In("gone/mine.yaml"), Stop));
        Assert.False(File.Exists(spare));
    }

    [Fact]
    public async Task WhatWasTypedSinceIsStillKeptWhenTheOlderTextIsDropped()
    {
        await File.WriteAllTextAsync(In("station.yaml"), Sample, Stop);
        await File.WriteAllTextAsync(In("station.yaml.unsaved"), "# older\n" + Sample, Stop);
        await using var desk = Open(In("station.yaml"));
        Assert.NotNull(desk.LeftBehind);
        desk.Set("name", "Typed since", "the name");

        desk.DropLeftBehind();

        Assert.Contains("Typed since", await File.ReadAllTextAsync(In("station.yaml.unsaved"), Stop));
    }

    [Fact]
    public async Task TextThatIsStillOfferedOutlivesWhatIsTypedAndSavedMeanwhile()
    {
        var file = In("station.yaml");
        await File.WriteAllTextAsync(file, Sample, Stop);
        await File.WriteAllTextAsync(file + ".unsaved", "# first\n" + Sample, Stop);
        await using (var desk = Open(file))
        {
            desk.Set("name", "Second", "the name");
            await Until(() => File.Exists(file + ".unsaved") && File.ReadAllText(file + ".unsaved").Contains("Second", StringComparison.Ordinal));
        }

        // The run ended without an answer: both texts are there, the newer one first.
        await using (var desk = Open(file))
        {
            Assert.Contains("Second", desk.LeftBehind!.Value.Text);
            desk.Set("name", "Third", "the name");
            Assert.True(desk.Save().Saved);
        }

        await using var last = Open(file);
        Assert.Contains("Third", last.Now.Text);
        Assert.Contains("Second", last.LeftBehind!.Value.Text);
        last.DropLeftBehind();
        Assert.StartsWith("# first\n", last.LeftBehind!.Value.Text);
        last.TakeLeftBehind();
        Assert.Null(last.LeftBehind);
        Assert.StartsWith("# first\n", last.Now.Text);
        Assert.Equal([file + ".unsaved"], Directory.GetFiles(folder, "*.unsaved*"));
    }

    [Fact]
    public async Task AVariantOfTheSameNameDoesNotInheritTheFiguresOfTheFormer()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        await using var desk = Open(null);
        var variants = new Variants(desk, queue);
        variants.Keep("a");
        var former = variants.All[0];
        var figures = QuickSolver.Nothing(desk.Now.Reading);
        queue.Ask(Variants.KeyOf(former), "a", "1", _ => figures);
        await Until(() => variants.ResultOf(former) is not null);

        // An error leaves the text without figures of its own.
        desk.Edit(Sample + "nonsense: [", "typing");
        variants.Keep("a");

        Assert.Single(variants.All);
        Assert.Null(variants.ResultOf(variants.All[0]));
        variants.Drop("a");
        Assert.Null(queue.Of(Variants.KeyOf(former)));
    }

    [Fact]
    public async Task VariantsComeAlongWhenTheDesignGetsItsName()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        await using var desk = Open(null);
        var variants = new Variants(desk, queue);
        variants.Keep("before it had a name");
        var former = desk.VariantsPath;
        Assert.True(File.Exists(former));

        Assert.True(desk.SaveAs("mine").Saved);

        Assert.Equal("before it had a name", Assert.Single(new Variants(desk, queue).All).Name);
        Assert.NotEqual(former, desk.VariantsPath);
        Assert.False(File.Exists(former));
    }

    [Fact]
    public async Task VariantsThatCannotBeReadArePutAsideAndNotWrittenOver()
    {
        await using var queue = new StudyQueue(NullLogger<StudyQueue>.Instance);
        await using var desk = Open(null);
        Directory.CreateDirectory(Path.GetDirectoryName(desk.VariantsPath)!);
        await File.WriteAllTextAsync(desk.VariantsPath, "[{\"Name\":\"half a fi", Stop);
        var variants = new Variants(desk, queue);
        Assert.NotNull(variants.Problem);

        variants.Keep("new");

        Assert.Null(variants.Problem);
        Assert.Equal("new", Assert.Single(new Variants(desk, queue).All).Name);
        Assert.Equal("[{\"Name\":\"half a fi", await File.ReadAllTextAsync(desk.VariantsPath + ".bad", Stop));
    }

    [Fact]
    public async Task AJournalThatCannotFollowTheNameIsSaidAndFollowsLater()
    {
        await using var desk = Open(null);
        var journal = new JournalDesk(desk, Options(null, folder));
        Assert.Null(journal.Keep(Note("before it had a name")).Problem);
        Assert.True(desk.SaveAs("mine").Saved);
        Directory.CreateDirectory(journal.Path + ".partial");

        Assert.NotNull(journal.Entries().Problem);
        Assert.NotNull(journal.Keep(Note("meanwhile")).Problem);
        Assert.False(File.Exists(journal.Path));

        Directory.Delete(journal.Path + ".partial");
        Assert.Null(journal.Keep(Note("after")).Problem);
        Assert.Equal(["after", "before it had a name"], journal.Entries().Value!.Select(e => e.Text).Order());
    }

    [Fact]
    public async Task WhatWasNotedWithoutANameIsAddedToAJournalThatIsThereAlready()
    {
        await using var desk = Open(null);
        var journal = new JournalDesk(desk, Options(null, folder));
        Assert.Null(journal.Keep(Note("before it had a name")).Problem);
        using (var other = JournalStore.Open(In("mine.journal")).Value!)
        {
            Assert.True(other.Add(Note("of an older design")).Done);
        }

        Assert.True(desk.SaveAs("mine").Saved);

        Assert.Equal(["before it had a name", "of an older design"], journal.Entries().Value!.Select(e => e.Text).Order());
    }

    [Fact]
    public async Task AnEntryWaitsWhileTheDesignHasErrorsAndIsTakenAfterwards()
    {
        await using var desk = Open(In("bad.yaml"), "masts: [");
        var inbox = new FieldInbox(desk, new JournalDesk(desk, Options(In("bad.yaml"), folder)));
        var note = new FieldNote { Id = Guid.NewGuid(), Kind = "note", At = "2026-05-01T14:30:00+02:00", Text = "words" };

        Assert.Equal("later", inbox.Take(note, Stop).State);
        desk.Edit(Sample, "mending");
        Assert.Equal("kept", inbox.Take(note, Stop).State);

        // Sent once more while the design has errors again after a fresh start: the journal has it, so the phone may let go of it.
        await using var again = Open(In("bad.yaml"), "masts: [");
        Assert.Equal("already", new FieldInbox(again, new JournalDesk(again, Options(In("bad.yaml"), folder))).Take(note, Stop).State);
    }

    [Fact]
    public async Task AnEntryWhoseMastWasRenamedSinceItWasTakenIsNotRefused()
    {
        await using var desk = Open(In("station.yaml"), Sample);
        var inbox = new FieldInbox(desk, new JournalDesk(desk, Options(In("station.yaml"), folder)));
        var note = new FieldNote { Id = Guid.NewGuid(), Kind = "note", Mast = desk.Now.Station!.Masts[0].Name, At = "2026-05-01T14:30:00+02:00", Text = "words" };
        Assert.Equal("kept", inbox.Take(note, Stop).State);

        desk.Set("masts[0].name", "renamed", "the name");

        Assert.Equal("already", inbox.Take(note, Stop).State);
        Assert.Equal("refused", inbox.Take(note with { Text = "other words" }, Stop).State);
        Assert.Equal("refused", inbox.Take(note with { Id = Guid.NewGuid() }, Stop).State);
    }

    /// <summary>A card in US customary units: by hand, °F = 1.8 (K − 273.15) + 32; 1 lbf = 4.4482216152605 N (NIST SP 811, appendix B.8).</summary>
    [Fact]
    public async Task TheCardShowsTheTensionTableInItsUnits()
    {
        await using var desk = Open(null);
        FieldCard Card(string units) => FieldCard.Of(desk.Now.Station! with { Units = units == "lbf" ? Model.Design.ShownUnits.Us : Model.Design.ShownUnits.Metric }, [], "j", JournalDesk.Clock(), Stop);
        var (us, metric) = (Card("lbf"), Card("N"));

        Assert.Equal(new CardUnits("°F", "mph", "lbf", "in", "ft"), us.Units);
        Assert.Equal(new CardUnits("°C", "m/s", "N", "mm", "m"), metric.Units);
        Assert.Equal(metric.Masts[0].Temperatures.Select(c => (1.8 * c) + 32), us.Masts[0].Temperatures, (a, b) => Math.Abs(a - b) < 0.02);
        Assert.Equal(metric.Masts[0].Guys[0].ShouldBe.Select(n => n / 4.4482216152605), us.Masts[0].Guys[0].ShouldBe, (a, b) => Math.Abs(a - b) < 0.1);
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private static NoteEntry Note(string text) => new(Guid.NewGuid(), JournalDesk.Clock(), "", "me", text, Weather.NotNoted);

    private string In(string name) => Path.Combine(folder, name);

    private DeskOptions Options(string? file, string saveFolder) => new(file, Sample, saveFolder, Path.Combine(folder, "spare"));

    private Desk Open(string? file, string? text = null, string? saveFolder = null)
    {
        if (file is not null && text is not null)
        {
            File.WriteAllText(file, text);
        }

        return new(Options(file, saveFolder ?? folder), new QuickSolver(), NullLogger<Desk>.Instance);
    }
}
