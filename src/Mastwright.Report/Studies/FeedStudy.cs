using Mastwright.Analysis.Feed;
using Mastwright.Circuits.Match;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;

namespace Mastwright.Report.Studies;

/// <summary>Networks in real parts, line, tolerance and switching for every band.</summary>
public static class FeedStudy
{
    private const string Caution =
        "A matching network holds lethal voltage and burns on touch while the transmitter is on. Open the cabinet only with the transmitter locked out and the mast earthed. Parts are to be held against their makers' data.";

    // Words of the choice, in the order of the criteria.
    private static readonly (string Word, MatchCriterion By)[] Orders =
    [
        ("overall", MatchCriterion.Overall), ("loss", MatchCriterion.Loss), ("bandwidth", MatchCriterion.Bandwidth), ("voltage", MatchCriterion.PeakVoltage),
        ("current", MatchCriterion.Current), ("parts", MatchCriterion.PartCount), ("price", MatchCriterion.Price),
    ];

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("feed", "Matching networks in real parts ranked band by band, with drawing, Smith chart, feed line, tolerance and relays", Make)
    {
        Choice = new StudyChoice("by", "What the networks are ranked by", [.. Orders.Select(o => o.Word)]),
    };

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Feed and matching", input.Station.Name, input.Station.UnitSystem).Caution(Caution);
        var by = Orders.FirstOrDefault(o => o.Word == input.Chosen).By;
        document.Text("Every network is shown in parts that can be wound, bought or cut, tuned and solved again with their own losses. The one marked is used throughout: for the gap, the strike, the book and the materials. Name another under “feed: networks” to take it.");
        foreach (var mast in FeedRun.Of(input.Result, input.Progress, input.Cancellation))
        {
            foreach (var band in mast.Bands)
            {
                document.Section($"Mast {mast.Mast}, {band.Band.Title}");
                Band(document, band, mast.Mast, by);
            }

            FeedLineSection.Write(document, mast);
            SwitchingSection.Write(document, mast, input.Station);
        }

        return document.Build();
    }

    private static void Band(DocumentBuilder document, BandFeed band, string mast, MatchCriterion by)
    {
        document.Findings(band.Findings);
        if (band.Chosen is not { } chosen)
        {
            return;
        }

        var offers = Ordered(band.Offers, by).ToList();
        var priced = offers.Any(o => o.Price is not null);
        string[] heads = ["Network", "Parts from line to mast", "#Loss", "#SWR 2 over", "#Highest voltage", "#Highest current", "#Parts", .. (priced ? ["#Price"] : Array.Empty<string>()), "Drains static"];
        document.Table($"Networks that can be built, {(by == MatchCriterion.Overall ? "best first" : "by " + Orders.First(o => o.By == by).Word)}", heads, offers.Select(o =>
        {
            var c = o.Over;
            return (Cell[])
            [
                (o.IsChosen ? "▶ " : "") + c.Title, NetworkParts.Values(document, c), QuantityFormat.Digits(c.LossDb, 2) + " dB",
                (c.Bandwidth.IsAtLeast ? "≥ " : "") + QuantityFormat.Digits(c.Bandwidth.WidthHz / 1e3, 3) + " kHz",
                document.Show(c.HighestVoltage.Value, QuantityKind.PeakVoltage, 3), document.Show(c.HighestCurrent.Value, QuantityKind.RmsCurrent, 3),
                QuantityFormat.Digits(c.PartCount), .. (priced ? [(Cell)(o.Price is { } p ? QuantityFormat.Digits(p, 4) : "unknown")] : Array.Empty<Cell>()), c.DrainsStatic ? "yes" : "no: add a drain",
            ];
        }));
        if (!band.Unbuilt.IsEmpty)
        {
            document.Table("Not offered: parts at hand do not serve", ["Network", "Parts as computed", "What is in the way"], band.Unbuilt.Select(r => new Cell[]
            {
                r.Candidate.Title, NetworkParts.Values(document, r.Candidate), Reason(r),
            }));
        }

        if (!band.Impossible.IsEmpty)
        {
            document.Text("Cannot match this load: " + string.Join("; ", band.Impossible) + ".");
        }

        document.Add(NetworkDrawing.Of($"{band.Band.Title}, mast {mast}", chosen, document.Units)).Add(NetworkDrawing.Smith($"{band.Band.Title}, mast {mast}", chosen));
        var real = band.Offers[0].Real;
        NetworkParts.Write(document, real.Coils, real.Capacitors);
        foreach (var cut in chosen.Stresses.Where(s => s.Section is LineSection or StubSection or TransformerSection))
        {
            document.Text($"{cut.Name}, {cut.Section.Title}: {document.Show(cut.Section.Value, cut.Section.ValueKind, 4)}, {NetworkParts.Offer(document.Units, real, cut)}.");
        }

        if (band.Sensitivity.Length > 0)
        {
            document.Text("Worst SWR when one thing is off by one step: " + string.Join("; ", band.Sensitivity.Select(s => $"{s.What} ({s.Step}) {QuantityFormat.Digits(s.Worst, 3)}")) + ".");
        }

        if (band.Tolerance is { } t)
        {
            document.Text($"SWR stays under {QuantityFormat.Digits(t.SwrLimit)} on {100 * t.ShareInside:0} % of days ({t.Trials} seeded trials, 95 % between {100 * t.Interval.Low:0} and {100 * t.Interval.High:0} %): "
                + string.Join(", ", t.ByScenario.Select(s => $"{s.Scenario} {100 * s.ShareInside:0} %")) + $". Nine days of ten stay under {QuantityFormat.Digits(t.Ninety, 3)}; varying alone, "
                + string.Join(", ", t.Causes.Select(c => $"{c.Cause} {QuantityFormat.Digits(c.Ninety, 3)}")) + ".");
        }
    }

    private static IEnumerable<BandOffer> Ordered(IEnumerable<BandOffer> offers, MatchCriterion by) => by switch
    {
        MatchCriterion.Overall => offers,
        MatchCriterion.Loss => offers.OrderBy(o => o.Over.LossW),
        MatchCriterion.Bandwidth => offers.OrderByDescending(o => o.Over.Bandwidth.WidthHz),
        MatchCriterion.PeakVoltage => offers.OrderBy(o => o.Over.HighestVoltage),
        MatchCriterion.Current => offers.OrderBy(o => o.Over.HighestCurrent),
        MatchCriterion.PartCount => offers.OrderBy(o => o.Over.PartCount).ThenBy(o => o.Over.LossW),
        _ => offers.OrderBy(o => o.Price ?? double.MaxValue),
    };

    private static string Reason(Realisation r) => r.Findings.FirstOrDefault(f => f.Severity != Severity.Note) is { } f
        ? $"{f.Message} {(f.Code is "coil-box" or "capacitor-rating" && f.Allowed is { } a ? char.ToUpperInvariant(a[0]) + a[1..] + ". " : "")}{f.WayOut}"
        : $"leaves an SWR of {QuantityFormat.Digits(r.Candidate.Swr, 3)}";
}
