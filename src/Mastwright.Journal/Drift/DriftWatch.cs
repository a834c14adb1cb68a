using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using Mastwright.Numerics.Fitting;
using NodaTime;

namespace Mastwright.Journal.Drift;

/// <summary>One measurement of something that should stay the same.</summary>
/// <param name="At">When.</param>
/// <param name="Value">The value, already freed of what temperature or wind explain.</param>
public readonly record struct DriftPoint(Instant At, double Value);

/// <summary>What a series of measurements says.</summary>
public enum DriftState
{
    /// <summary>Too few measurements to say.</summary>
    Unknown,

    /// <summary>No trend that stands out of the scatter.</summary>
    Steady,

    /// <summary>A trend that stands out of the scatter, still inside the limit.</summary>
    Drifting,

    /// <summary>Outside the limit now.</summary>
    Alarm,
}

/// <summary>A series of measurements judged.</summary>
/// <param name="What">What was watched.</param>
/// <param name="State">The judgement.</param>
/// <param name="Points">The measurements, in order of time.</param>
/// <param name="Change">Change of the trend line from the first measurement to now; null when unknown.</param>
/// <param name="SlopePerYear">Trend per year of 365.25 days; null when unknown.</param>
/// <param name="SlopeLowPerYear">Lower confidence bound of the trend.</param>
/// <param name="SlopeHighPerYear">Upper confidence bound of the trend.</param>
/// <param name="Limit">Allowed deviation from the reference value.</param>
/// <param name="ReachesLimitOn">Day on which the trend line leaves the limit if it goes on; null when it does not within 50 years.</param>
/// <param name="Words">One plain sentence.</param>
public sealed record DriftReport(
    string What,
    DriftState State,
    ImmutableArray<DriftPoint> Points,
    Trail? Change,
    Trail? SlopePerYear,
    double SlopeLowPerYear,
    double SlopeHighPerYear,
    double Limit,
    LocalDate? ReachesLimitOn,
    string Words)
{
    /// <summary>How far the quantity now is from what it should be, without sign; null while nothing is measured.</summary>
    public Trail? Deviation { get; init; }
}

/// <summary>Watches series of measurements for drift.</summary>
public static class DriftWatch
{
    private const double DaysInYear = 365.25;
    private const int FewestPoints = 4;
    private const int MostPoints = 2000;
    private const double FarthestYears = 50;

    private static readonly Source Method = Source.Literature("Sen, Estimates of the regression coefficient based on Kendall's tau, J. Am. Stat. Assoc. 63", "1968, from memory");

    /// <summary>Judges a series.</summary>
    /// <param name="what">Name of the watched quantity.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="points">Measurements in any order.</param>
    /// <param name="reference">Value it should have.</param>
    /// <param name="limit">Deviation from the reference at which to alarm, above 0.</param>
    /// <param name="now">The present.</param>
    /// <param name="confidence">Confidence with which a trend must differ from none.</param>
    public static DriftReport Judge(string what, QuantityKind kind, IEnumerable<DriftPoint> points, double reference, double limit, Instant now, double confidence = 0.95)
    {
        if (!(limit > 0)) throw new ArgumentOutOfRangeException(nameof(limit), limit, "Above 0.");
        var sorted = points.Where(p => double.IsFinite(p.Value)).OrderBy(p => p.At).ToImmutableArray();
        if (sorted.Length == 0) return new(what, DriftState.Unknown, sorted, null, null, double.NegativeInfinity, double.PositiveInfinity, limit, null, $"{what}: nothing measured yet.");
        var years = sorted.Select(p => Years(sorted[0].At, p.At)).ToList();
        if (sorted.Length < FewestPoints || years[^1] == 0)
        {
            // Too few for a trend, but not for seeing that the last one is out of bounds.
            var off = sorted[^1].Value - reference;
            var last = Trail.Computed($"deviation of {what}", "d", Math.Abs(off), kind, "d = |last reading − what it should be|", new("journal", SourceKind.Design));
            return (Math.Abs(off) > limit
                ? new DriftReport(what, DriftState.Alarm, sorted, null, null, double.NegativeInfinity, double.PositiveInfinity, limit, null, $"{what}: the last measurement is outside the limit.")
                : new DriftReport(what, DriftState.Unknown, sorted, null, null, double.NegativeInfinity, double.PositiveInfinity, limit, null, $"{what}: {sorted.Length} measurement(s), {FewestPoints} are needed to see a trend."))
                with
            { Deviation = last };
        }
        // The newest measurements say what is: a series longer than the fit takes is judged by its end.
        var first = Math.Max(0, sorted.Length - MostPoints);
        var trend = TheilSen.Fit([.. years.Skip(first)], [.. sorted.Skip(first).Select(p => p.Value)], confidence);
        var atNow = Years(sorted[0].At, now);
        var level = trend.At(Math.Max(atNow, years[^1]));
        var given = Trail.Given("measurements", "n", sorted.Length, QuantityKind.Count, new("journal", SourceKind.Design));
        var slope = Trail.Computed($"trend of {what} per year", "b", trend.Slope, kind, "b = median of (yj − yi)/(tj − ti) over all pairs", Method, given)
            .Remark(string.Create(CultureInfo.InvariantCulture, $"{confidence * 100:0.#} % confidence: {trend.SlopeLow:G4} to {trend.SlopeHigh:G4} per year"));
        var change = Trail.Computed($"change of {what} since the first measurement", "Δ", trend.Slope * atNow, kind, "Δ = b (t now − t first)", Method, slope);
        var stands = trend.SlopeLow > 0 || trend.SlopeHigh < 0;
        var deviation = level - reference;
        var state = Math.Abs(deviation) > limit ? DriftState.Alarm : stands ? DriftState.Drifting : DriftState.Steady;
        var crossing = stands && state == DriftState.Drifting ? Crossing(trend, reference, limit, atNow, now) : null;
        var words = state switch
        {
            DriftState.Alarm => $"{what} is outside its limit now.",
            DriftState.Drifting => crossing is { } day ? $"{what} drifts and leaves its limit about {day.ToString("uuuu-MM", CultureInfo.InvariantCulture)} if it goes on." : $"{what} drifts, but stays inside its limit for the next {FarthestYears:0} years.",
            _ => $"{what} is steady within the scatter of the measurements.",
        };
        return new(what, state, sorted, change, slope, trend.SlopeLow, trend.SlopeHigh, limit, crossing, words)
        {
            Deviation = Trail.Computed($"deviation of {what}", "d", Math.Abs(deviation), kind, "d = |trend line now − what it should be|", Method, slope),
        };
    }

    /// <summary>
    /// Judges the tension of a guy. Readings are compared with what the tension table expects at their own temperature;
    /// a reading without a temperature, or outside the table, is left out.
    /// </summary>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="guy">The guy.</param>
    /// <param name="expectedN">Tension expected at a temperature in kelvin; null outside the table.</param>
    /// <param name="nominalN">Nominal tension, for the limit.</param>
    /// <param name="limitFraction">Allowed deviation as a fraction of the nominal tension.</param>
    /// <param name="now">The present.</param>
    public static DriftReport Tension(IEnumerable<JournalEntry> entries, string mast, string guy, Func<double, double?> expectedN, double nominalN, double limitFraction, Instant now) =>
        Judge(
            NameOfTension(mast, guy),
            QuantityKind.Force,
            entries.OfType<TensionEntry>().Where(t => t.Mast == mast && t.Guy == guy)
                .Select(t => (t, Expected: t.Weather.TemperatureK is { } k ? expectedN(k) : null))
                .Where(x => x.Expected is not null)
                .Select(x => new DriftPoint(x.t.At.ToInstant(), x.t.TensionN - x.Expected!.Value)),
            0,
            limitFraction * nominalN,
            now);

    /// <summary>What the tension of a guy is called in a report.</summary>
    public static string NameOfTension(string mast, string guy) => $"tension of guy {guy} of mast {mast} against the table";

    /// <summary>Judges the resonance nearest a frequency, over all sweeps at one plane of one mast.</summary>
    /// <param name="entries">Entries of the journal.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="plane">The measuring plane as noted.</param>
    /// <param name="nearHz">Resonance looked for.</param>
    /// <param name="limitHz">Allowed deviation.</param>
    /// <param name="now">The present.</param>
    public static DriftReport Resonance(IEnumerable<JournalEntry> entries, string mast, string plane, double nearHz, double limitHz, Instant now) =>
        Judge(
            $"resonance of mast {mast} near {(nearHz / 1e6).ToString("0.###", CultureInfo.InvariantCulture)} MHz at the {plane}",
            QuantityKind.Frequency,
            entries.OfType<SweepEntry>().Where(s => s.Mast == mast && s.Plane == plane)
                .Select(s => (s.At, Hz: ResonanceHz(s, nearHz)))
                .Where(x => x.Hz is not null)
                .Select(x => new DriftPoint(x.At.ToInstant(), x.Hz!.Value)),
            nearHz,
            limitHz,
            now);

    /// <summary>The zero of reactance nearest a frequency, by straight lines between samples; null when the sweep has none.</summary>
    public static double? ResonanceHz(SweepEntry sweep, double nearHz)
    {
        double? best = null;
        for (var i = 1; i < sweep.Samples.Length; i++)
        {
            var (a, b) = (sweep.Samples[i - 1], sweep.Samples[i]);
            if (a.ReactanceOhm * b.ReactanceOhm > 0 || a.ReactanceOhm == b.ReactanceOhm) continue;
            var zero = a.FrequencyHz + ((b.FrequencyHz - a.FrequencyHz) * a.ReactanceOhm / (a.ReactanceOhm - b.ReactanceOhm));
            if (best is null || Math.Abs(zero - nearHz) < Math.Abs(best.Value - nearHz)) best = zero;
        }
        return best;
    }

    private static double Years(Instant from, Instant to) => (to - from).TotalDays / DaysInYear;

    private static LocalDate? Crossing(RobustLine trend, double reference, double limit, double yearsNow, Instant now)
    {
        var edge = trend.Slope > 0 ? reference + limit : reference - limit;
        var years = ((edge - trend.Intercept) / trend.Slope) - yearsNow;
        return years is >= 0 and <= FarthestYears ? (now + Duration.FromDays(years * DaysInYear)).InUtc().Date : null;
    }
}
