namespace Mastwright.Structure.Solver;

/// <summary>How finely and how patiently to solve. The defaults suit masts of amateur size.</summary>
public sealed record SolverOptions
{
    /// <summary>The defaults.</summary>
    public static SolverOptions Default { get; } = new();

    /// <summary>Longest element; null divides the mast into about forty, at least four to a span.</summary>
    public double? LongestElementM { get; init; }

    /// <summary>Heights at which a node is wanted besides the ones the mast needs.</summary>
    public IReadOnlyList<double> ExtraNodeHeightsM { get; init; } = [];

    /// <summary>Wanted out-of-balance force as a share of the load.</summary>
    public double Tolerance { get; init; } = 1e-10;

    /// <summary>Newton steps allowed for one load step.</summary>
    public int MostIterations { get; init; } = 30;

    /// <summary>The load share below which a step is not cut further: the limit is then known to this share.</summary>
    public double SmallestLoadStep { get; init; } = 1.0 / 128;
}
