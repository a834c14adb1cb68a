using System.Collections.Immutable;

namespace Mastwright.Circuits.Match;

/// <summary>Networks turned into things, in rank order.</summary>
/// <param name="Built">Those that can be built, best first.</param>
/// <param name="Unbuilt">Those that cannot, with what is missing.</param>
public sealed record BuiltNetworks(ImmutableArray<Realisation> Built, ImmutableArray<Realisation> Unbuilt)
{
    /// <summary>Builds the candidates in the order given until enough can be built.</summary>
    /// <param name="candidates">Candidates in rank order.</param>
    /// <param name="workshop">Room and stock.</param>
    /// <param name="enough">How many are enough.</param>
    public static BuiltNetworks Of(IEnumerable<MatchCandidate> candidates, Workshop workshop, int enough = int.MaxValue)
    {
        var (built, unbuilt) = (ImmutableArray.CreateBuilder<Realisation>(), ImmutableArray.CreateBuilder<Realisation>());
        foreach (var candidate in candidates)
        {
            if (built.Count >= enough)
                break;
            var real = Realisation.Of(candidate, workshop);
            (real.IsComplete ? built : unbuilt).Add(real);
        }

        return new(built.ToImmutable(), unbuilt.ToImmutable());
    }

    /// <summary>The first that can be built; else the one with least missing; null when there is no candidate.</summary>
    public Realisation? First => Built.FirstOrDefault() ?? Unbuilt.OrderBy(u => u.Missing.Length).ThenBy(u => u.Candidate.Swr).FirstOrDefault();
}
