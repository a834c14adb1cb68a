using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>
/// A source: an open-circuit voltage behind an internal resistance. The internal resistance shapes what the network
/// sees, but it is not a part that gets warm: what the source gives is counted at its terminals.
/// </summary>
public sealed record AcSource : Part
{
    /// <summary>Creates a source.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="plus">Node of the hot terminal.</param>
    /// <param name="minus">Node of the return.</param>
    /// <param name="openVoltage">Open-circuit voltage, RMS phasor in volts.</param>
    /// <param name="internalOhm">Internal resistance, ohms.</param>
    public AcSource(string name, string plus, string minus, Complex openVoltage, double internalOhm)
        : base(name)
    {
        (Plus, Minus, OpenVoltage) = (plus, minus, openVoltage);
        InternalOhm = Guard.NotNegative(internalOhm, nameof(internalOhm));
    }

    /// <summary>A transmitter that can give <paramref name="powerW"/> watts to a matched line: E = 2·√(P·R).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Power or line resistance is not above zero.</exception>
    public static AcSource Transmitter(string name, string plus, string minus, double powerW, double lineOhm) =>
        new(name, plus, minus, 2 * Math.Sqrt(Guard.Positive(powerW) * Guard.Positive(lineOhm)), lineOhm);

    /// <summary>Hot terminal.</summary>
    public string Plus { get; }

    /// <summary>Return.</summary>
    public string Minus { get; }

    /// <summary>Open-circuit voltage, RMS phasor.</summary>
    public Complex OpenVoltage { get; init; }

    /// <summary>Internal resistance, ohms.</summary>
    public double InternalOhm { get; }

    /// <inheritdoc/>
    public override PartRole Role => PartRole.Source;

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [Plus, Minus];

    internal override int BranchCount => 1;

    internal override void Stamp(StampContext at)
    {
        at.BranchBetween(at.Pin(0), at.Pin(1), at.Branch());
        at.Add(at.Branch(), at.Branch(), -InternalOhm);
        at.AddSource(at.Branch(), OpenVoltage);
    }

    internal override PartState Read(ReadContext at) => new(this, new PortState(at.Voltage(0), at.Current()));
}

/// <summary>A source that pushes a stated current whatever it meets: for asking what drive a stated current needs.</summary>
public sealed record CurrentDrive : Part
{
    /// <summary>Creates a current drive.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="into">Node the current is pushed into.</param>
    /// <param name="from">Node it is drawn from.</param>
    /// <param name="current">RMS phasor, amperes.</param>
    public CurrentDrive(string name, string into, string from, Complex current)
        : base(name) => (Into, From, Current) = (into, from, current);

    /// <summary>Node the current is pushed into.</summary>
    public string Into { get; }

    /// <summary>Node it is drawn from.</summary>
    public string From { get; }

    /// <summary>RMS phasor, amperes.</summary>
    public Complex Current { get; }

    /// <inheritdoc/>
    public override PartRole Role => PartRole.Source;

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [Into, From];

    internal override int BranchCount => 0;

    internal override void Stamp(StampContext at)
    {
        at.AddSource(at.Pin(0), Current);
        at.AddSource(at.Pin(1), -Current);
    }

    internal override PartState Read(ReadContext at) => new(this, new PortState(at.Voltage(0), -Current));
}
