using Mastwright.Analysis.Stand.Search;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

public class SensitivityTests
{
    /// <summary>Velocity pressure goes with the square of the speed (ASCE 7, eq. 26.10-1), so more wind never helps a mast that wind governs, and the list is ranked.</summary>
    [Fact]
    public void More_wind_moves_the_verdict_up_and_the_list_is_ranked()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))).Station!;

        var result = Sensitivity.Of(station, 0, cancellation: TestContext.Current.CancellationToken);

        Assert.True(result.Lines.Single(l => l.Input == "wind speed +10 %").Change > 0);
        Assert.True(result.Lines.Single(l => l.Input == "wind speed −10 %").Change < 0);
        var groups = result.Lines.GroupBy(l => l.Group).Select(g => g.Max(l => Math.Abs(l.Change))).ToList();
        Assert.Equal(groups.OrderDescending(), groups);
        Assert.Equal(result.Lines.Length, result.Lines.Select(l => l.Input).Distinct().Count());
    }

    /// <summary>A step is nothing but the station with that one input changed.</summary>
    [Fact]
    public void A_step_equals_the_station_with_that_input()
    {
        var station = Examples.Read(File.ReadAllText(Repository.File("examples", "tube-12m.yaml"))).Station!;
        var line = Sensitivity.Of(station, 0, cancellation: TestContext.Current.CancellationToken).Lines.Single(l => l.Input == "wind speed +10 %");

        var windier = station with { Site = station.Site with { Wind = station.Site.Wind with { SpeedMPerS = 1.1 * station.Site.Wind.SpeedMPerS } } };

        Assert.Equal(Sensitivity.Of(windier, 0, cancellation: TestContext.Current.CancellationToken).Use, line.Use, 1e-12);
    }
}
