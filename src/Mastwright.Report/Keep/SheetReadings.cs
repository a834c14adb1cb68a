using System.Collections.Immutable;
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
        var masts = new StandingMasts();
        foreach (var reading in readings)
        {
            if (Entry(station, reading, moment, masts, findings, cancellation) is { } entry)
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
        Station station, SheetReading reading, Func<string, OffsetDateTime?> moment, StandingMasts masts, ImmutableArray<Finding>.Builder findings, CancellationToken cancellation)
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

        var temperature = Number(reading.Temperature, QuantityKind.Temperature, Weather.LeastTemperatureK, Weather.MostTemperatureK, "temperature", "12 °C", out var problem);
        if (problem is not null)
        {
            return Refuse(problem, "temperature", reading.Temperature);
        }

        var wind = Number(reading.Wind, QuantityKind.Speed, 0, Weather.MostWindMPerS, "wind", "2 m/s", out problem);
        if (problem is not null)
        {
            return Refuse(problem, "wind", reading.Wind);
        }

        (var found, problem) = GuyReading.Take(masts, station, mast, temperature, reading.Guy, reading.Way, reading.Reading, cancellation);
        if (found is not null)
        {
            findings.AddRange(found.Remarks.Select(f => f with { Place = reading.Place }));
            return found.Entry(new EntryHead(Guid.CreateVersion7(), at, reading.By, reading.Remark, new Weather(temperature, wind, "")));
        }

        switch (problem!.Place?.Path)
        {
            case GuyReading.GuyField:
                return Refuse(problem, "guy", reading.Guy);
            case GuyReading.ReadingField:
                return Refuse(problem, reading.Way, reading.Reading);
            default:
                // A mast that does not stand is said once, not for every row.
                if (!findings.Contains(problem))
                {
                    findings.Add(problem);
                }

                return null;
        }
    }

    private static double? Number(string written, QuantityKind kind, double least, double most, string what, string example, out Finding? problem)
    {
        problem = null;
        if (written.Length == 0)
        {
            return null;
        }

        var read = QuantityText.Read(written, kind);
        if (!read.Ok)
        {
            problem = new Finding("value-bad", Severity.Error, $"The {what} cannot be used: {read.Problem}.", WayOut: $"Write it like {example}.");
        }
        else if (read.ValueSi < least || read.ValueSi > most)
        {
            string Show(double v) => QuantityFormat.Show(v, kind, UnitSystem.Metric);
            problem = new Finding("value-range", Severity.Error, $"The {what} is out of range.", Allowed: $"{Show(least)} to {Show(most)}", WayOut: "Check the number and its unit.");
        }

        return problem is null ? read.ValueSi : null;
    }
}
