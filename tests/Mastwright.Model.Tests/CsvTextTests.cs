using Mastwright.Model.Text;

namespace Mastwright.Model.Tests;

/// <summary>Tables as comma-separated text: RFC 4180, and what a spreadsheet would take for a formula (the first characters named by OWASP, "CSV Injection").</summary>
public class CsvTextTests
{
    /// <summary>RFC 4180, section 2, rules 5 to 7: fields with line breaks, quotes and commas are quoted, quotes doubled.</summary>
    [Fact]
    public void Cells_are_quoted_where_they_must_be() =>
        Assert.Equal("plain,\"a,b\",\"say \"\"x\"\"\",\"two\nlines\",\r\n1,2\r\n", CsvText.Write([["plain", "a,b", "say \"x\"", "two\nlines", ""], ["1", "2"]]));

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+SUM(A1)")]
    [InlineData("-1+cmd|' /C calc'!A0")]
    [InlineData("-2 +SUM(A1)")]
    [InlineData("@now()")]
    [InlineData("\t=1")]
    [InlineData("\r=1")]
    [InlineData("-5 kHz\n=1")]
    public void What_would_be_a_formula_becomes_text_and_comes_back(string cell)
    {
        Assert.Equal("'" + cell, CsvText.AsText(cell));
        Assert.Equal(cell, CsvText.Unmarked(CsvText.AsText(cell)));
    }

    [Theory]
    [InlineData("-12.5")]
    [InlineData("+3")]
    [InlineData("-1.2e-7")]
    [InlineData("-3.2 dBi")]
    [InlineData("-40 °C")]
    [InlineData("-12 %")]
    [InlineData("2=two")]
    [InlineData("'quoted'")]
    [InlineData("")]
    public void Numbers_and_plain_words_stay_as_they_are(string cell)
    {
        Assert.Equal(cell, CsvText.AsText(cell));
        Assert.Equal(cell, CsvText.Unmarked(cell));
    }
}
