using Mastwright.Model.Schema;
using Mastwright.Model.Trails;

namespace Mastwright.Model.Design;

/// <summary>A cable that crosses the base insulator: coil, transformer or stub, one of the three.</summary>
public sealed record CrossingSpec
{
    /// <summary>What it is for.</summary>
    [Field("name", "What the cable is for, e.g. lamp, rotator, receiving aerial.", Required = true)]
    public string Name { get; init; } = "";

    /// <summary>Strength across it, V.</summary>
    [Field("withstand", "Peak voltage it withstands across the base, from its maker or a test.", Default = "not stated; not checked")]
    [Quantity(QuantityKind.PeakVoltage, 10, 1e6)]
    public double? WithstandPeakV { get; init; }

    /// <summary>A coil.</summary>
    [Field("coil", "The cable itself wound into a coil that bridges the base.", Default = "it is not")]
    public CoilOfCable? Coil { get; init; }

    /// <summary>A transformer.</summary>
    [Field("transformer", "An isolation transformer with windings far apart, for mains frequency.", Default = "it is not")]
    public IsolationTransformer? Transformer { get; init; }

    /// <summary>A stub.</summary>
    [Field("stub", "The cable runs up the mast insulated from it and is bonded to it higher up.", Default = "it is not")]
    public CableStub? Stub { get; init; }
}

/// <summary>A coil of cable.</summary>
public sealed record CoilOfCable
{
    /// <summary>Inductance, H.</summary>
    [Field("inductance", "Its inductance.", Required = true)]
    [Quantity(QuantityKind.Inductance, 1e-7, 0.1)]
    public double InductanceH { get; init; } = 100e-6;

    /// <summary>Quality.</summary>
    [Field("q", "Its quality.", Default = "100", Why = "cable on a former; measure it")]
    [Quantity(QuantityKind.Ratio, 1, 2000)]
    public double Q { get; init; } = 100;

    /// <summary>Self-capacitance, F.</summary>
    [Field("self-capacitance", "Its self-capacitance.", Default = "15 pF", Why = "a single layer; measure its self-resonance")]
    [Quantity(QuantityKind.Capacitance, 1e-13, 1e-8)]
    public double SelfCapacitanceF { get; init; } = 15e-12;

    /// <summary>Turns.</summary>
    [Field("turns", "Number of turns.", Default = "30", Why = "for the voltage between turns only")]
    [Quantity(QuantityKind.Count, 1, 1000)]
    public int Turns { get; init; } = 30;
}

/// <summary>An isolation transformer.</summary>
public sealed record IsolationTransformer
{
    /// <summary>Capacitance between windings, F.</summary>
    [Field("capacitance", "Capacitance between its windings.", Default = "30 pF", Why = "two interlinked rings in air; measure it")]
    [Quantity(QuantityKind.Capacitance, 1e-13, 1e-8)]
    public double CapacitanceF { get; init; } = 30e-12;

    /// <summary>Loss tangent.</summary>
    [Field("loss-tangent", "Loss tangent of that capacitance.", Default = "0.002", Why = "mostly air; common practice, no source")]
    [Quantity(QuantityKind.Ratio, 1e-6, 1)]
    public double LossTangent { get; init; } = 0.002;
}

/// <summary>A cable bonded to the mast above the base.</summary>
public sealed record CableStub
{
    /// <summary>Length from base to bond, m.</summary>
    [Field("length", "Length along the mast from the base to the bond.", Required = true)]
    [Quantity(QuantityKind.Length, 0.2, 200)]
    public double LengthM { get; init; } = 20;

    /// <summary>Impedance of cable over mast, Ω.</summary>
    [Field("impedance", "Impedance of the line that cable and mast form.", Default = "150 Ω", Why = "a cable some centimetres off a mast leg; common practice, no source")]
    [Quantity(QuantityKind.Resistance, 10, 1000)]
    public double LineOhm { get; init; } = 150;

    /// <summary>Velocity factor.</summary>
    [Field("velocity-factor", "Speed on it over that of light.", Default = "0.95", Why = "mostly air")]
    [Quantity(QuantityKind.Ratio, 0.3, 1)]
    public double VelocityFactor { get; init; } = 0.95;
}
