using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Desks;
using Microsoft.Extensions.Logging.Abstractions;

namespace Mastwright.Workbench.Tests;

/// <summary>What is known at once after an edit, and how it is marked until the rest is there.</summary>
public sealed class FirstLookTests : IDisposable
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "tube-12m.yaml"));

    private readonly string folder = Directory.CreateTempSubdirectory("look").FullName;

    public void Dispose() => Directory.Delete(folder, true);

    [Fact]
    public async Task TheSiteIsFreshWithTheEditItself()
    {
        await using var desk = new Desk(new DeskOptions(null, Sample, folder, folder), new NeverSolver(), NullLogger<Desk>.Instance);
        desk.Set("site.boundary-distance", "3 m", "boundary");
        Assert.Equal(Freshness.Fresh, desk.Now.StateOf(Trade.Site));
        Assert.Equal(Verdict.Fail, desk.Now.Checks.Single(c => c.Id == "site.fall[boundary]").Verdict);
        Assert.NotEqual(Freshness.Fresh, desk.Now.FieldState);
    }

    [Fact]
    public async Task AFirstLookIsMarkedAndHoldsTheSameChecksAsTheWhole()
    {
        await using var desk = new Desk(new DeskOptions(null, Sample, folder, folder), new NeverSolver(), NullLogger<Desk>.Instance);
        for (var i = 0; i < 4000 && desk.Now.StandState != Freshness.FirstLook; i++)
        {
            await Task.Delay(5, TestContext.Current.CancellationToken);
        }

        Assert.Equal(Freshness.FirstLook, desk.Now.StateOf(Trade.Stand));
        Assert.Contains("first look", Words.Of(desk.Now.StandState));

        // Every wind of the first look is one of the whole, so no use can be larger than with all of them.
        var whole = StationAnalysis.Run(desk.Now.Reading, null, TestContext.Current.CancellationToken).Checks.ToLookup(c => c.Id);
        var look = desk.Now.Checks.Where(c => c.Trade == Trade.Stand && c.Id.StartsWith("stand.guy.strength", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(look);
        Assert.All(look, c => Assert.True(c.Ratio <= whole[c.Id].First().Ratio + 1e-9));
    }

    /// <summary>Looks, and then waits for ever.</summary>
    private sealed class NeverSolver : IStationSolver
    {
        public StandStage? Look(DesignReading reading, CancellationToken cancellation) => QuickLook.Stand(reading.Station!, cancellation);

        public StationResult Solve(DesignReading reading, IProgress<AnalysisStep> progress, Action<StandStage> stood, CancellationToken cancellation)
        {
            cancellation.WaitHandle.WaitOne();
            throw new OperationCanceledException(cancellation);
        }

        public BandSweepResult Sweep(StationResult result, int mast, int band, CancellationToken cancellation) => throw new NotSupportedException();
    }
}
