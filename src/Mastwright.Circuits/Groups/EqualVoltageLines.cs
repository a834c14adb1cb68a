using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Lines;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>
/// Two masts fed through two lines of such lengths that the voltages at their near ends are equal, so the ends are simply
/// joined: the wanted currents fix voltage and current along each line, and the pairs of places of equal voltage are
/// searched up to three quarters of a wave.
/// </summary>
public static class EqualVoltageLines
{
    /// <summary>What it is called.</summary>
    public const string Title = "lines of arbitrary length";

    private const int Grid = 180;

    /// <summary>All pairs of lengths, the shortest sum first, each with a match to the transmitter's line.</summary>
    public static (ImmutableArray<GroupFeed> Feeds, ImmutableArray<Finding> Findings) Design(GroupProblem problem)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return ([], faults);
        if (problem.Masts != 2 || problem.Currents.Any(i => i == Complex.Zero))
            return ([], [new("group-two-lines", Severity.Error, "Lines of equal end voltage are searched for two driven masts.", Value: $"{problem.Masts} masts", Allowed: "2", WayOut: "Pair the masts, or use current forcing.")]);
        var drives = DriveTable.Of(problem).Drives;
        var most = 0.75 * problem.Feeder.WavelengthM(problem.FrequencyHz);
        var one = new StandingWave(problem.Feeder, most, problem.FrequencyHz, drives[0].VoltagePhasor, drives[0].CurrentPhasor);
        var two = one with { FarVoltage = drives[1].VoltagePhasor, FarCurrent = drives[1].CurrentPhasor };
        var feeds = Pairs(one, two, most, problem.ReachM).OrderBy(p => p.A + p.B).Select(p => Feed(problem, p.A, p.B)).ToImmutableArray();
        return feeds.IsEmpty
            ? ([], [new("group-no-equal-voltage", Severity.Error, "No two places on the lines carry equal voltage within three quarters of a wave.", WayOut: "Use line of another impedance, or another way of feeding.")])
            : (feeds, []);
    }

    private static GroupFeed Feed(GroupProblem p, double a, double b)
    {
        var parts = new List<Part>
        {
            p.Antenna(),
            new Line("W1", "box", GroupProblem.MastNode(0), p.Feeder, a),
            new Line("W2", "box", GroupProblem.MastNode(1), p.Feeder, b),
        };
        parts.AddRange(GroupParts.Matched(parts, "box", p));
        return new(Title, new Network(parts), p, DriveTable.Of(p).Findings);
    }

    // Newton from every cell of a grid in which the difference of the voltages is small; doubles are dropped.
    private static List<(double A, double B)> Pairs(StandingWave one, StandingWave two, double most, double least)
    {
        var found = new List<(double A, double B)>();
        var va = Enumerable.Range(0, Grid + 1).Select(k => one.VoltageAt(most * k / Grid)).ToArray();
        var vb = Enumerable.Range(0, Grid + 1).Select(k => two.VoltageAt(most * k / Grid)).ToArray();
        var scale = Math.Max(va.Max(v => v.Magnitude), vb.Max(v => v.Magnitude));
        for (var i = 0; i <= Grid; i++)
            for (var j = 0; j <= Grid; j++)
                if ((va[i] - vb[j]).Magnitude < 0.06 * scale && Newton(one, two, most * i / Grid, most * j / Grid) is var (a, b)
                    && a >= least && b >= least && a <= most && b <= most
                    && !found.Any(f => Math.Abs(f.A - a) + Math.Abs(f.B - b) < 1e-4 * most))
                    found.Add((a, b));
        return found;
    }

    private static (double A, double B)? Newton(StandingWave one, StandingWave two, double a, double b)
    {
        const double H = 1e-6;
        for (var i = 0; i < 30; i++)
        {
            var f = one.VoltageAt(a) - two.VoltageAt(b);
            if (f.Magnitude < 1e-10 * one.VoltageAt(a).Magnitude)
                return (a, b);
            var fa = (one.VoltageAt(a + H) - one.VoltageAt(a - H)) / (2 * H);
            var fb = -(two.VoltageAt(b + H) - two.VoltageAt(b - H)) / (2 * H);
            var det = (fa.Real * fb.Imaginary) - (fa.Imaginary * fb.Real);
            if (det == 0)
                return null;
            a -= ((f.Real * fb.Imaginary) - (f.Imaginary * fb.Real)) / det;
            b -= ((fa.Real * f.Imaginary) - (fa.Imaginary * f.Real)) / det;
        }

        return null;
    }
}
