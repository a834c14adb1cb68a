using System.Collections.Immutable;
using Mastwright.Fields.Meshing;
using Mastwright.Model.Trails;

namespace Mastwright.Fields.Solving;

/// <summary>How to solve.</summary>
/// <param name="Mesh">How finely to cut the wires.</param>
public sealed record SolverOptions(MeshOptions Mesh)
{
    /// <summary>The default mesh.</summary>
    public static SolverOptions Default { get; } = new(MeshOptions.Default);
}

/// <summary>A solution, or the reasons why there is none; warnings come with a solution too.</summary>
/// <param name="Solution">The solution; null when any finding is an error.</param>
/// <param name="Findings">Everything worth telling about the model.</param>
public sealed record SolveResult(WireSolution? Solution, ImmutableArray<Finding> Findings)
{
    /// <summary>The solution of a model known to be good.</summary>
    /// <exception cref="InvalidOperationException">There is none; the message repeats the first error.</exception>
    public WireSolution Require() =>
        Solution ?? throw new InvalidOperationException(Findings.First(f => f.Severity == Severity.Error).Message);
}

/// <summary>Solutions over frequency, in the order asked.</summary>
/// <param name="Solutions">One for each frequency; empty when any finding is an error.</param>
/// <param name="Findings">Everything worth telling about the model, without repetition.</param>
public sealed record SweepResult(ImmutableArray<WireSolution> Solutions, ImmutableArray<Finding> Findings);
