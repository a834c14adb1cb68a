using System.Collections.Immutable;

namespace Mastwright.Circuits.Ac;

/// <summary>A resistance between two nodes; zero ohms is a bond.</summary>
public sealed record Resistor : Part
{
    /// <summary>Creates a resistor.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="a">First node.</param>
    /// <param name="b">Second node.</param>
    /// <param name="resistanceOhm">Ohms, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resistance is negative or not finite.</exception>
    public Resistor(string name, string a, string b, double resistanceOhm)
        : base(name)
    {
        (A, B, ResistanceOhm) = (a, b, Guard.NotNegative(resistanceOhm, nameof(resistanceOhm)));
    }

    /// <summary>First node.</summary>
    public string A { get; }

    /// <summary>Second node.</summary>
    public string B { get; }

    /// <summary>Ohms.</summary>
    public double ResistanceOhm { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [A, B];

    internal override int BranchCount => 1;

    internal override void Stamp(StampContext at)
    {
        at.BranchBetween(at.Pin(0), at.Pin(1), at.Branch());
        at.Add(at.Branch(), at.Branch(), -ResistanceOhm);
    }

    internal override PartState Read(ReadContext at) => new(this, new PortState(at.Voltage(0), at.Current()));
}
