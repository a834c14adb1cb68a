using Mastwright.Analysis.Feed;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Networks, parts, line, tolerance and switching for every band.</summary>
public static class FeedStudy
{
    private const int Shown = 6;

    private const string Caution =
        "A matching network holds lethal voltage and burns on touch while the transmitter is on. Open the cabinet only with the transmitter locked out and the mast earthed. Parts are to be held against their makers' data.";

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("feed", "Matching networks ranked band by band, their parts, the feed line, tolerance and relays", Make);

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Feed and matching", input.Station.Name, input.Station.UnitSystem).Caution(Caution);
        foreach (var mast in FeedRun.Of(input.Station, input.Progress, input.Cancellation))
        {
            foreach (var band in mast.Bands)
            {
                document.Section($"Mast {mast.Mast}, {band.Band.Title}");
                Band(document, band);
            }

            Switching(document, mast);
        }

        return document.Build();
    }

    private static void Band(DocumentBuilder document, BandFeed band)
    {
        document.Findings(band.Findings.Where(f => f.Severity != Severity.Note));
        if (band.Candidates.IsEmpty)
        {
            return;
        }

        document.Table("Networks, best first", ["Network", "Parts from line to mast", "#Loss", "#SWR 2 over", "#Highest voltage", "#Highest current", "#Parts", "Drains static"],
            band.Candidates.Take(Shown).Select(c => new Cell[]
            {
                c.Title, string.Join(", ", c.Ladder.Sections.Select(s => $"{s.Title} {document.Show(s.Value, s.ValueKind, 3)}")), QuantityFormat.Digits(c.LossDb, 2) + " dB",
                (c.Bandwidth.IsAtLeast ? "≥ " : "") + QuantityFormat.Digits(c.Bandwidth.WidthHz / 1e3, 3) + " kHz",
                document.Show(c.HighestVoltage.Value, QuantityKind.PeakVoltage, 3), document.Show(c.HighestCurrent.Value, QuantityKind.RmsCurrent, 3),
                QuantityFormat.Digits(c.PartCount), c.DrainsStatic ? "yes" : "no: add a drain",
            }));
        document.Table($"Parts for the first: {band.Candidates[0].Title}", ["Part", "#Value", "Wind or buy"], band.Parts.Select(p => new Cell[]
        {
            p.Section.Title, document.Show(p.Section.Value, p.Section.ValueKind, 4), p.Offer.Length > 0 ? p.Offer : "nothing in the catalogue or the box serves: see the note",
        }));
        document.Findings(band.Parts.Where(p => p.Offer.Length == 0).SelectMany(p => p.Findings).Select(f => f with { Severity = Severity.Warning }));
        if (band.Sensitivity.Length > 0)
        {
            document.Text("Worst SWR when one thing is off by one step: " + string.Join("; ", band.Sensitivity.Select(s => $"{s.What} ({s.Step}) {QuantityFormat.Digits(s.Worst, 3)}")) + ".");
        }

        if (band.Tolerance is { } t)
        {
            document.Text($"With soil between half and twice as conducting and parts at their tolerance, SWR stays under 2 on {100 * t.ShareInside:0} % of days ({t.Trials} seeded trials, 95 % between {100 * t.Interval.Low:0} and {100 * t.Interval.High:0} %).");
        }

        if (band.Line is { } line)
        {
            document.Table("Feed line at full power", ["What", "#Value"],
            [
                ["loss when matched", document.Show(line.MatchedLoss, 3)], ["loss as fed", document.Show(line.TotalLoss, 3)], ["power that reaches the network", document.Show(line.LoadPower, 4)],
                ["SWR at the transmitter", document.Show(line.SwrAtInput, 3)], ["highest voltage on the line", document.Show(line.HighestVoltage, 3)], ["highest current on the line", document.Show(line.HighestCurrent, 3)],
            ]);
        }
    }

    private static void Switching(DocumentBuilder document, MastFeed mast)
    {
        if (mast.Switching is not { } plan)
        {
            return;
        }

        document.Section($"Mast {mast.Mast}: relays");
        document.Text("Every band's network sits between a contact at the line and one at the mast; with all relays released the mast is earthed. Every state is solved with all networks in place.");
        document.Table("Contacts", ["Contact", "Joins", "Made on", "At drop-off", "#Open voltage", "#Closed current"], plan.Contacts.Select(c => new Cell[]
        {
            c.Name, c.What, string.Join(", ", c.MadeIn), c.MadeAtDropOff ? "made" : "open", new Cell(document.Show(c.Voltage.Demand, 3), c.Voltage.Verdict), c.Current is { } i ? new Cell(document.Show(i.Demand, 3), i.Verdict) : new Cell(""),
        }));
        document.Table("Bands in company", ["Band", "#SWR", "#SWR alone", "#Heat in idle networks", "#Isolation"], plan.Bands.Select(b => new Cell[]
        {
            b.Name, QuantityFormat.Digits(b.Swr, 3), QuantityFormat.Digits(b.SwrAlone, 3), document.Show(b.IdleLossW, QuantityKind.Power, 3), QuantityFormat.Digits(b.IsolationDb, 3) + " dB",
        }));
        document.Findings(plan.Findings);
    }
}
