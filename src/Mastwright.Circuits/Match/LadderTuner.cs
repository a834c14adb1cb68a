using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Lines;

namespace Mastwright.Circuits.Match;

/// <summary>
/// Turns the knobs of a ladder until the line is matched at the design frequency, with the losses of the parts in:
/// Levenberg-Marquardt on the reflection coefficient over the logarithms of the values.
/// </summary>
public static class LadderTuner
{
    private const double Matched = 1e-10;

    /// <summary>Tunes chosen sections; null when no setting within a factor of a hundred matches to a reflection of 1e-6.</summary>
    /// <param name="ladder">Where to start.</param>
    /// <param name="problem">What to match.</param>
    /// <param name="free">Indices of the sections that may change.</param>
    public static Ladder? Tune(Ladder ladder, MatchProblem problem, params ImmutableArray<int> free)
    {
        if (free.IsEmpty)
            return null;
        var start = free.Select(i => ladder.Sections[i].Value).ToArray();
        var (best, reflection) = Search(values => Apply(ladder, free, values), start, problem);
        return reflection < 1e-6 ? best : null;
    }

    /// <summary>Tunes chosen sections as well as they can, whatever is left.</summary>
    public static Ladder Best(Ladder ladder, MatchProblem problem, params ImmutableArray<int> free) =>
        free.IsEmpty ? ladder : Search(values => Apply(ladder, free, values), [.. free.Select(i => ladder.Sections[i].Value)], problem).Ladder;

    internal static (Ladder Ladder, double Reflection) Search(Func<double[], Ladder> build, double[] start, MatchProblem problem)
    {
        var x = Array.ConvertAll(start, v => Math.Log(v));
        var origin = (double[])x.Clone();
        var r = Reflection(build, x, problem);
        var damping = 1e-3;
        for (var i = 0; i < 60 && r.Magnitude > Matched; i++)
        {
            var jacobian = new Complex[x.Length];
            for (var k = 0; k < x.Length; k++)
            {
                var moved = (double[])x.Clone();
                moved[k] += 1e-6;
                jacobian[k] = (Reflection(build, moved, problem) - r) / 1e-6;
            }

            var improved = false;
            for (var t = 0; t < 8 && !improved; t++)
            {
                var step = Step(jacobian, r, damping);
                var longest = step.Max(Math.Abs);
                var tried = x.Select((v, k) => v + (step[k] * Math.Min(1, 0.5 / longest))).ToArray();
                var rt = Reflection(build, tried, problem);
                improved = rt.Magnitude < r.Magnitude && tried.Zip(origin).All(p => Math.Abs(p.First - p.Second) < Math.Log(100));
                if (improved)
                    (x, r, damping) = (tried, rt, damping / 5);
                else
                    damping *= 8;
            }

            if (!improved)
                break;
        }

        return (build([.. x.Select(Math.Exp)]), r.Magnitude);
    }

    private static Complex Reflection(Func<double[], Ladder> build, double[] x, MatchProblem problem)
    {
        var network = build([.. x.Select(Math.Exp)]).Build(problem);
        return network.TrySolve(problem.FrequencyHz, out var solution, out _)
            ? Mismatch.Reflection(solution.InputImpedanceOhm(Ladder.Transmitter), problem.LineOhm)
            : Complex.One;
    }

    // (JᵀJ + λ·diag) s = -Jᵀr with the two real residuals folded into complex numbers; at most a handful of unknowns.
    private static double[] Step(Complex[] j, Complex r, double damping)
    {
        var n = j.Length;
        var lu = new Ac.DenseLu<double>(n);
        var s = new double[n];
        for (var a = 0; a < n; a++)
        {
            for (var b = 0; b < n; b++)
                lu.Add(a, b, (Complex.Conjugate(j[a]) * j[b]).Real);
            lu.Add(a, a, (damping * (Complex.Conjugate(j[a]) * j[a]).Real) + 1e-14);
            s[a] = -(Complex.Conjugate(j[a]) * r).Real;
        }

        if (lu.Factor() >= 0)
            return new double[n];
        lu.Solve(s);
        return s;
    }

    private static Ladder Apply(Ladder ladder, ImmutableArray<int> free, double[] values)
    {
        var sections = ladder.Sections.ToBuilder();
        for (var k = 0; k < free.Length; k++)
            sections[free[k]] = sections[free[k]].WithValue(values[k]);
        return new(sections.ToImmutable());
    }
}
