using System.Collections.Immutable;
using Mastwright.Analysis.Tune;
using Mastwright.Journal.Drift;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;
using Mastwright.Structure.Tensioning;
using NodaTime;

namespace Mastwright.Report.Keep;

/// <summary>How the readings of a journal drift against what the design says they should be.</summary>
public static class DriftStudy
{
    /// <summary>Judges every guy that was measured and every plane that was swept.</summary>
    /// <param name="station">The station.</param>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="tensionShare">Allowed deviation of a tension, as a share of its set value.</param>
    /// <param name="resonanceShare">Allowed deviation of a resonance, as a share.</param>
    /// <param name="now">The present.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ImmutableArray<DriftReport> Judge(Station station, IReadOnlyList<JournalEntry> entries, double tensionShare, double resonanceShare, Instant now, CancellationToken cancellation)
    {
        var reports = ImmutableArray.CreateBuilder<DriftReport>();
        foreach (var mast in station.Masts)
        {
            var measured = entries.OfType<TensionEntry>().Where(t => t.Mast == mast.Name).Select(t => t.Guy).Distinct().Order(StringComparer.Ordinal).ToList();
            if (measured.Count > 0 && StandingMast.Of(station, mast, station.Site.TensioningTemperatureK, cancellation).Mast is { } standing)
            {
                var table = standing.Expected(station.Site.ColdestK, station.Site.HottestK, cancellation);
                foreach (var guy in measured)
                {
                    if (standing.Guys.FirstOrDefault(g => GuyNames.Short(g.Name) == guy) is { } known)
                    {
                        reports.Add(DriftWatch.Tension(entries, mast.Name, guy, k => Between(table, known.Name, k), known.AnchorTensionN, tensionShare, now));
                    }
                }
            }

            reports.AddRange(Resonances(entries, mast.Name, resonanceShare, now));
        }

        return reports.ToImmutable();
    }

    /// <summary>The judgement as a document: fails when anything is outside its limit.</summary>
    public static Document Document(Station station, IReadOnlyList<DriftReport> reports)
    {
        var document = new DocumentBuilder("Drift", station.Name, station.UnitSystem);
        if (reports.Count == 0)
        {
            return document.Text("No tension with its temperature and no sweep is in the journal yet.").Build();
        }

        document.Table("Robust trend (median of slopes) with 95 % confidence", ["What", "#Readings", "#Trend per year", "#Change so far", "#Limit ±", "State"], reports.Select(r => new Cell[]
        {
            r.What, r.Points.Length.ToString(System.Globalization.CultureInfo.InvariantCulture),
            r.SlopePerYear is { } s ? document.Show(s, 3) : "", r.Change is { } c ? document.Show(c, 3) : "", document.Show(r.Limit, Kind(r), 3),
            new(r.State.ToString().ToLowerInvariant(), r.State switch { DriftState.Alarm => Verdict.Fail, DriftState.Steady => Verdict.Pass, _ => Verdict.Caution }),
        }));
        foreach (var report in reports)
        {
            document.Add(new Note(report.State == DriftState.Alarm ? NoteKind.Caution : NoteKind.Remark, report.Words));
        }

        return document.Build() with { Verdict = reports.Any(r => r.State == DriftState.Alarm) ? Verdict.Fail : Verdict.Pass };
    }

    private static QuantityKind Kind(DriftReport report) => report.SlopePerYear?.Kind ?? (report.What.StartsWith("resonance", StringComparison.Ordinal) ? QuantityKind.Frequency : QuantityKind.Force);

    // The first sweep of a plane sets what its resonance should be: the one nearest the middle of what was swept.
    private static IEnumerable<DriftReport> Resonances(IReadOnlyList<JournalEntry> entries, string mast, double share, Instant now)
    {
        foreach (var plane in entries.OfType<SweepEntry>().Where(s => s.Mast == mast).GroupBy(s => s.Plane))
        {
            var first = plane.MinBy(s => s.At.ToInstant())!;
            if (DriftWatch.ResonanceHz(first, (first.Samples[0].FrequencyHz + first.Samples[^1].FrequencyHz) / 2) is { } hz)
            {
                yield return DriftWatch.Resonance(entries, mast, plane.Key, hz, share * hz, now);
            }
        }
    }

    private static double? Between(IReadOnlyList<TensionRow> table, string guy, double temperatureK)
    {
        for (var i = 1; i < table.Count; i++)
        {
            var (a, b) = (table[i - 1], table[i]);
            if (temperatureK >= a.TemperatureK && temperatureK <= b.TemperatureK)
            {
                var part = (temperatureK - a.TemperatureK) / (b.TemperatureK - a.TemperatureK);
                return a.AnchorTensionN[guy] + (part * (b.AnchorTensionN[guy] - a.AnchorTensionN[guy]));
            }
        }

        return null;
    }
}
