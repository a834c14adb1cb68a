using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Tests.Shared;
using Mastwright.Workbench.Edits;

namespace Mastwright.Workbench.Tests;

/// <summary>One value changes; every other character of the file stays.</summary>
public sealed class TextEditsTests
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));

    public static TheoryData<string> Examples => [.. Repository.Examples.Select(e => Path.GetFileName(e))];

    [Theory]
    [InlineData("masts[0].guys[1].height", "20.5 m")]
    [InlineData("masts[0].anchors[2].distance", "48 ft")]
    [InlineData("site.wind.speed", "100 mph")]
    [InlineData("bands[0].power", "400 W")]
    [InlineData("name", "A: name, with 'signs' # and all")]
    [InlineData("site.coldest", "-31 °C")]
    public void AWrittenValueIsReplacedAndNothingElse(string path, string value)
    {
        var before = TextEdits.WrittenAt(Sample, path)!;
        var after = TextEdits.Set(Sample, path, value)!;
        Assert.Equal(value, TextEdits.WrittenAt(after, path)!.Trim('\'').Replace("''", "'"));
        Assert.Equal(Sample, TextEdits.Set(after, path, before));
        Assert.Equal(Sample.Split('\n').Length, after.Split('\n').Length);
        Assert.Equal(1, Sample.Split('\n').Zip(after.Split('\n')).Count(p => p.First != p.Second));
    }

    [Theory]
    [InlineData("masts[0].guys[0].attachment-radius", "150 mm")]
    [InlineData("bands[2].duty", "0.5")]
    [InlineData("limits.tilt", "3 °")]
    [InlineData("site.ice.density", "880 kg/m³")]
    [InlineData("masts[0].anchors[0].rise", "1 m")]
    public void AFieldTheFileLacksIsAddedAndCanBeTakenOut(string path, string value)
    {
        Assert.Null(TextEdits.WrittenAt(Sample, path));
        var after = TextEdits.Set(Sample, path, value)!;
        Assert.Equal(value, TextEdits.WrittenAt(after, path));
        var reading = DesignReader.Read(after, "design", CatalogueNames.Of);
        Assert.True(reading.Ok, string.Join('\n', reading.Findings.Select(f => f.Message)));

        // A block made for one field keeps that field; any other can go again.
        if (!path.StartsWith("limits", StringComparison.Ordinal))
        {
            Assert.Equal(Sample, TextEdits.Remove(after, path));
        }
    }

    [Fact]
    public void ItemsAreAddedToListsAndTakenOut()
    {
        var more = TextEdits.Add(Sample, "masts[0].guys", "{ height: 16 m, strand: 3/16 in EHS }")!;
        var reading = DesignReader.Read(more, "design", CatalogueNames.Of);
        Assert.Contains("16 m", TextEdits.WrittenAt(more, "masts[0].guys[2]"));
        Assert.Equal(3, TextOutline.Of(more)!["masts"]!.Items[0]["guys"]!.Items.Count);
        Assert.Equal(Sample, TextEdits.Remove(more, "masts[0].guys[2]"));
        Assert.NotNull(reading);
    }

    [Theory]
    [InlineData("masts[7].name")]
    [InlineData("name.inner")]
    [InlineData("site")]
    public void APlaceThatIsNotThereGivesNothing(string path) => Assert.Null(TextEdits.Set(Sample, path, "1 m"));

    [Fact]
    public void TextThatCannotBeReadGivesNothing() => Assert.Null(TextEdits.Set("a: [", "a", "1"));

    [Theory]
    [MemberData(nameof(Examples))]
    public void EveryPlaceTheReaderKnowsCanBeWrittenAsItIs(string example)
    {
        var text = File.ReadAllText(Repository.File("examples", example));
        var reading = DesignReader.Read(text, example, CatalogueNames.Of);
        foreach (var path in reading.Places.Keys.Where(p => p.Length > 0))
        {
            var written = TextEdits.WrittenAt(text, path);
            Assert.NotNull(written);
            if (!written.StartsWith('{') && !written.StartsWith('[') && !written.Contains('\n'))
            {
                Assert.Equal(text, TextEdits.Set(text, path, written));
            }
        }
    }
}
