using FsCheck.Xunit;
using Mastwright.Build.Tension;

namespace Mastwright.Build.Tests.Tension;

public class ReadingSheetTests
{
    private static readonly Dictionary<string, string> Ways = new() { ["gauge"] = "1.8 kN", ["pulse"] = "10 in 2.79 s" };

    [Fact]
    public void A_sheet_as_written_is_empty_and_says_so()
    {
        var sheet = ReadingSheet.Write([new("A", "1/north", "1775 N at 15 °C"), new("A, east", "1/south", "1775 N")], Ways);
        var reading = ReadingSheet.Read(sheet, "s.csv", Ways.Keys);

        Assert.Equal("sheet-empty", Assert.Single(reading.Errors).Code);
    }

    /// <summary>RFC 4180 quotes; a spreadsheet of another country writes semicolons, and quotes the remark lines on saving.</summary>
    [Theory]
    [InlineData("# by hand\nmast,guy,should,date,temperature,wind,by,gauge,pulse,remark\nA,1/north,x,2026-05-01,12 °C,,me,1.8 kN,10 in 4.1 s,\nA,1/south,x,,,,,,\"10 in 4,2 s\",dry\n")]
    [InlineData("\"# by hand\"\nmast;guy;should;date;temperature;wind;by;gauge;pulse;remark\r\nA;1/north;x;2026-05-01;12 °C;;me;1.8 kN;10 in 4.1 s;\r\n;;;;;;;;;\r\nA;1/south;x;;;;;;10 in 4,2 s;dry\r\n")]
    public void Day_weather_and_name_hold_for_the_rows_below(string text)
    {
        var rows = ReadingSheet.Read(text, "s.csv", Ways.Keys).Value!;

        Assert.Equal(["gauge", "pulse", "pulse"], rows.Select(r => r.Way));
        Assert.All(rows, r => Assert.Equal(("2026-05-01", "12 °C", "me"), (r.Date, r.Temperature, r.By)));
        Assert.Equal(("1/south", "10 in 4,2 s", "dry"), (rows[2].Guy, rows[2].Reading, rows[2].Remark));
    }

    [Fact]
    public void A_reading_has_its_place_and_an_unknown_column_is_named()
    {
        var reading = ReadingSheet.Read("guy,gouge,gauge\n1/north,,1.8 kN\n", "s.csv", Ways.Keys);

        Assert.Equal((2, 10), (reading.Value![0].Place.Line, reading.Value[0].Place.Column));
        Assert.Contains(reading.Findings, f => f.Code == "sheet-column" && f.Value == "gouge");
        Assert.Equal("sheet-columns", Assert.Single(ReadingSheet.Read("part,price\nx,1\n", "s.csv", Ways.Keys).Errors).Code);
    }

    /// <summary>A number sign begins a remark above the heading; below it, it may begin the name of a mast.</summary>
    [Fact]
    public void A_mast_called_by_its_number_is_no_remark()
    {
        var sheet = ReadingSheet.Write([new("#1", "1/north", "x"), new("=2", "1/south", "x")], Ways);
        var lines = sheet.Split('\n').Select(l => l.Contains("1/", StringComparison.Ordinal) ? l.Replace(",,,,,,,", ",,,,,1.8 kN,,", StringComparison.Ordinal) : l);
        var rows = ReadingSheet.Read(string.Join('\n', lines) + "# windy, so the rest was left\n", "s.csv", Ways.Keys).Value!;

        Assert.Contains("'=2,", sheet, StringComparison.Ordinal); // no formula for the spreadsheet it is opened with
        Assert.Equal([("#1", "1/north"), ("=2", "1/south")], rows.Select(r => (r.Mast, r.Guy)));
        Assert.All(rows, r => Assert.Equal("1.8 kN", r.Reading));
    }

    [Property]
    public bool No_text_whatever_makes_the_reader_throw(string? text) =>
        ReadingSheet.Read("mast,guy,gauge\n" + text, "s.csv", Ways.Keys) is { } r && (r.IsUsable || r.Errors.Any());
}
