using System.Collections.Immutable;
using Mastwright.Circuits.Match.Topologies;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Match;

/// <summary>All sensible ways to match a load: every topology, tuned with the losses of its parts in, in rank order.</summary>
public static class MatchDesigner
{
    private static readonly Source Page = Source.Derived("docs/theory/circuits-matching.md");

    /// <summary>Designs every candidate.</summary>
    /// <param name="problem">What is to be matched.</param>
    /// <param name="criterion">What to rank by.</param>
    /// <returns>Candidates in rank order, or findings saying why the load cannot be matched.</returns>
    public static MatchResult Design(MatchProblem problem, MatchCriterion criterion = MatchCriterion.Overall)
    {
        var faults = problem.Faults();
        if (!faults.IsEmpty)
            return new([], faults);
        var candidates = TopologyList.All
            .SelectMany(t => t.Synthesise(problem).Select(ladder => new MatchCandidate(t.Id, t.Title, Tuned(ladder, problem), problem)))
            .DistinctBy(Fingerprint)
            .ToList();
        return new(MatchRanking.By(candidates, criterion), Unasked(problem));
    }

    /// <summary>The sections a builder turns when tuning: the last two with a value that can be changed at will, the one at the load first.</summary>
    public static ImmutableArray<int> Knobs(Ladder ladder) =>
    [
        .. Enumerable.Range(0, ladder.Sections.Length)
            .Where(i => ladder.Sections[i] is ReactiveSection or LineSection or StubSection or TransformerSection)
            .Reverse()
            .Take(2),
    ];

    // A ladder that its knobs cannot tune keeps its closed-form values; its mismatch then shows.
    private static Ladder Tuned(Ladder ladder, MatchProblem problem)
    {
        var knobs = Knobs(ladder);
        return knobs.Length == 2 && LadderTuner.Tune(ladder, problem, knobs) is { } tuned ? KeepTrails(ladder, tuned) : ladder;
    }

    // The trail explains the closed form; the tuned value says by how much the losses moved it.
    private static Ladder KeepTrails(Ladder closedForm, Ladder tuned)
    {
        var sections = tuned.Sections.ToBuilder();
        for (var i = 0; i < sections.Count; i++)
        {
            var before = closedForm.Sections[i];
            if (sections[i].Value == before.Value)
                sections[i] = before;
            else if (before.Why is { } why)
                sections[i] = sections[i] with { Why = Trail.Computed(why.Name + ", tuned", why.Symbol + "'", sections[i].Value, before.ValueKind, "closed form, then tuned until the line is matched with the parts' losses in", Page, why) };
        }

        return new(sections.ToImmutable());
    }

    private static ImmutableArray<Finding> Unasked(MatchProblem problem) =>
        problem.Load.IsPassive(problem.FrequencyHz) ? [] : [new("match-active-load", Severity.Error, "The load gives power back for some currents.", WayOut: "Check the antenna model.")];

    private static string Fingerprint(MatchCandidate candidate) =>
        string.Join('|', candidate.Ladder.Sections.Select(s => FormattableString.Invariant($"{s.Title} {s.Value:E5}")));
}
