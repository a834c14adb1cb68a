using System.Collections.Immutable;
using System.Numerics;
using Mastwright.Analysis.Results;
using Mastwright.Circuits.Switching;
using Mastwright.Fields.Solving;
using Mastwright.Model.Design;

namespace Mastwright.Analysis.Feed;

/// <summary>Power that reaches a receiver on another mast's line while this mast transmits.</summary>
/// <param name="Transmitting">The band transmitted on.</param>
/// <param name="Mast">The listening mast.</param>
/// <param name="Listening">The band its network is set to: the one that lets most through.</param>
/// <param name="PowerW">Power in the receiver at full transmitter power, watts.</param>
/// <param name="LimitW">What it stands, watts.</param>
public sealed record NeighbourReceiver(string Transmitting, string Mast, string Listening, double PowerW, double LimitW)
{
    /// <summary>How much a limiter or filter must take off, dB; zero when nothing.</summary>
    public double NeededDb => Math.Max(0, 10 * Math.Log10(PowerW / LimitW));

    internal static ImmutableArray<NeighbourReceiver> Of(StationResult result, int transmitting, IReadOnlyList<WireSolution?> solutions)
    {
        var station = result.Station;
        var receiver = station.Feed.Receiver ?? new ReceiverSpec();
        var rows = ImmutableArray.CreateBuilder<NeighbourReceiver>();
        for (var b = 0; b < station.Bands.Length; b++)
        {
            if (solutions[b] is not { } solution)
            {
                continue;
            }

            for (var m = 0; m < station.Masts.Length; m++)
            {
                var networks = result.Masts[m].Bands.Where(x => x.Match is not null).ToList();
                if (m == transmitting || networks.Count == 0)
                {
                    continue;
                }

                Complex Z(int i, int j) => solution.PortImpedances[i, j] + (i == j ? result.Masts[i].Bands[b].EarthLossOhm.Value : 0);
                var two = new[,] { { Z(transmitting, transmitting), Z(transmitting, m) }, { Z(m, transmitting), Z(m, m) } };
                var (worst, share) = networks.Select(n => (n.Name, Share: NeighbourCoupling.ReceivedShare(two, n.Match!, receiver.InputOhm, station.Bands[b].FrequencyHz))).MaxBy(n => n.Share);
                rows.Add(new NeighbourReceiver(station.Bands[b].Title, station.Masts[m].Name, worst, share * station.Bands[b].PowerW, receiver.LimitW));
            }
        }

        return rows.ToImmutable();
    }
}
