using Mastwright.Analysis.Stand;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

public class StandSearchTests
{
    private static string Text(string name) => File.ReadAllText(Repository.File("examples", name + ".yaml")).ReplaceLineEndings("\n");

    /// <summary>What a search offers must pass when its own lines are written into the file and the file is read and checked anew.</summary>
    [Theory]
    [InlineData("tube-12m", SearchGoal.Strand)]
    [InlineData("tube-12m", SearchGoal.Tension)]
    [InlineData("lattice-22m", SearchGoal.Radius)]
    public void The_offered_design_passes_when_read_back_from_its_own_file(string example, SearchGoal goal)
    {
        var text = Text(example);
        var reading = Examples.Read(text);
        var found = StandSearch.Run(reading.Station!, 0, goal, cancellation: TestContext.Current.CancellationToken);
        Assert.NotNull(found.Best);

        var edited = Examples.Read(DesignEdit.Apply(text, reading.Places, found.Best.Candidate.Changes)).Station!;
        var again = StandRun.Of(edited, edited.Masts[0], TestContext.Current.CancellationToken);

        Assert.DoesNotContain(again.Checks, c => c.Verdict == Verdict.Fail);
        var named = again.Checks.Single(c => c.Id == found.Best.Worst!.Id);
        Assert.Equal(found.Best.Use, named.Ratio, 1e-6);
    }

    /// <summary>Brute force over every combination of the catalogue's sizes is the outside reference of the search.</summary>
    [Fact]
    public void The_smallest_strand_is_the_one_that_trying_every_size_finds()
    {
        var tiny = Tiny();
        var mast = tiny.Masts[0] with { Guys = [tiny.Masts[0].Guys[0] with { HeightM = 3 }, tiny.Masts[0].Guys[0]] };

        // A high factor on the strand, so that the smallest size does not do at both levels.
        var station = tiny with { Masts = [mast], Limits = tiny.Limits with { GuyFactor = 6.9 } };
        var cancellation = TestContext.Current.CancellationToken;

        var found = StandSearch.Run(station, 0, SearchGoal.Strand, cancellation: cancellation).Best;

        var sizes = StrandSearch.Sizes(mast.Guys[0].Strand);
        var every = from low in sizes from high in sizes select mast with { Guys = [mast.Guys[0] with { Strand = low }, mast.Guys[1] with { Strand = high }] };
        var byHand = every.OrderBy(MassOfStrand).First(m => StandRun.Of(station, m, cancellation).Checks.All(c => c.Verdict != Verdict.Fail));
        Assert.Contains(byHand.Guys, g => g.Strand != sizes[0]);
        Assert.NotNull(found);
        Assert.Equal(byHand.Guys.Select(g => g.Strand), found.Candidate.Mast.Guys.Select(g => g.Strand));
    }

    private static double MassOfStrand(Mast mast) => mast.Guys.Sum(g =>
        StandModel.StrandOf(g.Strand).MassKgPerM * StandModel.AnchorsOf(mast, g).Sum(a => double.Hypot(a.DistanceM, g.HeightM - a.RiseM)));

    [Fact]
    public void Anchors_stay_within_the_plot_and_the_front_never_pays_more_for_less()
    {
        var station = Examples.Read(Text("tube-12m")).Station!;
        station = station with { Site = station.Site with { BoundaryDistanceM = 7.5 } };

        var found = StandSearch.Run(station, 0, SearchGoal.Radius, cancellation: TestContext.Current.CancellationToken);

        Assert.All(found.Tried, t => Assert.True(t.Candidate.Mast.Anchors.All(a => a.DistanceM <= 7.5 + 1e-9), t.Candidate.Words));
        Assert.All(found.Front.Zip(found.Front.Skip(1)), p => Assert.True(p.Second.Cost >= p.First.Cost && p.Second.Margin > p.First.Margin));
    }

    [Fact]
    public void A_search_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        var progress = new Stopping(stop);

        Assert.ThrowsAny<OperationCanceledException>(() => StandSearch.Run(Tiny(), 0, SearchGoal.Tension, progress: progress, cancellation: stop.Token));
        Assert.Equal(2, progress.Told);
    }

    private static Station Tiny()
    {
        var station = Examples.Read(Text("tube-12m")).Station!;
        var mast = station.Masts[0];
        return station with
        {
            Masts = [mast with { Sections = [mast.Sections[0] with { LengthM = 6 }], Guys = [mast.Guys[0] with { HeightM = 5.5, InsulatorsAtM = [], Hardware = null }], Attachments = [], TopWires = null }],
        };
    }

    private sealed class Stopping(CancellationTokenSource stop) : IProgress<AnalysisStep>
    {
        public int Told { get; private set; }

        public void Report(AnalysisStep value)
        {
            Told++;
            if (Told == 2)
            {
                stop.Cancel();
            }
        }
    }
}
