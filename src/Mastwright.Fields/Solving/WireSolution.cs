using System.Numerics;
using Mastwright.Fields.Meshing;
using Mastwright.Fields.Results;
using Mastwright.Numerics.Dense;

namespace Mastwright.Fields.Solving;

/// <summary>
/// What a model does at one frequency, seen from its feeds: port matrices, and from them the currents for any way of driving it.
/// All phasors are RMS, time factor exp(+jωt). Safe to share between threads.
/// </summary>
public sealed class WireSolution
{
    private readonly Complex[][] _unit;

    internal WireSolution(WireMesh mesh, double frequencyHz, Complex[][] unitVoltageCurrents)
    {
        Mesh = mesh;
        FrequencyHz = frequencyHz;
        _unit = unitVoltageCurrents;
        PortAdmittances = new Complex[_unit.Length, _unit.Length];
        for (var i = 0; i < _unit.Length; i++)
            for (var j = 0; j < _unit.Length; j++)
                PortAdmittances[i, j] = FeedCurrent(mesh, i, _unit[j]);
        PortImpedances = Invert(PortAdmittances);
    }

    /// <summary>The wires as they were cut.</summary>
    public WireMesh Mesh { get; }

    /// <summary>Frequency in hertz.</summary>
    public double FrequencyHz { get; }

    /// <summary>Short-circuit admittances between feeds, siemens, in the order of the model's feeds; symmetric.</summary>
    public Complex[,] PortAdmittances { get; }

    /// <summary>Open-circuit impedances between feeds, ohms, in the order of the model's feeds; symmetric.</summary>
    public Complex[,] PortImpedances { get; }

    /// <summary>The impedance at a feed when every other feed is open, ohms.</summary>
    public Complex FeedImpedance(int feed = 0) => PortImpedances[feed, feed];

    /// <summary>Drives the feeds with given RMS voltages (a source of no impedance at each).</summary>
    /// <exception cref="ArgumentException">Not one voltage for each feed.</exception>
    public DrivenWires DriveVoltages(params ReadOnlySpan<Complex> voltages)
    {
        RequireCount(voltages.Length);
        var x = new Complex[Mesh.UnknownCount];
        for (var f = 0; f < _unit.Length; f++)
            for (var i = 0; i < x.Length; i++)
                x[i] += voltages[f] * _unit[f][i];
        return new(Mesh, FrequencyHz, x, voltages.ToArray());
    }

    /// <summary>Drives the feeds with given RMS currents; zero leaves a feed open.</summary>
    /// <exception cref="ArgumentException">Not one current for each feed.</exception>
    public DrivenWires DriveCurrents(params ReadOnlySpan<Complex> currents)
    {
        RequireCount(currents.Length);
        var voltages = new Complex[currents.Length];
        for (var i = 0; i < voltages.Length; i++)
            for (var j = 0; j < voltages.Length; j++)
                voltages[i] += PortImpedances[i, j] * currents[j];
        return DriveVoltages(voltages);
    }

    /// <summary>Drives one feed with a given power, its current real and positive, all other feeds open.</summary>
    /// <param name="powerW">Power into the feed in watts.</param>
    /// <param name="feed">Index of the feed.</param>
    public DrivenWires DrivePower(double powerW, int feed = 0)
    {
        var currents = new Complex[_unit.Length];
        currents[feed] = Math.Sqrt(powerW / PortImpedances[feed, feed].Real);
        return DriveCurrents(currents);
    }

    /// <summary>
    /// Drives a group: the feed currents stand in given ratios (magnitude and phase) and all feeds together take a given power. The
    /// driven result tells each element's drive impedance, which mutual coupling makes differ from its own.
    /// </summary>
    /// <param name="ratios">One complex ratio for each feed; zero leaves a feed open.</param>
    /// <param name="totalPowerW">Power into all feeds together, watts.</param>
    /// <exception cref="ArgumentException">Not one ratio for each feed, or all zero.</exception>
    public DrivenWires DriveRatios(ReadOnlySpan<Complex> ratios, double totalPowerW)
    {
        var unit = DriveCurrents(ratios);
        if (!(unit.InputPowerW > 0))
            throw new ArgumentException("At least one ratio must differ from zero.", nameof(ratios));
        var scale = Math.Sqrt(totalPowerW / unit.InputPowerW);
        var currents = ratios.ToArray();
        for (var i = 0; i < currents.Length; i++)
            currents[i] *= scale;
        return DriveCurrents(currents);
    }

    internal static Complex FeedCurrent(WireMesh mesh, int feed, ReadOnlySpan<Complex> unknowns)
    {
        var sum = Complex.Zero;
        foreach (var term in mesh.Basis.At(mesh.FeedEnds[feed]))
            sum += BasisSet.OutwardSign(mesh.FeedEnds[feed].End) * term.Weight * unknowns[term.Unknown];
        return sum;
    }

    private void RequireCount(int count)
    {
        if (count != _unit.Length)
            throw new ArgumentException($"The model has {_unit.Length} feeds, but {count} values were given.");
    }

    private static Complex[,] Invert(Complex[,] matrix)
    {
        var n = matrix.GetLength(0);
        var inverse = new Complex[n, n];
        if (n == 0)
            return inverse;
        var columns = ComplexLu.Factor(ComplexMatrix.From(matrix), new(Threads: 1)).Require().SolveMany(ComplexMatrix.Identity(n));
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++)
                inverse[i, j] = columns[i, j];
        return inverse;
    }
}
