using System.Collections.Immutable;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>What a search looks for.</summary>
public enum SearchGoal
{
    /// <summary>Smallest passing strand of each level.</summary>
    Strand,

    /// <summary>Best initial tension.</summary>
    Tension,

    /// <summary>Best heights of the guy levels.</summary>
    Heights,

    /// <summary>Best distance of the anchors within the plot.</summary>
    Radius,

    /// <summary>Fewest guy levels.</summary>
    Levels,

    /// <summary>Strand, fittings, heights, anchor distance and tension together.</summary>
    Joint,
}

/// <summary>What a search found.</summary>
/// <param name="Goal">What it looked for.</param>
/// <param name="Now">The design as it is.</param>
/// <param name="Best">The best design that passes every structural check; null when none does.</param>
/// <param name="Front">Designs that pass and that no other beats both in cost and in margin, from the cheapest up.</param>
/// <param name="Tried">Every candidate of the first look that a reader may want to see, in the order of the search.</param>
/// <param name="Judged">How many were judged.</param>
/// <param name="Remarks">What the reader must know of it.</param>
public sealed record SearchResult(
    SearchGoal Goal, Judgement Now, Judgement? Best, ImmutableArray<Judgement> Front, ImmutableArray<Judgement> Tried, int Judged, ImmutableArray<string> Remarks)
{
    /// <summary>Those that no other beats both in cost and in margin, from the cheapest up.</summary>
    public static ImmutableArray<Judgement> FrontOf(IEnumerable<Judgement> judged)
    {
        var front = ImmutableArray.CreateBuilder<Judgement>();
        foreach (var j in judged.Where(j => j.Passes).OrderBy(j => j.Cost).ThenByDescending(j => j.Margin))
        {
            if (front.Count == 0 || j.Margin > front[^1].Margin + 1e-9)
            {
                front.Add(j);
            }
        }

        return front.ToImmutable();
    }
}
