using Mastwright.Numerics;

namespace Mastwright.Structure.Solver;

/// <summary>Where a walk along the load path ended.</summary>
internal sealed record PathEnd(MastState State, double OwnShare, double CaseShare, double RelativeResidual, int Iterations, Outcome Outcome);

/// <summary>
/// Finds the equilibrium of one load case: first at one stroke, and when that fails or lands on something
/// unstable, by putting on first the own weight and then the case in steps that are cut as needed. A step
/// counts only when the out-of-balance is gone and no eigenvalue of the tangent is negative.
/// </summary>
internal sealed class Equilibrium(MastMesh mesh, LoadSet loads, SolverOptions options, Assembly assembly, CancellationToken cancellation)
{
    private const double AcceptedResidual = 1e-8;
    private const double LargestTurnRad = 0.25;
    private const double CredibleTurnRad = 0.5;

    /// <summary>Steps shorter than this start so near their end that plain Newton arrives if there is anything to arrive at.</summary>
    private const double SureStep = 1.0 / 8;

    private int _iterations;

    /// <summary>Smallest steps by which a neighbour's limit is undercut: 15 degrees of wind seldom change it more.</summary>
    private const int Margin = 3;

    public Assembly Assembly => assembly;

    /// <param name="start">A state to begin from, of a neighbouring case; null begins from the mast at rest.</param>
    /// <param name="guess">Share of the case at which a neighbouring case gave way; null when none did. It saves steps; the limit is known to the smallest load step either way.</param>
    public PathEnd Find(MastState? start, double? guess = null)
    {
        if (start is not null && TryReach(start, 1, 1) is { } near)
        {
            return near;
        }

        var rest = new MastState(mesh.NodeCount);
        return TryReach(rest, 1, 1) ?? Walk(rest, guess);
    }

    private PathEnd? TryReach(MastState from, double own, double share)
    {
        var step = Converge(from, own, share, careful: false);
        return step is { Stable: true } s && LargestTurn(s.State) < CredibleTurnRad
            ? new(s.State, own, share, s.Residual, _iterations, Outcome.Stable)
            : null;
    }

    private PathEnd Walk(MastState rest, double? guess)
    {
        // The weightless mast between its tensioned guys: if even that does not stand, nothing holds it.
        if (Carefully(rest, 0, 0) is not { Stable: true } first)
        {
            return new(rest, 0, 0, 0, _iterations, Outcome.Mechanism);
        }

        var end = new PathEnd(first.State, 0, 0, first.Residual, _iterations, Outcome.Unstable);
        end = Ramp(end, share => (share, 0.0));
        return end.OwnShare < 1 ? end : Ramp(end, share => (1.0, share), guess);
    }

    // Every share tried lies on a grid of one step, so where a walk begins does not show in where it ends. A guess is taken with a margin,
    // for a neighbour may carry a little less; what the mast carries more is found by steps that double.
    private PathEnd Ramp(PathEnd from, Func<double, (double Own, double Case)> shares, double? guess = null)
    {
        var end = from;
        var grid = Math.Pow(2, Math.Ceiling(Math.Log2(options.SmallestLoadStep)));
        var undercut = (Math.Floor((guess ?? 0) / grid) - Margin) * grid;
        var sure = undercut is > 0 and < 1 ? undercut : 1;
        double done = 0, step = sure;
        while (done < 1)
        {
            var next = Math.Min(done < sure ? sure : 1, done + step);
            if (Reached(end, done, next, shares) is { } reached)
            {
                step = done < sure && next == sure ? grid : 2 * step;
                done = next;
                end = reached;
            }
            else if (next - done <= grid)
            {
                return end with { Iterations = _iterations };
            }
            else
            {
                // The neighbour's limit is of no use then: on as without it.
                sure = 1;
                step = Halved(next - done);
            }
        }

        return end;
    }

    // The largest power of two below: half of one, and no share off the grid where the step was cut by the end of the road.
    private static double Halved(double step) => Math.Pow(2, Math.Ceiling(Math.Log2(step)) - 1);

    private PathEnd? Reached(PathEnd end, double done, double next, Func<double, (double Own, double Case)> shares)
    {
        var (own, share) = shares(next);
        var reached = next - done >= SureStep ? Carefully(end.State, own, share) : Converge(end.State, own, share, careful: false);
        return reached is { Stable: true } s ? new(s.State, own, share, s.Residual, _iterations, own >= 1 && share >= 1 ? Outcome.Stable : Outcome.Unstable) : null;
    }

    private sealed record Converged(MastState State, double Residual, bool Stable);

    private Converged? Carefully(MastState start, double own, double share) =>
        Converge(start, own, share, careful: false) ?? Converge(start, own, share, careful: true);

    private Converged? Converge(MastState start, double own, double share, bool careful)
    {
        var load = loads.At(own, share);
        var state = start.Copy();
        var step = new double[assembly.Size];
        var best = double.PositiveInfinity;
        var stale = 0;
        assembly.Evaluate(state, load, withTangent: true);
        for (var i = 0; i < options.MostIterations; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            _iterations++;
            var residual = assembly.CablesConverged ? assembly.ResidualN() / Measure(load) : double.PositiveInfinity;
            if (double.IsInfinity(residual))
            {
                return null;
            }

            assembly.HoldAndFactor();
            if (residual <= options.Tolerance || (residual <= AcceptedResidual && stale >= 2))
            {
                return new(state, residual, assembly.IsRegular && assembly.Factored!.IsPositiveDefinite);
            }

            // Eight steps without halving the best residual: this load has no equilibrium within reach.
            if (!assembly.IsRegular || stale >= 8)
            {
                return null;
            }

            stale = residual < 0.5 * best ? 0 : stale + 1;
            best = Math.Min(best, residual);
            for (var k = 0; k < step.Length; k++)
            {
                step[k] = -assembly.Gradient[k];
            }

            foreach (var h in assembly.Held)
            {
                step[h] = 0;
            }

            step = assembly.Factored!.Solve(step);
            state = Search(state, step, load, careful);
        }

        return null;
    }

    // A mast is far stiffer along itself than across, so a good step may first raise the out-of-balance: plain Newton
    // is tried first. The careful way goes along the step only until the work of the out-of-balance along it stops falling.
    private MastState Search(MastState state, double[] step, PlacedLoad load, bool careful)
    {
        var slope = Along(step);
        var share = StepLimit(step);
        for (var cut = 0; ; cut++)
        {
            var next = state.Moved(step, share);
            assembly.Evaluate(next, load, withTangent: true);
            var after = Along(step);
            if (cut >= 6 || (assembly.CablesConverged && (!careful || Math.Abs(after) <= 0.8 * Math.Abs(slope))))
            {
                return next;
            }

            share *= Math.Clamp(Math.Abs(slope) / (Math.Abs(slope) + Math.Abs(after)), 0.2, 0.6);
        }
    }

    // The whole load; where there is next to none, a thousandth of the largest guy tension.
    private double Measure(PlacedLoad load)
    {
        var tension = 0.0;
        for (var g = 0; g < load.Present.Length; g++)
        {
            tension = load.Present[g] ? Math.Max(tension, assembly.Cables[g].EndTensionN) : tension;
        }

        return Math.Max(Math.Max(load.TotalN, 1e-3 * tension), 1e-6);
    }

    private double Along(double[] step)
    {
        var sum = 0.0;
        for (var k = 0; k < step.Length; k++)
        {
            sum += step[k] * assembly.Gradient[k];
        }

        return sum;
    }

    private double StepLimit(double[] step)
    {
        double move = 0, turn = 0;
        for (var k = 0; k < step.Length; k += 6)
        {
            move = Math.Max(move, new Vec3(step[k], step[k + 1], step[k + 2]).Length);
            turn = Math.Max(turn, new Vec3(step[k + 3], step[k + 4], step[k + 5]).Length);
        }

        return Math.Min(1, Math.Min(0.1 * mesh.HeightM / Math.Max(move, 1e-300), LargestTurnRad / Math.Max(turn, 1e-300)));
    }

    private static double LargestTurn(MastState state) => state.T.Max(t => t.RotationVector().Length);
}
