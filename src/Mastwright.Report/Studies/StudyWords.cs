using System.Globalization;
using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Report.Studies;

/// <summary>Numbers of studies and books that are no single quantity, in words: impedances, standing wave ratios, decibels, shares.</summary>
public static class StudyWords
{
    private const double MostSwr = 100;

    /// <summary>An impedance, Ω.</summary>
    public static string Ohm(Complex z) => $"{QuantityFormat.Digits(z.Real, 3)} {(z.Imaginary < 0 ? "−" : "+")} j{QuantityFormat.Digits(Math.Abs(z.Imaginary), 3)} Ω";

    /// <summary>A standing wave ratio; above 100 only that it is.</summary>
    public static string Swr(double swr) => swr > MostSwr ? "over 100" : QuantityFormat.Digits(swr, 3);

    /// <summary>A ratio in decibels, one decimal.</summary>
    public static string Db(double db) => OneDecimal(db) + " dB";

    /// <summary>A gain over an isotropic radiator, one decimal.</summary>
    public static string Dbi(double dbi) => OneDecimal(dbi) + " dBi";

    /// <summary>A share in per cent, one decimal: for columns that are compared.</summary>
    public static string Share(double share) => OneDecimal(100 * share) + " %";

    /// <summary>A share in per cent to three digits: for uses and margins, which may be of any size.</summary>
    public static string Percent(double share) => double.IsInfinity(share) ? "∞" : QuantityFormat.Digits(100 * share, 3) + " %";

    private static string OneDecimal(double value) => value.ToString("0.0;−0.0;0.0", CultureInfo.InvariantCulture);
}
