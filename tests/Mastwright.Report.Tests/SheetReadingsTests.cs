using System.Globalization;
using Mastwright.Analysis.Tune;
using Mastwright.Report.Documents;
using Mastwright.Report.Keep;
using NodaTime;

namespace Mastwright.Report.Tests;

public class SheetReadingsTests
{
    private static readonly OffsetDateTime Day = new(new LocalDateTime(2026, 5, 1, 12, 0), Offset.Zero);

    private static OffsetDateTime? Moment(string text) => text is "" or "2026-05-01" ? Day : null;

    /// <summary>The sheet is filled in with what a taut string of the guy's mass and chord would show at nine tenths of the tension: T = 4 m L² N²/t².</summary>
    [Fact]
    public void A_filled_in_sheet_becomes_entries_and_the_next_turns()
    {
        var station = Stations.Input("lattice-22m").Station;
        var (text, findings) = SheetReadings.Sheet(station, TestContext.Current.CancellationToken);
        Assert.Empty(findings);
        var standing = StandingMast.Of(station, station.Masts[0], station.Site.TensioningTemperatureK, TestContext.Current.CancellationToken).Mast!;
        var lines = text.Split('\n').Select(line =>
        {
            var guy = standing.Guys.FirstOrDefault(g => line.StartsWith($"A,{GuyNames.Short(g.Name)},", StringComparison.Ordinal));
            if (guy is null)
            {
                return line;
            }

            var span = TensionReadings.SpanOf(guy);
            var time = Math.Sqrt(4 * span.SpreadMassKgPerM * span.ChordM * span.ChordM * 100 / (0.9 * guy.AnchorTensionN));
            return $"A,{GuyNames.Short(guy.Name)},,2026-05-01,15 °C,,me,{(0.9 * guy.AnchorTensionN).ToString("0", CultureInfo.InvariantCulture)} N,,{time.ToString("0.000", CultureInfo.InvariantCulture).Insert(0, "10 in ")} s,,,,,";
        });
        var filled = string.Join('\n', lines);
        var head = text.Split('\n').First(l => l.StartsWith("mast,", StringComparison.Ordinal)).Split(',');
        Assert.Equal(["gauge", "pitch", "pulse"], head[7..10]);

        var entries = SheetReadings.Entries(station, filled, "day.csv", Moment, TestContext.Current.CancellationToken);

        Assert.Equal(12, entries.Value!.Count);
        Assert.All(entries.Value, e => Assert.Equal((Day, "me", 288.15), (e.At, e.Author, e.Weather.TemperatureK!.Value)));
        Assert.All(entries.Value, e => Assert.Equal(0.9 * standing.Guys.First(g => GuyNames.Short(g.Name) == e.Guy).AnchorTensionN, e.TensionN, 0.02 * e.TensionN));

        var document = SheetReadings.Document(station, entries.Value, TestContext.Current.CancellationToken);
        Assert.Contains(document.Blocks.OfType<Steps>().SelectMany(s => s.Items), i => i.Contains("tighter", StringComparison.Ordinal));
        Assert.DoesNotContain(document.Blocks.OfType<Note>(), n => n.Text.Contains("disagree", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("B,1/north,,2026-05-01,,,,1.8 kN", "mast-unknown", "mast")]
    [InlineData("A,1/nort,,2026-05-01,,,,1.8 kN", "guy-unknown", "guy")]
    [InlineData("A,1/north,,yesterday,,,,1.8 kN", "time-bad", "date")]
    [InlineData("A,1/north,,2026-05-01,warm,,,1.8 kN", "value-bad", "temperature")]
    [InlineData("A,1/north,,2026-05-01,,,,1800", "reading-bad", "gauge")]
    [InlineData("A,1/north,,2026-05-01,900 °C,,,1.8 kN", "value-range", "temperature")]
    [InlineData("A,1/north,,2026-05-01,-200 °C,,,1.8 kN", "value-range", "temperature")]
    [InlineData("A,1/north,,2026-05-01,,-2 m/s,,1.8 kN", "value-range", "wind")]
    [InlineData("A,1/north,,2026-05-01,,900 m/s,,1.8 kN", "value-range", "wind")]
    public void One_bad_field_is_named_with_its_place_and_nothing_is_made(string row, string code, string field)
    {
        var entries = SheetReadings.Entries(Stations.Input("lattice-22m").Station, "mast,guy,should,date,temperature,wind,by,gauge\n" + row + "\n", "day.csv", Moment, TestContext.Current.CancellationToken);

        Assert.Null(entries.Value);
        var finding = Assert.Single(entries.Errors);
        Assert.Equal((code, field, 2), (finding.Code, finding.Place!.Path, finding.Place.Line));
        Assert.NotNull(finding.WayOut);
    }

    /// <summary>A weightless taut string pulled at its third point by F gives by d = F a b/(T L): the reading of it gives T back, less what the pull itself adds.</summary>
    [Fact]
    public void A_side_pull_gives_the_tension_back()
    {
        var station = Stations.Input("lattice-22m").Station;
        var guy = StandingMast.Of(station, station.Masts[0], station.Site.TensioningTemperatureK, TestContext.Current.CancellationToken).Mast!.Guys[0];
        var span = TensionReadings.SpanOf(guy);
        var (a, b, pull) = (span.ChordM / 3, 2 * span.ChordM / 3, 60.0);
        var give = pull * a * b / (guy.AnchorTensionN * span.ChordM);

        var found = TensionReadings.Estimate(guy, "side-pull", string.Create(CultureInfo.InvariantCulture, $"{pull} N gives {give * 1000:0.0} mm at {a:0.000} m")).Value!;

        Assert.Equal(guy.AnchorTensionN, found.TautString.Value, 0.005 * guy.AnchorTensionN);
        Assert.InRange(found.AtAnchor.Value, 0.8 * guy.AnchorTensionN, 1.05 * guy.AnchorTensionN);
        Assert.Equal("side-pull", TensionReadings.WayOf(found.Method));
    }

    /// <summary>The way each reading is written, as shown to the user, can be read back, and every way is known again by its method.</summary>
    [Fact]
    public void Every_way_is_read_as_its_example_is_written()
    {
        var station = Stations.Input("lattice-22m").Station;
        var guy = StandingMast.Of(station, station.Masts[0], station.Site.TensioningTemperatureK, TestContext.Current.CancellationToken).Mast!.Guys[0];
        foreach (var (way, example) in TensionReadings.Ways)
        {
            var reading = TensionReadings.Estimate(guy, way, example);

            // Sag and tangent examples are those of another guy: their tension need not be possible here, but the words must be read.
            Assert.DoesNotContain(reading.Findings, f => f.Code == "reading-bad");
            if (way is not "sag" and not "tangent")
            {
                Assert.True(reading.IsUsable, way);
                Assert.Equal(way, TensionReadings.WayOf(reading.Value!.Method));
                Assert.True(reading.Value.AtAnchor.Value > 0, way);
            }
        }

        // A gauge in line with the guy shows its tension and nothing else.
        Assert.Equal(1800, TensionReadings.Estimate(guy, "gauge", TensionReadings.Ways["gauge"]).Value!.AtAnchor.Value, 1e-6);
    }
}
