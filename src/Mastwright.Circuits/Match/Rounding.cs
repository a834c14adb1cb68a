using Mastwright.Circuits.Capacitors;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>Puts bought values into a network and tunes what can still be turned.</summary>
public static class Rounding
{
    /// <summary>
    /// Replaces values that have to be bought by the nearest that can be, tunes the rest (coils are wound and tapped at
    /// will), and solves again.
    /// </summary>
    /// <param name="candidate">The network.</param>
    /// <param name="pick">The value to use for a section, or null when the section can be made to any value.</param>
    public static MatchCandidate Apply(MatchCandidate candidate, Func<LadderSection, double?> pick)
    {
        var sections = candidate.Ladder.Sections.ToBuilder();
        var free = new List<int>();
        for (var i = 0; i < sections.Count; i++)
        {
            if (pick(sections[i]) is { } value)
                sections[i] = sections[i].WithValue(value);
            else if (sections[i] is not TappedCoilSection and not DrainSection)
                free.Add(i);
        }

        return candidate.With(LadderTuner.Best(new(sections.ToImmutable()), candidate.Problem, [.. free]));
    }

    /// <summary>Capacitors to the nearest preferred value of a series, coils free.</summary>
    /// <param name="candidate">The network.</param>
    /// <param name="series">One of <see cref="PreferredValues"/>.</param>
    public static MatchCandidate Preferred(MatchCandidate candidate, System.Collections.Immutable.ImmutableArray<double> series) =>
        Apply(candidate, s => s.ValueKind == QuantityKind.Capacitance ? PreferredValues.Nearest(series, s.Value) : null);

    /// <summary>The same network with a drain for static charge across the base.</summary>
    /// <param name="candidate">The network.</param>
    /// <param name="ohm">Resistance, ohms; a megohm drains and hardly heats (common practice, no source).</param>
    public static MatchCandidate WithDrain(MatchCandidate candidate, double ohm = 1e6) =>
        candidate.With(new Ladder(candidate.Ladder.Sections.Add(new DrainSection(ohm))));
}
