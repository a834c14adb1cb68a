using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>What one mast of a group shows and takes when all carry their wanted currents.</summary>
/// <param name="Mast">Which mast, from zero.</param>
/// <param name="CurrentPhasor">Base current at full power, A RMS.</param>
/// <param name="VoltagePhasor">Base voltage at full power, V RMS.</param>
/// <param name="ImpedanceOhm">Drive impedance V/I, ohms; infinite for a mast without current.</param>
/// <param name="PowerW">Power it takes, watts; negative when its neighbours give it more than it radiates.</param>
public sealed record MastDrive(int Mast, Complex CurrentPhasor, Complex VoltagePhasor, Complex ImpedanceOhm, double PowerW)
{
    /// <summary>Base current.</summary>
    public RmsAmps Current => new(CurrentPhasor.Magnitude);

    /// <summary>Crest of the base voltage.</summary>
    public PeakVolts Voltage => new RmsVolts(VoltagePhasor.Magnitude).ToPeak();
}

/// <summary>Drive impedances of a group: Z_k = Σ Z_kj·I_j / I_k, solved for the stated power.</summary>
/// <param name="Drives">One row a mast.</param>
/// <param name="Findings">Masts that take no power or give it back.</param>
public sealed record DriveTable(ImmutableArray<MastDrive> Drives, ImmutableArray<Finding> Findings)
{
    /// <summary>Works out the drive table, all the power going into the masts.</summary>
    public static DriveTable Of(GroupProblem problem)
    {
        var z = problem.Load.At(problem.FrequencyHz);
        var n = problem.Masts;
        var v = new Complex[n];
        for (var k = 0; k < n; k++)
            for (var j = 0; j < n; j++)
                v[k] += z[k, j] * problem.Currents[j];
        var total = Enumerable.Range(0, n).Sum(k => (v[k] * Complex.Conjugate(problem.Currents[k])).Real);
        var scale = Math.Sqrt(problem.PowerW / total);
        var drives = Enumerable.Range(0, n).Select(k =>
        {
            var (i, u) = (problem.Currents[k] * scale, v[k] * scale);
            return new MastDrive(k, i, u, i == Complex.Zero ? new(double.PositiveInfinity, 0) : u / i, (u * Complex.Conjugate(i)).Real);
        }).ToImmutableArray();
        return new(drives, [.. drives.Where(d => d.PowerW < 0.01 * problem.PowerW && d.CurrentPhasor != Complex.Zero).Select(d => new Finding(
            "group-weak-mast",
            Severity.Warning,
            d.PowerW < 0 ? $"Mast {d.Mast + 1} gives power back to the network." : $"Mast {d.Mast + 1} takes almost no power; its current will be hard to hold.",
            Value: FormattableString.Invariant($"{d.PowerW:0.0} W of {problem.PowerW:0} W"),
            WayOut: "Use current forcing or a network solved for the currents; a network set by impedance alone will not hold."))]);
    }
}
