using Mastwright.Model.Design;
using Mastwright.Model.Text;
using Mastwright.Model.Trails;

namespace Mastwright.App.Commands;

/// <summary>Which mast a command is about.</summary>
internal static class MastChoice
{
    /// <summary>The mast of a name; the only one when none was named.</summary>
    public static (Mast? Mast, Finding? Problem) Of(Station station, string? name)
    {
        if (name is null && station.Masts.Length == 1)
        {
            return (station.Masts[0], null);
        }

        if (station.Masts.FirstOrDefault(m => m.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } found)
        {
            return (found, null);
        }

        var names = station.Masts.Select(m => m.Name).ToList();
        return (null, name is null
            ? new Finding("mast-needed", Severity.Error, "The station has several masts; name the one this is about.", Written.Place("--mast"), Allowed: string.Join(", ", names), WayOut: $"Add --mast {names[0]}.")
            : new Finding("mast-unknown", Severity.Error, $"There is no mast “{name}”.", Written.Place("--mast"), name, string.Join(", ", names), NearMiss.Of(name, names) is { } near ? $"Did you mean “{near}”?" : "Name one of these."));
    }
}
