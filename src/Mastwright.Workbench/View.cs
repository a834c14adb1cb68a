using System.Globalization;
using System.Numerics;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Studies;

namespace Mastwright.Workbench;

/// <summary>How one reader looks at the desk: units, and the number that is being asked about.</summary>
/// <param name="Units">The units shown.</param>
/// <param name="Ask">Opens the answer to "why?" for a number.</param>
/// <param name="AskCheck">Opens the answer for a check.</param>
public sealed record View(UnitSystem Units, Action<Trail> Ask, Action<Check> AskCheck)
{
    /// <summary>A trail's value with its unit.</summary>
    public string Show(Trail trail, int digits = 4) => trail.Kind == QuantityKind.Decibel
        ? Decibel(trail) : QuantityFormat.Show(trail, Units, digits);

    /// <summary>A value with its unit.</summary>
    public string Show(double valueSi, QuantityKind kind, int digits = 4) => QuantityFormat.Show(valueSi, kind, Units, digits);

    /// <summary>A length with its unit.</summary>
    public string Length(double m, int digits = 3) => Show(m, QuantityKind.Length, digits);

    /// <summary>A share as a percentage.</summary>
    public static string Percent(double share) => double.IsInfinity(share) ? "∞" : (share * 100).ToString(share < 0.095 ? "0.#" : "0", CultureInfo.InvariantCulture) + " %";

    /// <summary>An impedance.</summary>
    public static string Ohm(Complex z) => StudyWords.Ohm(z);

    /// <summary>The factor and the symbol of the unit for lengths on drawings.</summary>
    public (double Factor, string Symbol) LengthUnit => Units == UnitSystem.Us ? (1 / 0.3048, "ft") : (1, "m");

    private static string Decibel(Trail trail) => trail.Value.ToString("0.0", CultureInfo.InvariantCulture) + (trail.Symbol == "G" ? " dBi" : " dB");
}
