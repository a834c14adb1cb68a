using Mastwright.Numerics;
using Mastwright.Structure.Mast;
using Mastwright.Structure.Solver;
using Mastwright.Structure.Tests.Support;

namespace Mastwright.Structure.Tests.Solver;

/// <summary>The tangent against finite differences, far from equilibrium and with every kind of load.</summary>
public class TangentTests
{
    [Fact]
    public void Element_gradient_is_the_derivative_of_its_energy()
    {
        var (element, pose) = Bent();
        var r = element.Gradient(pose, 12);
        double[] analytic = [r.Chord.X, r.Chord.Y, r.Chord.Z, r.First.X, r.First.Y, r.First.Z, r.Second.X, r.Second.Y, r.Second.Z];
        for (var k = 0; k < 9; k++)
        {
            const double H = 1e-6;
            var numeric = (element.Energy(Moved(pose, k, H), 12) - element.Energy(Moved(pose, k, -H), 12)) / (2 * H);
            Near.Absolute(numeric, analytic[k], 1e-6 * analytic.Max(Math.Abs), $"component {k}");
        }
    }

    [Fact]
    public void Element_tangent_is_the_symmetric_derivative_of_its_gradient()
    {
        var (element, pose) = Bent();
        var blocks = new double[54];
        element.Tangent(pose, 12, blocks);
        var analytic = Dense(blocks);
        var numeric = new double[9, 9];
        for (var k = 0; k < 9; k++)
        {
            const double H = 1e-6;
            var plus = Flat(element.Gradient(Moved(pose, k, H), 12));
            var minus = Flat(element.Gradient(Moved(pose, k, -H), 12));
            for (var i = 0; i < 9; i++)
            {
                numeric[i, k] = (plus[i] - minus[i]) / (2 * H);
            }
        }

        var size = analytic.Cast<double>().Max(Math.Abs);
        for (var i = 0; i < 9; i++)
        {
            for (var j = 0; j < 9; j++)
            {
                // Rotations do not commute, so the raw derivative is lopsided by half the moment; its symmetric part is the second derivative.
                Near.Absolute(0.5 * (numeric[i, j] + numeric[j, i]), analytic[i, j], 1e-7 * size, $"[{i},{j}]");
            }
        }
    }

    [Fact]
    public void Tangent_of_the_whole_mast_at_equilibrium()
    {
        var mast = OffAxisMast();
        var loadCase = SkewCase(mast);
        var prepared = MastSolver.Prepare(mast, [loadCase], new() { LongestElementM = 3 });
        var solution = prepared.Solve(loadCase);
        Assert.Equal(Outcome.Stable, solution.Outcome);
        var mesh = prepared.Mesh!;
        var load = new LoadSet(mesh, loadCase).At(1, 1);
        var a = new Assembly(mesh, holdTwist: false);
        var size = a.Size;
        a.Evaluate(solution.State!, load, withTangent: true);
        var x = new double[size];
        var random = new Random(5);
        for (var trial = 0; trial < 6; trial++)
        {
            for (var i = 0; i < size; i++)
            {
                x[i] = a.Held.Contains(i) ? 0 : (random.NextDouble() - 0.5) * (i % 6 < 3 ? 1 : 0.1);
            }

            a.Evaluate(solution.State!, load, withTangent: true);
            var kx = a.Tangent.Multiply(x);
            const double H = 1e-6;
            a.Evaluate(solution.State!.Moved(x, H), load, withTangent: false);
            var plus = (double[])a.Gradient.Clone();
            a.Evaluate(solution.State!.Moved(x, -H), load, withTangent: false);
            var worst = Enumerable.Range(0, size).Where(i => !a.Held.Contains(i)).Max(i => Math.Abs(((plus[i] - a.Gradient[i]) / (2 * H)) - kx[i]));
            Assert.True(worst < 1e-6 * kx.Max(Math.Abs), $"off by {worst / kx.Max(Math.Abs):G3} of the largest");
        }
    }

    [Fact]
    public void Newton_closes_in_quadratically()
    {
        var mast = OffAxisMast();
        var s = MastSolver.Solve(mast, SkewCase(mast));
        Assert.True(s.Iterations <= 10, $"{s.Iterations} iterations");
        Assert.True(s.RelativeResidual < 1e-10);
    }

    internal static GuyedMast OffAxisMast() => new(
        new(3, -2, 1),
        [ReferenceMasts.Tube(14, 0.1397, 0.005), ReferenceMasts.Tube(30, 0.1143, 0.0045, 14)],
        [
            .. new double[] { 10, 130, 250 }.Select(a => new Guy($"l{a}", ReferenceMasts.Anchor(12, a, 0.5) + new Vec3(3, -2, 0), 14, ReferenceMasts.Strand, GuySetting.OfAnchorTension(3000), 0.2)),
            .. new double[] { 10, 130, 250 }.Select(a => new Guy($"u{a}", ReferenceMasts.Anchor(18, a, -1) + new Vec3(3, -2, 0), 27, ReferenceMasts.Strand, GuySetting.OfAnchorTension(2800), 0.25, 0.5)),
        ],
        FootFixity.Ball);

    internal static LoadCase SkewCase(GuyedMast mast) =>
        ReferenceMasts.Wind(mast, 700, 37, new LineLoad([new(0, new(50, 30, 0)), new(9, new(80, 40, 0)), new(9, new(90, 60, 0)), new(30, new(120, 90, 0))])) with
        {
            TemperatureK = 270,
            DeadLoadFactor = 1.2,
            PointLoads = [new(21.3, new(150, -80, -200)), new(30, new(60, 0, -100), new(0, 0, 60))],
        };

    private static (BeamElement Element, BeamElement.Pose Pose) Bent()
    {
        var element = new BeamElement(1.3, 2e5, 4e3, 3e3, 8e4, 1.2e-5);
        var first = Triad.Plumb.Turned(new(0.3, -0.4, 0.2));
        var second = first.Turned(new(0.15, 0.1, 0.08));
        return (element, new(new(0, 0, 1.3), new(-0.35, -0.42, -0.13), first, second));
    }

    private static BeamElement.Pose Moved(BeamElement.Pose p, int k, double h)
    {
        var v = new Vec3(k % 3 == 0 ? h : 0, k % 3 == 1 ? h : 0, k % 3 == 2 ? h : 0);
        return (k / 3) switch
        {
            0 => p with { ChordChange = p.ChordChange + v },
            1 => p with { First = p.First.Turned(v) },
            _ => p with { Second = p.Second.Turned(v) },
        };
    }

    private static double[] Flat(BeamElement.Response r) =>
        [r.Chord.X, r.Chord.Y, r.Chord.Z, r.First.X, r.First.Y, r.First.Z, r.Second.X, r.Second.Y, r.Second.Z];

    private static double[,] Dense(double[] blocks)
    {
        var m = new double[9, 9];
        (int Row, int Column)[] places = [(0, 0), (0, 3), (0, 6), (3, 3), (3, 6), (6, 6)];
        for (var b = 0; b < 6; b++)
        {
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j < 3; j++)
                {
                    m[places[b].Row + i, places[b].Column + j] = blocks[(9 * b) + (3 * i) + j];
                    m[places[b].Column + j, places[b].Row + i] = blocks[(9 * b) + (3 * i) + j];
                }
            }
        }

        return m;
    }
}
