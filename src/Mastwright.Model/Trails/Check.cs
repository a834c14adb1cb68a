namespace Mastwright.Model.Trails;

/// <summary>The trade a check belongs to, in the order of the job.</summary>
public enum Trade
{
    /// <summary>Space, soil, wind, neighbours, power lines.</summary>
    Site,

    /// <summary>The mechanical structure.</summary>
    Stand,

    /// <summary>The antenna.</summary>
    Radiate,

    /// <summary>Matching and feed.</summary>
    Feed,

    /// <summary>Gap, lightning, static, corona, metals, people.</summary>
    Survive,

    /// <summary>Materials, sheets, tuning.</summary>
    Build,

    /// <summary>Inspection and upkeep.</summary>
    Keep,
}

/// <summary>What a check found.</summary>
public enum Verdict
{
    /// <summary>Demand is inside capacity.</summary>
    Pass,

    /// <summary>Inside, but by so little or on such terms that the builder should look.</summary>
    Caution,

    /// <summary>Demand is over capacity.</summary>
    Fail,

    /// <summary>Cannot be said: the model or the data does not reach this far.</summary>
    Unknown,
}

/// <summary>One thing that must hold: a demand held against a capacity, both with their trails.</summary>
/// <param name="Id">Stable dotted name, e.g. <c>"stand.guy.strength"</c>; followed by a part in brackets when there are several, e.g. <c>"stand.guy.strength[mast A, level 2]"</c>.</param>
/// <param name="Trade">The trade it belongs to.</param>
/// <param name="Title">What is checked, in plain words; it always begins with a capital, whatever a part or place in it is called.</param>
/// <param name="Demand">What is asked of the part.</param>
/// <param name="Capacity">What the part can take, partial factors included and shown in its trail.</param>
/// <param name="Ratio">Use of capacity: at most 1 is inside. For checks with a floor (a minimum that must be kept), capacity over demand, so that 1 is still the limit.</param>
/// <param name="Verdict">What was found.</param>
/// <param name="GoverningCase">The load case, band or direction that governs, in words.</param>
/// <param name="Cure">The cheapest change that would help; empty when nothing is needed.</param>
/// <param name="Caution">A safety caution that must be shown with it; null when none applies.</param>
public sealed record Check(
    string Id,
    Trade Trade,
    string Title,
    Trail Demand,
    Trail Capacity,
    double Ratio,
    Verdict Verdict,
    string GoverningCase,
    string Cure = "",
    string? Caution = null)
{
    /// <summary>What is checked, in plain words.</summary>
    public string Title { get; init => field = Capital(value); } = Capital(Title);

    /// <summary>Above this use of capacity a pass is shown as a caution.</summary>
    public const double CautionRatio = 0.9;

    /// <summary>Whether <see cref="Capacity"/> is a floor, the least that <see cref="Demand"/> may be, and not a ceiling.</summary>
    public bool HasFloor { get; init; }

    /// <summary>A check that demand stays at or below capacity.</summary>
    public static Check AtMost(string id, Trade trade, string title, Trail demand, Trail capacity, string governingCase, string cure, string? caution = null) =>
        FromRatio(id, trade, title, demand, capacity, Use(demand.Value, capacity.Value), governingCase, cure, caution);

    /// <summary>A check that a value stays at or above a floor.</summary>
    public static Check AtLeast(string id, Trade trade, string title, Trail value, Trail floor, string governingCase, string cure, string? caution = null) =>
        FromRatio(id, trade, title, value, floor, Use(floor.Value, value.Value), governingCase, cure, caution) with { HasFloor = true };

    private static Check FromRatio(string id, Trade trade, string title, Trail demand, Trail capacity, double ratio, string governingCase, string cure, string? caution)
    {
        var verdict = ratio > 1 ? Verdict.Fail : ratio > CautionRatio ? Verdict.Caution : Verdict.Pass;
        return new(id, trade, title, demand, capacity, ratio, verdict, governingCase, verdict == Verdict.Pass ? "" : cure, caution);
    }

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    // No capacity at all is the worst use of it; a demand of nothing uses nothing.
    private static double Use(double demand, double capacity) =>
        demand <= 0 ? 0 : capacity <= 0 ? double.PositiveInfinity : demand / capacity;
}
