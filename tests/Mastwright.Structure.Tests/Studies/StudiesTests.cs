using Mastwright.Structure.Batch;
using Mastwright.Structure.GuyLoss;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tensioning;
using Mastwright.Structure.Tests.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Studies;

public class StudiesTests
{
    [Fact]
    public void Batch_gives_the_same_answers_as_single_solves()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        LoadCase[] cases = [.. Enumerable.Range(0, 24).Select(i => ReferenceMasts.WindB(mast, 15 * i))];
        var prepared = MastSolver.Prepare(mast, cases);
        var batch = CaseBatch.Run(prepared, cases);
        foreach (var i in new[] { 0, 7, 13, 23 })
        {
            var single = MastSolver.Solve(mast, cases[i]);
            Assert.Equal(cases[i].Name, batch[i].CaseName);
            Near.Absolute(single.NodeAt(30).DisplacementM, batch[i].NodeAt(30).DisplacementM, 1e-8);
            Near.Relative(single.LargestMoment!.BendingMomentNm, batch[i].LargestMoment!.BendingMomentNm, 1e-6);
        }

        var e = MastEnvelope.Of(batch)!;
        Assert.Equal(24, e.Cases);
        Assert.Empty(e.NotCarried);

        // The upwind guy alone carries most: wind from its own direction.
        Assert.Equal("wind 180", e.Guys.First(g => g.Name == "14/0").LargestTensionN.CaseName);
        Near.Relative(5773.6, e.Guys.First(g => g.Name == "14/120").LargestTensionN.Value, 2e-3);
        Near.Relative(3545, e.Sections.Max(s => s.LargestBendingNm.Value), 3e-3);
        Assert.True(e.SmallestFootPressureN.Value < e.LargestFootPressureN.Value);
    }

    /// <summary>A case that gives way tells its neighbour where to look, and that saves steps; the share carried is that of a solve by itself, to the smallest load step.</summary>
    [Fact]
    public void Batch_of_cases_that_give_way_finds_the_shares_of_single_solves_in_fewer_steps()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        LoadCase[] cases = [.. Enumerable.Range(0, 12).Select(i => new LoadCase($"heavy top, pulled to {10 * i}°") { PointLoads = [new(15, new(32 * Math.Cos(i * Math.PI / 18), 32 * Math.Sin(i * Math.PI / 18), -60000))] })];
        var prepared = MastSolver.Prepare(mast, cases);
        var batch = CaseBatch.Run(prepared, cases, 1);
        MastSolution[] alone = [.. cases.Select(c => prepared.Solve(c))];
        Assert.All(alone, s => Assert.Equal(Outcome.Unstable, s.Outcome));
        Assert.All(alone.Zip(batch), p => Assert.Equal(p.First.LoadShare, p.Second.LoadShare, SolverOptions.Default.SmallestLoadStep + 1e-12));
        Assert.True(batch.Sum(s => s.Iterations) < alone.Sum(s => s.Iterations), $"{batch.Sum(s => s.Iterations)} of {alone.Sum(s => s.Iterations)} steps");
    }

    /// <summary>Neighbours of very unlike limits, whose guesses mislead both ways: every share lies on the grid of the smallest load step, beside that of a solve by itself, and is the same for any number of threads.</summary>
    [Theory]
    [InlineData(1.0 / 8)]
    [InlineData(1.0 / 128)]
    public void Shares_carried_are_the_same_for_any_number_of_threads(double grid)
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        LoadCase[] cases = [.. Enumerable.Range(0, 54).Select(i => ReferenceMasts.WindA(mast, 17 * i) with { PointLoads = [new(15, new(0, 0, -18000 * (1 + (1.7 * (i * 7 % 10 / 10.0)))))] })];
        var prepared = MastSolver.Prepare(mast, cases, new() { SmallestLoadStep = grid });
        double[] Shares(int threads) => [.. CaseBatch.Run(prepared, cases, threads).Select(s => s.LoadShare)];

        var one = Shares(1);
        Assert.Equal(one, Shares(2));
        Assert.Equal(one, Shares(7));
        Assert.All(one, s => Assert.Equal(Math.Round(s / grid), s / grid));
        Assert.All(cases.Zip(one), c => Assert.InRange(prepared.Solve(c.First).LoadShare, c.Second - grid, c.Second + grid));
        Assert.True(one.Distinct().Count() >= 3);
    }

    [Fact]
    public void Batch_reports_progress_and_can_be_cancelled()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        LoadCase[] cases = [.. Enumerable.Range(0, 12).Select(i => ReferenceMasts.WindA(mast, 30 * i))];
        var prepared = MastSolver.Prepare(mast, cases);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => CaseBatch.Run(prepared, cases, cancellation: stop.Token));
        var last = 0.0;
        CaseBatch.Run(prepared, cases, 1, new Told(x => last = x));
        Assert.Equal(1, last);
    }

    [Fact]
    public void Losing_a_guy_of_a_two_level_mast()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        var prepared = MastSolver.Prepare(mast, [ReferenceMasts.Still]);
        var results = GuyLossStudy.Run(prepared, ReferenceMasts.Still);
        Assert.Equal(6, results.Count);
        foreach (var r in results)
        {
            // Losing one of three symmetric guys lets the other two relax or the mast lean; never does it pass unnoticed.
            Assert.Equal(5, r.Stands ? r.Guys.Count : 5);
            if (r.Stands)
            {
                Assert.All(r.Guys, g => Assert.True(g.PeakN >= Math.Max(g.BeforeN, g.AfterN)));
                Assert.NotNull(r.Explain(r.Guys[0].Name));
                Assert.True(r.LeastFootPressureN <= r.PeakFootPressureN);
            }
        }

        // The three guys of a level are alike.
        Near.Relative(results[0].PeakBendingNm, results[1].PeakBendingNm, 1e-5);
        Near.Relative(results[3].PeakBendingNm, results[5].PeakBendingNm, 1e-5);
        Assert.True(results[0].Stands);
    }

    [Fact]
    public void Losing_a_guy_of_a_single_level_brings_the_mast_down()
    {
        var mast = ReferenceMasts.MastA(0, 120, 240);
        var prepared = MastSolver.Prepare(mast, [ReferenceMasts.Still]);
        Assert.All(GuyLossStudy.Run(prepared, ReferenceMasts.Still), r => Assert.False(r.Stands));
    }

    [Fact]
    public void Influence_of_a_turnbuckle_is_what_a_new_solve_says()
    {
        var mast = TangentTests.OffAxisMast();
        var prepared = MastSolver.Prepare(mast, []);
        var still = new LoadCase("still");
        var before = prepared.Solve(still);
        var influence = TensionInfluence.Of(prepared, before)!;
        const double TakeUp = 1e-5;
        foreach (var taken in new[] { "l10", "u130" })
        {
            GuyedMast Set(double change) => mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfLength(before.Guy(g.Name).UnstressedLengthM - (g.Name == taken ? change : 0)) })] };
            var plus = MastSolver.Solve(Set(TakeUp), still);
            var minus = MastSolver.Solve(Set(-TakeUp), still);
            foreach (var g in mast.Guys)
            {
                var numeric = (plus.Guy(g.Name).AnchorTensionN - minus.Guy(g.Name).AnchorTensionN) / 2;
                Near.Absolute(numeric, influence.ChangeN(g.Name, taken, TakeUp), 2e-4 * influence.ChangeN(taken, taken, TakeUp), $"{taken} on {g.Name}");
            }
        }
    }

    [Fact]
    public void Guys_set_plumb_have_the_wanted_tension()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        mast = mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(g.AttachmentHeightM < 20 ? 2800 : 3100) })] };
        var set = TensionSetting.SetPlumb(mast)!;
        Assert.True(set.LargestLeanM < 1e-7 && set.LargestMissShare < 1e-6);
        var s = MastSolver.Solve(set.Mast, ReferenceMasts.Still);
        Assert.All(s.Guys, g => Near.Absolute(g.Name.StartsWith("14", StringComparison.Ordinal) ? 2800 : 3100, g.AnchorTensionN, 0.01, g.Name));
    }

    /// <summary>On uneven ground equal tensions would push the mast aside; set plumb, the horizontal pulls of each level balance.</summary>
    [Fact]
    public void Uneven_anchors_are_set_plumb_with_unequal_tensions()
    {
        (double Azimuth, double Radius, double Z)[] anchors = [(20, 14, -1.5), (110, 12, 0.8), (200, 15, 2.0), (290, 13, -0.6)];
        var mast = new GuyedMast(
            Mastwright.Numerics.Vec3.Zero,
            [ReferenceMasts.Tube(24, 0.1397, 0.005)],
            [.. anchors.SelectMany(a => new[] { 11.0, 22.0 }.Select(h => new Guy($"{h}/{a.Azimuth}", ReferenceMasts.Anchor(a.Radius, a.Azimuth, a.Z), h, ReferenceMasts.Strand, GuySetting.OfAnchorTension(2500))))]);
        var released = MastSolver.Solve(mast, ReferenceMasts.Still);
        var set = TensionSetting.SetPlumb(mast)!;
        Assert.True(set.LargestLeanM < 0.05 * released.Nodes.Max(n => n.DisplacementM.Length), $"{set.LargestLeanM:G3} of {released.Nodes.Max(n => n.DisplacementM.Length):G3}");
        Assert.True(set.LargestLeanM < 2e-4);
        foreach (var h in new[] { 11.0, 22.0 })
        {
            var level = set.Solution.Guys.Where(g => g.Name.StartsWith($"{h}/", StringComparison.Ordinal)).ToList();
            Near.Relative(2500, level.Average(g => g.AnchorTensionN), 2e-3, $"mean at {h}");
            Assert.True(level.Max(g => g.AnchorTensionN) > 1.02 * level.Min(g => g.AnchorTensionN));
        }
    }

    /// <summary>Lami's theorem: three horizontal pulls in balance are as the sines of the angles between the other two.</summary>
    [Fact]
    public void Three_guys_at_odd_bearings_pull_as_Lami_says()
    {
        double[] azimuths = [0, 100, 250];
        var mast = new GuyedMast(
            Mastwright.Numerics.Vec3.Zero,
            [ReferenceMasts.Tube(20, 0.1143, 0.0045)],
            [.. azimuths.Select((a, i) => new Guy($"{a}", ReferenceMasts.Anchor(9 + i, a, 0.5 * i), 15, ReferenceMasts.Strand, GuySetting.OfAnchorTension(2800)))]);
        var set = TensionSetting.SetPlumb(mast)!;
        Assert.True(set.LargestLeanM < 1e-6);
        double Level(string name) => Math.Sqrt(Math.Pow(set.Solution.Guy(name).ForceOnMastN.X, 2) + Math.Pow(set.Solution.Guy(name).ForceOnMastN.Y, 2));
        double Sine(double degrees) => Math.Abs(Math.Sin(degrees * Math.PI / 180));
        Near.Relative(Sine(150) / Sine(110), Level("0") / Level("100"), 1e-4, "first to second");
        Near.Relative(Sine(100) / Sine(110), Level("250") / Level("100"), 1e-4, "third to second");
        Near.Relative(2800, set.Solution.Guys.Average(g => g.AnchorTensionN), 1e-3, "mean");
    }

    /// <summary>
    /// On a pivot the balance of the mast ties the tensions of a level together, so tension alone cannot set it plumb:
    /// rounds by gauge settle near the wanted tensions and then keep trading small differences.
    /// </summary>
    [Fact]
    public void Tensioning_in_rounds_comes_near_the_wanted_tensions_at_once()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        mast = mast with { Guys = [.. mast.Guys.Select(g => g with { Setting = GuySetting.OfAnchorTension(3000) })] };
        var steps = TensioningOrder.Play(mast, 0.5, 3);
        Assert.Equal(18, steps.Count);
        Near.Absolute(3000, steps[0].AnchorTensionN["14/0"], 0.05, "the guy just set");
        Near.Relative(steps[0].AnchorTensionN["14/0"], steps[0].AnchorTensionN["14/120"], 0.02, "its level follows");
        Assert.InRange(steps[0].AnchorTensionN["28/0"], 1200, 1600);
        Assert.All(steps.Where(s => s.Pass > 1), s => Assert.All(s.AnchorTensionN.Values, t => Near.Relative(3000, t, 0.01)));
        Assert.True(steps.Where(s => s.Pass == 3).Max(s => Math.Abs(s.TakeUpM)) < 0.02 * steps[0].TakeUpM);
    }

    /// <summary>A guy between rigid ends loses EA α ΔT when it warms; a published table for strand steps 100 to 110 lb per 20 °F, the formula gives 468 N.</summary>
    [Fact]
    public void Warm_guys_lose_tension()
    {
        var cable = new GuyCable(2.27e-5, 3.60e6 / 2.27e-5, 0.00635, 1.766, 11.7e-6);
        var rigid = ReferenceMasts.MastA(0, 120, 240) with { Segments = [ReferenceMasts.Tube(20, 0.1143, 0.0045) with { AxialStiffnessN = 1e12, BendingStiffnessNm2 = 1e10 }] };
        rigid = rigid with { Guys = [.. rigid.Guys.Select(g => g with { Cable = cable, Setting = GuySetting.OfAnchorTension(3000) })] };
        var rows = TensionSetting.Table(MastSolver.Prepare(rigid, []), [288.15, 288.15 + (20 / 1.8)]);
        Near.Relative(468, rows[0].AnchorTensionN["15/0"] - rows[1].AnchorTensionN["15/0"], 0.01);
    }

    [Fact]
    public void Tension_choice_takes_the_lowest_that_serves()
    {
        var mast = ReferenceMasts.MastB(0, 120, 240);
        LoadCase[] cases = [ReferenceMasts.Still, .. Enumerable.Range(0, 6).Select(i => ReferenceMasts.WindB(mast, 60 * i))];
        var loose = TensionChoice.Run(mast, _ => 29600, cases, new() { Shares = [0.02, 0.05, 0.1, 0.15] });
        Assert.Equal(4, loose.Trials.Count);
        Assert.Contains(loose.Trials[0].Misses, m => m.Contains("slack", StringComparison.Ordinal));
        Assert.NotNull(loose.Chosen);
        Assert.All(loose.Trials.TakeWhile(t => t != loose.Chosen), t => Assert.NotEmpty(t.Misses));

        // More tension presses harder on the foot and sways less.
        Assert.True(loose.Trials[3].FootPressureN > loose.Trials[2].FootPressureN);
        Assert.True(loose.Trials[3].TopSwayM <= loose.Trials[2].TopSwayM);
        var strict = TensionChoice.Run(mast, _ => 29600, cases, new() { Shares = [0.1], LeastBucklingFactor = 50 });
        Assert.Null(strict.Chosen);
        Assert.Equal("no-initial-tension-serves", strict.Finding!.Code);
    }

    private sealed class Told(Action<double> action) : IProgress<double>
    {
        public void Report(double value) => action(value);
    }
}
