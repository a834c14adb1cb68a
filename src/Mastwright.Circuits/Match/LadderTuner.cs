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

    /// <summary>
    /// Tunes everything that can be turned on a network that stands: coil and tap together on a tapped coil, every value
    /// elsewhere; null when no setting matches.
    /// </summary>
    public static Ladder? Retune(Ladder ladder, MatchProblem problem)
    {
        if (ladder.Sections is not [TappedCoilSection tapped])
            return Tune(ladder, problem, [.. Enumerable.Range(0, ladder.Sections.Length).Where(i => ladder.Sections[i] is not DrainSection)]);
        var (best, reflection) = Topologies.TappedCoil.Search(problem, tapped);
        return reflection < 1e-6 ? best : null;
    }

    internal static (Ladder Ladder, double Reflection) Search(Func<double[], Ladder> build, double[] start, MatchProblem problem)
    {
        var (values, reflection) = KnobSearch.Minimise(v => [Reflection(build(v), problem)], start);
        return (build(values), reflection);
    }

    private static Complex Reflection(Ladder ladder, MatchProblem problem) =>
        ladder.Build(problem).TrySolve(problem.FrequencyHz, out var solution, out _)
            ? Mismatch.Reflection(solution.InputImpedanceOhm(Ladder.Transmitter), problem.LineOhm)
            : Complex.One;

    private static Ladder Apply(Ladder ladder, ImmutableArray<int> free, double[] values)
    {
        var sections = ladder.Sections.ToBuilder();
        for (var k = 0; k < free.Length; k++)
            sections[free[k]] = sections[free[k]].WithValue(values[k]);
        return new(sections.ToImmutable());
    }
}
