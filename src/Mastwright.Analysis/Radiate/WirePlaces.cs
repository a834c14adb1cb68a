using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>Finds the line of the design file that a wire comes from, so that what is wrong with a wire says where to mend it.</summary>
public static partial class WirePlaces
{
    /// <summary>The finding with the place of the first wire that its message names and the file knows; as it is when it has a place or names none.</summary>
    /// <param name="finding">What was found; wires stand in it between double quotes.</param>
    /// <param name="station">The design.</param>
    /// <param name="places">Where each field of the design stands.</param>
    public static Finding At(Finding finding, Station station, ImmutableDictionary<string, Place> places) =>
        finding.Place is null && Quoted().Matches(finding.Message).Select(m => PathOf(station, m.Groups[1].Value)).OfType<string>().Select(p => Nearest(places, p)).FirstOrDefault(p => p is not null) is { } place
            ? finding with { Place = place }
            : finding;

    /// <summary>The field of the design that makes a wire; null for a name no wire has.</summary>
    public static string? PathOf(Station station, string wire)
    {
        if (wire.StartsWith(WireModels.MetalPrefix, StringComparison.Ordinal) && station.NearbyMetal.ToList().FindIndex(m => wire == WireModels.MetalPrefix + m.Name) is >= 0 and var metal)
        {
            return $"nearby-metal[{metal}]";
        }

        for (var m = 0; m < station.Masts.Length; m++)
        {
            var (mast, path) = (station.Masts[m], $"masts[{m}]");
            if (wire.StartsWith($"mast {mast.Name}, run ", StringComparison.Ordinal) && Number().Match(wire, $"mast {mast.Name}, run ".Length) is { Success: true } run)
            {
                return $"{path}.sections[{int.Parse(run.Value, System.Globalization.CultureInfo.InvariantCulture) - 1}]";
            }

            for (var l = 0; l < mast.Guys.Length; l++)
            {
                if (wire.StartsWith($"guy {l + 1} of {mast.Name} to ", StringComparison.Ordinal))
                {
                    return $"{path}.guys[{l}]";
                }
            }

            if (wire.EndsWith($" of {mast.Name}", StringComparison.Ordinal))
            {
                return path + wire.Split(' ')[0] switch
                {
                    "lead" => ".base",
                    "top" => ".top-wires",
                    _ => ".radials",
                };
            }
        }

        return null;
    }

    // A field that the file leaves to its default has no place of its own: what holds it has.
    private static Place? Nearest(ImmutableDictionary<string, Place> places, string path)
    {
        for (var p = path; p.Length > 0; p = p[..Math.Max(0, p.LastIndexOf('.'))])
        {
            if (places.TryGetValue(p, out var place))
            {
                return place;
            }
        }

        return null;
    }

    [GeneratedRegex("\"([^\"]+)\"")]
    private static partial Regex Quoted();

    [GeneratedRegex(@"\G\d+")]
    private static partial Regex Number();
}
