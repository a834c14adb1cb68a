using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Model.Units;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Edits;
using Mastwright.Workbench.Work;

namespace Mastwright.Workbench.Tests;

/// <summary>What dragging and adopting write, and what a comparison finds.</summary>
public sealed class MovesAndComparisonTests
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));

    private static Station Read(string text) => DesignReader.Read(text, "design", CatalogueNames.Of) is { Station: { } station } ? station : throw new InvalidOperationException(text);

    [Fact]
    public void ADraggedAnchorStandsWhereItWasLetGo()
    {
        var text = StationMoves.Anchor(Sample, Read(Sample), UnitSystem.Metric, 0, 1, 9, -12)!;
        var anchor = Read(text).Masts[0].Anchors[1];
        Assert.Equal(15, anchor.DistanceM, 2);
        Assert.Equal(180 - (Math.Atan2(9, 12) * 180 / Math.PI), anchor.BearingRad * 180 / Math.PI, 0.5);
    }

    [Theory]
    [InlineData(9.47, UnitSystem.Metric, 9.5)]
    [InlineData(99, UnitSystem.Metric, 22.4)]
    [InlineData(-3, UnitSystem.Metric, 0.95)]
    [InlineData(9.47, UnitSystem.Us, 31 * 0.3048)]
    public void ADraggedGuyLevelStaysOnItsMast(double toM, UnitSystem units, double expectedM)
    {
        var height = Read(StationMoves.Level(Sample, Read(Sample), units, 0, 0, toM)!).Masts[0].Guys[0].HeightM;
        Assert.Equal(expectedM, height, 0.051);
        Assert.InRange(height, 0.45, 22.45);
    }

    [Fact]
    public void WhatIsNotThereCannotBeMoved()
    {
        var station = Read(Sample);
        Assert.Null(StationMoves.Anchor(Sample, station, UnitSystem.Metric, 0, 7, 1, 1));
        Assert.Null(StationMoves.Level(Sample, station, UnitSystem.Metric, 1, 0, 5));
        Assert.Null(StationMoves.AnchorDistance(Sample, station, UnitSystem.Metric, 3, 0, 5));
    }

    [Fact]
    public void AListIsWrittenAnewAndTheRestStays()
    {
        var text = TextEdits.SetList(Sample, "masts[0].guys", ["- height: 20 m", "  strand: 1/4 in EHS", "- height: 12 m", "  strand: 3/16 in EHS"])!;
        var guys = Read(text).Masts[0].Guys;
        Assert.Equal([20, 12], guys.Select(g => g.HeightM));
        Assert.Equal(Read(Sample).Masts[0].Radials, Read(text).Masts[0].Radials);
        Assert.Null(TextEdits.SetList(Sample, "masts[0].guys[0].insulators-at", ["- 1 m"]));
    }

    [Fact]
    public void AChosenNetworkIsWrittenOnceForEachBand()
    {
        var first = NetworkSearch.Adopt(Sample, "160 m", null, "t", "high-pass")!;
        Assert.Equal("[{ band: 160 m, network: t, form: high-pass }]", TextEdits.WrittenAt(first, "feed.networks"));
        var second = NetworkSearch.Adopt(first, "it's 80", "A", "pi", null)!;
        var third = NetworkSearch.Adopt(second, "160 m", null, "pi", null)!;
        Assert.Equal("pi", TextEdits.WrittenAt(third, "feed.networks[0].network"));
        Assert.Equal("any", TextEdits.WrittenAt(third, "feed.networks[0].form"));
        Assert.Equal("'it''s 80'", TextEdits.WrittenAt(third, "feed.networks[1].band"));
        Assert.Null(TextEdits.WrittenAt(third, "feed.networks[2]"));
    }

    [Fact]
    public void TheLinesThatDifferAreFoundInOrder()
    {
        var changes = Comparison.Lines("a\nb\nc\nd", "a\nc\nx\nd");
        Assert.Equal([new LineChange("b", false), new LineChange("x", true)], changes);
        Assert.Empty(Comparison.Lines(Sample, Sample));
    }

    /// <summary>A design with its measured tables may be long: what is needed grows with its lines, not with their square (20 000 lines squared would be 1.6 GB).</summary>
    [Fact]
    public void LongTextsAreComparedWithoutATableOfAllPairs()
    {
        var lines = Enumerable.Range(0, 20_000).Select(i => $"line {i}").ToArray();
        var kept = string.Join('\n', lines);
        lines[7] = "other";
        var now = string.Join('\n', lines) + "\nlast";
        Comparison.Lines("a", "b");
        var before = GC.GetAllocatedBytesForCurrentThread();

        var changes = Comparison.Lines(kept, now);

        Assert.Equal([new LineChange("line 7", false), new LineChange("other", true), new LineChange("last", true)], changes);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000_000);
    }

    [Fact]
    public void TheFrontHoldsWhatNoOtherBeats()
    {
        static Found F(string words, double cost, double merit, bool passes = true, bool sure = true) => new(words, cost, merit, passes, sure, "", t => t);
        var set = new FoundSet("cost", "merit", [F("dear and good", 9, 9), F("cheap", 1, 2), F("beaten", 5, 2), F("fails", 1, 99, passes: false), F("not sure", 0, 5, sure: false), F("middle", 4, 5)]);
        Assert.Equal(["cheap", "middle", "dear and good"], set.Front.Select(f => f.Words));
        Assert.Equal(["not sure"], (set with { Mixed = true }).Front.Select(f => f.Words));
    }
}
