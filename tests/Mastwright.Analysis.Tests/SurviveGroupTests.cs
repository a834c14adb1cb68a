using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Analysis.Survive;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Trails;
using Mastwright.Protection.People;

namespace Mastwright.Analysis.Tests;

/// <summary>What people, surfaces and guys see of a group: its masts driven at once.</summary>
public class SurviveGroupTests
{
    /// <summary>
    /// Conservation of energy: what the far field carries away over the hemisphere, the heat in wires and insulators and the loss in the earth under each mast
    /// add up to the group's power, and so do the powers the masts of the verdict take.
    /// </summary>
    [Fact]
    public void A_group_is_driven_with_its_whole_power()
    {
        var result = Examples.Result("pair-80m");
        var known = WireSolver.Solve(WireModels.Of(result.Station), 3.65e6, null, TestContext.Current.CancellationToken).Require();
        var drives = GroupDrives.Of(result.Station, 0, new Dictionary<double, WireSolution> { [3.65e6] = known }, TestContext.Current.CancellationToken);
        Assert.All(drives, d => Assert.Same(known.Mesh, d.Driven.Mesh));
        var directions = result.Groups.Single().Directions;
        Assert.Equal(directions.Length, drives.Length);
        foreach (var (drive, direction) in drives.Zip(directions))
        {
            var radiatedW = FarField.Of(drive.Driven).RadiatedPowerW;
            var earthW = result.Masts.Zip(drive.Driven.FeedCurrents, (m, i) => m.Bands[0].EarthLossOhm.Value * i.Magnitude * i.Magnitude).Sum();
            Assert.Equal(1, (radiatedW + drive.Driven.LossPowerW + earthW) / 1500, 0.005);
            Assert.Equal(1500, direction.Drives.Sum(d => d.PowerW.Value), 1e-6);
            Assert.All(direction.Drives.Zip(drive.Driven.FeedCurrents), d => Assert.Equal(d.First.CurrentRms.Value, d.Second.Magnitude, 1e-6 * d.Second.Magnitude));
        }
    }

    /// <summary>The foot is held against the crest of the worst band or switch position, worked by hand: peak · mismatch · modulation, whatever the power of the others.</summary>
    [Fact]
    public void Corona_at_the_foot_counts_modulation_and_the_groups()
    {
        var result = Examples.Result("pair-80m");
        var station = result.Station with { Bands = [result.Station.Bands[0] with { ModulationPeak = 1.5 }] };
        var places = Protection.Statics.RfCorona.Places(StaticsRun.Outline(station.Masts[0]), SiteAir.Thin(station), 0.9, 0.5);
        Check Foot(IEnumerable<GroupResult> groups) => StaticsRun.UnderPower(station, station.Masts[0], result.Masts[0], [.. groups], places).Single();

        var alone = Foot([]);
        Assert.Equal(result.Masts[0].Bands[0].BasePeakV.Value * station.Protection.Mismatch * 1.5, alone.Demand.Value, 1e-6);
        Assert.Equal("80 m", alone.GoverningCase);

        var strong = result.Groups.Select(g => g with { Directions = [.. g.Directions.Select(d => d with { Drives = [.. d.Drives.Select(v => v with { BasePeakV = v.BasePeakV with { Value = 3 * v.BasePeakV.Value } })] })] }).ToList();
        var together = Foot(strong);
        var highest = strong[0].Directions.Max(d => d.Drives.Single(v => v.Mast == "West").BasePeakV.Value);
        Assert.Equal(highest * station.Protection.Mismatch * 1.5, together.Demand.Value, 1e-6);
        Assert.StartsWith("pair, ", together.GoverningCase);
    }

    /// <summary>Insulation follows the crest: with 1.5 times the crest, and nothing else changed, every guy insulator of a group sees 1.5 times the voltage.</summary>
    [Fact]
    public void Guy_insulators_of_a_group_see_its_modulation()
    {
        var station = Examples.Result("pair-80m").Station;
        var solution = WireSolver.Solve(WireModels.Of(station), 3.65e6, null, TestContext.Current.CancellationToken).Require();
        double[] Volts(double crest) => [.. GroupRun.Guys(station with { Bands = [station.Bands[0] with { ModulationPeak = crest }] }, new Dictionary<double, WireSolution> { [3.65e6] = solution })
            .SelectMany(m => m).SelectMany(d => d.Insulators).Select(i => i.PeakV)];
        var plain = Volts(1);
        Assert.NotEmpty(plain);
        Assert.All(plain.Zip(Volts(1.5)), v => Assert.Equal(1.5, v.Second / v.First, 1e-9));
    }

    [Fact]
    public void The_fence_of_a_mast_in_a_group_counts_the_fields_of_all()
    {
        var station = Examples.Result("pair-80m").Station;
        var report = ExposureRun.Of(station, 0, Examples.Result("pair-80m").Masts[0]);
        Assert.Contains(report.Groups, g => g.Name.StartsWith("pair", StringComparison.Ordinal));
        Assert.Contains(report.Groups, g => g.Name.Contains("idle", StringComparison.Ordinal));
        Assert.All(report.Groups.Where(g => g.Population == Population.Public), g => Assert.True(g.Around[0].Governing.Value <= report.FenceM.Value + 1e-9));

        // Places nearer to the neighbour are the neighbour's: nothing lies beyond the half of the way between them on the bearing towards it.
        var apart = double.Hypot(station.Masts[1].EastM - station.Masts[0].EastM, station.Masts[1].NorthM - station.Masts[0].NorthM);
        Assert.All(report.Bands.SelectMany(b => b.Between), d => Assert.True(d.Governing.Value < apart));
    }
}
