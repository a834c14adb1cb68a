using Mastwright.Analysis.Tune;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Keep;
using NodaTime;
using NodaTime.Text;

namespace Mastwright.Workbench.Keeping;

/// <summary>A guy with the tension it should show.</summary>
/// <param name="Name">Level and anchor, e.g. <c>1/north</c>.</param>
/// <param name="ShouldBe">Tension at the anchor for each of the card's temperatures; empty when the mast does not stand.</param>
/// <param name="Last">The last reading in words; empty when there is none.</param>
public sealed record CardGuy(string Name, IReadOnlyList<double> ShouldBe, string Last);

/// <summary>An item of the checklist.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Label">What to look at.</param>
/// <param name="Caution">What to mind; empty for nothing.</param>
/// <param name="Due">Day it is due, as year-month-day.</param>
/// <param name="Overdue">Whether that day is past.</param>
/// <param name="Last">How it was last seen; empty for never.</param>
public sealed record CardItem(string Key, string Label, string Caution, string Due, bool Overdue, string Last);

/// <summary>A mast with what can be read and looked at on it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Temperatures">Temperatures of the tension table, in the card's unit.</param>
/// <param name="Guys">Its guys.</param>
/// <param name="Items">Its checklist, what is due first.</param>
public sealed record CardMast(string Name, IReadOnlyList<double> Temperatures, IReadOnlyList<CardGuy> Guys, IReadOnlyList<CardItem> Items);

/// <summary>The units a card is written in.</summary>
/// <param name="Temperature">Temperature.</param>
/// <param name="Speed">Wind.</param>
/// <param name="Force">Tension.</param>
/// <param name="Small">Sag and ice.</param>
/// <param name="Length">Tangent.</param>
public sealed record CardUnits(string Temperature, string Speed, string Force, string Small, string Length);

/// <summary>What a phone takes along: everything it needs to enter readings without a connection.</summary>
/// <param name="Station">Name of the station.</param>
/// <param name="Made">When the card was made.</param>
/// <param name="Units">Its units.</param>
/// <param name="Masts">Its masts.</param>
/// <param name="Journal">Name of the journal's file.</param>
/// <param name="Count">Entries in the journal.</param>
public sealed record FieldCard(string Station, string Made, CardUnits Units, IReadOnlyList<CardMast> Masts, string Journal, int Count)
{
    /// <summary>Makes the card of a station.</summary>
    /// <param name="station">The station.</param>
    /// <param name="entries">Entries of its journal.</param>
    /// <param name="journal">Name of the journal's file.</param>
    /// <param name="now">The present.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FieldCard Of(Station station, IReadOnlyList<JournalEntry> entries, string journal, OffsetDateTime now, CancellationToken cancellation)
    {
        var built = entries.Count > 0 ? entries[0].At.Date : now.Date;
        var due = DueList.For(UpkeepParts.Checklist(station), entries, built);
        return new FieldCard(
            station.Name, OffsetDateTimePattern.ExtendedIso.Format(now),
            new CardUnits(Unit(station, QuantityKind.Temperature).Symbol, Unit(station, QuantityKind.Speed).Symbol, Unit(station, QuantityKind.Force).Symbol, Unit(station, QuantityKind.FineLength).Symbol, Unit(station, QuantityKind.Length).Symbol),
            [.. station.Masts.Select(m => OfMast(station, m, entries, [.. due.Where(d => d.Item.Mast == m.Name)], now.Date, cancellation))], journal, entries.Count);
    }

    private static CardMast OfMast(Station station, Mast mast, IReadOnlyList<JournalEntry> entries, IReadOnlyList<DueItem> due, LocalDate today, CancellationToken cancellation)
    {
        var stands = StandingMast.Of(station, mast, station.Site.TensioningTemperatureK, cancellation).Mast;
        var table = stands?.Expected(station.Site.ColdestK, station.Site.HottestK, cancellation) ?? [];
        var names = stands?.Guys.Select(g => g.Name) ?? [];
        double Degrees(double k) => Math.Round(Unit(station, QuantityKind.Temperature).FromSi(k), 2);
        double Force(double n) => Math.Round(Unit(station, QuantityKind.Force).FromSi(n), 1);
        var readings = entries.OfType<TensionEntry>().Where(t => t.Mast == mast.Name).GroupBy(t => t.Guy).ToDictionary(g => g.Key, g => g.Last());
        return new CardMast(
            mast.Name, [.. table.Select(r => Degrees(r.TemperatureK))],
            [
                .. names.Select(n => new CardGuy(GuyNames.Short(n), [.. table.Select(r => Force(r.AnchorTensionN[n]))],
                    readings.TryGetValue(GuyNames.Short(n), out var last) ? $"{QuantityFormat.Show(last.TensionN, QuantityKind.Force, station.UnitSystem, 3)} on {Day(last.At.Date)}" : "")),
            ],
            [.. due.Select(d => new CardItem(d.Item.Key, d.Item.Label, d.Item.Caution, Day(d.DueOn), d.IsOverdue(today), d.LastState is { } s ? $"{EntryWords.Word(s)} on {Day(d.LastSeen!.Value)}" : ""))]);
    }

    // One unit for each kind, whatever the size: the phone writes it behind every number of that kind.
    private static WrittenUnit Unit(Station station, QuantityKind kind) => QuantityFormat.UnitFor(0, kind, station.UnitSystem);

    private static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
