using System.Collections.Immutable;
using Mastwright.Analysis.Radiate;
using Mastwright.Fields.Results;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Survive;

/// <summary>A group in one switch position at its full power: the currents of all its masts together.</summary>
/// <param name="Name">Group and position.</param>
/// <param name="Group">The group.</param>
/// <param name="Driven">The currents, scaled so that base powers and the earth losses beside them add up to the group's power.</param>
/// <param name="Findings">What the solver had to say where it was asked here.</param>
internal sealed record GroupDrive(string Name, Group Group, DrivenWires Driven, ImmutableArray<Finding> Findings);

/// <summary>What people and surfaces near a group see: its masts driven at once.</summary>
internal static class GroupDrives
{
    /// <summary>Every switch position in which a mast is fed.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mastIndex">The mast.</param>
    /// <param name="known">Currents solved already, by frequency; others are solved here.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ImmutableArray<GroupDrive> Of(Station station, int mastIndex, IReadOnlyDictionary<double, WireSolution> known, CancellationToken cancellation)
    {
        var name = station.Masts[mastIndex].Name;
        var groups = station.Groups.Where(g => g.Directions.Any(d => d.Currents.Any(c => c.Mast == name))).ToList();
        if (groups.Count == 0)
        {
            return [];
        }

        return
        [
            .. groups.SelectMany(group =>
            {
                var (solution, findings) = known.GetValueOrDefault(group.FrequencyHz) is { } before ? (before, []) : MastDrive.Solve(station, group.FrequencyHz, cancellation);
                var overSoil = solution.Mesh.Model.Ground is Fields.Wires.Ground.HalfSpace;
                var earth = station.Masts.Select((m, i) => overSoil ? 0 : BandRun.Drive(station, m, solution, i).Earth.Value).ToList();
                return group.Directions.Where(d => d.Currents.Any(c => c.Mast == name)).Select(d => new GroupDrive($"{group.Name}, {d.Name}", group, GroupRun.AtPower(group, solution, GroupRun.Asked(station, d), earth).Driven, findings));
            }),
        ];
    }
}
