using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Match;

namespace Mastwright.Circuits.Drawing;

/// <summary>A point on the path of a match.</summary>
/// <param name="ImpedanceOhm">Impedance there, ohms.</param>
/// <param name="Reflection">Reflection coefficient against the line's impedance: the place on the Smith chart.</param>
public readonly record struct SmithPoint(Complex ImpedanceOhm, Complex Reflection);

/// <summary>The arc one section draws, from the load's side to the line's side.</summary>
/// <param name="Section">Reference name of the section, e.g. <c>L1</c>; <c>CB</c> for the base insulator.</param>
/// <param name="Title">What the section is.</param>
/// <param name="Points">Points along the arc; two for a section that jumps (a transformer, a tapped coil).</param>
public sealed record SmithArc(string Section, string Title, ImmutableArray<SmithPoint> Points);

/// <summary>The path of a match over the Smith chart, from the antenna to the line.</summary>
public static class SmithPath
{
    /// <summary>The arcs of a candidate, the one at the antenna first. Each ends where the next begins.</summary>
    /// <param name="candidate">The match.</param>
    /// <param name="steps">Points on each arc after the first.</param>
    public static ImmutableArray<SmithArc> Of(MatchCandidate candidate, int steps = 24)
    {
        var (problem, ladder) = (candidate.Problem, candidate.Ladder);
        var arcs = ImmutableArray.CreateBuilder<SmithArc>();
        var at = problem.Load.At(problem.FrequencyHz)[0, 0];
        if (problem.BaseShuntF > 0)
        {
            var with = Looking(new([]), problem);
            arcs.Add(new(Ladder.BaseInsulator, "base insulator", Shunt(at, with, steps, problem.LineOhm)));
            at = with;
        }

        for (var i = ladder.Sections.Length - 1; i >= 0; i--)
        {
            var section = ladder.Sections[i];
            var rest = ladder.Sections[(i + 1)..];
            var next = Looking(new(rest.Insert(0, section)), problem);
            var points = section switch
            {
                LineSection line => [.. Enumerable.Range(0, steps + 1).Select(k => Looking(new(rest.Insert(0, line.WithValue(line.LengthM * k / steps))), problem)).Select(z => Point(z, problem.LineOhm))],
                { IsSeries: false } => Shunt(at, next, steps, problem.LineOhm),
                ReactiveSection => [.. Enumerable.Range(0, steps + 1).Select(k => Point(at + ((next - at) * k / steps), problem.LineOhm))],
                _ => ImmutableArray.Create(Point(at, problem.LineOhm), Point(next, problem.LineOhm)),
            };
            arcs.Add(new(ladder.NameOf(i), section.Title, points));
            at = next;
        }

        return arcs.ToImmutable();
    }

    private static ImmutableArray<SmithPoint> Shunt(Complex from, Complex to, int steps, double lineOhm) =>
        [.. Enumerable.Range(0, steps + 1).Select(k => Point(1 / ((1 / from) + (((1 / to) - (1 / from)) * k / steps)), lineOhm))];

    private static SmithPoint Point(Complex z, double lineOhm) => new(z, Mismatch.Reflection(z, lineOhm));

    private static Complex Looking(Ladder ladder, MatchProblem problem) =>
        ladder.Build(problem).Solve(problem.FrequencyHz).InputImpedanceOhm(Ladder.Transmitter);
}
