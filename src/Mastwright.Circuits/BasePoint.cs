using System.Numerics;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits;

/// <summary>
/// Voltage and current at the foot of a mast at a stated power: into the mast itself, and at the terminals
/// with the base insulator's capacitance across them.
/// </summary>
/// <param name="MastCurrent">RMS current into the mast, A: I = √(P/R).</param>
/// <param name="Voltage">RMS voltage across the insulator, V: V = I·|Z|.</param>
/// <param name="PeakVoltage">Crest of that voltage, V: Vp = √2·V. The one the insulator and the gap see.</param>
/// <param name="InsulatorCurrent">RMS current through the insulator's capacitance, A.</param>
/// <param name="TerminalCurrent">RMS current the network has to supply, A.</param>
/// <param name="TerminalResistance">Resistance at the terminals, ohms.</param>
/// <param name="TerminalReactance">Reactance at the terminals, ohms.</param>
public sealed record BasePoint(
    Trail MastCurrent,
    Trail Voltage,
    Trail PeakVoltage,
    Trail InsulatorCurrent,
    Trail TerminalCurrent,
    Trail TerminalResistance,
    Trail TerminalReactance)
{
    private static readonly Source Circuit = Source.Derived("docs/theory/circuits-matching.md");

    /// <summary>The impedance at the terminals, ohms.</summary>
    public Complex TerminalOhm => new(TerminalResistance.Value, TerminalReactance.Value);

    /// <summary>The crest voltage as a typed value.</summary>
    public PeakVolts Peak => new(PeakVoltage.Value);

    /// <summary>Works out the base point.</summary>
    /// <param name="mastOhm">Impedance of the mast without its insulator, ohms; its resistance must be above zero.</param>
    /// <param name="powerW">Power going into the mast (radiated plus lost in the earth), watts.</param>
    /// <param name="frequencyHz">Frequency, hertz.</param>
    /// <param name="insulatorF">Capacitance across the base: insulator, gap, ring and fittings, farads; may be zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range; check the design first.</exception>
    public static BasePoint Of(Complex mastOhm, double powerW, double frequencyHz, double insulatorF = 0)
    {
        Guard.Positive(mastOhm.Real, nameof(mastOhm));
        Guard.Positive(powerW);
        Guard.Positive(frequencyHz);
        Guard.NotNegative(insulatorF, nameof(insulatorF));
        var stated = new Source("the problem as stated", SourceKind.Design);
        var r = Trail.Given("mast resistance", "R", mastOhm.Real, QuantityKind.Resistance, stated);
        var x = Trail.Given("mast reactance", "X", mastOhm.Imaginary, QuantityKind.Resistance, stated);
        var p = Trail.Given("power into the mast", "P", powerW, QuantityKind.Power, stated);
        var f = Trail.Given("frequency", "f", frequencyHz, QuantityKind.Frequency, stated);
        var c = Trail.Given("capacitance across the base", "Cb", insulatorF, QuantityKind.Capacitance, stated);

        var i = Math.Sqrt(powerW / mastOhm.Real);
        var current = Trail.Computed("mast base current", "I", i, QuantityKind.RmsCurrent, "I = √(P/R)", Circuit, p, r);
        var v = i * mastOhm.Magnitude;
        var voltage = Trail.Computed("base voltage", "V", v, QuantityKind.RmsVoltage, "V = I·√(R² + X²)", Circuit, current, r, x);
        var peak = Trail.Computed("base peak voltage", "Vp", Math.Sqrt(2) * v, QuantityKind.PeakVoltage, "Vp = √2·V", Circuit, voltage)
            .Remark("Crest of an unmodulated carrier, or of the envelope's peak when P is the peak envelope power.");
        var b = 2 * Math.PI * frequencyHz * insulatorF;
        var insulator = Trail.Computed("insulator current", "Ic", v * b, QuantityKind.RmsCurrent, "Ic = 2πf·Cb·V", Circuit, f, c, voltage);
        var terminal = 1 / ((1 / mastOhm) + new Complex(0, b));
        const string Parallel = "R' + jX' = 1/(1/(R + jX) + j2πf·Cb)";
        return new(
            current,
            voltage,
            peak,
            insulator,
            Trail.Computed("terminal current", "It", v / terminal.Magnitude, QuantityKind.RmsCurrent, "It = V/|R' + jX'|", Circuit, voltage, r, x, f, c),
            Trail.Computed("terminal resistance", "R'", terminal.Real, QuantityKind.Resistance, Parallel, Circuit, r, x, f, c),
            Trail.Computed("terminal reactance", "X'", terminal.Imaginary, QuantityKind.Resistance, Parallel, Circuit, r, x, f, c));
    }
}
