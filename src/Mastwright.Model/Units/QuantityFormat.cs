using System.Globalization;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Units;

/// <summary>Shows numbers held in SI in the reader's units, to the digits that mean something.</summary>
public static class QuantityFormat
{
    /// <summary>The number with its unit, e.g. <c>"72.2 ft"</c>.</summary>
    /// <param name="valueSi">The value in the SI unit of <paramref name="kind"/>.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="system">The reader's units.</param>
    /// <param name="digits">Significant digits.</param>
    public static string Show(double valueSi, QuantityKind kind, UnitSystem system, int digits = 4)
    {
        if (double.IsInfinity(valueSi))
        {
            return valueSi > 0 ? "∞" : "−∞";
        }

        if (kind is QuantityKind.Ratio or QuantityKind.Count or QuantityKind.Money or QuantityKind.ThermalExpansion)
        {
            return Digits(valueSi, digits);
        }

        // Rounding of a solver is no angle: below a thousandth of a second of arc it is straight.
        valueSi = kind == QuantityKind.Angle && Math.Abs(valueSi) < 5e-9 ? 0 : valueSi;
        var unit = UnitFor(valueSi, kind, system);
        var space = unit.Symbol is "°" ? "" : " ";
        return Digits(unit.FromSi(valueSi), digits) + space + unit.Symbol;
    }

    /// <summary>A trail's value with its unit.</summary>
    public static string Show(Trail trail, UnitSystem system, int digits = 4) => Show(trail.Value, trail.Kind, system, digits);

    /// <summary>The unit in which a value of this size is shown.</summary>
    public static WrittenUnit UnitFor(double valueSi, QuantityKind kind, UnitSystem system)
    {
        var us = system == UnitSystem.Us;
        var size = Math.Abs(valueSi);
        var symbol = kind switch
        {
            QuantityKind.Length => us ? "ft" : "m",
            QuantityKind.FineLength => us ? "in" : "mm",
            QuantityKind.Area => us ? "ft²" : "m²",
            QuantityKind.SectionArea => us ? "in²" : "mm²",
            QuantityKind.Volume => us ? "ft³" : "m³",
            QuantityKind.SecondMomentOfArea => us ? "in⁴" : "cm⁴",
            QuantityKind.SectionModulus => us ? "in³" : "cm³",
            QuantityKind.Force => us ? "lbf" : size >= 1e4 ? "kN" : "N",
            QuantityKind.LinearForce => us ? "lbf/ft" : "N/m",
            QuantityKind.Stiffness => us ? "lbf/in" : "kN/m",
            QuantityKind.Moment => us ? "lbf·ft" : size >= 1e4 ? "kN·m" : "N·m",
            QuantityKind.Pressure => us ? "psf" : size >= 1e3 ? "kPa" : "Pa",
            QuantityKind.Stress => us ? "ksi" : "MPa",
            QuantityKind.UnitWeight => us ? "pcf" : "kN/m³",
            QuantityKind.Mass => us ? "lb" : "kg",
            QuantityKind.LinearMass => us ? "lb/ft" : "kg/m",
            QuantityKind.Density => size < 0.1 && size > 0 ? "g/m³" : us ? "pcf" : "kg/m³",
            QuantityKind.Speed => us ? "mph" : "m/s",
            QuantityKind.Temperature => us ? "°F" : "°C",
            QuantityKind.TemperatureDifference => us ? "°F" : "K",
            QuantityKind.Angle => "°",
            QuantityKind.Time => size >= 1 || size == 0 ? "s" : size >= 1e-3 ? "ms" : size >= 1e-6 ? "µs" : "ns",
            QuantityKind.Frequency => size >= 1e6 ? "MHz" : size >= 1e3 ? "kHz" : "Hz",
            QuantityKind.Resistance => size >= 1e6 ? "MΩ" : size >= 1e4 ? "kΩ" : "Ω",
            QuantityKind.Conductance => "mS",
            QuantityKind.Inductance => size >= 1e-3 ? "mH" : size >= 1e-7 || size == 0 ? "µH" : "nH",
            QuantityKind.Capacitance => size >= 1e-6 ? "µF" : size >= 1e-8 ? "nF" : "pF",
            QuantityKind.PeakVoltage or QuantityKind.RmsVoltage => size >= 1e4 ? "kV" : "V",
            QuantityKind.PeakCurrent or QuantityKind.RmsCurrent => size >= 1e4 ? "kA" : size >= 0.1 || size == 0 ? "A" : size >= 1e-4 ? "mA" : "µA",
            QuantityKind.Power => size >= 1e4 ? "kW" : "W",
            QuantityKind.Energy => size >= 1e4 ? "kJ" : "J",
            QuantityKind.ElectricField => size >= 1e4 ? "kV/m" : size >= 1 || size == 0 ? "V/m" : "mV/m",
            QuantityKind.SpecificEnergy => size >= 1e6 ? "MJ/Ω" : size >= 1e4 ? "kJ/Ω" : "J/Ω",
            QuantityKind.MagneticField => size >= 0.1 || size == 0 ? "A/m" : "mA/m",
            QuantityKind.Conductivity => "S/m",
            _ => UnitTable.For(kind)[0].Symbol,
        };
        return UnitTable.Named(kind, symbol);
    }

    /// <summary>A number to a count of significant digits, without an exponent where a person would not use one.</summary>
    public static string Digits(double value, int digits = 4)
    {
        if (value == 0)
        {
            return "0";
        }

        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        if (magnitude is < -5 or > 7)
        {
            return value.ToString("0." + new string('#', digits - 1) + "e0", CultureInfo.InvariantCulture);
        }

        var decimals = Math.Clamp(digits - 1 - magnitude, 0, 12);
        var text = Math.Round(value, Math.Min(decimals, 15)).ToString("F" + decimals, CultureInfo.InvariantCulture);
        return text.Contains('.') ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}
