using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Report.Sheets;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Tests;

/// <summary>Studies hide nothing that fell, and speak the reader's units.</summary>
public sealed class StudyWordsTests
{
    /// <summary>A kind of combination of which one direction finds no equilibrium says so in its row, beside the figures of those that stand.</summary>
    [Fact]
    public void The_wind_study_counts_directions_without_equilibrium()
    {
        var known = Stations.Input("lattice-22m").Result;
        var stand = known.Masts[0].Stand;
        var one = stand.Cases.First(c => c.Kind == "wind, coldest");
        var cases = stand.Cases.Replace(one, one with { Stable = false });
        var fallen = known with { Masts = [known.Masts[0] with { Stand = stand with { Cases = cases } }] };

        string Row(Analysis.Results.StationResult result, string kind, out Verdict? verdict)
        {
            var document = WindStudy.Study.Make(Stations.Input("lattice-22m") with { Known = result });
            var row = document.Blocks.OfType<DataTable>().Single(t => t.Caption.StartsWith("All ", StringComparison.Ordinal)).Rows.Single(r => r[0].Text == kind);
            verdict = row[1].Verdict;
            return row[1].Text;
        }

        var directions = stand.Cases.Count(c => c.Kind == "wind, coldest");
        Assert.Equal($"{directions}, 1 without equilibrium", Row(fallen, "wind, coldest", out var bad));
        Assert.Equal(Verdict.Fail, bad);
        Assert.Equal($"{directions}", Row(fallen, "wind, hottest", out var good));
        Assert.Null(good);
    }

    /// <summary>By hand: 4.7 and −12.3 Ω, a standing wave ratio of 137, a loss of a third.</summary>
    [Fact]
    public void Numbers_are_said_in_one_way()
    {
        Assert.Equal("4.7 − j12.3 Ω", StudyWords.Ohm(new(4.7, -12.3)));
        Assert.Equal("over 100", StudyWords.Swr(137));
        Assert.Equal("1.5", StudyWords.Swr(1.5));
        Assert.Equal("−1.8 dB", StudyWords.Db(10 * Math.Log10(2.0 / 3)));
        Assert.Equal("0.0 dBi", StudyWords.Dbi(-0.01));
        Assert.Equal("33.3 %", StudyWords.Share(1.0 / 3));
        Assert.Equal("∞", StudyWords.Percent(double.PositiveInfinity));
    }

    /// <summary>What a reader of US units is told of networks, currents and steps of inputs holds no metric length, and the other way round.</summary>
    [Fact]
    public void Networks_currents_and_steps_speak_the_units_of_the_station()
    {
        var us = Stations.Input("tube-12m");
        string Coils(string units)
        {
            var station = Stations.Read(Stations.Text("tube-12m").Replace("units: us", units, StringComparison.Ordinal)).Station;
            var coils = CabinetParts.Of(station, station.Masts[0], us.Result.Masts[0]).Select(p => p.Remark ?? "").Where(r => r.Contains(" turns of ", StringComparison.Ordinal)).ToList();
            Assert.NotEmpty(coils);
            return string.Join("; ", coils);
        }

        Assert.Matches(@" in on [\d.]+ in, [\d.]+ in long", Coils("units: us"));
        Assert.DoesNotContain(" mm", Coils("units: us"), StringComparison.Ordinal);
        Assert.Matches(@" mm on [\d.]+ mm, [\d.]+ mm long", Coils("units: metric"));

        var tiny = us.Station with { Masts = [us.Station.Masts[0] with { Sections = [us.Station.Masts[0].Sections[0]], Guys = [us.Station.Masts[0].Guys[0]], Attachments = [] }] };
        IEnumerable<string> Steps(ShownUnits units) => Sensitivity.Of(tiny with { Units = units }, 0, cancellation: TestContext.Current.CancellationToken).Lines.Select(l => l.Input);
        var inches = Steps(ShownUnits.Us).ToList();
        Assert.DoesNotContain(inches, w => w.Contains(" m ", StringComparison.Ordinal) || w.Contains(" mm", StringComparison.Ordinal) || w.Contains(" K", StringComparison.Ordinal) || w.Contains("°C", StringComparison.Ordinal));
        Assert.Contains("guys of level 1 2 ft lower", inches);
        Assert.Contains("coldest 20 °F colder", inches);
        Assert.DoesNotContain(Steps(ShownUnits.Metric), w => w.Contains(" ft", StringComparison.Ordinal) || w.Contains(" in ", StringComparison.Ordinal) || w.Contains("°F", StringComparison.Ordinal));
    }
}
