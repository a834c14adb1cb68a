using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Loss;

namespace Mastwright.Circuits.Ac;

/// <summary>A capacitor between two nodes with its loss in series.</summary>
public sealed record Capacitor : Part
{
    /// <summary>Creates a capacitor.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="a">First node.</param>
    /// <param name="b">Second node.</param>
    /// <param name="capacitanceF">Farads, zero or more.</param>
    /// <param name="loss">How the capacitor loses power.</param>
    /// <exception cref="ArgumentOutOfRangeException">The capacitance is negative or not finite.</exception>
    public Capacitor(string name, string a, string b, double capacitanceF, CapacitorLoss loss)
        : base(name)
    {
        (A, B, Loss) = (a, b, loss);
        CapacitanceF = Guard.NotNegative(capacitanceF, nameof(capacitanceF));
    }

    /// <summary>First node.</summary>
    public string A { get; }

    /// <summary>Second node.</summary>
    public string B { get; }

    /// <summary>Farads.</summary>
    public double CapacitanceF { get; }

    /// <summary>How the capacitor loses power.</summary>
    public CapacitorLoss Loss { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [A, B];

    internal override int BranchCount => 0;

    internal override void Stamp(StampContext at) => at.Admittance(at.Pin(0), at.Pin(1), AdmittanceS(at.FrequencyHz));

    internal override PartState Read(ReadContext at)
    {
        var voltage = at.Voltage(0);
        return new(this, new PortState(voltage, voltage * AdmittanceS(at.FrequencyHz)));
    }

    private Complex AdmittanceS(double frequencyHz)
    {
        if (CapacitanceF == 0)
            return Complex.Zero;
        var reactance = 1 / (2 * Math.PI * frequencyHz * CapacitanceF);
        return Complex.One / new Complex(Loss.ResistanceOhm(CapacitanceF, frequencyHz), -reactance);
    }
}
