using System.Numerics;

namespace Mastwright.Fields.Wires;

/// <summary>A coil, capacitor, resistor or insulator put in series with a wire at one place.</summary>
/// <param name="Name">Unique name, used in the list of losses.</param>
/// <param name="Wire">Name of the wire.</param>
/// <param name="Position">Fraction of the wire's length, 0 to 1; an end means between that end and its joint.</param>
/// <param name="Element">What is put there.</param>
public sealed record LumpedLoad(string Name, string Wire, double Position, LoadElement Element);

/// <summary>The electrical content of a lumped load.</summary>
public abstract record LoadElement
{
    private LoadElement()
    {
    }

    /// <summary>Series impedance in ohms at a frequency in hertz.</summary>
    public abstract Complex ImpedanceOhm(double frequencyHz);

    /// <summary>The same impedance at every frequency.</summary>
    /// <param name="Ohm">Impedance in ohms.</param>
    public sealed record Fixed(Complex Ohm) : LoadElement
    {
        /// <inheritdoc/>
        public override Complex ImpedanceOhm(double frequencyHz) => Ohm;
    }

    /// <summary>Resistance, inductance and capacitance in series; a null capacitance is a short.</summary>
    /// <param name="ResistanceOhm">Resistance in ohms.</param>
    /// <param name="InductanceH">Inductance in henries.</param>
    /// <param name="CapacitanceF">Capacitance in farads, or null for none.</param>
    public sealed record SeriesRlc(double ResistanceOhm, double InductanceH, double? CapacitanceF = null) : LoadElement
    {
        /// <inheritdoc/>
        public override Complex ImpedanceOhm(double frequencyHz)
        {
            var omega = 2 * Math.PI * frequencyHz;
            return new(ResistanceOhm, (omega * InductanceH) - (CapacitanceF is { } c ? 1 / (omega * c) : 0));
        }
    }

    /// <summary>Resistance, inductance and capacitance in parallel: a trap, or an insulator (capacitance and leakage only).</summary>
    /// <param name="ResistanceOhm">Resistance in ohms, or null for none.</param>
    /// <param name="InductanceH">Inductance in henries, or null for none.</param>
    /// <param name="CapacitanceF">Capacitance in farads.</param>
    public sealed record ParallelRlc(double? ResistanceOhm, double? InductanceH, double CapacitanceF) : LoadElement
    {
        /// <inheritdoc/>
        public override Complex ImpedanceOhm(double frequencyHz)
        {
            var omega = 2 * Math.PI * frequencyHz;
            var y = new Complex(ResistanceOhm is { } r ? 1 / r : 0, (omega * CapacitanceF) - (InductanceH is { } l ? 1 / (omega * l) : 0));
            return 1 / y;
        }
    }

    /// <summary>A coil with its loss given by its quality factor: Z = ωL/Q + jωL.</summary>
    /// <param name="InductanceH">Inductance in henries.</param>
    /// <param name="QualityFactor">Unloaded Q.</param>
    public sealed record Coil(double InductanceH, double QualityFactor) : LoadElement
    {
        /// <inheritdoc/>
        public override Complex ImpedanceOhm(double frequencyHz)
        {
            var reactance = 2 * Math.PI * frequencyHz * InductanceH;
            return new(reactance / QualityFactor, reactance);
        }
    }
}
