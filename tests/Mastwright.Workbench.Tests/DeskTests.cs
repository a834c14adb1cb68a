using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging.Abstractions;
using static Mastwright.Workbench.Tests.Waiting;

namespace Mastwright.Workbench.Tests;

/// <summary>The desk: newest wins, undo, saving, recovery, conflict. The physics is replaced by one that answers at once or waits to be told.</summary>
[Collection("one at a time")]
public sealed class DeskTests : IDisposable
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private readonly string folder = Directory.CreateTempSubdirectory("desk").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task TheNewestTextWinsAndStopsTheOlder()
    {
        var solver = new HeldSolver();
        await using var desk = Open(null, solver);
        await Until(() => solver.Begun == 1);
        Assert.Equal(Freshness.Computing, desk.Now.FieldState);

        desk.Set("site.wind.speed", "33 m/s", "wind");
        desk.Set("site.wind.speed", "34 m/s", "wind again");
        // The middle text may or may not have begun before the last one stopped it.
        await Until(() => solver.Stopped >= 1);
        solver.Let();
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
        Assert.Equal(34, desk.Now.Result!.Station.Site.Wind.SpeedMPerS!.Value, 6);
    }

    [Fact]
    public async Task TheStructureIsFreshBeforeTheFields()
    {
        var solver = new HeldSolver { TellsStructure = true };
        await using var desk = Open(null, solver);
        await Until(() => desk.Now.StandState == Freshness.Fresh);
        Assert.Equal(Freshness.Computing, desk.Now.FieldState);
        solver.Let();
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
    }

    [Fact]
    public async Task AnErrorInTheTextKeepsTheLastGoodFigures()
    {
        await using var desk = Open(null, new HeldSolver { Open = true });
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
        desk.Edit("masts: [", "typing");
        Assert.False(desk.Now.Reading.Ok);
        Assert.Equal(Freshness.LastGood, desk.Now.FieldState);
        Assert.NotNull(desk.Now.Station);
        desk.Undo();
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
    }

    [Fact]
    public async Task StoppingLeavesTheOlderFiguresAndCanBeTakenBack()
    {
        var solver = new HeldSolver();
        await using var desk = Open(null, solver);
        await Until(() => solver.Begun == 1);
        desk.StopComputing();
        await Until(() => solver.Stopped == 1);
        Assert.Equal(Freshness.Stopped, desk.Now.FieldState);
        solver.Let();
        desk.ComputeAgain();
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
    }

    [Fact]
    public async Task AFailureOfTheProgramIsToldAndTheDeskLivesOn()
    {
        var solver = new HeldSolver { Open = true, Fails = true };
        await using var desk = Open(null, solver);
        await Until(() => desk.Now.Failure is not null);
        solver.Fails = false;
        desk.Set("site.wind.speed", "31 m/s", "wind");
        await Until(() => desk.Now.FieldState == Freshness.Fresh);
        Assert.Null(desk.Now.Failure);
    }

    [Fact]
    public async Task UndoAndRedoWalkThroughTheChanges()
    {
        await using var desk = Open(null, new HeldSolver { Open = true });
        desk.Set("name", "One", "the name");
        desk.Set("site.wind.speed", "31 m/s", "the wind");
        Assert.Equal("the wind", desk.UndoWords);
        desk.Undo();
        desk.Undo();
        Assert.Equal(Sample, desk.Now.Text);
        Assert.Null(desk.UndoWords);
        desk.Redo();
        desk.Redo();
        Assert.Contains("31 m/s", desk.Now.Text);
        Assert.Null(desk.RedoWords);
    }

    [Fact]
    public async Task WhatWasTypedSurvivesACrash()
    {
        var file = WriteSample();
        await using (var desk = Open(file, new HeldSolver { Open = true }))
        {
            desk.Set("name", "Typed before the crash", "the name");
            await Until(() => File.Exists(file + ".unsaved"));
        }

        Assert.Equal(Sample, await File.ReadAllTextAsync(file));
        await using var again = Open(file, new HeldSolver { Open = true });
        Assert.NotNull(again.LeftBehind);
        Assert.Equal(Sample, again.Now.Text);
        again.TakeLeftBehind();
        Assert.Contains("Typed before the crash", again.Now.Text);
        Assert.True(again.Save().Saved);
        Assert.False(File.Exists(file + ".unsaved"));
        Assert.Contains("Typed before the crash", await File.ReadAllTextAsync(file));
    }

    [Fact]
    public async Task AFileChangedOutsideIsNeverOverwrittenUnasked()
    {
        var file = WriteSample();
        await using var desk = Open(file, new HeldSolver { Open = true });
        desk.Set("name", "Mine", "the name");
        var theirs = Sample.Replace("name:", "name: Theirs #", StringComparison.Ordinal);
        await File.WriteAllTextAsync(file, theirs);

        Assert.True(desk.Save().Conflict);
        Assert.True(desk.Conflict);
        Assert.Equal(theirs, await File.ReadAllTextAsync(file));

        desk.TakeFromDisk();
        Assert.Equal(theirs, desk.Now.Text);
        desk.Undo();
        Assert.Contains("Mine", desk.Now.Text);
        Assert.True(desk.Save(overwrite: true).Saved);
    }

    [Fact]
    public async Task AFileChangedOutsideIsTakenWhenNothingHereIsUnsaved()
    {
        var file = WriteSample();
        await using var desk = Open(file, new HeldSolver { Open = true });
        await File.WriteAllTextAsync(file, Sample + "# a remark\n");
        desk.LookAtDisk();
        Assert.EndsWith("# a remark\n", desk.Now.Text);
        Assert.False(desk.Conflict);
    }

    [Theory]
    [InlineData("../outside.yaml")]
    [InlineData("/etc/outside.yaml")]
    [InlineData("a\\b.yaml")]
    [InlineData(".hidden")]
    [InlineData("c:x.yaml")]
    [InlineData("")]
    public async Task OnlyAPlainNameCanBeSavedTo(string name)
    {
        await using var desk = Open(null, new HeldSolver { Open = true });
        var outcome = desk.SaveAs(name);
        Assert.False(outcome.Saved);
        Assert.Equal("bad-file-name", outcome.Finding!.Code);
        Assert.Empty(Directory.EnumerateFiles(folder, "*.yaml"));
    }

    [Fact]
    public async Task ANewNameIsSavedInTheFolderAndATakenOneRefused()
    {
        await using var desk = Open(null, new HeldSolver { Open = true });
        Assert.True(desk.SaveAs("mine").Saved);
        Assert.Equal(Sample, await File.ReadAllTextAsync(Path.Combine(folder, "mine.yaml")));
        await using var other = Open(null, new HeldSolver { Open = true });
        Assert.Equal("file-exists", other.SaveAs("mine.yaml").Finding!.Code);
    }

    [Fact]
    public async Task TheRealPhysicsGivesStructureThenStationThenSweeps()
    {
        await using var desk = new Desk(new DeskOptions(null, Sample, folder, folder), new StationSolver(), NullLogger<Desk>.Instance);
        var states = new List<(Freshness Stand, Freshness Field)>();
        desk.Changed += () => states.Add((desk.Now.StandState, desk.Now.FieldState));
        await Until(() => desk.Now.FieldState == Freshness.Fresh && desk.Now.Step is null && desk.Now.Sweeps.Length > 0, 60);
        Assert.Contains((Freshness.Fresh, Freshness.Computing), states);
        var result = desk.Now.Result!;
        Assert.Equal(result.Masts.Sum(m => m.Bands.Length), desk.Now.Sweeps.Length);

        // The sweep passes through the design frequency's own figures: same impedance, same match.
        foreach (var sweep in desk.Now.Sweeps)
        {
            var band = result.Masts.Single(m => m.Name == sweep.Mast).Bands.Single(b => b.Name == sweep.Band);
            var (before, after) = (sweep.Points.Last(p => p.FrequencyHz <= band.FrequencyHz), sweep.Points.First(p => p.FrequencyHz >= band.FrequencyHz));
            var (low, high) = (Math.Min(before.FeedOhm.Real, after.FeedOhm.Real), Math.Max(before.FeedOhm.Real, after.FeedOhm.Real));
            Assert.InRange(band.FeedOhm.Real, low - (0.01 * Math.Abs(low)), high + (0.01 * Math.Abs(high)));
            Assert.NotNull(sweep.Within(2, band.FrequencyHz));
        }

        // Every drawn pattern peaks at the stated gain, and every guy hangs in equilibrium with a positive tension.
        foreach (var band in result.Masts.SelectMany(m => m.Bands))
        {
            Assert.Equal(band.GainDbi.Value, band.Pattern!.UprightDbi.Max(), 0.05);
            Assert.NotEmpty(band.Currents);
        }

        Assert.All(result.Masts.SelectMany(m => m.Stand.Cases).SelectMany(c => c.Guys), g => Assert.InRange(g.TensionN, g.AnchorTensionN - 1e-6, g.BreakingN));
    }

    private string WriteSample()
    {
        var file = Path.Combine(folder, "station.yaml");
        File.WriteAllText(file, Sample);
        return file;
    }

    private Desk Open(string? file, IStationSolver solver) => new(new DeskOptions(file, Sample, folder, Path.Combine(folder, "spare")), solver, NullLogger<Desk>.Instance);

    /// <summary>Answers when it is let, with a result that holds nothing but the station.</summary>
    private sealed class HeldSolver : IStationSolver
    {
        private readonly ManualResetEventSlim gate = new();
        private int begun;
        private int stopped;

        public int Begun => begun;

        public int Stopped => stopped;

        public bool TellsStructure { get; init; }

        public bool Fails { get; set; }

        public bool Open
        {
            init
            {
                if (value)
                {
                    gate.Set();
                }
            }
        }

        public void Let() => gate.Set();

        public StationResult Solve(DesignReading reading, IProgress<AnalysisStep> progress, Action<StandStage> stood, CancellationToken cancellation)
        {
            Interlocked.Increment(ref begun);
            var station = reading.Station!;
            if (TellsStructure)
            {
                stood(new StandStage(station, Fingerprint.Of(station), [], []));
            }

            try
            {
                gate.Wait(cancellation);
            }
            catch (OperationCanceledException)
            {
                Interlocked.Increment(ref stopped);
                throw;
            }

            return Fails ? throw new InvalidOperationException("told to fail") : QuickSolver.Nothing(reading);
        }

        public BandSweepResult Sweep(StationResult result, int mast, int band, CancellationToken cancellation) => new("", "", []);
    }
}
