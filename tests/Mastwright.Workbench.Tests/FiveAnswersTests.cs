using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Workbench.Starting;

namespace Mastwright.Workbench.Tests;

/// <summary>Whatever the five answers, the design they make can be read, and stays inside the ground.</summary>
public sealed class FiveAnswersTests
{
    [Theory]
    [InlineData(8, 5, 28.5e6, 1)]
    [InlineData(20, 9, 7.1e6, 100)]
    [InlineData(40, 18, 3.65e6, 400)]
    [InlineData(60, 27, 1.85e6, 1500)]
    [InlineData(400, 60, 1.85e6, 10000)]
    public void TheDesignCanBeReadAndFitsTheGround(double spaceM, double heightM, double lowestHz, double powerW)
    {
        var answers = new FiveAnswers(spaceM, heightM, [lowestHz, 14.15e6], powerW, "average land");
        Assert.Empty(answers.Problems());
        var reading = DesignReader.Read(answers.Text(), "new", CatalogueNames.Of);
        Assert.True(reading.Ok, string.Join('\n', reading.Findings.Select(f => $"{f.Place} {f.Message}")));
        var mast = Assert.Single(reading.Station!.Masts);
        Assert.Equal(heightM, mast.TopM, 1);
        Assert.All(mast.Anchors, a => Assert.True(a.DistanceM <= spaceM / 2));
        Assert.True(mast.Radials.LengthM <= spaceM / 2);
        var heights = mast.Guys.Select(g => g.HeightM).Prepend(0).ToList();
        Assert.All(heights.Zip(heights.Skip(1)), p => Assert.InRange(p.Second - p.First, 1, 12.5));
    }

    [Fact]
    public void AnswersThatCannotBeUsedAreToldAllAtOnce() => Assert.Equal(5, new FiveAnswers(1, 500, [], 0, "cheese").Problems().Count);
}
