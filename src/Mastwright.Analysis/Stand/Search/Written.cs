using System.Globalization;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>Values a search tries, rounded so that the file can say exactly what was judged.</summary>
internal static class Written
{
    private const double FootM = 0.3048;

    /// <summary>A length to the step of the reader's units: 0.1 m or 0.5 ft.</summary>
    public static double Round(double lengthM, UnitSystem units, bool down = false)
    {
        var steps = units == UnitSystem.Us ? lengthM / (FootM / 2) : lengthM / 0.1;
        var whole = down ? Math.Floor(steps + 1e-9) : Math.Round(steps);
        return units == UnitSystem.Us ? whole / 2 * FootM : whole / 10;
    }

    /// <summary>A rounded length as the file writes it.</summary>
    public static string Length(double lengthM, UnitSystem units) => units == UnitSystem.Us
        ? (lengthM / FootM).ToString("0.##", CultureInfo.InvariantCulture) + " ft"
        : lengthM.ToString("0.##", CultureInfo.InvariantCulture) + " m";

    /// <summary>A share as the file writes it.</summary>
    public static string Percent(double share) => (100 * share).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
