using FsCheck.Xunit;
using Mastwright.Build.Materials;
using Mastwright.Model.Trails;

namespace Mastwright.Build.Tests.Materials;

public class MaterialsListTests
{
    private const string Head = "part,unit,price,currency,pack,invented,note\n";

    private static PriceList Prices(string rows) => PriceFile.Read(Head + rows, "prices.csv").Value!;

    [Fact]
    public void Waste_spares_packs_mass_and_cost_add_up()
    {
        var prices = Prices("1/4 in EHS,m,2.00,EUR,50,no,offer of spring\nthimble,each,1.25,EUR,,no,\n");
        var reading = MaterialsList.Of(
            [
                new("1/4 in EHS", "guys", 200, MaterialUnit.Metre, 0.05, 10, 0.18),
                new("1/4 in EHS", "guys", 30, MaterialUnit.Metre),
                new("thimble", "guys", 24, MaterialUnit.Each, 0, 2, 0.09),
            ],
            prices);
        Assert.Empty(reading.Findings);
        var list = reading.Value!;
        // 230 + 10 waste + 10 spares = 250: five whole packs, not six.
        Assert.Equal(250, list.Lines[0].Order.Value, 9);
        Assert.Equal(500.00m, list.Lines[0].Cost);
        Assert.Equal(26, list.Lines[1].Order.Value);
        Assert.Equal(32.50m, list.Lines[1].Cost);
        Assert.Equal(532.50m, list.TotalCost);
        Assert.Equal((250 * 0.18) + (26 * 0.09), list.TotalMass.Value, 9);
    }

    [Theory]
    [InlineData("wire,ft,0.3048,USD,,,\n", 100, "m", 100.00)] // 0.3048 a foot is 1.00 a metre
    [InlineData("wire,m,1,USD,,,\n", 100, "m", 100.00)]
    public void Prices_by_the_foot_meet_needs_in_metres(string row, double quantity, string unit, decimal cost)
    {
        var line = MaterialsList.Of([new("WIRE", "earth", quantity, MaterialUnit.Metre)], Prices(row)).Value!.Lines[0];
        Assert.Equal(unit, line.UnitSymbol);
        Assert.Equal(cost, line.Cost);
    }

    [Theory]
    [InlineData("x,furlong,1,EUR,,,\n", "price-unit", 2, 3)]
    [InlineData("x,m,cheap,EUR,,,\n", "price-number", 2, 5)]
    [InlineData("x,m,-1,EUR,,,\n", "price-number", 2, 5)]
    [InlineData("x,m,1,EUR,0,,\n", "price-pack", 2, 11)]
    [InlineData("\"x, long\",m,1,EUR,0,,\n", "price-pack", 2, 19)]
    [InlineData(",m,1,EUR,,,\n", "price-part", 2, 1)]
    [InlineData("x,m,1,,,,\n", "price-no-currency", 2, 7)]
    [InlineData("x,m,1,EUR,,maybe,\n", "price-invented", 2, 12)]
    [InlineData("y,m,1,EUR,,,\nx,m\n", "price-number", 3, 4)]
    public void A_bad_row_is_named_with_its_place_and_the_rest_stands(string rows, string code, int line, int column)
    {
        var reading = PriceFile.Read(Head + rows + "good,m,1,EUR,,,\n", "prices.csv");
        Assert.True(reading.Value!.Prices.ContainsKey("good"));
        var finding = Assert.Single(reading.Findings, f => f.Code == code);
        Assert.Equal((line, column), (finding.Place!.Line, finding.Place.Column));
    }

    [Fact]
    public void Two_currencies_are_not_added() =>
        Assert.Contains(PriceFile.Read(Head + "a,m,1,EUR,,,\nb,m,1,USD,,,\n", "p.csv").Errors, f => f.Code == "price-currency" && f.Place!.Line == 3);

    [Fact]
    public void A_missing_column_and_an_empty_file_are_said()
    {
        Assert.Equal("price-columns", Assert.Single(PriceFile.Read("part,price\nx,1\n", "p.csv").Errors).Code);
        Assert.Equal("price-empty", Assert.Single(PriceFile.Read("", "p.csv").Errors).Code);
    }

    [Fact]
    public void Lines_without_a_price_are_named_and_the_total_says_it_is_short()
    {
        var reading = MaterialsList.Of([new("a", "g", 1, MaterialUnit.Each), new("b", "g", 1, MaterialUnit.Metre)], Prices("b,kg,4,EUR,,,\n"));
        Assert.Equal(["a", "b"], reading.Value!.Unpriced);
        Assert.Contains(reading.Findings, f => f.Code == "price-other-unit" && f.Place!.Line == 2);
        Assert.Contains(reading.Findings, f => f.Code == "price-missing");
    }

    [Fact]
    public void The_sample_file_reads_and_every_price_in_it_is_marked_invented()
    {
        var reading = PriceFile.Read(PriceFile.Sample(), "sample-prices.csv");
        Assert.Empty(reading.Findings);
        Assert.All(reading.Value!.Prices.Values, p => Assert.True(p.IsInvented));
        var list = MaterialsList.Of([new("1/4 in EHS", "guys", 10, MaterialUnit.Metre)], reading.Value);
        Assert.True(list.Value!.HasInventedPrices);
        Assert.Contains(list.Findings, f => f.Code == "price-sample" && f.Severity == Severity.Warning);
    }

    [Property]
    public bool No_text_whatever_makes_the_reader_throw(string? text, bool head)
    {
        var reading = PriceFile.Read((head ? Head : "") + text, "p.csv");
        return reading.IsUsable || reading.Errors.Any();
    }
}
