using Mastwright.Fields.Solving;
using Mastwright.Fields.Wires;
using static Mastwright.Fields.Tests.Monopoles;

namespace Mastwright.Fields.Tests;

/// <summary>The fitted sweep against the same mesh solved at every point.</summary>
public class SweepTests
{
    [Theory]
    [InlineData(3.4e6, 4.0e6)]
    [InlineData(1.8e6, 2.0e6)]
    [InlineData(6.0e6, 9.0e6)]
    public void Sweep_agrees_with_solutions_between_its_samples(double fromHz, double toHz)
    {
        var model = RadiationTests.GuyedMast();
        var sweep = BandSweep.Run(model, fromHz, toHz, 1e-3, cancellation: TestContext.Current.CancellationToken);
        Assert.True(sweep.Converged);
        Assert.InRange(sweep.SolvedHz.Length, 5, 20);
        var mesh = Meshing.WireMesh.Build(model, toHz).Mesh!;
        for (var i = 0; i < 9; i++)
        {
            var f = fromHz + ((toHz - fromHz) * (i + 0.37) / 9);
            Near(WireSolver.Solve(mesh, f).Require().FeedImpedance(), sweep.FeedImpedance(f), 0.003);
        }
    }

    [Fact]
    public void Progress_is_told_and_work_can_be_stopped()
    {
        var told = new Told();
        WireSolver.Solve(RadiationTests.GuyedMast(), 7.1e6, progress: told, cancellation: TestContext.Current.CancellationToken).Require();
        Assert.Equal(1, told.Last, 12);
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => WireSolver.Solve(RadiationTests.GuyedMast(), 7.1e6, cancellation: stop.Token));
    }

    private sealed class Told : IProgress<double>
    {
        private readonly Lock _lock = new();

        public double Last { get; private set; }

        public void Report(double value)
        {
            lock (_lock)
                Last = Math.Max(Last, value);
        }
    }

    [Fact]
    public void Sweep_of_a_bad_model_tells_why()
    {
        var sweep = BandSweep.Run(WireModel.Over(Ground.Perfect).WithFeed("base", "mast"), 1e6, 2e6);
        Assert.False(sweep.HasValues);
        Assert.NotEmpty(sweep.Findings);
    }
}
