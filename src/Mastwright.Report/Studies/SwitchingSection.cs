using Mastwright.Analysis.Feed;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>One mast among many bands: relays, shared parts, isolation, receivers.</summary>
internal static class SwitchingSection
{
    public static void Write(DocumentBuilder document, MastFeed mast, Station station)
    {
        if (mast.Switching is { } plan)
        {
            document.Section($"Mast {mast.Mast}: relays");
            document.Text("Every band's network sits between a contact at the line and one at the mast; with all relays released the mast is earthed. Every state is solved with all networks in place.");
            document.Table("Contacts; the open voltage is the highest over all bands", ["Contact", "Joins", "Made on", "At drop-off", "#Open voltage", "On", "#Closed current"], plan.Contacts.Select(c => new Cell[]
            {
                c.Name, c.What, c.MadeIn.IsEmpty ? "no band" : string.Join(", ", c.MadeIn), c.MadeAtDropOff ? "made" : "open", new Cell(document.Show(c.Voltage.Demand, 3), c.Voltage.Verdict), c.Voltage.GoverningCase,
                c.Current is { } i ? new Cell(document.Show(i.Demand, 3), i.Verdict) : new Cell(""),
            }));
            document.Table("Relays drawn on each band, and the bands in company", ["Band", "Relays drawn", "#SWR", "#SWR alone", "#Heat in idle networks", "#Isolation of the worst idle network", .. (station.Feed.Receiver is null ? Array.Empty<string>() : ["#Power to the receiver"])],
                plan.Bands.Select(b => (Cell[])
                [
                    b.Name, string.Join(", ", b.Relays), QuantityFormat.Digits(b.Swr, 3), QuantityFormat.Digits(b.SwrAlone, 3), document.Show(b.IdleLossW, QuantityKind.Power, 3), QuantityFormat.Digits(b.IsolationDb, 3) + " dB",
                    .. (b.ReceiverW is { } w ? [(Cell)document.Show(w, QuantityKind.Power, 2)] : Array.Empty<Cell>()),
                ]));
            document.Findings(plan.Findings);
            Shared(document, mast, plan.Shared.Where(s => !s.ByTaps));
        }

        Neighbours(document, mast);
    }

    private static void Shared(DocumentBuilder document, MastFeed mast, IEnumerable<Circuits.Switching.SharedPart> alike)
    {
        foreach (var coil in mast.Shared)
        {
            if (coil.Winding is not { } winding)
            {
                document.Text($"No single {coil.Title} with taps can be wound for {string.Join(" and ", coil.Taps.Select(t => t.Band))}.");
                document.Findings(coil.Findings);
                continue;
            }

            var c = winding.Report.Coil;
            document.Table($"One {coil.Title} with taps could serve these bands: {QuantityFormat.Digits(c.Turns, 3)} turns of {document.Show(c.WireM, QuantityKind.FineLength, 2)} on {document.Show(c.DiameterM, QuantityKind.FineLength, 3)}, {document.Show(c.LengthM, QuantityKind.FineLength, 3)} long, by itself resonant at {document.Show(winding.Report.SelfResonance, 3)}",
                ["Band", "#Inductance", "#Tap, turns from the end in use"], coil.Taps.Select(t => new Cell[]
                {
                    t.Band, document.Show(t.InductanceH, QuantityKind.Inductance, 3), t.Turns is { } turns ? QuantityFormat.Digits(turns, 3) : "all",
                }));
            document.Findings(coil.Findings);
        }

        foreach (var part in alike)
        {
            document.Text($"One {part.Title} could serve {string.Join(" and ", part.Uses.Select(u => $"{u.Band} ({document.Show(u.Value, QuantityKind.Capacitance, 3)})"))}: the values lie within five per cent.");
        }
    }

    private static void Neighbours(DocumentBuilder document, MastFeed mast)
    {
        if (mast.Neighbours.IsEmpty)
        {
            return;
        }

        document.Section($"Mast {mast.Mast}: receivers on the lines of the other masts");
        document.Table("Power in a receiver on another mast's line while this mast transmits at full power", ["Transmitting on", "Listening mast", "Its network set to", "#Power in the receiver", "#It stands", "Needs"], mast.Neighbours.Select(n => new Cell[]
        {
            n.Transmitting, n.Mast, n.Listening, document.Show(n.PowerW, QuantityKind.Power, 3), document.Show(n.LimitW, QuantityKind.Power, 3),
            n.NeededDb > 0 ? $"at least {n.NeededDb:0} dB: a contact that earths the receiver's side while this mast transmits, and a limiter behind it" : "nothing",
        }));
        if (mast.Neighbours.Any(n => n.NeededDb > 0 && n.Listening != n.Transmitting))
        {
            document.Text("A band filter at the receiver can give the attenuation where listening and transmitting bands differ; where they are the same only the earthing contact can.");
        }
    }
}
