using System.Collections.Immutable;

namespace Mastwright.Workbench.Work;

/// <summary>One design a search has judged.</summary>
/// <param name="Words">What it is.</param>
/// <param name="Cost">What it costs, in the unit the search names; less is better.</param>
/// <param name="Merit">What it is worth, in the unit the search names; more is better.</param>
/// <param name="Passes">Whether it passes what the search holds it to.</param>
/// <param name="Sure">Whether it was judged with everything, not only by a first look or an estimate.</param>
/// <param name="Governs">What governs it; empty when nothing does.</param>
/// <param name="Adopt">Writes it into a text; gives null when the text has no such place.</param>
public sealed record Found(string Words, double Cost, double Merit, bool Passes, bool Sure, string Governs, Func<string, string?> Adopt);

/// <summary>Everything a search has judged so far. Never changes: a new moment is a new set.</summary>
/// <param name="CostAxis">What the cost is, with its unit.</param>
/// <param name="MeritAxis">What the merit is, with its unit.</param>
/// <param name="All">What was judged, in order.</param>
public sealed record FoundSet(string CostAxis, string MeritAxis, ImmutableArray<Found> All)
{
    /// <summary>The design as it is; null while it is not judged.</summary>
    public Found? Now { get; init; }

    /// <summary>Whether what is sure and what is not answer different questions, so that each has a front of its own and the estimate's is drawn.</summary>
    public bool Mixed { get; init; }

    /// <summary>What the reader must know.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>Those that pass and that no other beats in both, from the cheapest up. What is sure stands before what is not.</summary>
    public ImmutableArray<Found> Front
    {
        get
        {
            var front = ImmutableArray.CreateBuilder<Found>();
            var sure = !Mixed && All.Any(f => f is { Passes: true, Sure: true });
            foreach (var f in All.Where(f => f.Passes && f.Sure == sure).OrderBy(f => f.Cost).ThenByDescending(f => f.Merit))
            {
                if (front.Count == 0 || f.Merit > front[^1].Merit + 1e-9)
                {
                    front.Add(f);
                }
            }

            return front.ToImmutable();
        }
    }
}
