using Mastwright.Model.Trails;
using Mastwright.Workbench.Desks;

namespace Mastwright.Workbench;

/// <summary>The words of the workbench that more than one page uses.</summary>
public static class Words
{
    /// <summary>The trades in the order of the job.</summary>
    public static IReadOnlyList<Trade> Job { get; } = [Trade.Site, Trade.Stand, Trade.Radiate, Trade.Feed, Trade.Survive, Trade.Build, Trade.Keep];

    /// <summary>The caution that stands on every page.</summary>
    public const string Caution = "Heights, stored tension, power lines, high voltage, strong fields and lightning kill. "
        + "These figures help a careful person; local codes, the makers' data and a licensed engineer come first.";

    /// <summary>What a trade is called.</summary>
    public static string Title(Trade trade) => trade.ToString();

    /// <summary>The address of a trade's page.</summary>
    public static string Address(Trade trade) => trade.ToString().ToLowerInvariant();

    /// <summary>The question a trade answers.</summary>
    public static string Question(Trade trade) => trade switch
    {
        Trade.Site => "Is there room for it, and what stands near?",
        Trade.Stand => "Does it stand in wind and ice, hot and cold?",
        Trade.Radiate => "How well does it radiate on each band?",
        Trade.Feed => "What does the line see, and what must the network bear?",
        Trade.Survive => "What happens in a storm, and how near may people come?",
        Trade.Build => "What is to be cut and set?",
        _ => "What must be looked at again, and against which figure?",
    };

    /// <summary>The sign of a verdict; never the colour alone.</summary>
    public static string Sign(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "✓",
        Verdict.Caution => "!",
        Verdict.Fail => "✕",
        _ => "?",
    };

    /// <summary>A verdict in one word.</summary>
    public static string Word(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "holds",
        Verdict.Caution => "holds, with caution",
        Verdict.Fail => "does not hold",
        _ => "cannot be decided",
    };

    /// <summary>The use of what is allowed. A check that is over its figure and yet only a caution, or one that cannot be decided, has no share to show.</summary>
    public static string Use(Check check) => check.Verdict switch
    {
        Verdict.Unknown => "open",
        Verdict.Caution when check.Ratio > 1 => "caution",
        _ when double.IsPositiveInfinity(check.Ratio) => "over",
        _ => View.Percent(check.Ratio),
    };

    /// <summary>The state of figures in words; empty when they are fresh.</summary>
    public static string Of(Freshness state) => state switch
    {
        Freshness.Fresh => "",
        Freshness.FirstLook => "a first look with few wind directions; the whole check is being computed",
        Freshness.Computing => "being computed; shown are the figures of the design before",
        Freshness.LastGood => "of the last text without errors",
        Freshness.Stopped => "stopped; shown are the figures of the design before",
        _ => "not computed yet",
    };

    /// <summary>A key of the design file as a label.</summary>
    public static string Label(string key)
    {
        var words = key.EndsWith("-q", StringComparison.Ordinal) ? key[..^2] + " Q" : key.Replace('-', ' ');
        return words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
    }
}
