using System.Collections.Immutable;
using System.Numerics;

namespace Mastwright.Circuits.Ac;

/// <summary>What a part does with the power it takes in.</summary>
public enum PartRole
{
    /// <summary>It gives power: the transmitter.</summary>
    Source,

    /// <summary>It takes the power that is wanted: the antenna.</summary>
    Load,

    /// <summary>Everything else; what it takes turns to heat.</summary>
    Passive,
}

/// <summary>
/// One part of an alternating-current network. Parts are immutable; nodes are named by text and the node
/// <see cref="Network.Ground"/> is the reference. All phasors are RMS.
/// </summary>
public abstract record Part
{
    private protected Part(string name) => Name = name;

    /// <summary>The part's name, unique in its network, e.g. <c>"L1"</c>.</summary>
    public string Name { get; init; }

    /// <summary>What the part does with power.</summary>
    public virtual PartRole Role => PartRole.Passive;

    /// <summary>
    /// The nodes the part hangs on, two for each port: the node the port's current flows into, then the one it leaves by.
    /// </summary>
    public abstract ImmutableArray<string> Pins { get; }

    /// <summary>How many branch currents the part adds to the unknowns.</summary>
    internal abstract int BranchCount { get; }

    /// <summary>Writes the part's equations.</summary>
    internal abstract void Stamp(StampContext at);

    /// <summary>The voltage across and the current into each port, once the unknowns are known.</summary>
    internal abstract PartState Read(ReadContext at);
}

/// <summary>The voltage across one port of a part and the current into it, as RMS phasors.</summary>
/// <param name="VoltagePhasor">First pin to second pin, volts RMS.</param>
/// <param name="CurrentPhasor">Into the first pin and out of the second, amperes RMS.</param>
public readonly record struct PortState(Complex VoltagePhasor, Complex CurrentPhasor)
{
    /// <summary>Power flowing into the port, in watts; negative when the port gives.</summary>
    public double PowerInW => (VoltagePhasor * Complex.Conjugate(CurrentPhasor)).Real;

    /// <summary>The impedance looking into the port, in ohms; infinite when no current flows.</summary>
    public Complex ImpedanceOhm => CurrentPhasor == Complex.Zero ? new(double.PositiveInfinity, 0) : VoltagePhasor / CurrentPhasor;
}

/// <summary>What one part goes through at the solved frequency and power.</summary>
/// <param name="Part">The part.</param>
/// <param name="Ports">Voltage and current of each port, in the order of the part's pins.</param>
/// <param name="HighestVoltage">The highest RMS voltage anywhere in the part (along the whole length of a line).</param>
/// <param name="HighestCurrent">The highest RMS current anywhere in the part (along the whole length of a line, or in a coil behind its own capacitance).</param>
public sealed record PartState(Part Part, ImmutableArray<PortState> Ports, Quantities.RmsVolts HighestVoltage, Quantities.RmsAmps HighestCurrent)
{
    internal PartState(Part part, PortState port)
        : this(part, [port], new(port.VoltagePhasor.Magnitude), new(port.CurrentPhasor.Magnitude))
    {
    }

    /// <summary>The part's name.</summary>
    public string Name => Part.Name;

    /// <summary>Power the part takes in, in watts: heat for a passive part, the wanted power for a load, negative for a source.</summary>
    public double PowerInW => Ports.Sum(p => p.PowerInW);

    /// <summary>Heat made in a passive part, in watts; zero for sources and loads.</summary>
    public double DissipationW => Part.Role == PartRole.Passive ? HeatW ?? PowerInW : 0;

    /// <summary>The heat where it differs from the power taken in: a coupled coil passes power on to its partner.</summary>
    internal double? HeatW { get; init; }

    /// <summary>The crest of the highest voltage in the part.</summary>
    public Quantities.PeakVolts PeakVoltage => HighestVoltage.ToPeak();

    /// <summary>The crest of the highest current in the part.</summary>
    public Quantities.PeakAmps PeakCurrent => HighestCurrent.ToPeak();
}
