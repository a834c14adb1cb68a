using System.Globalization;
using Mastwright.Model.Units;

namespace Mastwright.Report.Sheets;

/// <summary>Lengths as a tape shows them.</summary>
public static class TapeText
{
    private const double FootM = 0.3048;

    /// <summary>Metres to the millimetre, or feet, inches and sixteenths.</summary>
    public static string Of(double lengthM, UnitSystem units)
    {
        if (units == UnitSystem.Metric)
        {
            return lengthM.ToString("0.000", CultureInfo.InvariantCulture) + " m";
        }

        var sixteenths = (long)Math.Round(Math.Abs(lengthM) / FootM * 12 * 16);
        var (feet, rest) = (sixteenths / 192, sixteenths % 192);
        var (inches, part) = (rest / 16, rest % 16);
        var divisor = part == 0 ? 1 : Enumerable.Range(0, 5).Select(i => 1 << i).Last(d => part % d == 0);
        var fraction = part == 0 ? "" : $" {part / divisor}/{16 / divisor}";
        return (lengthM < 0 && sixteenths > 0 ? "−" : "") + (feet > 0 ? $"{feet} ft " : "") + $"{inches}{fraction} in";
    }
}
