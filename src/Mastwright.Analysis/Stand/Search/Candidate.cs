using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>One line of the design file to change.</summary>
/// <param name="Path">Dotted path of the field, e.g. <c>"masts[0].guys[1].strand"</c>.</param>
/// <param name="Key">Its key.</param>
/// <param name="Value">The value as it is written in the file.</param>
public sealed record DesignChange(string Path, string Key, string Value);

/// <summary>A changed design with what changed in it.</summary>
/// <param name="Words">What it is, in a few words.</param>
/// <param name="Mast">The mast, changed.</param>
/// <param name="Changes">The lines to change; empty when a whole block is to be replaced.</param>
public sealed record Candidate(string Words, Mast Mast, ImmutableArray<DesignChange> Changes)
{
    /// <summary>A block that replaces the one of the file, where single lines do not do; null when they do.</summary>
    public string? Block { get; init; }
}

/// <summary>A candidate as the structural checks judge it.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Use">Largest use of capacity of all checks that can fail; above 1 it does not pass, infinite when it does not stand.</param>
/// <param name="Worst">The check that governs; null when there is none.</param>
/// <param name="Failing">The checks that fail.</param>
/// <param name="Cost">What it costs, see <see cref="SearchCost"/>.</param>
/// <param name="Whole">Whether every wind direction and every screen was looked at, as a check of the station does.</param>
public sealed record Judgement(Candidate Candidate, double Use, Check? Worst, ImmutableArray<Check> Failing, double Cost, bool Whole)
{
    /// <summary>Whether no check fails.</summary>
    public bool Passes => Failing.IsEmpty;

    /// <summary>The setting check that is used most (initial tension neither too low nor too high), which says how a mast is set up and not how strong it is; null when it was not looked at.</summary>
    public Check? Setting { get; init; }

    /// <summary>The same judged with the setting of the guys counted like a strength.</summary>
    public Judgement WithSetting() => Setting is { } s && s.Ratio > Use ? this with { Use = s.Ratio, Worst = s } : this;

    /// <summary>What is left of the capacity of the check that governs: 1 less its use.</summary>
    public double Margin => 1 - Use;
}
