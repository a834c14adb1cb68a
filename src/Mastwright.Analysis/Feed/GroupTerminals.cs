using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Radiate;
using Mastwright.Catalog;
using Mastwright.Circuits.Ac;
using Mastwright.Circuits.Groups;
using Mastwright.Circuits.Loss;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;
using Direction = Mastwright.Model.Design.Direction;

namespace Mastwright.Analysis.Feed;

/// <summary>
/// A group as its feed sees it: insulator and strays across each base, whose current the feed must push too. Masts without current are left
/// open.
/// </summary>
internal sealed class GroupTerminals
{
    private readonly Complex[,] into;
    private readonly int all;

    private GroupTerminals(GroupProblem problem, int[] fed, Complex[,] into, int all) => (Problem, Fed, this.into, this.all) = (problem, fed, into, all);

    /// <summary>The problem, its masts those fed in the order of the design.</summary>
    public GroupProblem Problem { get; }

    /// <summary>Which masts are fed.</summary>
    public int[] Fed { get; }

    /// <summary>The terminals in one switch position.</summary>
    /// <param name="station">The station.</param>
    /// <param name="group">The group.</param>
    /// <param name="direction">The position.</param>
    /// <param name="basis">The masts at the group's frequency.</param>
    /// <param name="beside">The masts at other frequencies over perfect ground, for how the impedances change; empty to hold them still.</param>
    public static GroupTerminals Of(Station station, Group group, Direction direction, GroupBasis basis, params IReadOnlyList<WireSolution> beside)
    {
        var asked = GroupRun.Asked(station, direction);
        var fed = Enumerable.Range(0, asked.Length).Where(i => asked[i] != Complex.Zero).ToArray();
        Complex[] Shunts(double hz) => [.. fed.Select(i => new Complex(0, 2 * Math.PI * hz * BandRun.BaseCapacitanceF(station, station.Masts[i])))];
        var shunts = Shunts(group.FrequencyHz);
        var (seen, into) = basis.WithShunts(fed, shunts);
        var volts = basis.Volts(asked);
        var at = fed.Select((i, k) => asked[i] + (shunts[k] * volts[i])).ToImmutableArray();
        var centre = (East: fed.Average(i => station.Masts[i].EastM), North: fed.Average(i => station.Masts[i].NorthM));
        var reach = fed.Max(i => double.Hypot(station.Masts[i].EastM - centre.East, station.Masts[i].NorthM - centre.North));
        var problem = new GroupProblem(Load(group, beside, seen, f => new GroupBasis(f).WithShunts(fed, Shunts(f.FrequencyHz)).SeenOhm), at, station.Feed.LineOhm, group.FrequencyHz, group.PowerW,
            PartQuality.FromQ(station.Feed.CoilQ, station.Feed.CapacitorQ))
        {
            ReachM = reach,
            Feeder = FeedProblem.Type(Catalogue.Default.Lines[group.Feed.Feeder]),
            FeederLengthsM = Feeders(station, group, fed),
        };
        return new GroupTerminals(problem, fed, into, asked.Length);
    }

    // The file gives one length for each mast that any position feeds; a position may leave some of them out. What does not fit is left for the problem to refuse.
    private static ImmutableArray<double>? Feeders(Station station, Group group, int[] fed)
    {
        var lengths = group.Feed.FeederLengthsM;
        var everFed = Enumerable.Range(0, station.Masts.Length).Where(i => group.Directions.Any(d => GroupRun.Asked(station, d)[i] != Complex.Zero)).ToList();
        return lengths.IsEmpty ? null : lengths.Length == everFed.Count ? [.. fed.Select(i => lengths[everFed.IndexOf(i)])] : lengths;
    }

    /// <summary>Currents of all masts for currents at the terminals of those fed.</summary>
    public Complex[] IntoMasts(IReadOnlyList<Complex> terminal)
    {
        var given = new Complex[all];
        for (var k = 0; k < Fed.Length; k++)
        {
            for (var j = 0; j < Fed.Length; j++)
            {
                given[Fed[k]] += into[k, j] * terminal[j];
            }
        }

        return given;
    }

    // Perfect ground gives the change over the band; what soil adds is held still.
    private static LoadImpedance Load(Group group, IReadOnlyList<WireSolution> beside, Complex[,] seen, Func<WireSolution, Complex[,]> seenAt)
    {
        if (beside.FirstOrDefault(s => s.FrequencyHz == group.FrequencyHz) is not { } centre)
        {
            return LoadImpedance.Constant(seen);
        }

        var plain = seenAt(centre);
        return LoadImpedance.Table([.. beside.Select(s =>
        {
            var z = seenAt(s);
            for (var i = 0; i < z.GetLength(0); i++)
            {
                for (var j = 0; j < z.GetLength(0); j++)
                {
                    z[i, j] += seen[i, j] - plain[i, j];
                }
            }

            return (s.FrequencyHz, z);
        })]);
    }
}
