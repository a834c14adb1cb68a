using Mastwright.Model.Trails;

namespace Mastwright.Model.Units;

/// <summary>What a kind of quantity is called in messages, and how one is written.</summary>
public static class KindWords
{
    /// <summary>The kind in words with its article, e.g. <c>"a length"</c>.</summary>
    public static string Of(QuantityKind kind) => kind switch
    {
        QuantityKind.Ratio => "a plain number or a percentage",
        QuantityKind.Count => "a whole number",
        QuantityKind.Length or QuantityKind.FineLength => "a length",
        QuantityKind.Area or QuantityKind.SectionArea => "an area",
        QuantityKind.Volume => "a volume",
        QuantityKind.Force => "a force",
        QuantityKind.LinearForce => "a force per length",
        QuantityKind.Stiffness => "a stiffness",
        QuantityKind.Moment => "a moment",
        QuantityKind.Pressure => "a pressure",
        QuantityKind.Stress => "a stress",
        QuantityKind.Mass => "a mass",
        QuantityKind.LinearMass => "a mass per length",
        QuantityKind.Density => "a density",
        QuantityKind.Speed => "a speed",
        QuantityKind.Temperature => "a temperature",
        QuantityKind.TemperatureDifference => "a temperature difference",
        QuantityKind.Angle => "an angle",
        QuantityKind.Time => "a time",
        QuantityKind.Frequency or QuantityKind.VibrationFrequency => "a frequency",
        QuantityKind.Resistance => "a resistance",
        QuantityKind.Inductance => "an inductance",
        QuantityKind.Capacitance => "a capacitance",
        QuantityKind.PeakVoltage or QuantityKind.RmsVoltage => "a voltage",
        QuantityKind.PeakCurrent or QuantityKind.RmsCurrent => "a current",
        QuantityKind.Power => "a power",
        QuantityKind.ElectricField => "an electric field strength",
        QuantityKind.Conductivity => "a conductivity",
        QuantityKind.Resistivity => "a resistivity",
        QuantityKind.Decibel => "a ratio in dB",
        _ => "a quantity of the kind " + kind,
    };

    /// <summary>Two ways to write one, metric and US.</summary>
    public static string Example(QuantityKind kind) => kind switch
    {
        QuantityKind.Ratio => "0.1 or 10 %",
        QuantityKind.Count => "60",
        QuantityKind.Length => "22 m or 72 ft",
        QuantityKind.FineLength => "4.8 mm, 3/16 in or 10 AWG",
        QuantityKind.Area => "0.1 m² or 1 ft²",
        QuantityKind.Force => "3 kN or 675 lbf",
        QuantityKind.Moment => "500 N·m or 370 lbf·ft",
        QuantityKind.Pressure => "1.2 kPa or 25 psf",
        QuantityKind.Stress => "240 MPa or 35 ksi",
        QuantityKind.Mass => "5 kg or 11 lb",
        QuantityKind.LinearMass => "0.18 kg/m or 0.121 lb/ft",
        QuantityKind.Density => "900 kg/m³ or 56 pcf",
        QuantityKind.Speed => "40 m/s or 90 mph",
        QuantityKind.Temperature => "-20 °C or -4 °F",
        QuantityKind.TemperatureDifference => "30 K",
        QuantityKind.Angle => "120 °",
        QuantityKind.Time => "10 min",
        QuantityKind.Frequency => "1.85 MHz",
        QuantityKind.Resistance => "50 Ω or 50 ohm",
        QuantityKind.Inductance => "12 µH or 12 uH",
        QuantityKind.Capacitance => "300 pF",
        QuantityKind.PeakVoltage or QuantityKind.RmsVoltage => "10 kV",
        QuantityKind.PeakCurrent or QuantityKind.RmsCurrent => "8 A",
        QuantityKind.Power => "1500 W or 1.5 kW",
        QuantityKind.Conductivity => "0.005 S/m or 5 mS/m",
        QuantityKind.Resistivity => "200 Ω·m",
        QuantityKind.Decibel => "0.3 dB",
        _ => string.Join(" or ", UnitTable.For(kind).Select(u => "1 " + u.Symbol)),
    };
}
