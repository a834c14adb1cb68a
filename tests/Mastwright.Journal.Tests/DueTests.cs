using System.Text;
using Mastwright.Journal.Due;
using Mastwright.Journal.Entries;
using NodaTime;
using static Mastwright.Journal.Tests.Samples;

namespace Mastwright.Journal.Tests;

public class DueTests
{
    private static readonly LocalDate Built = new(2026, 1, 1);

    private static readonly MastParts Mast = new("A", [new("A1", true, true, 3)], true, true, 60, true, true);

    private static DueItem Due(string key, params JournalEntry[] entries) => DueList.For(Checklist.For([Mast]), entries, Built).Single(d => d.Item.Key == key);

    private static InspectedItem Seen(string key, ItemState state) => new(key, "words", state);

    [Fact]
    public void The_checklist_speaks_of_what_the_station_has()
    {
        var items = Checklist.For([Mast]);
        Assert.Contains(items, i => i.Key == "A/A1/turnbuckle");
        Assert.Contains(items, i => i.Key == "A/gap");
        var plain = Checklist.For([Mast with { HasGap = false, Radials = 0, Guys = [] }]);
        Assert.DoesNotContain(plain, i => i.Key is "A/gap" or "A/radials" || i.Key.Contains("A1", StringComparison.Ordinal));
        Assert.Equal(items.Length, items.Select(i => i.Key).Distinct().Count());
        Assert.All(items, i => Assert.NotEmpty(i.Source));
    }

    [Fact]
    public void An_item_is_due_one_interval_after_it_was_seen()
    {
        Assert.Equal(new(2026, 7, 1), Due("A/gap").DueOn);
        Assert.Equal(new(2026, 9, 15), Due("A/gap", Look(At(2026, 3, 15), Seen("A/gap", ItemState.Good))).DueOn);
        Assert.Equal(new(2026, 7, 1), Due("A/gap", Look(At(2026, 3, 15), Seen("A/gap", ItemState.NotSeen))).DueOn);
    }

    [Fact]
    public void A_storm_makes_due_what_it_concerns()
    {
        var strike = Storm(At(2026, 4, 1), lightning: true);
        Assert.Equal(new(2026, 4, 2), Due("A/gap", strike).DueOn);
        Assert.Contains("lightning", Due("A/gap", strike).Reason, StringComparison.Ordinal);
        Assert.Equal(new(2027, 1, 1), Due("A/A1/clips", strike).DueOn);
        Assert.Equal(new(2026, 4, 2), Due("A/A1/clips", Storm(At(2026, 4, 1), ice: 0.01)).DueOn);
        Assert.Equal(new(2027, 1, 1), Due("A/A1/clips", Storm(At(2026, 4, 1), gust: 15)).DueOn);
        Assert.Equal(new(2026, 10, 3), Due("A/gap", strike, Look(At(2026, 4, 3), Seen("A/gap", ItemState.Good))).DueOn);
        Assert.Contains(DueList.ConcernedBy(strike, Checklist.For([Mast])), i => i.Key == "A/gap");
        Assert.DoesNotContain(DueList.ConcernedBy(strike, Checklist.For([Mast])), i => i.Key == "A/fence");
    }

    [Fact]
    public void What_is_bad_stays_due_until_it_is_good()
    {
        var bad = Look(At(2026, 3, 15), Seen("A/gap", ItemState.Bad));
        Assert.Equal(new(2026, 3, 15), Due("A/gap", bad).DueOn);
        Assert.True(Due("A/gap", bad).IsOverdue(new(2026, 3, 16)));
        Assert.Equal(new(2026, 9, 20), Due("A/gap", bad, Look(At(2026, 3, 20), Seen("A/gap", ItemState.Good))).DueOn);
        var watch = Due("A/gap", Look(At(2026, 3, 15), Seen("A/gap", ItemState.Watch)));
        Assert.Equal(new LocalDate(2026, 3, 15).PlusDays(184 / 4), watch.DueOn);
    }

    [Fact]
    public void The_calendar_keeps_to_RFC_5545()
    {
        var items = DueList.For(
            [.. Checklist.For([Mast]), new("x", "A", "Ωµ✓ 🗼 " + string.Concat(Enumerable.Repeat("длинное название; с запятой, и \\ косой чертой ", 6)), Period.FromYears(1), StormTrigger.None, "common practice, no source", "line one\nline two")],
            [], Built);
        var text = DueCalendar.Write("Hill; station, one", items, Instant.FromUtc(2026, 5, 1, 10, 0));

        // Section 3.1: CR LF ends every line, and no line is longer than 75 octets; no other CR or LF.
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        var physical = text.Split("\r\n")[..^1];
        Assert.All(physical, l => Assert.DoesNotContain(l, c => c is '\r' or '\n'));
        Assert.All(physical, l => Assert.InRange(Encoding.UTF8.GetByteCount(l), 1, 75));
        Assert.All(physical, l => Assert.True(Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(l)) == l));

        // Unfolded, every line is NAME[;params]:value.
        var lines = text.Replace("\r\n ", "", StringComparison.Ordinal).Split("\r\n")[..^1];
        Assert.All(lines, l => Assert.Matches("^[A-Z-]+(;[A-Z-]+=[^:;]+)*:", l));
        Assert.Equal("BEGIN:VCALENDAR", lines[0]);
        Assert.Equal("END:VCALENDAR", lines[^1]);
        Assert.Single(lines, "VERSION:2.0");
        Assert.Single(lines, l => l.StartsWith("PRODID:", StringComparison.Ordinal));

        // Section 3.6.1: each event has one UID and one DTSTAMP in UTC; a date ends on the next (DTEND is not included).
        var events = lines.Count(l => l == "BEGIN:VEVENT");
        Assert.Equal(items.Length, events);
        Assert.Equal(events, lines.Where(l => l.StartsWith("UID:", StringComparison.Ordinal)).Distinct().Count());
        Assert.Equal(events, lines.Count(l => l == "DTSTAMP:20260501T100000Z"));
        Assert.Equal(events, lines.Count(l => System.Text.RegularExpressions.Regex.IsMatch(l, @"^DTSTART;VALUE=DATE:\d{8}$")));
        Assert.Equal(events, lines.Count(l => System.Text.RegularExpressions.Regex.IsMatch(l, @"^DTEND;VALUE=DATE:\d{8}$")));

        // Section 3.3.11: commas, semicolons, backslashes and line ends in text are escaped.
        var summary = lines.Single(l => l.StartsWith("SUMMARY:Ωµ", StringComparison.Ordinal));
        Assert.Contains("название\\; с запятой\\, и \\\\ косой", summary, StringComparison.Ordinal);
        Assert.Contains(lines, l => l.StartsWith("DESCRIPTION:", StringComparison.Ordinal) && l.Contains("line one\\nline two", StringComparison.Ordinal));
        Assert.Contains(lines, l => l == "LOCATION:Hill\\; station\\, one\\, A");
    }

    [Fact]
    public void An_item_keeps_its_identity_when_its_day_moves()
    {
        static string Identity(string text) => text.Split("\r\n").First(l => l.StartsWith("UID:", StringComparison.Ordinal));
        var a = DueCalendar.Write("S", [Due("A/gap")], Instant.FromUtc(2026, 5, 1, 10, 0));
        var b = DueCalendar.Write("S", [Due("A/gap", Look(At(2026, 3, 15), Seen("A/gap", ItemState.Good)))], Instant.FromUtc(2026, 6, 1, 10, 0));
        Assert.Equal(Identity(a), Identity(b));
        Assert.Contains("DTSTART;VALUE=DATE:20260915", b, StringComparison.Ordinal);
    }

    [Fact]
    public void Changes_between_two_dates_are_told()
    {
        JournalEntry[] entries =
        [
            Tension(At(2026, 1, 1), 3000), Look(At(2026, 1, 2), Seen("k", ItemState.Good), Seen("same", ItemState.Good)), Sweep(At(2026, 1, 3), 3.6e6),
            Storm(At(2026, 6, 1), gust: 30), Tension(At(2026, 6, 2), 2800), Tension(At(2026, 6, 3), 2900, "A2"), Look(At(2026, 6, 4), Seen("k", ItemState.Bad), Seen("same", ItemState.Good)), Sweep(At(2026, 6, 5), 3.59e6),
            Note(At(2027, 1, 1)),
        ];
        var changes = JournalChanges.Between(entries, At(2026, 3, 1).ToInstant(), At(2026, 12, 1).ToInstant());
        Assert.Equal(5, changes.New.Length);
        Assert.Equal(-200, changes.Tensions[0].DifferenceN);
        Assert.Null(changes.Tensions[1].DifferenceN);
        Assert.Equal(new StateChange("k", "words", ItemState.Good, ItemState.Bad), Assert.Single(changes.States));
        Assert.NotNull(Assert.Single(changes.Sweeps).Before);
        Assert.Single(changes.Storms);
    }
}
