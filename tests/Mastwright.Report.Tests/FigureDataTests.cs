using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Tests;

/// <summary>The numbers behind a figure: drawn where they say, and written whole.</summary>
public sealed partial class FigureDataTests
{
    [Fact]
    public void A_point_lies_where_the_drawn_curve_passes()
    {
        var figure = Plots.Curves("Title", "Caption", "frequency, MHz", "ohms", [new Curve("resistance", [(1, 10), (2, 40), (3, 20)])]);
        var drawn = Polyline().Matches(figure.Svg).Select(m => m.Groups[1].Value).First(p => p.Split(' ').Length == 3).Split(' ')
            .Select(p => p.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray()).ToList();
        foreach (var (point, at) in figure.Data!.Series[0].Points.Zip(drawn))
        {
            Assert.Equal(at[0], point.AtX, 1e-3);
            Assert.Equal(at[1], point.AtY, 1e-3);
        }

        Assert.Equal([10.0, 40, 20], figure.Data.Series[0].Points.Select(p => p.Y));
    }

    [Fact]
    public void A_round_cut_is_drawn_north_up_and_clockwise()
    {
        var figure = Polar.Level("Title", "Caption", [("cut", [0.0, -3, -10, -20])]);
        var points = figure.Data!.Series[0].Points;
        Assert.Equal([0.0, 90, 180, 270], points.Select(p => p.X));
        Assert.True(points[0].AtY < points[2].AtY);
        Assert.True(points[1].AtX > points[3].AtX);
    }

    [Fact]
    public void The_table_is_written_by_RFC_4180_and_cannot_start_a_formula()
    {
        var data = new FigureData("x, m", "y", [new FigureSeries("=cmd", [new FigurePoint(0.1, -2.5, 0, 0, "a \"word\"")])]);
        Assert.Equal("curve,\"x, m\",y,note\r\n'=cmd,0.1,-2.5,\"a \"\"word\"\"\"\r\n", data.ToCsv());

        // A table goes the same way.
        var table = new DocumentBuilder("t", "", Model.Units.UnitSystem.Metric).Table("", ["Part", "#Gain"], [["@SUM(A1)", "-3.2 dB"]]).Build();
        Assert.Equal("Part,Gain\r\n'@SUM(A1),-3.2 dB\r\n", Assert.Single(CsvTables.Of(table, "t")).Text);
    }

    [GeneratedRegex("<polyline points=\"([^\"]+)\"")]
    private static partial Regex Polyline();
}
