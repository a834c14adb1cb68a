using System.Collections.Immutable;

namespace Mastwright.Circuits.Match;

/// <summary>What candidates are put in order by.</summary>
public enum MatchCriterion
{
    /// <summary>All of them, weighed (see <see cref="MatchRanking.Points"/>).</summary>
    Overall,

    /// <summary>Heat in the network, least first.</summary>
    Loss,

    /// <summary>Bandwidth, widest first.</summary>
    Bandwidth,

    /// <summary>Highest peak voltage, lowest first.</summary>
    PeakVoltage,

    /// <summary>Highest current, lowest first.</summary>
    Current,

    /// <summary>Number of parts, fewest first.</summary>
    PartCount,

    /// <summary>Price, cheapest first, unknown last.</summary>
    Price,
}

/// <summary>Puts candidates in order.</summary>
public static class MatchRanking
{
    /// <summary>The candidates in order of a criterion; ties are settled by loss.</summary>
    public static ImmutableArray<MatchCandidate> By(IEnumerable<MatchCandidate> candidates, MatchCriterion criterion) =>
        [.. candidates.OrderBy(c => Key(c, criterion)).ThenBy(c => c.LossW)];

    /// <summary>
    /// Demerits, the fewer the better (our own weighing, no source): one for each 0.1 dB of loss, for each 0.25 of worst
    /// standing wave ratio above 1.5, for each doubling of peak voltage above 1 kV, for each doubling of current above 5 A;
    /// a half for each part, one for no static drain, two for each value hard to make.
    /// </summary>
    public static double Points(MatchCandidate c) =>
        (c.LossDb / 0.1)
        + (Math.Max(0, Math.Min(c.WorstSwr, 20) - 1.5) / 0.25)
        + Math.Max(0, Math.Log2(c.HighestVoltage.Value / 1000))
        + Math.Max(0, Math.Log2(c.HighestCurrent.Value / 5))
        + (c.PartCount * 0.5)
        + (c.DrainsStatic ? 0 : 1)
        + (2 * c.Findings.Count(f => f.Code == "match-value"));

    private static double Key(MatchCandidate c, MatchCriterion criterion) => criterion switch
    {
        MatchCriterion.Overall => Points(c),
        MatchCriterion.Loss => c.LossW,
        MatchCriterion.Bandwidth => -c.Bandwidth.WidthHz,
        MatchCriterion.PeakVoltage => c.HighestVoltage.Value,
        MatchCriterion.Current => c.HighestCurrent.Value,
        MatchCriterion.PartCount => c.PartCount,
        _ => c.Price ?? double.MaxValue,
    };
}
