using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Lines;

namespace Mastwright.Circuits.Ac;

/// <summary>A solved network at one frequency. All phasors are RMS.</summary>
public sealed class AcSolution
{
    private readonly NetworkLayout _layout;
    private readonly Complex[] _unknowns;
    private ImmutableArray<PartState> _parts;

    internal AcSolution(Network network, NetworkLayout layout, Complex[] unknowns, double frequencyHz) =>
        (Network, _layout, _unknowns, FrequencyHz) = (network, layout, unknowns, frequencyHz);

    /// <summary>The network.</summary>
    public Network Network { get; }

    /// <summary>Frequency, hertz.</summary>
    public double FrequencyHz { get; }

    /// <summary>The state of every part, in the order of the network.</summary>
    public ImmutableArray<PartState> Parts
    {
        get
        {
            if (_parts.IsDefault)
                ImmutableInterlocked.InterlockedInitialize(ref _parts, ReadAll());
            return _parts;
        }
    }

    /// <summary>Power given by all sources at their terminals, watts.</summary>
    public double InputPowerW => -PowerOf(PartRole.Source);

    /// <summary>Power taken by all loads, watts.</summary>
    public double LoadPowerW => PowerOf(PartRole.Load);

    /// <summary>Heat in all other parts, watts.</summary>
    public double LossW => Parts.Sum(p => p.DissipationW);

    /// <summary>Load power over input power.</summary>
    public double Efficiency => LoadPowerW / InputPowerW;

    /// <summary>Network loss in dB: 10·log(input power over load power).</summary>
    public double LossDb => 10 * Math.Log10(InputPowerW / LoadPowerW);

    /// <summary>Voltage of a node against ground, RMS phasor.</summary>
    /// <exception cref="KeyNotFoundException">There is no such node.</exception>
    public Complex NodeVoltage(string node) => node == Network.Ground ? Complex.Zero : _unknowns[_layout.NodeRows[node]];

    /// <summary>The state of a part by name.</summary>
    /// <exception cref="KeyNotFoundException">There is no such part.</exception>
    public PartState Part(string name) => Parts[_layout.PartIndex[name]];

    /// <summary>The impedance a source looks into, ohms.</summary>
    /// <param name="source">Name of a source part.</param>
    public Complex InputImpedanceOhm(string source)
    {
        var at = new ReadContext(_layout, _unknowns, FrequencyHz);
        var index = _layout.PartIndex[source];
        at.MoveTo(index);
        var port = Network.Parts[index].Read(at).Ports[0];
        return port.CurrentPhasor == Complex.Zero ? new(double.PositiveInfinity, 0) : -port.VoltagePhasor / port.CurrentPhasor;
    }

    /// <summary>Standing wave ratio at a source on a line of the stated impedance.</summary>
    public double Swr(string source, double lineOhm) => Mismatch.Swr(InputImpedanceOhm(source), lineOhm);

    /// <summary>The same solution with every voltage and current scaled so that the sources give the stated power.</summary>
    /// <param name="inputPowerW">Watts at the source terminals.</param>
    /// <remarks>This is the transmitter that holds its power through its own tuner; without scaling, a mismatched transmitter gives less.</remarks>
    public AcSolution AtInputPower(double inputPowerW)
    {
        var scale = Math.Sqrt(inputPowerW / InputPowerW);
        return new(Network, _layout, [.. _unknowns.Select(u => u * scale)], FrequencyHz);
    }

    private double PowerOf(PartRole role)
    {
        var sum = 0.0;
        foreach (var p in Parts)
            if (p.Part.Role == role)
                sum += p.PowerInW;
        return sum;
    }

    private ImmutableArray<PartState> ReadAll()
    {
        var at = new ReadContext(_layout, _unknowns, FrequencyHz);
        var states = ImmutableArray.CreateBuilder<PartState>(Network.Parts.Length);
        for (var p = 0; p < Network.Parts.Length; p++)
        {
            at.MoveTo(p);
            states.Add(Network.Parts[p].Read(at));
        }

        return states.MoveToImmutable();
    }
}
