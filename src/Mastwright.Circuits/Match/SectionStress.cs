using System.Collections.Immutable;
using Mastwright.Circuits.Quantities;

namespace Mastwright.Circuits.Match;

/// <summary>What one section of a match goes through at full power; a section of several coupled parts counts as one.</summary>
/// <param name="Name">Reference name, e.g. <c>L1</c>.</param>
/// <param name="Section">The section.</param>
/// <param name="Voltage">Highest crest voltage across it; of a coil to ground, from its hot end to ground.</param>
/// <param name="Current">Highest RMS current in it.</param>
/// <param name="HeatW">Heat in it, watts.</param>
public sealed record SectionStress(string Name, LadderSection Section, PeakVolts Voltage, RmsAmps Current, double HeatW)
{
    /// <summary>Every section of a match, the one at the line first.</summary>
    public static ImmutableArray<SectionStress> Of(MatchCandidate candidate) =>
        [.. Enumerable.Range(0, candidate.Ladder.Sections.Length).Select(i => Of(candidate, i))];

    private static SectionStress Of(MatchCandidate candidate, int i)
    {
        var (ladder, name) = (candidate.Ladder, candidate.Ladder.NameOf(i));
        var states = candidate.Solution.Parts.Where(p => p.Name == name || p.Name == name + "b").ToList();
        var voltage = states.Max(p => p.PeakVoltage);
        if (ladder.Sections[i] is TappedCoilSection or TransformerSection)
        {
            double At(int k) => candidate.Solution.NodeVoltage(ladder.NodeAfter(k)).Magnitude;
            voltage = new RmsVolts(Math.Max(At(i), At(i + 1))).ToPeak();
        }

        return new(name, ladder.Sections[i], voltage, states.Max(p => p.HighestCurrent), states.Sum(p => p.DissipationW));
    }
}
