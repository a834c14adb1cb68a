using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Circuits.Ac;
using Mastwright.Model.Trails;

namespace Mastwright.Circuits.Groups;

/// <summary>How far one mast's current is from what was asked, both held against the reference mast.</summary>
/// <param name="Mast">Which mast, from zero.</param>
/// <param name="Wanted">Wanted ratio to the reference mast's current.</param>
/// <param name="Achieved">Achieved ratio.</param>
public readonly record struct DriveError(int Mast, Complex Wanted, Complex Achieved)
{
    /// <summary>Error of the amount, dB; infinite for a mast that should carry nothing.</summary>
    public double Db => 20 * Math.Log10(Achieved.Magnitude / Wanted.Magnitude);

    /// <summary>Error of the phase, degrees, from -180 to 180.</summary>
    public double Degrees => (Achieved / Wanted).Phase * 180 / Math.PI;

    /// <summary>Size of the error vector over the reference current.</summary>
    public double Vector => (Achieved - Wanted).Magnitude;
}

/// <summary>A group with its feed system, solved with real parts and lines.</summary>
public sealed class GroupFeed
{
    /// <summary>Name of the transmitter part.</summary>
    public const string Transmitter = "TX";

    /// <summary>Name of a hybrid's dump resistor.</summary>
    public const string Dump = "DUMP";

    internal GroupFeed(string title, Network network, GroupProblem problem, ImmutableArray<Finding> findings)
    {
        (Title, Network, Problem, Findings) = (title, network, problem, findings);
        Solution = network.Solve(problem.FrequencyHz).AtInputPower(problem.PowerW);
    }

    /// <summary>What kind of feed it is.</summary>
    public string Title { get; }

    /// <summary>The whole network: transmitter, matching, phasing, lines, masts.</summary>
    public Network Network { get; }

    /// <summary>The problem it answers.</summary>
    public GroupProblem Problem { get; }

    /// <summary>The network at the design frequency with the transmitter giving its stated power.</summary>
    public AcSolution Solution { get; }

    /// <summary>What the builder should know.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Achieved base currents, RMS phasors at full power, for the pattern.</summary>
    public ImmutableArray<Complex> Currents => [.. Solution.Part("ANT").Ports.Select(p => p.CurrentPhasor)];

    /// <summary>What each mast shows and takes at full power, as achieved: for insulators, gaps and people near the base.</summary>
    public ImmutableArray<MastDrive> Drives => [.. Solution.Part("ANT").Ports.Select((p, k) => new MastDrive(k, p.CurrentPhasor, p.VoltagePhasor, p.ImpedanceOhm, p.PowerInW))];

    /// <summary>Drive errors at the design frequency, the reference mast included with none.</summary>
    public ImmutableArray<DriveError> Errors => ErrorsOf(Solution);

    /// <summary>The largest error vector of any mast.</summary>
    public double WorstError => Errors.Max(e => e.Vector);

    /// <summary>Standing wave ratio at the transmitter.</summary>
    public double Swr => Solution.Swr(Transmitter, Problem.LineOhm);

    /// <summary>Power in the dump resistor, watts; zero without one.</summary>
    public double DumpPowerW => Solution.Parts.FirstOrDefault(p => p.Name == Dump)?.DissipationW ?? 0;

    /// <summary>The lines to be cut: name, physical length and electrical length in degrees.</summary>
    public ImmutableArray<(string Name, double LengthM, double Degrees)> Lines =>
        [.. Network.Parts.OfType<Line>().Select(l => (l.Name, l.LengthM, 360 * l.LengthM / l.Type.WavelengthM(Problem.FrequencyHz)))];

    /// <summary>Drive errors and standing wave ratio at another frequency of the band.</summary>
    public (ImmutableArray<DriveError> Errors, double Swr) At(double frequencyHz)
    {
        var s = Network.Solve(frequencyHz);
        return (ErrorsOf(s), s.Swr(Transmitter, Problem.LineOhm));
    }

    private ImmutableArray<DriveError> ErrorsOf(AcSolution solution)
    {
        var ports = solution.Part("ANT").Ports;
        var reference = Problem.Reference;
        return [.. Enumerable.Range(0, Problem.Masts).Select(k => new DriveError(k, Problem.Currents[k] / Problem.Currents[reference], ports[k].CurrentPhasor / ports[reference].CurrentPhasor))];
    }
}

/// <summary>A feed system, or why there is none.</summary>
/// <param name="Feed">The feed; null when it could not be designed.</param>
/// <param name="Findings">Why not, or what to know.</param>
public sealed record GroupResult(GroupFeed? Feed, ImmutableArray<Finding> Findings);
