using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Groups;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Direction = Mastwright.Model.Design.Direction;

namespace Mastwright.Analysis.Radiate;

/// <summary>What a set of base currents radiates.</summary>
/// <param name="GainDbi">Gain towards the wanted bearing at the strongest elevation there, dBi; all losses counted.</param>
/// <param name="ElevationRad">That elevation.</param>
/// <param name="FrontToBackDb">That gain over the one in the opposite direction at the same elevation, dB.</param>
/// <param name="LevelDb">Decibels below the strongest, round the compass from north through east, at that elevation.</param>
/// <param name="UprightDb">Decibels below the strongest from the wanted horizon over the zenith to the horizon behind.</param>
public sealed record GroupPattern(double GainDbi, double ElevationRad, double FrontToBackDb, ImmutableArray<double> LevelDb, ImmutableArray<double> UprightDb);

/// <summary>What becomes of the pattern when the currents are off.</summary>
/// <param name="SizeError">Largest error of each current's size, as a share.</param>
/// <param name="PhaseErrorRad">Largest error of each phase, rad.</param>
/// <param name="GainLossDb">Gain lost in nine cases of ten at most, dB.</param>
/// <param name="FrontToBackDb">Front to back in nine cases of ten at least, dB.</param>
/// <param name="WorstFrontToBackDb">The worst of all, dB.</param>
/// <param name="Trials">Seeded trials.</param>
public sealed record GroupTolerance(double SizeError, double PhaseErrorRad, double GainLossDb, double FrontToBackDb, double WorstFrontToBackDb, int Trials);

/// <summary>One mast as driven.</summary>
/// <param name="Mast">The mast.</param>
/// <param name="CurrentRms">Base current, A RMS.</param>
/// <param name="DriveOhm">Drive impedance with the others driven, Ω.</param>
/// <param name="PowerW">Power it takes, W; negative when it gives power back.</param>
public sealed record GroupDrive(string Mast, Complex CurrentRms, Complex DriveOhm, double PowerW);

/// <summary>One way to feed a switch position.</summary>
/// <param name="Title">What kind of feed it is.</param>
/// <param name="Feed">The feed, solved with real parts.</param>
/// <param name="Pattern">What it radiates with the currents it really gives.</param>
public sealed record FedPattern(string Title, GroupFeed Feed, GroupPattern Pattern);

/// <summary>One switch position.</summary>
/// <param name="Direction">The position.</param>
/// <param name="Drives">The masts fed.</param>
/// <param name="Pattern">What the wanted currents radiate.</param>
/// <param name="GainOverOneDb">Gain over one of the masts alone (their mean, the others open), dB.</param>
/// <param name="Tolerance">What errors of the currents do.</param>
/// <param name="Feeds">Ways to feed it, best first.</param>
/// <param name="Findings">Why other feeds fail, and what to know.</param>
public sealed record SteeredDirection(
    Direction Direction, ImmutableArray<GroupDrive> Drives, GroupPattern Pattern, double GainOverOneDb, ImmutableArray<GroupTolerance> Tolerance, ImmutableArray<FedPattern> Feeds, ImmutableArray<Finding> Findings);

/// <summary>A group over the real soil.</summary>
/// <param name="Group">The group.</param>
/// <param name="ImpedanceOhm">Self and mutual impedances at the feet, Ω.</param>
/// <param name="Masts">Names of the masts, in the order of the matrix.</param>
/// <param name="Directions">Switch position by position.</param>
/// <param name="Unknowns">Unknown currents solved for.</param>
public sealed record SteeredGroup(Group Group, Complex[,] ImpedanceOhm, ImmutableArray<string> Masts, ImmutableArray<SteeredDirection> Directions, int Unknowns);

/// <summary>Groups of masts over the real soil: drive impedances, patterns, tolerance and feeds.</summary>
public static class GroupPatternRun
{
    private static readonly (double Size, double PhaseDeg)[] Errors = [(0.02, 2), (0.05, 5), (0.1, 10)];

    /// <summary>Every group.</summary>
    public static (ImmutableArray<SteeredGroup> Groups, ImmutableArray<Finding> Findings) Of(Station station, IProgress<AnalysisStep>? progress = null, CancellationToken cancellation = default)
    {
        var soil = SoilModels.Of(station);
        var findings = new List<Finding>(soil.Findings);
        var groups = ImmutableArray.CreateBuilder<SteeredGroup>();
        foreach (var (group, g) in station.Groups.Select((group, g) => (group, g)))
        {
            progress?.Report(new AnalysisStep($"Solving group {group.Name} over the soil", (double)g / station.Groups.Length));
            var solved = SoilSolver.Solve(soil.Model, group.FrequencyHz, cancellation);
            findings.AddRange(solved.Findings);
            if (solved.Solution is { } solution)
            {
                var basis = new GroupBasis(solution);
                groups.Add(new(group, solution.PortImpedances, [.. station.Masts.Select(m => m.Name)], [.. group.Directions.Select(d => Steer(station, group, d, basis, cancellation))], solution.Mesh.UnknownCount));
            }
        }

        return (groups.ToImmutable(), [.. findings.DistinctBy(f => (f.Code, f.Message))]);
    }

    private static SteeredDirection Steer(Station station, Group group, Direction direction, GroupBasis basis, CancellationToken cancellation)
    {
        var asked = GroupRun.Asked(station, direction);
        var currents = basis.AtPower(asked, group.PowerW);
        var azimuth = (Math.PI / 2) - direction.BearingRad;
        var pattern = basis.Pattern(currents, azimuth);

        // The mean over the masts fed: standing beside the others, each alone leans its own way.
        var one = SoilRun.Db(Enumerable.Range(0, asked.Length).Where(i => asked[i] != Complex.Zero)
            .Average(i => Math.Pow(10, basis.Pattern([.. asked.Select((_, k) => k == i ? Complex.One : Complex.Zero)], azimuth).GainDbi / 10)));
        var volts = basis.Volts(currents);
        var drives = station.Masts.Select((m, i) => (m, i)).Where(p => asked[p.i] != Complex.Zero)
            .Select(p => new GroupDrive(p.m.Name, currents[p.i], volts[p.i] / currents[p.i], (volts[p.i] * Complex.Conjugate(currents[p.i])).Real)).ToImmutableArray();
        var (feeds, why) = Feeds(station, group, direction, basis, asked, azimuth);
        return new(direction, drives, pattern, pattern.GainDbi - one,
            [.. Errors.Select(e => Tolerance(basis, currents, azimuth, pattern, e.Size, e.PhaseDeg * Math.PI / 180, cancellation))], feeds, why);
    }

    private static GroupTolerance Tolerance(GroupBasis basis, Complex[] currents, double azimuth, GroupPattern nominal, double size, double phaseRad, CancellationToken cancellation)
    {
        const int trials = 2000;
        var random = new Random(1);
        double Off(double most) => most * ((2 * random.NextDouble()) - 1);
        var ahead = basis.Towards(nominal.ElevationRad, azimuth);
        var behind = basis.Towards(nominal.ElevationRad, azimuth + Math.PI);
        var (loss, ratio) = (new double[trials], new double[trials]);
        for (var t = 0; t < trials; t++)
        {
            cancellation.ThrowIfCancellationRequested();
            var off = currents.Select(i => i * Complex.FromPolarCoordinates(1 + Off(size), Off(phaseRad))).ToArray();
            var (front, back) = (basis.Gain(off, ahead), basis.Gain(off, behind));
            loss[t] = nominal.GainDbi - SoilRun.Db(front);
            ratio[t] = SoilRun.Db(front) - SoilRun.Db(back);
        }

        Array.Sort(loss);
        Array.Sort(ratio);
        return new(size, phaseRad, loss[(int)(0.9 * trials)], ratio[(int)(0.1 * trials)], ratio[0], trials);
    }

    private static (ImmutableArray<FedPattern> Feeds, ImmutableArray<Finding> Findings) Feeds(Station station, Group group, Direction direction, GroupBasis basis, Complex[] asked, double azimuth)
    {
        if (asked.Count(a => a != Complex.Zero) < 2)
        {
            return ([], []);
        }

        var terminals = GroupTerminals.Of(station, group, direction, basis);
        var (feeds, findings) = GroupDesigner.Design(terminals.Problem);
        return ([.. feeds.Select(f => new FedPattern(f.Title, f, basis.Pattern(terminals.IntoMasts(f.Currents), azimuth)))], findings);
    }
}
