using System.Collections.Immutable;

namespace Mastwright.Numerics.Search;

/// <summary>What a search found.</summary>
/// <param name="X">The best point.</param>
/// <param name="Value">The objective there.</param>
/// <param name="Evaluations">Evaluations of the objective.</param>
/// <param name="Converged">Whether the search settled before its cap.</param>
public sealed record SearchResult(ImmutableArray<double> X, double Value, int Evaluations, bool Converged);

/// <summary>The value to minimise at a point. Infinite or undefined means "not allowed here".</summary>
/// <param name="x">The point.</param>
public delegate double Objective(ReadOnlySpan<double> x);
