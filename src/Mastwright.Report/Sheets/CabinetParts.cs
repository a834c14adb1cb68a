using Mastwright.Analysis.Results;
using Mastwright.Build.Materials;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Sheets;

/// <summary>What goes into and around the cabinet at the base: network parts, relays, drain, arrester, the box itself.</summary>
public static class CabinetParts
{
    private const string Group = "cabinet, feed and protection";
    private const double BoxOverCoil = 2;
    private const double FeedWaste = 0.03;
    private const double FeedEndM = 2;

    /// <summary>The parts of one mast.</summary>
    public static IEnumerable<MaterialNeed> Of(Station station, Mast mast, MastResult result)
    {
        string Show(double v, QuantityKind kind) => QuantityFormat.Show(v, kind, station.UnitSystem, 3);
        var matched = result.Bands.Where(b => b.Match is not null).ToList();
        foreach (var band in matched)
        {
            var where = station.Masts.Length > 1 ? $"{band.Name}, mast {mast.Name}" : band.Name;
            foreach (var stress in band.Match!.Stresses)
            {
                var remark = $"{stress.Name}, {where}: {Show(stress.Voltage.Value, QuantityKind.PeakVoltage)} peak and {Show(stress.Current.Value, QuantityKind.RmsCurrent)} at the least; leave margin";
                yield return band.Network!.Built.Capacitors.FirstOrDefault(c => c.Section == stress.Name)?.Bank is { } bank
                    ? new MaterialNeed(bank.Item.Name, Group, bank.Count, MaterialUnit.Each, Remark: remark, PriceAs: "matching capacitor")
                    : new MaterialNeed($"{stress.Section.Title} {Show(stress.Section.Value, stress.Section.ValueKind)}, {where}", Group, 1, MaterialUnit.Each,
                        Remark: $"{NetworkParts.Offer(station.UnitSystem, band.Network.Built, stress)}; {remark}",
                        PriceAs: stress.Section.ValueKind switch { QuantityKind.Inductance => "matching coil", QuantityKind.Capacitance => "matching capacitor", _ => "matching part" });
            }
        }

        // Each network between a contact at the line and one at the mast, and one contact that earths the mast when all are released.
        if (matched.Count > 1)
        {
            yield return new MaterialNeed($"relay, open {Show(station.Feed.RelayPeakV, QuantityKind.PeakVoltage)} peak, closed {Show(station.Feed.RelayCurrentA, QuantityKind.RmsCurrent)}", Group, (2 * matched.Count) + 1, MaterialUnit.Each, Spares: 1,
                Remark: "two for each band's network, one that earths the mast at rest; `mastwright feed` holds every contact against these ratings", PriceAs: "relay");
            yield return new MaterialNeed("relay control cable to the house", Group, station.Feed.CableLengthM + FeedEndM, MaterialUnit.Metre, FeedWaste, Remark: $"{(2 * matched.Count) + 2} cores, each bypassed and choked at the cabinet");
        }

        if (station.Feed.Cable is { } line)
        {
            yield return new MaterialNeed(line, Group, station.Feed.CableLengthM + FeedEndM, MaterialUnit.Metre, FeedWaste, Remark: "feed line, with two metres for the ends");
            yield return new MaterialNeed($"connector pair for {line}", Group, 2, MaterialUnit.Each, Spares: 1);
        }

        yield return new MaterialNeed("choke on the feed line, common mode", Group, 1, MaterialUnit.Each, Remark: "at the cabinet, so that the line's shield does not become a radial");
        yield return new MaterialNeed("lightning arrester in the feed line", Group, 1, MaterialUnit.Each, Spares: 1, Remark: "at the single entry, bonded there");
        yield return new MaterialNeed("gap electrode", Group, 2, MaterialUnit.Each, Spares: 1, Remark: station.Protection.Electrodes.ToString().ToLowerInvariant() + $", {Show(station.Protection.ElectrodeDiameterM, QuantityKind.FineLength)}");
        yield return Drain(station, Show);
        var (wide, deep) = (station.Feed.BoxLengthM + (BoxOverCoil * station.Feed.BoxDiameterM / 2), BoxOverCoil * station.Feed.BoxDiameterM);
        yield return new MaterialNeed($"weatherproof cabinet, {Show(wide, QuantityKind.FineLength)} wide and {Show(deep, QuantityKind.FineLength)} deep inside or more", Group, 1, MaterialUnit.Each, Remark: "the largest coil stays half its diameter from every wall; lockable, drained, vented", PriceAs: "weatherproof cabinet");
        yield return new MaterialNeed("feed-through insulator with lead", Group, 1, MaterialUnit.Each, Spares: 1, Remark: $"for {Show(result.Bands.Select(b => b.BasePeakV.Value).DefaultIfEmpty(0).Max(), QuantityKind.PeakVoltage)} peak in the wet");
    }

    private static MaterialNeed Drain(Station station, Func<double, QuantityKind, string> show) => station.Statics switch
    {
        { ChokeH: { } choke } => new MaterialNeed($"static drain choke {show(choke, QuantityKind.Inductance)}", Group, 1, MaterialUnit.Each, Spares: 1, PriceAs: "static drain"),
        { DrainOhm: { } ohm } => new MaterialNeed($"static drain resistor {show(ohm, QuantityKind.Resistance)}", Group, 1, MaterialUnit.Each, Spares: 1, PriceAs: "static drain"),
        _ => new MaterialNeed("static drain resistor or choke", Group, 1, MaterialUnit.Each, Spares: 1, PriceAs: "static drain"),
    };
}
