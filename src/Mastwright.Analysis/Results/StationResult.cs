using System.Collections.Immutable;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Results;

/// <summary>A number of the station that can be asked "why?" by name.</summary>
/// <param name="Id">Stable dotted name, e.g. <c>"radiate.A.160 m.base-peak-voltage"</c>.</param>
/// <param name="Trade">The trade it belongs to.</param>
/// <param name="Trail">The number and its answer.</param>
public sealed record NamedTrail(string Id, Trade Trade, Trail Trail);

/// <summary>Everything computed for a station: one consistent picture with its checks.</summary>
public sealed record StationResult
{
    /// <summary>The design this is the answer to.</summary>
    public required Station Station { get; init; }

    /// <summary>Fingerprint of the design: two results with the same fingerprint answer the same question.</summary>
    public required string Fingerprint { get; init; }

    /// <summary>The masts, in the order of the design.</summary>
    public required ImmutableArray<MastResult> Masts { get; init; }

    /// <summary>The groups, in the order of the design.</summary>
    public required ImmutableArray<GroupResult> Groups { get; init; }

    /// <summary>Every check of every trade.</summary>
    public required ImmutableArray<Check> Checks { get; init; }

    /// <summary>Every default taken because the design is silent.</summary>
    public required ImmutableArray<Assumption> Assumptions { get; init; }

    /// <summary>Warnings and notes met on the way.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Every number that can be asked "why?".</summary>
    public required ImmutableArray<NamedTrail> Quantities { get; init; }

    /// <summary>Safety cautions that go with this station, each once.</summary>
    public required ImmutableArray<string> Cautions { get; init; }

    /// <summary>The worst verdict of all checks: unknown counts as worse than caution, and failure as worst.</summary>
    public Verdict Verdict => Checks.Select(c => c.Verdict).DefaultIfEmpty(Verdict.Unknown).MaxBy(Rank);

    /// <summary>The worst check of each trade that has any, in the order of the job.</summary>
    public ImmutableArray<Check> WorstOfEachTrade =>
        [.. Checks.GroupBy(c => c.Trade).OrderBy(g => g.Key).Select(g => g.OrderByDescending(c => Rank(c.Verdict)).ThenByDescending(c => c.Ratio).First())];

    /// <summary>The worst check of each kind (same id before the bracket), worst first.</summary>
    public ImmutableArray<Check> WorstOfEachKind =>
        [.. Checks.GroupBy(c => KindOf(c.Id)).Select(g => g.OrderByDescending(c => Rank(c.Verdict)).ThenByDescending(c => c.Ratio).First())
            .OrderBy(c => c.Trade).ThenByDescending(c => Rank(c.Verdict)).ThenByDescending(c => c.Ratio)];

    /// <summary>The id of a check without the part in brackets.</summary>
    public static string KindOf(string id)
    {
        var bracket = id.IndexOf('[', StringComparison.Ordinal);
        return bracket < 0 ? id : id[..bracket];
    }

    private static int Rank(Verdict verdict) => verdict switch
    {
        Verdict.Pass => 0,
        Verdict.Caution => 1,
        Verdict.Unknown => 2,
        _ => 3,
    };
}
