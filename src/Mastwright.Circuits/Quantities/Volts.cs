namespace Mastwright.Circuits.Quantities;

/// <summary>
/// An effective (RMS) voltage of a sine wave, in volts. It heats; it does not by itself break insulation down.
/// There is no implicit way to <see cref="PeakVolts"/>: say <see cref="ToPeak"/> where you mean it.
/// </summary>
/// <param name="Value">Volts RMS, never negative.</param>
public readonly record struct RmsVolts(double Value) : IComparable<RmsVolts>
{
    /// <summary>The crest of the same sine wave: √2 times the RMS value.</summary>
    public PeakVolts ToPeak() => new(Value * Math.Sqrt(2));

    /// <inheritdoc/>
    public int CompareTo(RmsVolts other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value:G6} V RMS");
}

/// <summary>
/// The crest of a voltage wave, in volts. It is what insulation and gaps see.
/// </summary>
/// <param name="Value">Volts peak, never negative.</param>
public readonly record struct PeakVolts(double Value) : IComparable<PeakVolts>
{
    /// <summary>The RMS value of a sine wave with this crest.</summary>
    public RmsVolts ToRms() => new(Value / Math.Sqrt(2));

    /// <inheritdoc/>
    public int CompareTo(PeakVolts other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value:G6} V peak");
}
