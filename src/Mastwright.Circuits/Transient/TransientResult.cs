using System.Collections.Immutable;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Transient;

/// <summary>What happened to a gap.</summary>
public enum TransientEventKind
{
    /// <summary>The gap broke down.</summary>
    Fired,

    /// <summary>The arc died.</summary>
    Died,
}

/// <summary>Something that happened in a run.</summary>
/// <param name="TimeS">When, seconds.</param>
/// <param name="Part">Name of the part.</param>
/// <param name="Kind">What.</param>
public sealed record TransientEvent(double TimeS, string Part, TransientEventKind Kind);

/// <summary>Voltages and currents of a transient run at every step. Steps are not evenly spaced.</summary>
public sealed class TransientResult
{
    private readonly Dictionary<string, double[]> _nodes;
    private readonly Dictionary<string, (TransientPart Part, double[] Current)> _parts;
    private readonly Dictionary<string, double[]> _far;

    internal TransientResult(
        ImmutableArray<double> times,
        Dictionary<string, double[]> nodes,
        Dictionary<string, (TransientPart Part, double[] Current)> parts,
        Dictionary<string, double[]> far,
        ImmutableArray<TransientEvent> events,
        ImmutableArray<Finding> findings) =>
        (TimesS, _nodes, _parts, _far, Events, Findings) = (times, nodes, parts, far, events, findings);

    /// <summary>Times of the steps, seconds.</summary>
    public ImmutableArray<double> TimesS { get; }

    /// <summary>What the gaps did, in order.</summary>
    public ImmutableArray<TransientEvent> Events { get; }

    /// <summary>Why the run stopped early; empty when it reached its end.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Voltage of a node against ground at each step.</summary>
    /// <exception cref="KeyNotFoundException">There is no such node.</exception>
    public IReadOnlyList<double> Voltage(string node) => node == TransientCircuit.Ground ? new double[TimesS.Length] : _nodes[node];

    /// <summary>Voltage across a part, first node over second, at each step.</summary>
    /// <exception cref="KeyNotFoundException">There is no such part.</exception>
    public IReadOnlyList<double> VoltageAcross(string part)
    {
        var p = _parts[part].Part;
        var (a, b) = (Voltage(p.A), Voltage(p.B));
        return [.. Enumerable.Range(0, TimesS.Length).Select(i => a[i] - b[i])];
    }

    /// <summary>
    /// Current through a part from first node to second at each step: of the arc alone for a gap (its electrodes are
    /// the part named with <c>.C</c> after it), into the near end for a line.
    /// </summary>
    /// <exception cref="KeyNotFoundException">There is no such part.</exception>
    public IReadOnlyList<double> Current(string part) => _parts[part].Current;

    /// <summary>Current into the far end of a line at each step.</summary>
    /// <exception cref="KeyNotFoundException">There is no such line.</exception>
    public IReadOnlyList<double> CurrentIntoFarEnd(string line) => _far[line];

    /// <summary>The highest voltage of a node against ground, of either sign.</summary>
    public PeakVolts HighestVoltage(string node) => new(Voltage(node).Max(Math.Abs));

    /// <summary>The highest voltage across a part, of either sign.</summary>
    public PeakVolts HighestVoltageAcross(string part) => new(VoltageAcross(part).Max(Math.Abs));

    /// <summary>The highest current through a part, of either sign.</summary>
    public PeakAmps HighestCurrent(string part) => new(Current(part).Max(Math.Abs));

    /// <summary>Energy taken in by a part over the run, joules (trapezoidal rule over the steps).</summary>
    public double EnergyJ(string part)
    {
        var (v, i) = (VoltageAcross(part), Current(part));
        return Integrate(k => v[k] * i[k]);
    }

    /// <summary>∫i²dt of a part over the run, A²s (J/Ω).</summary>
    public double ActionA2S(string part)
    {
        var i = Current(part);
        return Integrate(k => i[k] * i[k]);
    }

    /// <summary>∫|i|dt of a part over the run, coulombs.</summary>
    public double ChargeC(string part)
    {
        var i = Current(part);
        return Integrate(k => Math.Abs(i[k]));
    }

    /// <summary>A series of this result at a time, straight between steps.</summary>
    /// <param name="series">A series from <see cref="Voltage"/>, <see cref="Current"/> or the like.</param>
    /// <param name="timeS">Time, seconds; held at the ends.</param>
    public double At(IReadOnlyList<double> series, double timeS)
    {
        var k = TimesS.BinarySearch(timeS);
        if (k >= 0)
            return series[k];
        k = ~k;
        if (k == 0 || k == TimesS.Length)
            return series[Math.Clamp(k, 0, TimesS.Length - 1)];
        var share = (timeS - TimesS[k - 1]) / (TimesS[k] - TimesS[k - 1]);
        return series[k - 1] + (share * (series[k] - series[k - 1]));
    }

    private double Integrate(Func<int, double> value)
    {
        var sum = 0.0;
        for (var k = 1; k < TimesS.Length; k++)
            sum += (TimesS[k] - TimesS[k - 1]) * (value(k) + value(k - 1)) / 2;
        return sum;
    }
}
