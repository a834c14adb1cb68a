using Mastwright.Analysis.Stand;
using Mastwright.Model.Trails;
using Mastwright.Numerics;
using Mastwright.Structure.Solver;
using Mastwright.Tests.Shared;

namespace Mastwright.Analysis.Tests;

/// <summary>Patch loads of EN 1993-3-1 annex B.3.2: mean wind and gusts on one stretch at a time.</summary>
public class PatchTests
{
    private static readonly string Pair = File.ReadAllText(Repository.File("examples", "pair-80m.yaml"));

    private static double Force(Structure.Mast.LoadCase c) => c.MastLoads.Sum(l => l.Points.Zip(l.Points.Skip(1), (a, b) => (b.HeightM - a.HeightM) * (a.LoadNPerM + b.LoadNPerM).Length / 2).Sum());

    /// <summary>Mean wind and the gusts on all spans together are the peak wind on the whole mast; half of the patches are the spans.</summary>
    [Fact]
    public void Mean_and_all_spans_together_are_the_peak_wind()
    {
        var station = Examples.Read(Pair).Station!;
        var model = StandModel.Of(station, station.Masts[0]);
        var patches = PatchRun.Patches(model).ToList();

        // Two levels below the top: three stretches between supports and top, and three from middle to middle.
        Assert.Equal(6, patches.Count);
        Assert.Equal(model.Structure.HeightM, patches.Take(3).Sum(p => p.HighM - p.LowM), 1e-9);
        Assert.Equal(model.Structure.HeightM, patches.Skip(3).Sum(p => p.HighM - p.LowM), 1e-9);

        var direction = LoadCases.Patched(station, model, 12, patches)[0];
        var peak = LoadCases.Of(station, model).First(c => c.Case.Name.StartsWith("wind, hottest, from 0", StringComparison.Ordinal)).Case;
        var mean = Force(direction.Mean);
        var gusts = direction.Patches.Take(3).Sum(p => Force(p) - mean);
        Assert.Equal(Force(peak), mean + gusts, 0.002 * Force(peak));

        // EN 1991-1-4 at 10 m in category II: Iv = 1/ln(10/0.05) = 0.189, so the mean is 1/(1 + 7·0.189) = 0.430 of the peak.
        Assert.InRange(mean / Force(peak), 0.38, 0.47);
    }

    /// <summary>By hand: mean 100 N·m about x, patches that change it by 3 and 4: 100 + √(9 + 16) = 105; compression 1000 + √(30² + 40²) = 1050.</summary>
    [Fact]
    public void Changes_add_by_the_root_of_their_squares()
    {
        SectionResult Of(double n, double m) => new(5, -n, new Vec3(0, m, 0), new Vec3(m, 0, 0), 0);

        var together = PatchRun.Together(Of(1000, 100), [Of(1030, 103), Of(960, 96)]);

        Assert.Equal(-1050, together.AxialN, 1e-9);
        Assert.Equal(105, together.BendingMomentNm, 1e-9);
        Assert.Equal(105, together.ShearN, 1e-9);
    }

    /// <summary>
    /// A wind the mast stands from some sides only: the sides it does not stand fail it by name, none is left out because nothing came of it. Three alike anchors
    /// make the mast the same from every third of the compass, so the sides that fail come in threes, 120° apart.
    /// </summary>
    [Fact]
    public void Directions_that_find_no_equilibrium_fail_the_mast()
    {
        var weak = File.ReadAllText(Repository.File("examples", "fails.yaml")).Replace("method: asce-7-16, speed: 120 mph", "method: en-1991-1-4, speed: 18 m/s", StringComparison.Ordinal);
        var station = Examples.Read(weak).Station!;
        var model = StandModel.Of(station, station.Masts[0]);
        var directions = LoadCases.Patched(station, model, 12, [.. PatchRun.Patches(model)]);
        var prepared = MastSolver.Prepare(model.Structure, directions.SelectMany(d => d.Patches.Prepend(d.Mean)));

        var answer = PatchRun.Of(station, model, prepared, TestContext.Current.CancellationToken);

        var names = directions.Select(d => d.Name).ToList();
        var fallen = answer.Fallen.Select(f => names.IndexOf(f)).ToHashSet();
        Assert.InRange(fallen.Count, 1, 11);
        Assert.All(fallen, f => Assert.Contains((f + 4) % 12, fallen));
        var checks = PatchRun.Guys(station, model, answer).ToList();
        var check = checks.Single(c => c.Id == "stand.stability.patch[X]");
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Equal(fallen.Count, check.Demand.Value);
        Assert.Equal(answer.Fallen[0], check.GoverningCase);

        // Guys are still judged by the sides it stands.
        Assert.Equal(3, checks.Count(c => c.Id.StartsWith("stand.guy.patch", StringComparison.Ordinal)));
    }

    [Fact]
    public void Members_and_guys_are_held_to_the_patches()
    {
        var station = Examples.Read(Pair).Station!;
        var answer = StandRun.Of(station, station.Masts[0], TestContext.Current.CancellationToken);

        Assert.Equal(2, answer.Checks.Count(c => c.Id.StartsWith("stand.guy.patch", StringComparison.Ordinal)));
        Assert.All(answer.Checks.Where(c => c.Id.StartsWith("stand.guy.patch", StringComparison.Ordinal)), c => Assert.True(c.Verdict == Verdict.Pass && c.Ratio > 0.1));
        Assert.Contains(answer.Checks, c => c.GoverningCase.StartsWith("gust patches", StringComparison.Ordinal));
    }
}
