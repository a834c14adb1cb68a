using System.Globalization;

namespace Mastwright.Build.Tension;

/// <summary>Names of notes, for tuning a guy by ear against an instrument or a phone.</summary>
public static class Pitch
{
    private static readonly string[] Names = ["C", "C♯", "D", "D♯", "E", "F", "F♯", "G", "G♯", "A", "A♯", "B"];

    /// <summary>
    /// Nearest note of equal temperament with A4 = 440 Hz (ISO 16) and what is left in cents, e.g. <c>"A2 +12 cents"</c>.
    /// </summary>
    public static string Nearest(double frequencyHz)
    {
        if (!(frequencyHz > 0)) throw new ArgumentOutOfRangeException(nameof(frequencyHz), frequencyHz, "A pitch is above 0 Hz.");
        // A4 is note 69 when C−1 is note 0.
        var note = 69 + (12 * Math.Log2(frequencyHz / 440));
        var nearest = (int)Math.Round(note);
        var cents = (int)Math.Round((note - nearest) * 100);
        var octave = (int)Math.Floor(nearest / 12.0) - 1;
        var name = Names[((nearest % 12) + 12) % 12] + octave.ToString(CultureInfo.InvariantCulture);
        return cents == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} {cents:+0;−0} cents");
    }
}
