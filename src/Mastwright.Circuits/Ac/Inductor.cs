using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Loss;

namespace Mastwright.Circuits.Ac;

/// <summary>A coil between two nodes: inductance with its loss in series, and its own capacitance across both.</summary>
public sealed record Inductor : Part
{
    /// <summary>Creates a coil.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="a">First node; couplings count current into this end (the dotted end).</param>
    /// <param name="b">Second node.</param>
    /// <param name="inductanceH">Henries, zero or more.</param>
    /// <param name="loss">How the coil loses power.</param>
    /// <param name="selfCapacitanceF">The coil's own capacitance across its ends, farads; zero when not modelled.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is negative or not finite.</exception>
    public Inductor(string name, string a, string b, double inductanceH, CoilLoss loss, double selfCapacitanceF = 0)
        : base(name)
    {
        (A, B, Loss) = (a, b, loss);
        InductanceH = Guard.NotNegative(inductanceH, nameof(inductanceH));
        SelfCapacitanceF = Guard.NotNegative(selfCapacitanceF, nameof(selfCapacitanceF));
    }

    /// <summary>First node, the dotted end.</summary>
    public string A { get; }

    /// <summary>Second node.</summary>
    public string B { get; }

    /// <summary>Henries.</summary>
    public double InductanceH { get; }

    /// <summary>How the coil loses power.</summary>
    public CoilLoss Loss { get; }

    /// <summary>Farads across the coil.</summary>
    public double SelfCapacitanceF { get; }

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins => [A, B];

    internal override int BranchCount => 1;

    internal override void Stamp(StampContext at)
    {
        at.BranchBetween(at.Pin(0), at.Pin(1), at.Branch());
        at.Add(at.Branch(), at.Branch(), -new Complex(Loss.ResistanceOhm(InductanceH, at.FrequencyHz), at.Omega * InductanceH));
        if (SelfCapacitanceF > 0)
            at.Admittance(at.Pin(0), at.Pin(1), new(0, at.Omega * SelfCapacitanceF));
    }

    internal override PartState Read(ReadContext at)
    {
        var voltage = at.Voltage(0);
        var coilCurrent = at.Current();
        var terminal = coilCurrent + (voltage * new Complex(0, at.Omega * SelfCapacitanceF));
        return new(this, [new(voltage, terminal)], new(voltage.Magnitude), new(Math.Max(coilCurrent.Magnitude, terminal.Magnitude)))
        {
            HeatW = Loss.ResistanceOhm(InductanceH, at.FrequencyHz) * coilCurrent.Magnitude * coilCurrent.Magnitude,
        };
    }
}
