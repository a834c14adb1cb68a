using System.Collections.Frozen;
using Mastwright.Model.Trails;
using UnitsNet;
using UnitsNet.Units;

namespace Mastwright.Model.Units;

/// <summary>A unit as people write it, with its conversion to the SI unit of its kind.</summary>
/// <param name="Symbol">The symbol shown and accepted, e.g. <c>"ft"</c>.</param>
/// <param name="Also">Other spellings accepted.</param>
/// <param name="ToSi">Converts a number in this unit to SI.</param>
/// <param name="FromSi">Converts a number in SI to this unit.</param>
public sealed record WrittenUnit(string Symbol, string[] Also, Func<double, double> ToSi, Func<double, double> FromSi)
{
    /// <summary>The symbol and all other spellings.</summary>
    public IEnumerable<string> Spellings => Also.Prepend(Symbol);
}

/// <summary>The units the design file accepts for each kind of quantity. Factors come from UnitsNet.</summary>
public static class UnitTable
{
    // ASTM B258: No. 36 is 0.005 in, No. 0000 is 0.46 in, 39 steps between in geometric progression.
    // Declared before the table, which holds it.
    private static readonly WrittenUnit Awg = new("AWG", ["awg"],
        gauge => 0.127e-3 * Math.Pow(92, (36 - gauge) / 39),
        lengthM => 36 - (39 * Math.Log(lengthM / 0.127e-3) / Math.Log(92)));

    private static readonly FrozenDictionary<QuantityKind, WrittenUnit[]> Table = Build().ToFrozenDictionary();

    /// <summary>The units accepted for <paramref name="kind"/>, SI unit first; empty for pure numbers.</summary>
    public static IReadOnlyList<WrittenUnit> For(QuantityKind kind) => Table.GetValueOrDefault(kind, []);

    /// <summary>The unit of <paramref name="kind"/> with this very symbol.</summary>
    /// <exception cref="ArgumentException">There is no such unit: a fault of the caller.</exception>
    public static WrittenUnit Named(QuantityKind kind, string symbol) =>
        For(kind).FirstOrDefault(u => u.Symbol == symbol) ?? throw new ArgumentException($"{kind} has no unit {symbol}", nameof(symbol));

    /// <summary>The kinds that accept a unit spelled <paramref name="spelling"/>.</summary>
    public static IEnumerable<QuantityKind> KindsWith(string spelling) =>
        Table.Where(row => row.Value.Any(u => u.Spellings.Contains(spelling))).Select(row => row.Key);

    private static Dictionary<QuantityKind, WrittenUnit[]> Build()
    {
        WrittenUnit[] lengths =
        [
            U("m", LengthUnit.Meter, LengthUnit.Meter, "metre", "metres", "meter", "meters"),
            U("mm", LengthUnit.Millimeter, LengthUnit.Meter), U("cm", LengthUnit.Centimeter, LengthUnit.Meter),
            U("km", LengthUnit.Kilometer, LengthUnit.Meter),
            U("ft", LengthUnit.Foot, LengthUnit.Meter, "foot", "feet", "'", "′"),
            U("in", LengthUnit.Inch, LengthUnit.Meter, "inch", "inches", "\"", "″"),
            U("yd", LengthUnit.Yard, LengthUnit.Meter), U("mi", LengthUnit.Mile, LengthUnit.Meter, "mile", "miles"),
        ];
        WrittenUnit[] volts =
        [
            U("V", ElectricPotentialUnit.Volt, ElectricPotentialUnit.Volt), U("kV", ElectricPotentialUnit.Kilovolt, ElectricPotentialUnit.Volt),
        ];
        WrittenUnit[] amperes =
        [
            U("A", ElectricCurrentUnit.Ampere, ElectricCurrentUnit.Ampere), U("mA", ElectricCurrentUnit.Milliampere, ElectricCurrentUnit.Ampere),
            U("kA", ElectricCurrentUnit.Kiloampere, ElectricCurrentUnit.Ampere),
        ];
        WrittenUnit[] pressures =
        [
            U("Pa", PressureUnit.Pascal, PressureUnit.Pascal), U("kPa", PressureUnit.Kilopascal, PressureUnit.Pascal),
            U("MPa", PressureUnit.Megapascal, PressureUnit.Pascal), U("GPa", PressureUnit.Gigapascal, PressureUnit.Pascal),
            U("psf", PressureUnit.PoundForcePerSquareFoot, PressureUnit.Pascal), U("psi", PressureUnit.PoundForcePerSquareInch, PressureUnit.Pascal),
            U("ksi", PressureUnit.KilopoundForcePerSquareInch, PressureUnit.Pascal),
        ];

        return new()
        {
            [QuantityKind.Length] = lengths,
            [QuantityKind.FineLength] = [.. lengths, Awg],
            [QuantityKind.Area] =
            [
                U("m²", AreaUnit.SquareMeter, AreaUnit.SquareMeter, "m2"), U("ft²", AreaUnit.SquareFoot, AreaUnit.SquareMeter, "ft2", "sq ft"),
            ],
            [QuantityKind.SectionArea] =
            [
                U("m²", AreaUnit.SquareMeter, AreaUnit.SquareMeter, "m2"), U("mm²", AreaUnit.SquareMillimeter, AreaUnit.SquareMeter, "mm2"),
                U("in²", AreaUnit.SquareInch, AreaUnit.SquareMeter, "in2", "sq in"),
            ],
            [QuantityKind.Volume] =
            [
                U("m³", VolumeUnit.CubicMeter, VolumeUnit.CubicMeter, "m3"), U("L", VolumeUnit.Liter, VolumeUnit.CubicMeter),
                U("ft³", VolumeUnit.CubicFoot, VolumeUnit.CubicMeter, "ft3"), U("yd³", VolumeUnit.CubicYard, VolumeUnit.CubicMeter, "yd3"),
            ],
            [QuantityKind.SecondMomentOfArea] =
            [
                U("m⁴", AreaMomentOfInertiaUnit.MeterToTheFourth, AreaMomentOfInertiaUnit.MeterToTheFourth, "m4"),
                U("cm⁴", AreaMomentOfInertiaUnit.CentimeterToTheFourth, AreaMomentOfInertiaUnit.MeterToTheFourth, "cm4"),
                U("in⁴", AreaMomentOfInertiaUnit.InchToTheFourth, AreaMomentOfInertiaUnit.MeterToTheFourth, "in4"),
            ],
            [QuantityKind.SectionModulus] =
            [
                U("m³", VolumeUnit.CubicMeter, VolumeUnit.CubicMeter, "m3"), U("cm³", VolumeUnit.CubicCentimeter, VolumeUnit.CubicMeter, "cm3"),
                U("in³", VolumeUnit.CubicInch, VolumeUnit.CubicMeter, "in3"),
            ],
            [QuantityKind.Force] =
            [
                U("N", ForceUnit.Newton, ForceUnit.Newton), U("kN", ForceUnit.Kilonewton, ForceUnit.Newton),
                U("lbf", ForceUnit.PoundForce, ForceUnit.Newton, "lb", "lbs", "pounds"), U("kip", ForceUnit.KilopoundForce, ForceUnit.Newton),
                U("kgf", ForceUnit.KilogramForce, ForceUnit.Newton),
            ],
            [QuantityKind.LinearForce] =
            [
                U("N/m", ForcePerLengthUnit.NewtonPerMeter, ForcePerLengthUnit.NewtonPerMeter),
                U("lbf/ft", ForcePerLengthUnit.PoundForcePerFoot, ForcePerLengthUnit.NewtonPerMeter, "lb/ft", "plf"),
            ],
            [QuantityKind.Stiffness] =
            [
                U("N/m", ForcePerLengthUnit.NewtonPerMeter, ForcePerLengthUnit.NewtonPerMeter),
                U("kN/m", ForcePerLengthUnit.KilonewtonPerMeter, ForcePerLengthUnit.NewtonPerMeter),
                U("lbf/in", ForcePerLengthUnit.PoundForcePerInch, ForcePerLengthUnit.NewtonPerMeter),
            ],
            [QuantityKind.Moment] =
            [
                U("N·m", TorqueUnit.NewtonMeter, TorqueUnit.NewtonMeter, "Nm", "N m"),
                U("kN·m", TorqueUnit.KilonewtonMeter, TorqueUnit.NewtonMeter, "kNm", "kN m"),
                U("lbf·ft", TorqueUnit.PoundForceFoot, TorqueUnit.NewtonMeter, "lb-ft", "ft-lb", "lbf ft"),
            ],
            [QuantityKind.Pressure] = pressures,
            [QuantityKind.Stress] = pressures,
            [QuantityKind.UnitWeight] =
            [
                U("N/m³", SpecificWeightUnit.NewtonPerCubicMeter, SpecificWeightUnit.NewtonPerCubicMeter, "N/m3"),
                U("kN/m³", SpecificWeightUnit.KilonewtonPerCubicMeter, SpecificWeightUnit.NewtonPerCubicMeter, "kN/m3"),
                U("pcf", SpecificWeightUnit.PoundForcePerCubicFoot, SpecificWeightUnit.NewtonPerCubicMeter),
            ],
            [QuantityKind.Mass] =
            [
                U("kg", MassUnit.Kilogram, MassUnit.Kilogram), U("g", MassUnit.Gram, MassUnit.Kilogram),
                U("lb", MassUnit.Pound, MassUnit.Kilogram, "lbs", "pounds"), U("t", MassUnit.Tonne, MassUnit.Kilogram),
            ],
            [QuantityKind.LinearMass] =
            [
                U("kg/m", LinearDensityUnit.KilogramPerMeter, LinearDensityUnit.KilogramPerMeter),
                U("lb/ft", LinearDensityUnit.PoundPerFoot, LinearDensityUnit.KilogramPerMeter),
            ],
            [QuantityKind.Density] =
            [
                U("kg/m³", DensityUnit.KilogramPerCubicMeter, DensityUnit.KilogramPerCubicMeter, "kg/m3"),
                U("pcf", DensityUnit.PoundPerCubicFoot, DensityUnit.KilogramPerCubicMeter, "lb/ft³", "lb/ft3"),
            ],
            [QuantityKind.Speed] =
            [
                U("m/s", SpeedUnit.MeterPerSecond, SpeedUnit.MeterPerSecond), U("km/h", SpeedUnit.KilometerPerHour, SpeedUnit.MeterPerSecond, "kph", "kmh"),
                U("mph", SpeedUnit.MilePerHour, SpeedUnit.MeterPerSecond), U("kn", SpeedUnit.Knot, SpeedUnit.MeterPerSecond, "kt", "knots"),
            ],
            [QuantityKind.Temperature] =
            [
                U("K", TemperatureUnit.Kelvin, TemperatureUnit.Kelvin), U("°C", TemperatureUnit.DegreeCelsius, TemperatureUnit.Kelvin, "C", "degC"),
                U("°F", TemperatureUnit.DegreeFahrenheit, TemperatureUnit.Kelvin, "F", "degF"),
            ],
            [QuantityKind.TemperatureDifference] =
            [
                U("K", TemperatureDeltaUnit.Kelvin, TemperatureDeltaUnit.Kelvin), U("°C", TemperatureDeltaUnit.DegreeCelsius, TemperatureDeltaUnit.Kelvin, "C"),
                U("°F", TemperatureDeltaUnit.DegreeFahrenheit, TemperatureDeltaUnit.Kelvin, "F"),
            ],
            [QuantityKind.Angle] =
            [
                U("rad", AngleUnit.Radian, AngleUnit.Radian), U("°", AngleUnit.Degree, AngleUnit.Radian, "deg", "degree", "degrees"),
                U("mrad", AngleUnit.Milliradian, AngleUnit.Radian),
            ],
            [QuantityKind.Time] =
            [
                U("s", DurationUnit.Second, DurationUnit.Second), U("ms", DurationUnit.Millisecond, DurationUnit.Second),
                U("µs", DurationUnit.Microsecond, DurationUnit.Second, "us", "μs"), U("ns", DurationUnit.Nanosecond, DurationUnit.Second),
                U("min", DurationUnit.Minute, DurationUnit.Second), U("h", DurationUnit.Hour, DurationUnit.Second),
            ],
            [QuantityKind.Frequency] =
            [
                U("Hz", FrequencyUnit.Hertz, FrequencyUnit.Hertz), U("kHz", FrequencyUnit.Kilohertz, FrequencyUnit.Hertz),
                U("MHz", FrequencyUnit.Megahertz, FrequencyUnit.Hertz), U("GHz", FrequencyUnit.Gigahertz, FrequencyUnit.Hertz),
            ],
            [QuantityKind.VibrationFrequency] = [U("Hz", FrequencyUnit.Hertz, FrequencyUnit.Hertz)],
            [QuantityKind.Resistance] =
            [
                U("Ω", ElectricResistanceUnit.Ohm, ElectricResistanceUnit.Ohm, "ohm", "ohms", "Ω"),
                U("mΩ", ElectricResistanceUnit.Milliohm, ElectricResistanceUnit.Ohm, "mohm"),
                U("kΩ", ElectricResistanceUnit.Kiloohm, ElectricResistanceUnit.Ohm, "kohm", "kΩ"),
                U("MΩ", ElectricResistanceUnit.Megaohm, ElectricResistanceUnit.Ohm, "Mohm"),
            ],
            [QuantityKind.Conductance] =
            [
                U("S", ElectricConductanceUnit.Siemens, ElectricConductanceUnit.Siemens), U("mS", ElectricConductanceUnit.Millisiemens, ElectricConductanceUnit.Siemens),
            ],
            [QuantityKind.Inductance] =
            [
                U("H", ElectricInductanceUnit.Henry, ElectricInductanceUnit.Henry), U("mH", ElectricInductanceUnit.Millihenry, ElectricInductanceUnit.Henry),
                U("µH", ElectricInductanceUnit.Microhenry, ElectricInductanceUnit.Henry, "uH", "μH"), U("nH", ElectricInductanceUnit.Nanohenry, ElectricInductanceUnit.Henry),
            ],
            [QuantityKind.Capacitance] =
            [
                U("F", CapacitanceUnit.Farad, CapacitanceUnit.Farad), U("µF", CapacitanceUnit.Microfarad, CapacitanceUnit.Farad, "uF", "μF"),
                U("nF", CapacitanceUnit.Nanofarad, CapacitanceUnit.Farad), U("pF", CapacitanceUnit.Picofarad, CapacitanceUnit.Farad),
            ],
            [QuantityKind.PeakVoltage] = volts,
            [QuantityKind.RmsVoltage] = volts,
            [QuantityKind.PeakCurrent] = amperes,
            [QuantityKind.RmsCurrent] = amperes,
            [QuantityKind.Power] =
            [
                U("W", PowerUnit.Watt, PowerUnit.Watt, "watt", "watts"), U("mW", PowerUnit.Milliwatt, PowerUnit.Watt), U("kW", PowerUnit.Kilowatt, PowerUnit.Watt),
            ],
            [QuantityKind.Energy] = [U("J", EnergyUnit.Joule, EnergyUnit.Joule), U("kJ", EnergyUnit.Kilojoule, EnergyUnit.Joule)],
            [QuantityKind.ElectricField] =
            [
                U("V/m", ElectricFieldUnit.VoltPerMeter, ElectricFieldUnit.VoltPerMeter),
                new("mV/m", [], v => v / 1e3, v => v * 1e3), new("kV/m", [], v => v * 1e3, v => v / 1e3),
            ],
            [QuantityKind.MagneticField] = [new("A/m", [], v => v, v => v)],
            [QuantityKind.PowerDensity] = [new("W/m²", ["W/m2"], v => v, v => v), new("mW/cm²", ["mW/cm2"], v => v * 10, v => v / 10)],
            [QuantityKind.Conductivity] =
            [
                U("S/m", ElectricConductivityUnit.SiemensPerMeter, ElectricConductivityUnit.SiemensPerMeter), new("mS/m", [], v => v / 1e3, v => v * 1e3),
            ],
            [QuantityKind.Resistivity] = [U("Ω·m", ElectricResistivityUnit.OhmMeter, ElectricResistivityUnit.OhmMeter, "ohm m", "ohm-m", "Ωm")],
            [QuantityKind.Charge] = [U("C", ElectricChargeUnit.Coulomb, ElectricChargeUnit.Coulomb)],
            [QuantityKind.Ratio] = [new("%", ["percent"], v => v / 100, v => v * 100)],
            [QuantityKind.Decibel] = [new("dB", [], v => v, v => v)],
        };
    }

    private static WrittenUnit U(string symbol, Enum unit, Enum si, params string[] also) => new(
        symbol, also,
        value => UnitConverter.Convert(value, unit, si),
        value => UnitConverter.Convert(value, si, unit));
}
