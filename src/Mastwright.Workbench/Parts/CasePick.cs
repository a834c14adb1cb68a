using Mastwright.Analysis.Results;

namespace Mastwright.Workbench.Parts;

/// <summary>The load case a reader looks at.</summary>
/// <param name="Kind">The case without its wind direction; empty for the worst of all.</param>
/// <param name="Wind">Which wind direction of that kind, counted round from north.</param>
public sealed record CasePick(string Kind = "", int Wind = 0)
{
    /// <summary>The kinds of cases of a mast.</summary>
    public static List<string> Kinds(StandResult? stand) => stand is null ? [] : [.. stand.Cases.Select(c => c.Kind).Distinct()];

    /// <summary>The cases of the kind chosen that have a wind, round the compass.</summary>
    public List<CaseResult> Winds(StandResult? stand) => stand is null ? [] : [.. stand.Cases.Where(c => c.Kind == Kind && c.WindFromRad is not null).OrderBy(c => c.WindFromRad)];

    /// <summary>The case; null for the worst of all.</summary>
    public CaseResult? Of(StandResult? stand) => Kind.Length == 0 || stand is null ? null
        : Winds(stand) is { Count: > 0 } winds ? winds[Math.Min(Wind, winds.Count - 1)] : stand.Cases.FirstOrDefault(c => c.Kind == Kind);

    /// <summary>The wind direction that is hardest on the guys, or under which nothing stands.</summary>
    public CasePick Worst(StandResult? stand)
    {
        var winds = Winds(stand);
        return this with { Wind = winds.FindIndex(c => !c.Stable) is >= 0 and var unstable ? unstable : Math.Max(0, winds.IndexOf(winds.MaxBy(c => c.LargestGuyN)!)) };
    }
}
