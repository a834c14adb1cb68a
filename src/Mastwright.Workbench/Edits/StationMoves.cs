using System.Globalization;
using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Workbench.Edits;

/// <summary>What dragging on a drawing writes into the text. Every method gives the new text, or null when nothing can be moved.</summary>
public static class StationMoves
{
    private const double FootM = 0.3048;

    // Nearer than this to its mast an anchor is no anchor.
    private const double NearestM = 0.5;

    /// <summary>Puts an anchor at a place, counted from its mast's foot.</summary>
    public static string? Anchor(string text, Station station, UnitSystem units, int mast, int anchor, double eastM, double northM)
    {
        if (mast >= station.Masts.Length || anchor >= station.Masts[mast].Anchors.Length)
        {
            return null;
        }

        var bearing = (Math.Atan2(eastM, northM) * 180 / Math.PI + 360) % 360;
        var path = $"masts[{mast}].anchors[{anchor}]";
        return TextEdits.Set(text, path + ".bearing", FormattableString.Invariant($"{bearing:0} °")) is { } turned
            ? TextEdits.Set(turned, path + ".distance", Length(Math.Max(NearestM, double.Hypot(eastM, northM)), units)) : null;
    }

    /// <summary>Moves an anchor away from its mast or nearer, its bearing kept.</summary>
    public static string? AnchorDistance(string text, Station station, UnitSystem units, int mast, int anchor, double distanceM) =>
        mast < station.Masts.Length && anchor < station.Masts[mast].Anchors.Length
            ? TextEdits.Set(text, $"masts[{mast}].anchors[{anchor}].distance", Length(Math.Max(NearestM, distanceM), units)) : null;

    /// <summary>Moves the guys of a level up or down the mast; they stay on it.</summary>
    public static string? Level(string text, Station station, UnitSystem units, int mast, int level, double heightM)
    {
        if (mast >= station.Masts.Length || level >= station.Masts[mast].Guys.Length)
        {
            return null;
        }

        var m = station.Masts[mast];
        return TextEdits.Set(text, $"masts[{mast}].guys[{level}].height", Length(Math.Clamp(heightM, m.Base.HeightM + NearestM, m.TopM), units));
    }

    // A hand on a mouse is good for a decimetre; the file can be written closer. Rounded down at the top, so that it stays on the mast.
    private static string Length(double lengthM, UnitSystem units) => units == UnitSystem.Us
        ? (Math.Floor((lengthM / FootM * 2) + 0.5 - 1e-9) / 2).ToString("0.#", CultureInfo.InvariantCulture) + " ft"
        : (Math.Floor((lengthM * 10) + 0.5 - 1e-9) / 10).ToString("0.0", CultureInfo.InvariantCulture) + " m";
}
