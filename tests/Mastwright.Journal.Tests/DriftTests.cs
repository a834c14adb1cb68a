using Mastwright.Journal.Drift;
using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using NodaTime;
using static Mastwright.Journal.Tests.Samples;

namespace Mastwright.Journal.Tests;

public class DriftTests
{
    private static readonly Instant Now = At(2030, 1, 1).ToInstant();

    private static IEnumerable<TensionEntry> Readings(double perYear, int count = 12, double wildFrom = double.NaN)
    {
        var random = new Random(3);
        for (var i = 0; i < count; i++)
        {
            var kelvin = 263.15 + (40 * random.NextDouble());
            var years = i / 3.0;
            var value = Expected(kelvin) + (perYear * years) + (20 * (random.NextDouble() - 0.5));
            if (!double.IsNaN(wildFrom) && i % 5 == 4) value += wildFrom;
            yield return Tension(At(2026, 1, 1).Plus(Duration.FromDays(years * 365.25)), value, temperature: kelvin);
        }
    }

    // A guy that loses 45 N for every kelvin, as a table would say.
    private static double Expected(double kelvin) => 3000 - (45 * (kelvin - 283.15));

    private static DriftReport Judge(IEnumerable<JournalEntry> entries, double limit = 0.1) => DriftWatch.Tension(entries, "A", "A1", k => Expected(k), 3000, limit, Now);

    [Fact]
    public void Warm_and_cold_readings_of_a_sound_guy_are_steady()
    {
        var report = Judge(Readings(0));
        Assert.Equal(DriftState.Steady, report.State);
        Assert.InRange(0, report.SlopeLowPerYear, report.SlopeHighPerYear);
    }

    [Fact]
    public void A_slow_loss_is_seen_and_its_end_foretold()
    {
        var report = Judge(Readings(-40));
        Assert.Equal(DriftState.Drifting, report.State);
        Assert.Equal(-40, report.SlopePerYear!.Value, 5.0);
        // 300 N at 40 N a year: 7.5 years from the start of 2026.
        Assert.InRange(report.ReachesLimitOn!.Value, new LocalDate(2032, 6, 1), new LocalDate(2034, 6, 1));
        Assert.Contains("if it goes on", report.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void Wild_readings_do_not_bend_the_trend()
    {
        var report = Judge(Readings(0, 15, wildFrom: 900));
        Assert.Equal(DriftState.Steady, report.State);
        Assert.True(Math.Abs(report.SlopePerYear!.Value) < 10);
    }

    [Fact]
    public void A_guy_out_of_its_limit_alarms()
    {
        Assert.Equal(DriftState.Alarm, Judge(Readings(-40), limit: 0.03).State);
        Assert.Equal(DriftState.Alarm, Judge(Readings(-2000, 2)).State);
    }

    [Fact]
    public void Few_readings_or_readings_without_temperature_say_nothing()
    {
        Assert.Equal(DriftState.Unknown, Judge(Readings(0, 3)).State);
        Assert.Equal(DriftState.Unknown, Judge([Tension(At(2026, 1, 1), 3000, temperature: null)]).State);
        Assert.Empty(Judge([]).Points);
    }

    [Fact]
    public void A_resonance_is_followed_through_the_sweeps()
    {
        var sweeps = Enumerable.Range(0, 6).Select(i => Sweep(At(2026 + (i / 2), 1 + (6 * (i % 2)), 1), 3.6e6 - (2e3 * i)));
        var report = DriftWatch.Resonance(sweeps, "A", "base", 3.6e6, 2e4, At(2029, 1, 1).ToInstant());
        Assert.Equal(DriftState.Drifting, report.State);
        Assert.Equal(-4e3, report.SlopePerYear!.Value, 100.0);
        Assert.Equal(QuantityKind.Frequency, report.SlopePerYear.Kind);
    }
}
