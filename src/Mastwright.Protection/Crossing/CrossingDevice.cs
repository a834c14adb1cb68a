using System.Numerics;
using Mastwright.Model.Units;

namespace Mastwright.Protection.Crossing;

/// <summary>A way of getting a cable across the base insulator.</summary>
/// <param name="Name">Name.</param>
/// <param name="StrengthPeakV">Strength across it in volts peak; null when unknown.</param>
public abstract record CrossingDevice(string Name, double? StrengthPeakV)
{
    /// <summary>Impedance across the base at a frequency in hertz.</summary>
    public abstract Complex ImpedanceOhm(double frequencyHz);

    /// <summary>The formula behind it.</summary>
    internal abstract string Formula { get; }

    /// <summary>What a strike does on it, in words.</summary>
    public abstract string StrikePath { get; }
}

/// <summary>The cable wound into a coil that bridges the base: all conductors in it, screens bonded to mast and plate at the ends.</summary>
/// <param name="Name">Name.</param>
/// <param name="InductanceH">Inductance in henries.</param>
/// <param name="Q">Quality factor.</param>
/// <param name="SelfCapacitanceF">Self-capacitance in farads.</param>
/// <param name="Turns">Number of turns, for the voltage between them.</param>
/// <param name="StrengthPeakV">Strength across the coil in volts peak; null when unknown.</param>
public sealed record CoilCrossing(string Name, double InductanceH, double Q, double SelfCapacitanceF, double Turns, double? StrengthPeakV = null) : CrossingDevice(Name, StrengthPeakV)
{
    /// <inheritdoc/>
    public override Complex ImpedanceOhm(double frequencyHz)
    {
        var w = 2 * Math.PI * frequencyHz;
        var coil = new Complex(w * InductanceH / Q, w * InductanceH);
        return 1 / ((1 / coil) + new Complex(0, w * SelfCapacitanceF));
    }

    internal override string Formula => "Zx = 1/(1/(ωL/Q + jωL) + jωC)";

    /// <inheritdoc/>
    public override string StrikePath =>
        "Until the gap fires the whole voltage lies across the coil, most of it over the turns at the mast; afterwards the coil shares the current only slowly. It also drains static. Put it behind the gap, with its own straps short.";

    /// <summary>Frequency at which it resonates with its own capacitance, in hertz.</summary>
    public double SelfResonanceHz => 1 / (2 * Math.PI * Math.Sqrt(InductanceH * SelfCapacitanceF));
}

/// <summary>An isolation transformer with widely spaced windings, for lamps and motors at mains frequency.</summary>
/// <param name="Name">Name.</param>
/// <param name="CapacitanceF">Capacitance between windings in farads.</param>
/// <param name="LossTangent">Loss tangent of that capacitance.</param>
/// <param name="StrengthPeakV">Strength between windings in volts peak; null when unknown.</param>
public sealed record TransformerCrossing(string Name, double CapacitanceF, double LossTangent = 0.002, double? StrengthPeakV = null) : CrossingDevice(Name, StrengthPeakV)
{
    /// <inheritdoc/>
    public override Complex ImpedanceOhm(double frequencyHz)
    {
        var x = 1 / (2 * Math.PI * frequencyHz * CapacitanceF);
        return new(x * LossTangent, -x);
    }

    internal override string Formula => "Zx = (tan δ − j)/(ωC)";

    /// <inheritdoc/>
    public override string StrikePath =>
        "The air between the windings must hold until the base gap fires: set its own gap wider than the base gap and narrower than the distance between windings. The mains side needs its own arresters, and stays in place.";
}

/// <summary>The cable run up the mast, insulated from it, and bonded to it a quarter wave above the base: an open line end at the base on that frequency.</summary>
/// <param name="Name">Name.</param>
/// <param name="ImpedanceOhmLine">Impedance of the line formed by cable and mast.</param>
/// <param name="LengthM">Length from base to bond in metres.</param>
/// <param name="VelocityFactor">Speed on it over that of light.</param>
/// <param name="LossDbPerM">Matched loss in dB/m at 1 MHz; grows with the root of the frequency.</param>
/// <param name="StrengthPeakV">Strength between cable and mast at the base in volts peak; null when unknown.</param>
public sealed record StubCrossing(string Name, double ImpedanceOhmLine, double LengthM, double VelocityFactor, double LossDbPerM = 0.0005, double? StrengthPeakV = null) : CrossingDevice(Name, StrengthPeakV)
{
    /// <inheritdoc/>
    public override Complex ImpedanceOhm(double frequencyHz)
    {
        var beta = 2 * Math.PI * frequencyHz / (Vacuum.SpeedOfLightMPerS * VelocityFactor);
        var alpha = LossDbPerM * Math.Sqrt(frequencyHz / 1e6) * Math.Log(10) / 20;
        return ImpedanceOhmLine * Complex.Tanh(new Complex(alpha * LengthM, beta * LengthM));
    }

    internal override string Formula => "Zx = Z0·tanh((α + jβ)·l)";

    /// <inheritdoc/>
    public override string StrikePath =>
        "The cable's screen joins the mast up high, so at the base the full gap voltage stands between cable and mast: it needs a gap or an arrester there, and its screen bonded to the plate. On bands where it is not an odd number of quarter waves it short-circuits or detunes the base.";
}
