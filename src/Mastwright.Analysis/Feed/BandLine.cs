using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Catalog;
using Mastwright.Circuits.Lines;
using Mastwright.Circuits.Match;
using Mastwright.Circuits.Quantities;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Feed;

/// <summary>The feed line on one band at full power, and the way of the power to the sky.</summary>
/// <param name="Type">Kind of line.</param>
/// <param name="LengthM">Its length.</param>
/// <param name="Centre">With the network at the band's frequency.</param>
/// <param name="Edge">With the network at the edge of the band where the SWR is highest.</param>
/// <param name="EdgeHz">That edge.</param>
/// <param name="Bare">The same line straight on the mast, as if the network stood at the transmitter.</param>
/// <param name="Budget">Where the power goes.</param>
/// <param name="Check">Voltage on the line against its rating, at the worse of centre and edge.</param>
public sealed record BandLine(LineType Type, double LengthM, FeedLine Centre, FeedLine Edge, double EdgeHz, FeedLine Bare, PowerBudget Budget, Check Check)
{
    /// <summary>The line of the design; that of the block “cable” when the feed names none; null when neither does.</summary>
    public static (string Name, double LengthM)? Described(Station station) => station.Feed.Cable is { } name
        ? (name, station.Feed.CableLengthM)
        : station.Cable is { } cable ? (cable.Line, cable.LengthM) : null;

    /// <summary>Works it out; null when no line is described.</summary>
    internal static BandLine? Of(Station station, Band band, BandResult result, MatchCandidate chosen)
    {
        if (Described(station) is not var (name, length))
        {
            return null;
        }

        var row = Catalogue.Default.Lines[name];
        var type = FeedProblem.Type(row);
        var (low, high) = FeedProblem.Edges(band);
        var edge = chosen.SwrAt(low) > chosen.SwrAt(high) ? low : high;
        var centre = FeedLine.Of(type, length, chosen.InputImpedanceOhm, band.FrequencyHz, band.PowerW);
        var at = FeedLine.Of(type, length, chosen.Network.Solve(edge).InputImpedanceOhm(Ladder.Transmitter), edge, band.PowerW);
        var bare = FeedLine.Of(type, length, result.FeedOhm, band.FrequencyHz, band.PowerW);
        var worst = at.HighestVoltage.Value > centre.HighestVoltage.Value ? at : centre;
        var budget = PowerBudget.Of(band.PowerW, [("feed line", centre.TotalLoss.Value), ("network", chosen.LossDb)], result.Efficiency.Value);
        return new BandLine(type, length, centre, at, edge, bare, budget, worst.Checks($"{band.Title}", new PeakVolts(row.PeakVoltageV), new RmsAmps(double.MaxValue), peakFactor: band.ModulationPeak, units: station.UnitSystem)[0]);
    }
}

/// <summary>The choke that keeps current off the outside of the cable.</summary>
/// <param name="Duties">What is needed on each band.</param>
/// <param name="Choke">The choke; null when none is needed or none can be wound.</param>
/// <param name="Findings">What to know.</param>
public sealed record CableChoke(ImmutableArray<ChokeDuty> Duties, FerriteChoke? Choke, ImmutableArray<Finding> Findings)
{
    internal static CableChoke Of(Station station, IEnumerable<BandFeed> bands)
    {
        var spec = station.Feed.Choke;
        var duties = bands.Select(b =>
        {
            var current = b.Result.BaseCurrentRms.Value;
            return new ChokeDuty(b.Band.Title, b.Band.FrequencyHz, CommonModeChoke.Of(current, b.Result.EarthLossOhm.Value, spec.PathOhm, spec.CurrentShare * current), b.Band.Duty);
        }).ToImmutableArray();
        if (duties.All(d => d.Need.NeededOhm.Value <= 0))
        {
            return new CableChoke(duties, null, []);
        }

        var rings = Catalogue.Default.Cores.All.Where(c => spec.Core is null || c.Name == spec.Core)
            .Select(c => new FerriteRing(c.Name, c.OuterM, c.InnerM, c.HeightM, c.Permeability, c.RelaxationHz));
        var (choke, findings) = FerriteChoke.Design(rings, duties, spec.CableDiameterM);
        return new CableChoke(duties, choke, findings);
    }
}
