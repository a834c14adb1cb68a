namespace Mastwright.Catalog.Tests;

public class ShelfTest
{
    [Theory]
    [InlineData("1/4 in EHS")]
    [InlineData("1/4-in-ehs")]
    [InlineData("1/4in_EHS")]
    public void Name_is_found_however_it_is_spaced(string name) =>
        Assert.Equal("1/4 in EHS", Catalogue.Default.Strands.Find(name).Part?.Name);

    [Fact]
    public void Mixed_number_is_not_taken_for_another_size() =>
        Assert.False(Catalogue.Default.Tubes.Find("11/4 in pipe schedule 40").Found);

    [Theory]
    [InlineData("1/4 in ESH", "1/4 in EHS")]
    [InlineData("3/16 EHS", "3/16 in EHS")]
    [InlineData("5/16 in high strenght", "5/16 in High Strength")]
    public void Mistyped_name_is_answered_with_the_one_meant(string typed, string meant)
    {
        var answer = Catalogue.Default.Strands.Find(typed);
        Assert.False(answer.Found);
        Assert.Equal(meant, answer.Suggestions[0]);
    }

    [Fact]
    public void Part_of_a_name_is_answered_with_names_that_contain_it() =>
        Assert.All(Catalogue.Default.Lattices.Find("tri-300").Suggestions, s => Assert.StartsWith("tri-300", s));

    [Theory]
    [InlineData("")]
    [InlineData("entirely something else and rather long")]
    public void Name_near_nothing_has_no_suggestions(string name)
    {
        var answer = Catalogue.Default.Metals.Find(name);
        Assert.False(answer.Found);
        Assert.Empty(answer.Suggestions);
    }

    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("", "abc", 3)]
    [InlineData("strand", "strnad", 1)]
    [InlineData("same", "same", 0)]
    public void Edit_distance_is_that_of_the_textbook(string a, string b, int edits)
    {
        // "kitten" to "sitting" is the usual example of Levenshtein's distance: 3.
        Assert.Equal(edits, NearNames.Distance(a, b));
        Assert.Equal(edits, NearNames.Distance(b, a));
    }
}
