namespace Mastwright.Circuits.Quantities;

/// <summary>An effective (RMS) current of a sine wave, in amperes: the one that heats.</summary>
/// <param name="Value">Amperes RMS, never negative.</param>
public readonly record struct RmsAmps(double Value) : IComparable<RmsAmps>
{
    /// <summary>The crest of the same sine wave: √2 times the RMS value.</summary>
    public PeakAmps ToPeak() => new(Value * Math.Sqrt(2));

    /// <inheritdoc/>
    public int CompareTo(RmsAmps other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value:G6} A RMS");
}

/// <summary>The crest of a current wave, in amperes.</summary>
/// <param name="Value">Amperes peak, never negative.</param>
public readonly record struct PeakAmps(double Value) : IComparable<PeakAmps>
{
    /// <summary>The RMS value of a sine wave with this crest.</summary>
    public RmsAmps ToRms() => new(Value / Math.Sqrt(2));

    /// <inheritdoc/>
    public int CompareTo(PeakAmps other) => Value.CompareTo(other.Value);

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Value:G6} A peak");
}
