using Mastwright.Model.Trails;

namespace Mastwright.Model.Tests;

/// <summary>How checks are told.</summary>
public class CheckTests
{
    [Fact]
    public void A_title_begins_with_a_capital_whatever_the_part_is_called()
    {
        var one = Trail.Given("one", "1", 1, QuantityKind.Ratio, Source.CommonPractice);
        var check = Check.AtMost("x", Trade.Survive, "top lamp costs little power", one, one, "always", "none");
        Assert.Equal("Top lamp costs little power", check.Title);
        Assert.Equal("Copper on zinc", (check with { Title = "copper on zinc" }).Title);
        Assert.Equal("", (check with { Title = "" }).Title);
    }
}
