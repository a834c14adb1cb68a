using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Mastwright.Catalog;

/// <summary>The answer to a look-up by name: the part, or the names that come nearest.</summary>
/// <typeparam name="T">Kind of part.</typeparam>
/// <param name="Asked">The name as it was asked for.</param>
/// <param name="Part">The part; null when there is none of that name.</param>
/// <param name="Suggestions">Up to three near names, nearest first; empty when found or when nothing is near.</param>
public sealed record Lookup<T>(string Asked, T? Part, ImmutableArray<string> Suggestions)
    where T : Part
{
    /// <summary>Whether the part is there.</summary>
    [MemberNotNullWhen(true, nameof(Part))]
    public bool Found => Part is not null;
}
