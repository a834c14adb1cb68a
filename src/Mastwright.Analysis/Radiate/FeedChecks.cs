using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Radiate;

/// <summary>Whether a band can be matched, and what the network costs.</summary>
internal static class FeedChecks
{
    private const double HighestLossShare = 0.2;

    private static readonly Source Nodal = Source.Derived("docs/theory/circuits-matching.md");

    public static ImmutableArray<Check> Of(Station station, Mast mast, BandResult band)
    {
        var id = $"[{mast.Name}, {band.Name}]";
        if (band.Match is not { } match)
        {
            return
            [
                new Check("feed.match" + id, Trade.Feed, "A two-element network matches the mast",
                    band.FeedResistance, Trail.Given("line impedance", "Z0", station.Feed.LineOhm, QuantityKind.Resistance, Source.DesignFile),
                    double.PositiveInfinity, Verdict.Fail, $"mast {mast.Name}, {band.Name}", "No passive network can match a load without resistance: check radials and mast."),
            ];
        }

        var loss = Trail.Computed("share of the power lost in the network", "ηn", match.LossW / band.PowerW, QuantityKind.Ratio, "loss of all parts over power, nodal solution", Nodal,
            band.FeedResistance, band.FeedReactance,
            Trail.Given("coil quality", "Q", station.Feed.CoilQ, QuantityKind.Ratio, Source.DesignFile),
            Trail.Given("capacitor quality", "Qc", station.Feed.CapacitorQ, QuantityKind.Ratio, Source.DesignFile));
        return
        [
            Check.AtMost("feed.network-loss" + id, Trade.Feed, "Loss in the matching network", loss,
                Trail.Given("loss allowed", "ηmax", HighestLossShare, QuantityKind.Ratio, Source.CommonPractice, "about 1 dB"), $"mast {mast.Name}, {band.Name}: {match.Title}",
                "Use coils of higher quality, or bring the mast nearer to resonance with top loading."),
        ];
    }
}
