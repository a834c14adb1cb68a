using Mastwright.Tests.Shared;
using Mastwright.Workbench.Edits;

namespace Mastwright.Workbench.Tests;

/// <summary>Completion and help on text that is still being typed.</summary>
public sealed class SchemaHelpTests
{
    private static readonly string Sample = File.ReadAllText(Repository.File("examples", "lattice-22m.yaml"));

    [Theory]
    [InlineData("site:\n  wi", 2, 4, "wind")]
    [InlineData("site:\n  wind:\n    ", 3, 4, "exposure")]
    [InlineData("masts:\n  - name: A\n    base:\n      piv", 4, 9, "pivot")]
    [InlineData("masts:\n  - name: A\n    anchors:\n      - { name: x, be", 4, 21, "bearing")]
    [InlineData("mas", 1, 3, "masts")]
    public void KeysOfTheBlockAreOffered(string text, int line, int column, string expected) =>
        Assert.Contains(SchemaHelp.OfferAt(text, line, column).Options, o => o.Label == expected);

    [Theory]
    [InlineData("site:\n  wind:\n    exposure: o", 3, 15, "open")]
    [InlineData("masts:\n  - name: A\n    base:\n      pivot: b", 4, 14, "ball-and-cone")]
    [InlineData("site:\n  soil: ", 2, 8, "average land")]
    public void ValuesAreOfferedBehindTheirKey(string text, int line, int column, string expected) =>
        Assert.Contains(SchemaHelp.OfferAt(text, line, column).Options, o => o.Label == expected);

    [Fact]
    public void TheWordBeingTypedIsReplacedFromItsBeginning() => Assert.Equal(2, SchemaHelp.OfferAt("site:\n  wi", 2, 4).From);

    [Fact]
    public void HelpTellsWhatAFieldMeans()
    {
        var lines = Sample.Split('\n');
        var line = Array.FindIndex(lines, l => l.Contains("initial-tension", StringComparison.Ordinal));
        Assert.Contains("Tension at the anchor", SchemaHelp.WordsAt(Sample, line + 1, lines[line].IndexOf("initial", StringComparison.Ordinal) + 2));
    }

    [Fact]
    public void NonsenseIsAnsweredWithNothing()
    {
        Assert.Empty(SchemaHelp.OfferAt("nonsense:\n  more:\n    ", 3, 4).Options);
        Assert.Equal("", SchemaHelp.WordsAt("x", 99, 3));
    }
}
