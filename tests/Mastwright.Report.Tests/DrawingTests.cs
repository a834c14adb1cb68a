using System.Globalization;
using System.Xml.Linq;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Tests;

/// <summary>Drawings measured with a ruler: millimetres on the sheet against metres of the design over the scale it names.</summary>
public class DrawingTests
{
    [Fact]
    public void The_site_plan_is_to_the_scale_it_names()
    {
        var figure = SitePlan.Of(Stations.Input("lattice-22m").Station);
        var mmPerM = 1000 / Denominator(figure);
        var foot = Elements(figure, "circle").Single(c => Number(c, "r") == 0.6);
        var (x, y) = (Number(foot, "cx"), Number(foot, "cy"));
        var anchors = Elements(figure, "rect").Where(r => Number(r, "width") == 2 && Number(r, "height") == 2).Take(3).Select(r => (X: Number(r, "x") + 1 - x, Y: y - Number(r, "y") - 1)).ToList();

        // 14 m to north, south-east (120°) and south-west (240°).
        Assert.Equal((0, 14 * mmPerM), (anchors[0].X, anchors[0].Y), Close);
        Assert.Equal((14 * Math.Sqrt(3) / 2 * mmPerM, -7 * mmPerM), (anchors[1].X, anchors[1].Y), Close);
        Assert.Equal((-14 * Math.Sqrt(3) / 2 * mmPerM, -7 * mmPerM), (anchors[2].X, anchors[2].Y), Close);

        // Fall circle of 0.45 m + 22 m; the boundary a line 40 m away at 290°, square to that bearing.
        Assert.Contains(Elements(figure, "circle"), c => Math.Abs(Number(c, "r") - (22.45 * mmPerM)) < 0.002);
        var boundary = Elements(figure, "line").First(l => l.Attribute("stroke-dasharray")?.Value == "6 1 1 1" && Number(l, "y1") < y + (45 * mmPerM));
        var (sin, cos) = Math.SinCos(290 * Math.PI / 180);
        Assert.All(new[] { "1", "2" }, n => Assert.Equal(40 * mmPerM, ((Number(boundary, "x" + n) - x) * sin) - ((Number(boundary, "y" + n) - y) * cos), 0.01));

        // Sixty radials of 20 m.
        var radials = Elements(figure, "line").Where(l => l.Attribute("stroke-dasharray")?.Value == "0.8 0.8").Select(Length).Where(l => Math.Abs(l - (20 * mmPerM)) < 0.005);
        Assert.Equal(60, radials.Count());
    }

    [Fact]
    public void A_distance_too_far_to_draw_is_named_in_the_key()
    {
        var figure = SitePlan.Of(Stations.Input("ice-27m").Station);

        Assert.Contains("beyond this sheet", figure.Svg, StringComparison.Ordinal);
        Assert.Contains("200 m", figure.Svg, StringComparison.Ordinal);
    }

    [Fact]
    public void The_elevation_is_to_the_scale_it_names_and_carries_its_dimensions()
    {
        var figure = Elevation.Of(Stations.Input("lattice-22m").Station, Stations.Input("lattice-22m").Station.Masts[0]);
        var mmPerM = 1000 / Denominator(figure);
        var shaft = Elements(figure, "rect").Single(r => r.Attribute("fill")!.Value == "#bbb");

        Assert.Equal(22 * mmPerM, Number(shaft, "height"), 0.002);
        Assert.All(new[] { "22.45 m", "10 m", "14 m to north", "1.45 m" }, t => Assert.Contains(t, figure.Svg, StringComparison.Ordinal));
        var axis = Number(shaft, "x") + (Number(shaft, "width") / 2);
        var guys = Elements(figure, "line").Where(l => Number(l, "stroke-width") == 0.3 && Math.Abs(Number(l, "x1") - axis) < 0.01 && Math.Abs(Number(l, "x2") - axis) > 5).Select(Length).Order().ToList();

        // Straight lengths from 11 m and 21 m up to 14 m out, twice each: one side and the other.
        Assert.Equal(new[] { 1, 1, 2, 2 }.Select(n => n == 1 ? Math.Sqrt((14 * 14) + (11 * 11)) * mmPerM : Math.Sqrt((14 * 14) + (21 * 21)) * mmPerM), guys, (a, b) => Math.Abs(a - b) < 0.01);
    }

    [Fact]
    public void Printed_at_full_size_a_drawing_keeps_its_millimetres()
    {
        foreach (var figure in Stations.Book("pair-80m").Blocks.OfType<Figure>())
        {
            var box = XElement.Parse(figure.Svg).Attribute("viewBox")!.Value.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToList();
            Assert.InRange(box[2], 10, Paper.A4.TextWidthMm);
            Assert.InRange(box[3], 10, Paper.Letter.TextHeightMm - 15);
        }
    }

    [Theory]
    [InlineData("lattice-22m")]
    [InlineData("tube-12m")]
    [InlineData("ice-27m")]
    [InlineData("pair-80m")]
    [InlineData("fails")]
    public void No_lettering_runs_off_a_sheet(string example)
    {
        foreach (var figure in Stations.Book(example).Blocks.OfType<Figure>())
        {
            var width = double.Parse(XElement.Parse(figure.Svg).Attribute("viewBox")!.Value.Split(' ')[2], CultureInfo.InvariantCulture);
            foreach (var text in Elements(figure, "text").Where(t => t.Attribute("transform") is null))
            {
                var wide = Drawing.TextWidth(text.Value, Number(text, "font-size"));
                var left = Number(text, "x") - (text.Attribute("text-anchor")?.Value switch { "middle" => wide / 2, "end" => wide, _ => 0 });
                Assert.True(left >= -0.5 && left + wide <= width + 0.5, $"“{text.Value}” runs off “{figure.Caption}”: {left:0.0} to {left + wide:0.0} of {width}");
            }
        }
    }

    [Theory]
    [InlineData(100, 150, UnitSystem.Metric, 750)]
    [InlineData(10, 150, UnitSystem.Metric, 75)]
    [InlineData(30.48, 152.4, UnitSystem.Us, 240)] // 100 ft on 6 in: one inch to 20 ft, the first of the series above 16.7
    public void Scales_are_the_usual_ones(double lengthM, double spaceMm, UnitSystem units, double denominator)
    {
        Assert.Equal(denominator, Scale.Fitting(lengthM, spaceMm, units).Denominator, 1e-9);
    }

    [Theory]
    [InlineData(0, 97)]
    [InlineData(-3, 7)]
    [InlineData(0.001, 0.0042)]
    [InlineData(5, 5)]
    public void Marks_of_an_axis_enclose_its_range(double low, double high)
    {
        var ticks = RoundSteps.Enclosing(low, high);

        Assert.True(ticks[0] <= low + 1e-12 && ticks[^1] >= high - 1e-12);
        Assert.InRange(ticks.Length, 3, 9);
    }

    [Theory]
    [InlineData(0.9, 1, 0.5)]
    [InlineData(1, 1, 1)]
    [InlineData(2.3, 2.5, 2)]
    [InlineData(3, 5, 2)]
    [InlineData(70, 100, 50)]
    [InlineData(0.0021, 0.0025, 0.002)]
    public void Steps_and_bars_are_round(double size, double step, double bar)
    {
        Assert.Equal(step, RoundSteps.AtLeast(size), 1e-9);
        Assert.Equal(bar, RoundSteps.AtMost(size), 1e-9);
        Assert.All(RoundSteps.Within(-size, 2.7 * size), t => Assert.InRange(t, -size * (1 + 1e-9), 2.7 * size * (1 + 1e-9)));
        Assert.InRange(RoundSteps.Within(-size, 2.7 * size).Length, 2, 6);
    }

    private static IEqualityComparer<(double, double)> Close { get; } = EqualityComparer<(double, double)>.Create((a, b) => Math.Abs(a.Item1 - b.Item1) < 0.005 && Math.Abs(a.Item2 - b.Item2) < 0.005, _ => 0);

    private static double Denominator(Figure figure)
    {
        var text = figure.Caption;
        var from = text.IndexOf("1:", StringComparison.Ordinal) + 2;
        return double.Parse(string.Concat(text[from..].TakeWhile(char.IsDigit)), CultureInfo.InvariantCulture);
    }

    private static IEnumerable<XElement> Elements(Figure figure, string name) => XElement.Parse(figure.Svg).Descendants().Where(e => e.Name.LocalName == name);

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)?.Value ?? "NaN", CultureInfo.InvariantCulture);

    private static double Length(XElement line) => double.Hypot(Number(line, "x2") - Number(line, "x1"), Number(line, "y2") - Number(line, "y1"));
}
