using System.Globalization;
using Mastwright.Analysis.Results;
using Mastwright.Circuits.Lines;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Drawings;
using Mastwright.Report.Studies;

namespace Mastwright.Report.Book;

/// <summary>How the masts radiate: bands, networks, currents, patterns, groups.</summary>
internal static class RadioChapter
{
    private const int CurvesAtOnce = 6;

    public static void Write(DocumentBuilder book, StationResult result, CancellationToken cancellation)
    {
        cancellation.ThrowIfCancellationRequested();
        foreach (var mast in result.Masts)
        {
            book.Add(new PageBreak()).Add(new Heading(1, $"Mast {mast.Name}: how it radiates"));
            if (mast.Bands.IsEmpty)
            {
                book.Text("The currents could not be solved: see the findings.");
                continue;
            }

            Bands(book, result, mast);
            Shapes(book, result.Station, mast);
            Networks(book, result.Station, mast);
        }

        foreach (var (group, answer) in result.Station.Groups.Zip(result.Groups))
        {
            Group(book, result.Station, group, answer);
        }

        book.Section("Checks of radiation and feed").Checks("Worst of each kind", result.WorstOfEachKind.Where(c => c.Trade is Trade.Radiate or Trade.Feed));
    }

    private static void Bands(DocumentBuilder book, StationResult result, MastResult mast)
    {
        book.Text(mast.FirstResonanceHz is { } f ? $"First resonance {book.Show(f)}." : "No resonance was found below the highest band.");
        book.Table("Bands at the feed point, insulator and stray capacitance included", ["Band", "#Power", "#Impedance", "#Earth loss", "#Efficiency", "#Current RMS", "#Peak voltage", "#Gain", "#At 1 km"], mast.Bands.Select(b => new Cell[]
        {
            b.Name, book.Show(b.PowerW, QuantityKind.Power), StudyWords.Ohm(b.FeedOhm), book.Show(b.EarthLossOhm, 3), StudyWords.Percent(b.Efficiency.Value) + (b.Efficiency.Value > 1 ? " (!)" : ""), book.Show(b.BaseCurrentRms, 3), book.Show(b.BasePeakV, 3),
            b.GainDbi.Value.ToString("0.0", CultureInfo.InvariantCulture) + " dBi", book.Show(b.FieldAt1KmVPerM, 3),
        }));
        foreach (var above in mast.Bands.Where(b => b.Efficiency.Value > 1 && b.Efficiency.OutOfRange is not null).GroupBy(b => b.Efficiency.OutOfRange))
        {
            book.Add(new Note(NoteKind.Assumption, $"(!) {string.Join(", ", above.Select(b => b.Name))}: {above.Key}."));
        }

        book.Add(Plots.LogBars($"Impedance of mast {mast.Name} by band", "Feed impedance by band: filled the resistance, open the reactance (its sign tells inductive + from capacitive −), with the standing wave ratio the line would have without a network.", "ohms",
            [.. mast.Bands.Select(b => (b.Name, b.FeedOhm.Real, $"R {QuantityFormat.Digits(b.FeedOhm.Real, 3)} Ω", Math.Abs(b.FeedOhm.Imaginary), $"X {(b.FeedOhm.Imaginary < 0 ? "−" : "+")}{QuantityFormat.Digits(Math.Abs(b.FeedOhm.Imaginary), 3)} Ω, SWR {StudyWords.Swr(Mismatch.Swr(b.FeedOhm, result.Station.Feed.LineOhm))}"))]));
    }

    private static void Shapes(DocumentBuilder book, Station station, MastResult mast)
    {
        book.Section("Patterns and currents");
        foreach (var some in mast.Bands.Where(b => b.Pattern is not null).Chunk(CurvesAtOnce))
        {
            book.Add(Polar.Upright($"Upright patterns of mast {mast.Name}", $"Pattern from horizon to horizon through the strongest bearing, in decibels below the strongest direction; {some[0].GainDbi.Range}.",
                [.. some.Select(b => (b.Name, Patterns.Below(b.Pattern!.UprightDbi)))]));
        }

        var unit = QuantityFormat.UnitFor(1, QuantityKind.Length, station.UnitSystem);
        foreach (var some in mast.Bands.Where(b => !b.Currents.IsEmpty).Chunk(CurvesAtOnce))
        {
            book.Add(Plots.Curves($"Current along mast {mast.Name}", "Size of the current along the mast over its largest value.", $"height above ground, {unit.Symbol}", "current over largest",
                [.. some.Select((b, i) => new Curve(b.Name, [.. Patterns.Current(mast.Name, b).Select(p => (unit.FromSi(p.HeightM), p.Share))], Plots.Dash(i)))]));
        }
    }

    private static void Networks(DocumentBuilder book, Station station, MastResult mast)
    {
        book.Section("Matching networks");
        foreach (var band in mast.Bands)
        {
            if (band.Match is not { } match)
            {
                book.Text($"{band.Name}: no network matches; see the checks.");
                continue;
            }

            book.Add(NetworkDrawing.Of($"{band.Name}, mast {mast.Name}, to {book.Show(station.Feed.LineOhm, QuantityKind.Resistance)}", match, station.UnitSystem));
        }

        book.Table("Parts of the networks", ["Band", "Network", "Part", "#Value", "Wind or buy", "#Peak voltage", "#Current RMS", "#Heat", "#SWR"], mast.Bands.Where(b => b.Match is not null).SelectMany(b =>
            b.Match!.Stresses.Select(s => new Cell[]
            {
                b.Name, b.Match.Title, s.Section.Title, book.Show(s.Section.Value, s.Section.ValueKind), NetworkParts.Offer(book.Units, b.Network!.Built, s), book.Show(s.Voltage.Value, QuantityKind.PeakVoltage, 3), book.Show(s.Current.Value, QuantityKind.RmsCurrent, 3),
                book.Show(s.HeatW, QuantityKind.Power, 3), StudyWords.Swr(b.Match.Swr),
            })));
        foreach (var band in mast.Bands.Where(b => b.Match is not null))
        {
            book.Add(NetworkDrawing.Smith($"{band.Name}, mast {mast.Name}", band.Match!));
        }
    }

    private static void Group(DocumentBuilder book, Station station, Group group, GroupResult answer)
    {
        book.Add(new PageBreak()).Add(new Heading(1, $"Group {group.Name}")).Add(GroupPlan.Of(station, group));
        book.Table($"{book.Show(group.FrequencyHz, QuantityKind.Frequency)}, {book.Show(group.PowerW, QuantityKind.Power)} in all", ["Position", "#Bearing", "#Gain", "#Front to back", "#Over one mast"], group.Directions.Zip(answer.Directions, (d, a) => new Cell[]
        {
            d.Name, book.Show(d.BearingRad, QuantityKind.Angle, 3), book.Show(a.GainDbi, 3), book.Show(a.FrontToBackDb, 3), book.Show(a.GainOverOneDb, 3),
        }));
        book.Table("What each mast is given and what it shows the network", ["Position", "Mast", "#Size", "#Phase", "#Drive impedance", "#Current RMS", "#Peak voltage", "#Power"], group.Directions.Zip(answer.Directions).SelectMany(p => p.Second.Drives.Select(v =>
        {
            var asked = p.First.Currents.First(c => c.Mast == v.Mast);
            return new Cell[] { p.First.Name, v.Mast, QuantityFormat.Digits(asked.Size, 3), book.Show(asked.PhaseRad, QuantityKind.Angle, 3), StudyWords.Ohm(v.DriveOhm), book.Show(v.CurrentRms, 3), book.Show(v.BasePeakV, 3), book.Show(v.PowerW, 3) };
        })));
        var drawn = answer.Directions.Where(d => d.Pattern is not null).ToList();
        if (drawn.Count > 0)
        {
            book.Add(Polar.Level($"Level patterns of group {group.Name}", "Pattern round the compass at the strongest elevation of the wanted bearing, north up, in decibels below the strongest direction; " + drawn[0].GainDbi.Range + ".", [.. drawn.Select(d => (d.Name, Patterns.Below(d.Pattern!.LevelDbi)))]));
            book.Add(Polar.Upright($"Upright patterns of group {group.Name}", "Pattern from the horizon in the wanted bearing (right) over the zenith to the horizon behind (left), in decibels below the strongest; " + drawn[0].GainDbi.Range + ".", [.. drawn.Select(d => (d.Name, Patterns.Below(d.Pattern!.UprightDbi)))]));
        }
    }

}
