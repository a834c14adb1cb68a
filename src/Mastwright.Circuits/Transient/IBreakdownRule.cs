using Mastwright.Circuits.Quantities;

namespace Mastwright.Circuits.Transient;

/// <summary>
/// When a gap fires. The engine integrates <see cref="Rate"/> while the gap holds and fires it the moment
/// <see cref="Margin"/> reaches zero, found to a small part of a step. Rules hold no state and may be shared.
/// </summary>
public interface IBreakdownRule
{
    /// <summary>How fast the damage integral grows at a gap voltage (with sign), per second; zero for a rule on voltage alone.</summary>
    double Rate(double volts);

    /// <summary>Negative while the gap holds, zero or more when it fires. Continuous in both arguments.</summary>
    /// <param name="volts">Gap voltage now, with sign.</param>
    /// <param name="integral">The integral of <see cref="Rate"/> since the gap last stood open.</param>
    double Margin(double volts, double integral);
}

/// <summary>Fires at a voltage of either sign, at once.</summary>
/// <param name="Level">Breakdown voltage, crest.</param>
public sealed record VoltageBreakdown(PeakVolts Level) : IBreakdownRule
{
    /// <inheritdoc/>
    public double Rate(double volts) => 0;

    /// <inheritdoc/>
    public double Margin(double volts, double integral) => (Math.Abs(volts) / Level.Value) - 1;
}

/// <summary>
/// The disruptive effect (equal area) rule: fires when ∫(|v| - V0)^k dt over the time above V0 reaches D
/// (Kind 1958 for k = 1; Caldwell and Darveniza 1973 for other k; from memory).
/// </summary>
/// <param name="Onset">V0, the voltage below which nothing builds up.</param>
/// <param name="Exponent">k, 1 for equal area.</param>
/// <param name="CriticalVkS">D, in V^k·s.</param>
public sealed record DisruptiveEffect(PeakVolts Onset, double Exponent, double CriticalVkS) : IBreakdownRule
{
    /// <inheritdoc/>
    public double Rate(double volts) => Math.Pow(Math.Max(0, Math.Abs(volts) - Onset.Value), Exponent);

    /// <inheritdoc/>
    public double Margin(double volts, double integral) => (integral / CriticalVkS) - 1;
}

/// <summary>A gap: when it fires, what its arc is, and when the arc dies.</summary>
/// <param name="Breakdown">When it fires.</param>
/// <param name="Arc">Resistance of its arc.</param>
/// <param name="CapacitanceF">Capacitance of the electrodes, farads.</param>
/// <param name="DyingCurrentA">Below this current the arc dies once it has stayed there for <paramref name="DyingTimeS"/>; zero for an arc that never dies.</param>
/// <param name="DyingTimeS">How long, seconds.</param>
public sealed record GapModel(IBreakdownRule Breakdown, IArcLaw Arc, double CapacitanceF = 1e-12, double DyingCurrentA = 0, double DyingTimeS = 0);
