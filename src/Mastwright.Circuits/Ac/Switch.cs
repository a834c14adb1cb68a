using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>A relay or switch contact: a small resistance when closed, a small capacitance when open.</summary>
public sealed record Switch : Part
{
    /// <summary>Creates a contact.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="a">First node.</param>
    /// <param name="b">Second node.</param>
    /// <param name="closed">Whether the contact is made.</param>
    /// <param name="closedOhm">Contact resistance, ohms.</param>
    /// <param name="openF">Capacitance across the open contact, farads.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is negative or not finite.</exception>
    public Switch(string name, string a, string b, bool closed, double closedOhm = 0.005, double openF = 1e-12)
        : base(name)
    {
        (A, B, Closed) = (a, b, closed);
        ClosedOhm = Guard.NotNegative(closedOhm, nameof(closedOhm));
        OpenF = Guard.NotNegative(openF, nameof(openF));
    }

    /// <summary>First node.</summary>
    public string A { get; }

    /// <summary>Second node.</summary>
    public string B { get; }

    /// <summary>Whether the contact is made.</summary>
    public bool Closed { get; init; }

    /// <summary>Contact resistance, ohms.</summary>
    public double ClosedOhm { get; }

    /// <summary>Open capacitance, farads.</summary>
    public double OpenF { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [A, B];

    internal override int BranchCount => 1;

    internal override void Stamp(StampContext at)
    {
        // Closed: V - R·I = 0. Open: jωC·V - I = 0.
        var onVoltage = Closed ? Complex.One : new Complex(0, at.Omega * OpenF);
        at.Add(at.Pin(0), at.Branch(), 1);
        at.Add(at.Pin(1), at.Branch(), -1);
        at.Add(at.Branch(), at.Pin(0), onVoltage);
        at.Add(at.Branch(), at.Pin(1), -onVoltage);
        at.Add(at.Branch(), at.Branch(), Closed ? -ClosedOhm : -1);
    }

    internal override PartState Read(ReadContext at) => new(this, new PortState(at.Voltage(0), at.Current()));
}
