using Mastwright.Journal.Drift;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Report.Keep;
using NodaTime;

namespace Mastwright.Report.Tests;

/// <summary>The verdict on how a station is kept. What is due when is the checklist's (common practice, no source); the verdict must never say otherwise than the list.</summary>
public class UpkeepChecksTests
{
    private static readonly Station Lattice = Stations.Input("lattice-22m").Station;
    private static readonly LocalDate Built = new(2026, 1, 1);

    /// <summary>The fence is looked at every three months: seen with all else on 1 January, it is first due, on 1 April, and overdue the day after.</summary>
    [Theory]
    [InlineData("2026-02-01", Verdict.Pass)]
    [InlineData("2026-03-25", Verdict.Caution)]
    [InlineData("2026-04-01", Verdict.Caution)]
    [InlineData("2026-04-02", Verdict.Fail)]
    [InlineData("2029-04-02", Verdict.Fail)]
    public void What_is_overdue_fails_from_the_day_the_list_says(string day, Verdict verdict)
    {
        var today = NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value;
        JournalEntry[] entries = [Round(Built, _ => ItemState.Good)];
        var check = Judged(entries, today).Single(c => c.Id == "keep.overdue[A]");
        Assert.Equal(verdict, check.Verdict);
        Assert.Equal(DueList.For(UpkeepParts.Checklist(Lattice), entries, Built).Any(d => d.IsOverdue(today)), check.Verdict == Verdict.Fail);
    }

    [Fact]
    public void What_was_found_bad_fails_until_it_is_seen_good()
    {
        JournalEntry bad = Round(Built, i => i.Key.EndsWith("/gap", StringComparison.Ordinal) ? ItemState.Bad : ItemState.Good);
        var today = Built.PlusDays(3);
        var check = Judged([bad], today).Single(c => c.Id == "keep.found-bad[A]");
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Contains("gap", check.GoverningCase, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("locked out", check.Caution);
        Assert.Equal(Verdict.Pass, Judged([bad, Round(Built.PlusDays(2), _ => ItemState.Good)], today).Single(c => c.Id == "keep.found-bad[A]").Verdict);
    }

    /// <summary>Sen's estimate of a straight line is the line itself: 4 readings falling 10 N a day end 30 N off, against a limit of 50 and of 20 N.</summary>
    [Theory]
    [InlineData(50, Verdict.Caution)]
    [InlineData(20, Verdict.Fail)]
    public void A_reading_that_drifts_cautions_and_fails_beyond_its_limit(double limitN, Verdict verdict)
    {
        var start = Instant.FromUtc(2026, 1, 1, 0, 0);
        var report = DriftWatch.Judge("tension", QuantityKind.Force, Enumerable.Range(0, 4).Select(i => new DriftPoint(start + Duration.FromDays(i), 1000 - (10 * i))), 1000, limitN, start + Duration.FromDays(3));
        var check = UpkeepChecks.Drift(report);
        Assert.Equal(30, check.Demand.Value, 1e-6);
        Assert.Equal(verdict, check.Verdict);
        Assert.Equal(verdict == Verdict.Fail, check.Caution is not null);
    }

    private static System.Collections.Immutable.ImmutableArray<Check> Judged(JournalEntry[] entries, LocalDate today) =>
        UpkeepChecks.Looks(DueList.For(UpkeepParts.Checklist(Lattice), entries, Built), Built, today);

    private static InspectionEntry Round(LocalDate day, Func<ChecklistItem, ItemState> state) => new(
        Guid.NewGuid(), day.At(new LocalTime(10, 0)).WithOffset(Offset.Zero), "A", "me", "", Weather.NotNoted, [.. UpkeepParts.Checklist(Lattice).Select(i => new InspectedItem(i.Key, i.Label, state(i)))]);
}
