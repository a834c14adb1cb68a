namespace Mastwright.Model.Trails;

/// <summary>
/// What a number measures. Inside the program every number is in the SI unit named on its kind;
/// screens and papers turn it into the reader's units at the edge.
/// </summary>
public enum QuantityKind
{
    /// <summary>A pure number or ratio.</summary>
    Ratio,

    /// <summary>A count of things.</summary>
    Count,

    /// <summary>A length a person would pace or tape, in metres.</summary>
    Length,

    /// <summary>A small length a person would measure with a calliper (diameter, gap, deflection), in metres.</summary>
    FineLength,

    /// <summary>An area in square metres.</summary>
    Area,

    /// <summary>A small cross-section in square metres, shown in mm² or in².</summary>
    SectionArea,

    /// <summary>A volume in cubic metres.</summary>
    Volume,

    /// <summary>A second moment of area in m⁴.</summary>
    SecondMomentOfArea,

    /// <summary>A section modulus in m³.</summary>
    SectionModulus,

    /// <summary>A force in newtons.</summary>
    Force,

    /// <summary>A force per length in N/m.</summary>
    LinearForce,

    /// <summary>A translational stiffness in N/m.</summary>
    Stiffness,

    /// <summary>A bending or torsional stiffness, EI or GJ, in N·m².</summary>
    BendingStiffness,

    /// <summary>A bending or overturning moment in N·m.</summary>
    Moment,

    /// <summary>A pressure of wind or soil in pascals, shown in kPa or psf.</summary>
    Pressure,

    /// <summary>A stress in a material in pascals, shown in MPa or ksi.</summary>
    Stress,

    /// <summary>A unit weight in N/m³.</summary>
    UnitWeight,

    /// <summary>A mass in kilograms.</summary>
    Mass,

    /// <summary>A mass per length in kg/m.</summary>
    LinearMass,

    /// <summary>A density in kg/m³.</summary>
    Density,

    /// <summary>A speed in m/s.</summary>
    Speed,

    /// <summary>A temperature in kelvin, shown in °C or °F.</summary>
    Temperature,

    /// <summary>A temperature difference in kelvin.</summary>
    TemperatureDifference,

    /// <summary>A coefficient of thermal expansion in 1/K.</summary>
    ThermalExpansion,

    /// <summary>An angle in radians, shown in degrees.</summary>
    Angle,

    /// <summary>A time in seconds.</summary>
    Time,

    /// <summary>A radio frequency in hertz, shown in MHz.</summary>
    Frequency,

    /// <summary>A mechanical vibration frequency in hertz.</summary>
    VibrationFrequency,

    /// <summary>A resistance, reactance or impedance in ohms.</summary>
    Resistance,

    /// <summary>A conductance, susceptance or admittance in siemens.</summary>
    Conductance,

    /// <summary>An inductance in henries.</summary>
    Inductance,

    /// <summary>A capacitance in farads.</summary>
    Capacitance,

    /// <summary>A peak voltage in volts: the crest of the wave.</summary>
    PeakVoltage,

    /// <summary>An RMS voltage in volts.</summary>
    RmsVoltage,

    /// <summary>A peak current in amperes: the crest of the wave.</summary>
    PeakCurrent,

    /// <summary>An RMS current in amperes.</summary>
    RmsCurrent,

    /// <summary>A power in watts.</summary>
    Power,

    /// <summary>An energy in joules.</summary>
    Energy,

    /// <summary>An electric field strength in V/m.</summary>
    ElectricField,

    /// <summary>A magnetic field strength in A/m.</summary>
    MagneticField,

    /// <summary>A power through an area in W/m², shown in W/m² or mW/cm².</summary>
    PowerDensity,

    /// <summary>A soil conductivity in S/m.</summary>
    Conductivity,

    /// <summary>A soil resistivity in Ω·m.</summary>
    Resistivity,

    /// <summary>A ratio shown in decibels; the number itself is in dB.</summary>
    Decibel,

    /// <summary>An electric charge in coulombs.</summary>
    Charge,

    /// <summary>A specific energy of a current pulse in J/Ω.</summary>
    SpecificEnergy,

    /// <summary>A sum of money in the price file's currency.</summary>
    Money,
}
