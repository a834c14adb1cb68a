using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>An antenna or a group of them: V = Z·I over its ports, Z being the antenna's own impedance matrix over frequency.</summary>
public sealed record MultiportLoad : Part
{
    /// <summary>Creates a load.</summary>
    /// <param name="name">Unique name.</param>
    /// <param name="ports">Two nodes for each port: hot, then return.</param>
    /// <param name="impedance">The impedance matrix; its size must be the number of ports.</param>
    /// <exception cref="ArgumentException">The number of ports and the size of the matrix differ.</exception>
    public MultiportLoad(string name, ImmutableArray<(string Hot, string Return)> ports, LoadImpedance impedance)
        : base(name)
    {
        if (ports.Length != impedance.Ports)
            throw new ArgumentException($"{ports.Length} ports were given for a matrix of {impedance.Ports}.", nameof(ports));
        Impedance = impedance;
        Pins = [.. ports.SelectMany(p => new[] { p.Hot, p.Return })];
    }

    /// <summary>A one-port load of constant impedance from a node to ground.</summary>
    public MultiportLoad(string name, string hot, Complex impedanceOhm)
        : this(name, [(hot, Network.Ground)], LoadImpedance.Constant(impedanceOhm))
    {
    }

    /// <summary>The impedance matrix over frequency.</summary>
    public LoadImpedance Impedance { get; init; }

    /// <inheritdoc/>
    public override PartRole Role => PartRole.Load;

    /// <inheritdoc/>
    public override ImmutableArray<string> Pins { get; }

    internal override int BranchCount => Impedance.Ports;

    internal override void Stamp(StampContext at)
    {
        var z = Impedance.At(at.FrequencyHz);
        for (var i = 0; i < Impedance.Ports; i++)
        {
            at.BranchBetween(at.Pin(2 * i), at.Pin((2 * i) + 1), at.Branch(i));
            for (var j = 0; j < Impedance.Ports; j++)
                at.Add(at.Branch(i), at.Branch(j), -z[i, j]);
        }
    }

    internal override PartState Read(ReadContext at)
    {
        var ports = new PortState[Impedance.Ports];
        for (var i = 0; i < ports.Length; i++)
            ports[i] = new(at.Voltage(2 * i), at.Current(i));
        return new(this, [.. ports], new(ports.Max(p => p.VoltagePhasor.Magnitude)), new(ports.Max(p => p.CurrentPhasor.Magnitude)));
    }
}
