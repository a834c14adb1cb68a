using System.Text.RegularExpressions;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Tune;

/// <summary>Finds a guy by what a person writes: <c>level 1 to north</c>, <c>1/north</c> or <c>1 north</c>.</summary>
public static partial class GuyNames
{
    /// <summary>The full name meant, or a finding that lists the names there are.</summary>
    /// <param name="names">Full names, as the structure uses them.</param>
    /// <param name="written">What was written.</param>
    /// <param name="mast">The mast, for the message.</param>
    public static (string? Name, Finding? Problem) Find(IReadOnlyCollection<string> names, string written, string mast)
    {
        var found = names.Where(n => Bare(n) == Bare(written)).ToList();
        if (found.Count == 1)
        {
            return (found[0], null);
        }

        var near = NearMiss.Of(Bare(written), names.Select(Bare));
        return (null, new Finding(
            "guy-unknown", Severity.Error, $"Mast {mast} has no guy “{written}”.", Value: written, Allowed: string.Join("; ", names.Select(Short)),
            WayOut: near is null ? "Write level and anchor, e.g. 1/north." : $"Did you mean “{Short(names.First(n => Bare(n) == near))}”?"));
    }

    /// <summary>The short way to write a full name: <c>1/north</c>.</summary>
    public static string Short(string name) => Full().Match(name) is { Success: true } m ? $"{m.Groups[1].Value}/{m.Groups[2].Value}" : name;

    private static string Bare(string name) => Parts().Replace(name.Trim().ToLowerInvariant(), "/").Replace("level/", "", StringComparison.Ordinal).Trim('/');

    [GeneratedRegex(@"^level (\d+) to (.+)$")]
    private static partial Regex Full();

    // A level's number is told from its anchor by "to", a slash, a colon or a blank.
    [GeneratedRegex(@"\s*[/:]\s*|\s+to\s+|\s+")]
    private static partial Regex Parts();
}
