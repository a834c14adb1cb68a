using Mastwright.Circuits.Transient;

namespace Mastwright.Protection.Lightning;

/// <summary>
/// A short arc that holds one voltage at high current and is a plain resistance near a current zero: R = V/√(i² + i₀²). Below i₀ the channel is taken
/// to stay hot, as it does within a stroke.
/// </summary>
/// <param name="Volts">Voltage at high current.</param>
/// <param name="KneeA">i₀ in amperes.</param>
public sealed record BurningArc(double Volts, double KneeA = 100) : IArcLaw
{
    /// <inheritdoc/>
    public double ResistanceOhm(in ArcState state) => Volts / Math.Sqrt((state.CurrentA * state.CurrentA) + (KneeA * KneeA));
}
