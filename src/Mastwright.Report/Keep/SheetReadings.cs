using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis.Tune;
using Mastwright.Build;
using Mastwright.Build.Tension;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Report.Documents;
using Mastwright.Report.Tune;
using NodaTime;

namespace Mastwright.Report.Keep;

/// <summary>A day of tension readings: the sheet to take along, and what a filled-in one says.</summary>
public static class SheetReadings
{
    private const double FewestForTurns = 2;

    /// <summary>The sheet of a station, empty; a finding for a mast that does not stand.</summary>
    public static (string Text, ImmutableArray<Finding> Findings) Sheet(Station station, CancellationToken cancellation)
    {
        var guys = new List<GuyToRead>();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        foreach (var mast in station.Masts)
        {
            var (standing, falls) = StandingMast.Of(station, mast, station.Site.TensioningTemperatureK, cancellation);
            if (standing is null)
            {
                findings.Add(falls!);
                continue;
            }

            var at = QuantityFormat.Show(station.Site.TensioningTemperatureK, QuantityKind.Temperature, station.UnitSystem, 3);
            guys.AddRange(standing.Guys.Select(g => new GuyToRead(mast.Name, GuyNames.Short(g.Name), $"{QuantityFormat.Show(g.AnchorTensionN, QuantityKind.Force, station.UnitSystem)} at {at}")));
        }

        return (ReadingSheet.Write(guys, TensionReadings.Ways), findings.ToImmutable());
    }

    /// <summary>The entries a filled-in sheet makes, all or none.</summary>
    /// <param name="station">The station.</param>
    /// <param name="text">The sheet.</param>
    /// <param name="fileName">Its name.</param>
    /// <param name="moment">Reads a day or moment as written, empty for now; null when it cannot be read.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Reading<IReadOnlyList<TensionEntry>> Entries(Station station, string text, string fileName, Func<string, OffsetDateTime?> moment, CancellationToken cancellation)
    {
        var sheet = ReadingSheet.Read(text, fileName, TensionReadings.Ways.Keys.ToList());
        if (sheet.Value is not { } readings)
        {
            return new(null, sheet.Findings);
        }

        var findings = sheet.Findings.ToBuilder();
        var entries = new List<TensionEntry>();
        var standing = new Dictionary<(string Mast, double TemperatureK), StandingMast?>();
        foreach (var reading in readings)
        {
            if (Entry(station, reading, moment, standing, findings, cancellation) is { } entry)
            {
                entries.Add(entry);
            }
        }

        return findings.Any(f => f.Severity == Severity.Error) ? new(null, findings.ToImmutable()) : new(entries, findings.ToImmutable());
    }

    /// <summary>What the readings say: each guy against the table, then the next turns of every mast.</summary>
    /// <param name="station">The station.</param>
    /// <param name="entries">The readings.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Document Document(Station station, IReadOnlyList<TensionEntry> entries, CancellationToken cancellation)
    {
        var document = new DocumentBuilder("Tension readings", station.Name, station.UnitSystem);
        foreach (var of in entries.GroupBy(e => e.Mast))
        {
            var mast = station.Masts.First(m => m.Name == of.Key);
            var temperature = of.Select(e => e.Weather.TemperatureK).OfType<double>().DefaultIfEmpty(station.Site.TensioningTemperatureK).Average();

            // A guy read in several ways counts with the mean of them, the sharper reading the more.
            var measured = of.GroupBy(e => e.Guy).Select(g => (Guy: g.Key, TensionN: Mean([.. g]))).ToList();
            if (of.All(e => e.Weather.TemperatureK is null))
            {
                document.Add(new Note(NoteKind.Assumption, $"Mast {mast.Name}: no temperature was noted; {document.Show(temperature, QuantityKind.Temperature, 3)} was taken."));
            }

            foreach (var guy in of.GroupBy(e => e.Guy).Where(g => g.Count() > 1 && g.Max(e => e.TensionN) > 1.1 * g.Min(e => e.TensionN)))
            {
                document.Add(new Note(NoteKind.Assumption, $"Guy {guy.Key}: the ways disagree by more than a tenth ({string.Join(", ", guy.Select(e => $"{e.Method} {document.Show(e.TensionN, QuantityKind.Force, 3)}"))}). Read it again before you turn anything."));
            }

            var (turns, problems) = measured.Count < FewestForTurns
                ? (null, [new Finding("turns-few", Severity.Note, "One guy alone does not tell which turnbuckle to turn.", WayOut: "Read every guy of the mast.")])
                : TurnsAdvice.Of(new TurnsRequest(station, mast, temperature, measured), cancellation);
            document.Findings(problems);
            if (turns is not null)
            {
                document.Section(turns.Title);
                foreach (var block in turns.Blocks)
                {
                    document.Add(block);
                }
            }
        }

        return document.Build();
    }

    private static double Mean(TensionEntry[] readings)
    {
        var weights = readings.Select(r => r.UncertaintyN is > 0 and var u ? 1 / (u * u) : 1e-9).ToArray();
        return readings.Zip(weights, (r, w) => r.TensionN * w).Sum() / weights.Sum();
    }

    private static TensionEntry? Entry(
        Station station, SheetReading reading, Func<string, OffsetDateTime?> moment, Dictionary<(string, double), StandingMast?> known, ImmutableArray<Finding>.Builder findings, CancellationToken cancellation)
    {
        TensionEntry? Refuse(Finding finding, string field, string value)
        {
            findings.Add(finding with { Place = reading.Place with { Path = field }, Value = value });
            return null;
        }

        var mast = reading.Mast.Length == 0 && station.Masts.Length == 1 ? station.Masts[0] : station.Masts.FirstOrDefault(m => m.Name.Equals(reading.Mast, StringComparison.OrdinalIgnoreCase));
        if (mast is null)
        {
            return Refuse(new Finding("mast-unknown", Severity.Error, $"There is no mast “{reading.Mast}”.", Allowed: string.Join(", ", station.Masts.Select(m => m.Name)), WayOut: "Name one of these."), "mast", reading.Mast);
        }

        if (moment(reading.Date) is not { } at)
        {
            return Refuse(new Finding("time-bad", Severity.Error, "This is not a date or time.", Allowed: "2026-05-01, 2026-05-01 14:30", WayOut: "Write year, month, day."), "date", reading.Date);
        }

        if (!Number(reading.Temperature, QuantityKind.Temperature, out var temperature, out var problem))
        {
            return Refuse(new Finding("value-bad", Severity.Error, $"The temperature cannot be used: {problem}.", WayOut: "Write it like 12 °C."), "temperature", reading.Temperature);
        }

        if (!Number(reading.Wind, QuantityKind.Speed, out var wind, out problem))
        {
            return Refuse(new Finding("value-bad", Severity.Error, $"The wind cannot be used: {problem}.", WayOut: "Write it like 2 m/s."), "wind", reading.Wind);
        }

        var kelvin = temperature ?? station.Site.TensioningTemperatureK;
        if (!known.TryGetValue((mast.Name, kelvin), out var standing))
        {
            (standing, var falls) = StandingMast.Of(station, mast, kelvin, cancellation);
            known.Add((mast.Name, kelvin), standing);
            if (falls is not null)
            {
                findings.Add(falls);
            }
        }

        if (standing is null)
        {
            return null;
        }

        var (name, unknown) = GuyNames.Find([.. standing.Guys.Select(g => g.Name)], reading.Guy, mast.Name);
        if (unknown is not null)
        {
            return Refuse(unknown, "guy", reading.Guy);
        }

        var guy = standing.Guys.First(g => g.Name == name);
        var estimate = TensionReadings.Estimate(guy, reading.Way, reading.Reading);
        if (estimate.Value is not { } found)
        {
            return Refuse(estimate.Findings[0], reading.Way, reading.Reading);
        }

        findings.AddRange(estimate.Findings.Select(f => f with { Place = reading.Place }));
        return new TensionEntry(Guid.CreateVersion7(), at, mast.Name, reading.By, reading.Remark, new Weather(temperature, wind, ""), GuyNames.Short(guy.Name), found.AtAnchor.Value, found.UncertaintyN, found.Method, reading.Reading.ToString(CultureInfo.InvariantCulture));
    }

    private static bool Number(string written, QuantityKind kind, out double? value, out string problem)
    {
        (value, problem) = (null, "");
        if (written.Length == 0)
        {
            return true;
        }

        var read = QuantityText.Read(written, kind);
        (value, problem) = (read.Ok ? read.ValueSi : null, read.Problem ?? "");
        return read.Ok;
    }
}
