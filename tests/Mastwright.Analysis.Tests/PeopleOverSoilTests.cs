using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Survive;
using Mastwright.Fields.Earth;
using Mastwright.Fields.Solving;
using Mastwright.Model.Trails;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Fields where people stay, at the fence and across the guys' insulators, over the earth the file asks for.</summary>
public class PeopleOverSoilTests
{
    private static readonly string Tube = string.Join('\n', File.ReadAllText(Repository.File("examples", "tube-12m.yaml")).Replace("count: 32, length: 33 ft", "count: 8, length: 16 ft")
        .Split('\n').Where(l => !l.Contains("frequency:", StringComparison.Ordinal) || l.Contains("7.1 MHz", StringComparison.Ordinal)));

    private static readonly string Exact = Tube.Replace("soil: average land", "soil: average land\n  earth: exact");

    // Rope does not conduct: far fewer wires to sum over.
    private static string Roped(string text) => text.Replace("strand: 3/16 in EHS", "strand: 6 mm aramid");

    /// <summary>Limit: over soil as good as metal people and fence see the fields of a perfect plane, at the same power.</summary>
    [Fact]
    public void Soil_as_good_as_metal_leaves_the_fields_of_a_perfect_plane()
    {
        var station = Examples.Read(Roped(Tube)).Station!;
        station = station with { Masts = [station.Masts[0] with { Radials = station.Masts[0].Radials with { Count = 3, LengthM = 1 } }] };
        var (mast, band) = (station.Masts[0], station.Bands.Single());
        List<double> At(WireSolution solution)
        {
            var drive = MastDrive.Of(solution, 0, () => 0);
            var fields = drive.FieldsNear(station, mast);
            return [.. PeopleRun.Of(station, mast, band, drive, fields).Concat(FenceRun.AtFence(station, mast, band, drive, fields)).Select(c => c.Demand.Value)];
        }

        var perfect = At(WireSolver.Solve(WireModels.Of(station), band.FrequencyHz).Require());
        var metal = At(WireSolver.Solve(SoilModels.Of(station, new Soil("as good as metal", 1, 300)).Model, band.FrequencyHz).Require());

        Assert.True(perfect.Count >= 6);
        Assert.All(perfect.Zip(metal), p => Assert.InRange(p.Second, 0.97 * p.First, 1.03 * p.First));
    }

    [Fact]
    public void The_file_decides_over_which_earth_people_guys_and_fence_are_judged_and_the_number_says_so()
    {
        var estimate = StationAnalysis.Run(Examples.Read(Tube));
        var exact = StationAnalysis.Run(Examples.Read(Exact));
        foreach (var kind in (string[])["survive.people.electric", "survive.people.magnetic", "survive.fence.field", "survive.guy-insulator"])
        {
            Check Worst(Results.StationResult r) => r.Checks.Where(c => c.Id.StartsWith(kind, StringComparison.Ordinal)).MaxBy(c => c.Ratio)!;
            var (over, under) = (Worst(estimate), Worst(exact));

            Assert.Contains("perfect", over.Demand.Range, StringComparison.Ordinal);
            Assert.Contains("over the real soil", under.Demand.Range, StringComparison.Ordinal);
            Assert.DoesNotContain("perfect", under.Demand.Range, StringComparison.Ordinal);
            Assert.NotEqual(over.Demand.Value, under.Demand.Value);
            Assert.InRange(under.Demand.Value / over.Demand.Value, 0.3, 3);
        }
    }

    /// <summary>The same fields by another way: the study of near fields asks for whole rows at once and scales the drive itself.</summary>
    [Fact]
    public void The_verdict_sees_the_fields_of_the_study()
    {
        var station = Examples.Read(Roped(Exact).Replace("people-distance: 45 ft", "people-distance: 15 m")).Station!;
        var study = NearFieldRun.Of(station).Fields.Single();
        var rows = study.BetweenGuys.Concat(study.AlongGuy).Where(r => r.DistanceM == 15).ToList();
        var (mast, band) = (station.Masts[0], station.Bands.Single());
        var drive = MastDrive.Of(station, MastDrive.Solve(station, band.FrequencyHz, default), 0);
        var checks = PeopleRun.Of(station, mast, band, drive, drive.FieldsNear(station, mast));
        double Largest(string field) => checks.Where(c => c.Id.Contains(field, StringComparison.Ordinal)).Max(c => c.Demand.Value / Math.Sqrt(c.Demand.Inputs.Single(i => i.Kind == QuantityKind.Power).Value / band.PowerW));

        Assert.True(drive.OverSoil);
        Assert.InRange(Largest("electric"), 0.995 * rows.Max(r => r.ElectricVPerM), 1.3 * rows.Max(r => r.ElectricVPerM));
        Assert.InRange(Largest("magnetic"), 0.995 * rows.Max(r => r.MagneticAPerM), 1.3 * rows.Max(r => r.MagneticAPerM));
    }

    [Fact]
    public void Distances_to_the_limits_are_found_over_the_soil_too()
    {
        var reading = Examples.Read(Roped(Exact));
        var report = ExposureRun.Of(reading.Station!, 0, StationAnalysis.Run(reading).Masts[0]);

        Assert.Contains("over the real soil", report.Range, StringComparison.Ordinal);
        Assert.InRange(report.FenceM.Value, 1, 60);
        Assert.All(report.Bands.SelectMany(b => b.Between), d => Assert.InRange(d.Governing.Value, 0, 60));
    }
}
