using System.Collections.Immutable;
using Mastwright.Analysis.Feed;
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
        if (band.Network is not { Match: var match } network)
        {
            return
            [
                new Check("feed.match" + id, Trade.Feed, "A network matches the mast",
                    band.FeedResistance, Trail.Given("line impedance", "Z0", station.Feed.LineOhm, QuantityKind.Resistance, Source.DesignFile),
                    double.PositiveInfinity, Verdict.Fail, $"mast {mast.Name}, {band.Name}", band.Unmatched.FirstOrDefault()?.Message ?? "No passive network can match a load without resistance: check radials and mast."),
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
            .. network.Built.Checks.Select(c => c with { Id = $"{c.Id.Split('[')[0]}[{mast.Name}, {band.Name}, {c.Id.Split('[', ']')[1]}]", GoverningCase = $"mast {mast.Name}, {band.Name}, {c.Id.Split('[', ']')[1]}" }),
            .. Buildable(network, id, $"mast {mast.Name}, {band.Name}: {match.Title}"),
        ];
    }

    // The best choice that cannot quite be built is worth a caution; what the builder asked for and cannot have is a failure.
    private static IEnumerable<Check> Buildable(ChosenNetwork network, string id, string where)
    {
        if (network.AsAsked && network.Built.IsComplete)
        {
            yield break;
        }

        var missing = Trail.Computed("parts that cannot be had", "n", Math.Max(1, network.Built.Missing.Length), QuantityKind.Count, "sections without a winding, a capacitor or a line", Nodal);
        var cure = network.Findings.FirstOrDefault(f => f.Severity != Severity.Note) is { } f ? $"{f.Message} {f.WayOut}" : "Take another network.";
        yield return new Check("feed.parts" + id, Trade.Feed, "The network can be built as asked", missing,
            Trail.Given("parts missing at most", "n", 0, QuantityKind.Count, Source.CommonPractice), network.Asked is null ? 1 : double.PositiveInfinity,
            network.Asked is null ? Verdict.Caution : Verdict.Fail, where, cure);
    }
}
