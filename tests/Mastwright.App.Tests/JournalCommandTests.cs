using System.Text.Json;
using Mastwright.Tests.Shared;

namespace Mastwright.App.Tests;

/// <summary>The journal from the command line, as its owner keeps it.</summary>
public sealed class JournalCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("mastwright-journal-").FullName;
    private readonly string design;

    public JournalCommandTests()
    {
        design = Path.Combine(folder, "meadow.yaml");
        File.Copy(Repository.File("examples", "lattice-22m.yaml"), design);
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private Task<Cli.Run> Journal(string verb, params string[] rest) => Cli.Start(["journal", verb, design, .. rest]);

    private string In(string name) => Path.Combine(folder, name);

    private static void Done(Cli.Run run) => Assert.True(run.ExitCode == 0, run.Output + run.Errors);

    [Fact]
    public async Task A_reading_becomes_a_tension_held_against_the_table_and_is_kept_beside_the_design()
    {
        var pulse = await Journal("tension", "--guy", "1/north", "--pulse", "10 in 4.1 s", "--temperature", "15 °C", "--at", "2026-05-01", "--by", "me");
        var list = await Journal("list");

        Done(pulse);
        Assert.Contains("near enough", pulse.Output);
        Assert.True(File.Exists(In("meadow.journal")));
        Assert.Contains("guy 1/north", list.Output);
        Assert.Contains("10 in 4.1 s", list.Output);
        Assert.Contains("2026-05-01", list.Output);
    }

    /// <summary>By hand: a gauge in line at the anchor shows the tension itself; T = 4 m L² N²/t² for the taut string.</summary>
    [Fact]
    public async Task Gauge_and_pulse_agree_with_the_taut_string_by_hand()
    {
        // Level 1: 3/16 in EHS, 73 lb/1000 ft, chord from the eye (14 m out) to the pin 11 m up; three insulators of 0.8 kg spread along it.
        var chord = Math.Sqrt((14 * 14) + (11 * 11));
        var mass = (73 * 0.45359237 / 304.8) + (3 * 0.8 / chord);
        var expected = 4 * mass * chord * chord * 100 / (4.1 * 4.1);

        Done(await Journal("tension", "--guy", "1/north", "--pulse", "10 in 4.1 s"));
        Done(await Journal("tension", "--guy", "1/north", "--gauge", "1830 N"));
        Done(await Journal("export", "--to", In("all.json")));

        var tensions = JsonDocument.Parse(await File.ReadAllTextAsync(In("all.json"))).RootElement.GetProperty("entries").EnumerateArray().Select(e => Number(e, "tensionN")).ToList();
        Assert.Equal(expected, tensions[0], 0.02 * expected);
        Assert.Equal(1830, tensions[1], 1e-6);

        static double Number(JsonElement entry, string name) => entry.EnumerateObject().Single(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase)).Value.GetDouble();
    }

    [Theory]
    [InlineData("Did you mean “1/north”?", "tension", "--guy", "1/nort", "--gauge", "2 kN")]
    [InlineData("not a count in a time", "tension", "--guy", "1/north", "--pulse", "2.79 s")]
    [InlineData("the unit is missing", "tension", "--guy", "1/north", "--gauge", "1800")]
    [InlineData("No reading is given", "tension", "--guy", "1/north")]
    [InlineData("not a date or time", "note", "--note", "x", "--at", "yesterday")]
    [InlineData("has no item", "inspect", "--seen", "gup=good")]
    [InlineData("What was found is not said", "inspect", "--seen", "gap=fine")]
    [InlineData("Nothing is said about the storm", "storm")]
    [InlineData("There is no journal here", "list")]
    [InlineData("There is no such file", "import", "--from", "nowhere.json")]
    public async Task Bad_input_is_one_clear_message_and_nothing_is_written(string message, string verb, params string[] rest)
    {
        var run = await Journal(verb, rest);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(message, run.Errors.ReplaceLineEndings(" "));
        Assert.Contains("way out", run.Errors);
        Assert.DoesNotContain("   at ", run.Errors);
        Assert.False(File.Exists(In("meadow.journal")));
    }

    [Fact]
    public async Task Inspections_follow_the_design_and_move_what_is_due()
    {
        var sheet = await Journal("inspect", "--sheet");
        Done(await Journal("inspect", "--rest", "good", "--seen", "gap=bad: burnt face", "1/north/turnbuckle=watch: thread dry", "--at", "2026-03-01"));
        var due = await Journal("due", "--today", "2026-03-15", "--calendar", In("due.ics"));

        Assert.Contains("A/1/north/turnbuckle", sheet.Output);
        Assert.Contains("60 radials", sheet.Output);
        Assert.Contains("A/fence", sheet.Output);
        Assert.Equal(1, due.ExitCode); // the bad gap is overdue
        Assert.Contains("found bad and not seen good since", due.Output);
        Assert.Contains("a quarter of the usual interval", due.Output);
        var calendar = await File.ReadAllTextAsync(In("due.ics"));
        Assert.StartsWith("BEGIN:VCALENDAR\r\n", calendar); // RFC 5545
        Assert.Contains("DTSTART;VALUE=DATE:20260301", calendar);
    }

    [Fact]
    public async Task A_storm_says_what_it_did_and_what_is_due()
    {
        var storm = await Journal("storm", "--gust", "70 mph", "--ice", "8 mm", "--from", "240 °", "--at", "2026-01-10 03:00");

        Done(storm);
        Assert.Contains("what the model says", storm.Output);
        Assert.Contains("gust with ice, from 240°", storm.Output);
        Assert.Contains("A/1/north/clips", storm.Output);
        Assert.Contains("licensed engineer", storm.Output);
        Assert.Contains("A/2/south-west/strand", (await Journal("due", "--today", "2026-01-11")).Output);
    }

    [Fact]
    public async Task Drift_is_alarmed_and_changes_are_shown()
    {
        // Level 1 falls by a fifth over four springs, all read at 15 °C.
        string[] readings = ["1.78 kN", "1.66 kN", "1.55 kN", "1.42 kN"];
        for (var i = 0; i < readings.Length; i++)
        {
            Done(await Journal("tension", "--guy", "1/north", "--gauge", readings[i], "--temperature", "15 °C", "--at", $"{2023 + i}-05-01"));
        }

        var drift = await Journal("drift");
        var changes = await Journal("changes", "--from", "2024-06-01", "--to", "2026-06-01");

        Assert.Equal(1, drift.ExitCode);
        Assert.Contains("alarm", drift.Output);
        Assert.Contains("outside its limit", drift.Output);
        Assert.Contains("1660 N", changes.Output);
        Assert.Contains("1420 N", changes.Output);
    }

    [Fact]
    public async Task Exports_come_back_without_loss_and_backups_restore()
    {
        Done(await Journal("note", "--note", "Grass cut, “radials” seen;\tno, none broken", "--mast", "A"));
        await File.WriteAllTextAsync(In("gap.jpg"), "not really a picture");
        Done(await Journal("photo", "--photo", In("gap.jpg"), "--note", "The gap"));
        Done(await Journal("backup", "--to", In("backup.journal")));
        Done(await Journal("export", "--to", In("first.json")));
        Done(await Journal("export", "--to", In("tables")));

        Done(await Journal("import", "--from", In("first.json"), "--journal", In("second.journal")));
        Done(await Journal("import", "--from", In("tables"), "--journal", In("third.journal")));
        Done(await Journal("export", "--to", In("second.json"), "--journal", In("second.journal")));
        Done(await Journal("export", "--to", In("third.json"), "--journal", In("third.journal")));

        var first = await File.ReadAllTextAsync(In("first.json"));
        Assert.Contains("Meadow mast", first);
        Assert.Equal(first, await File.ReadAllTextAsync(In("second.json")));
        Assert.Equal(first, await File.ReadAllTextAsync(In("third.json")));

        Done(await Journal("note", "--note", "after the backup"));
        Done(await Journal("restore", "--from", In("backup.journal")));
        Assert.DoesNotContain("after the backup", (await Journal("list")).Output);
        Assert.Contains("2 entries", (await Journal("check")).Output);
        Assert.Single(Directory.GetFiles(folder, "*.before-restore-*"));
    }

    [Fact]
    public async Task A_damaged_or_foreign_journal_is_refused_and_kept()
    {
        await File.WriteAllTextAsync(In("meadow.journal"), "these are words and no journal, kept for years\n");

        var run = await Journal("note", "--note", "x");

        Assert.Equal(2, run.ExitCode);
        Assert.DoesNotContain("   at ", run.Errors);
        Assert.Equal("these are words and no journal, kept for years\n", await File.ReadAllTextAsync(In("meadow.journal")));
    }

    [Fact]
    public async Task A_struck_entry_is_gone_from_the_list_and_kept_in_the_export()
    {
        var noted = await Journal("note", "--note", "a slip of the pen");
        var key = noted.Output.Trim().Split(' ')[^1].TrimEnd('.');

        Done(await Journal("show", "--key", key));
        Done(await Journal("strike", "--key", key, "--why", "wrong station"));
        Done(await Journal("export", "--to", In("all.json")));

        Assert.DoesNotContain("a slip of the pen", (await Journal("list")).Output);
        Assert.Contains("wrong station", await File.ReadAllTextAsync(In("all.json")));
    }

    [Fact]
    public async Task A_corrected_entry_says_the_new_and_keeps_the_old()
    {
        var noted = await Journal("tension", "--guy", "1/north", "--pulse", "10 in 4.1 s", "--temperature", "15 °C", "--at", "2026-05-01");
        var key = noted.Output[(noted.Output.IndexOf(" as ", StringComparison.Ordinal) + 4)..][..8];

        var correct = await Journal("correct", "--key", key, "--why", "misread the watch", "--reading", "pulse 10 in 4.4 s", "--guy", "1/south-east", "--wind", "1 m/s");
        var again = await Journal("correct", "--key", key, "--why", "nothing new", "--wind", "1 m/s");
        var alien = await Journal("correct", "--key", key, "--why", "x", "--gust", "20 m/s");
        Done(await Journal("export", "--to", In("all.json")));

        Done(correct);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("Nothing that this tension entry says would change", again.Errors);
        Assert.Equal(2, alien.ExitCode);
        Assert.Contains("has nothing like --gust", alien.Errors);
        var list = (await Journal("list")).Output;
        Assert.Contains("guy 1/south-east", list);
        Assert.Contains("10 in 4.4 s", list);
        Assert.DoesNotContain("10 in 4.1 s", list);
        var export = await File.ReadAllTextAsync(In("all.json"));
        Assert.Contains("misread the watch", export);
        Assert.Contains("10 in 4.1 s", export);
    }

    [Fact]
    public async Task A_correction_after_the_mast_was_renamed_is_refused_until_its_name_is_given()
    {
        string Key(Cli.Run noted) => noted.Output[(noted.Output.IndexOf(" as ", StringComparison.Ordinal) + 4)..].Split(['.', '\n'])[0];
        var tension = Key(await Journal("tension", "--guy", "1/north", "--pulse", "10 in 4.1 s", "--temperature", "15 °C", "--at", "2026-05-01"));
        var inspection = Key(await Journal("inspect", "--rest", "good", "--at", "2026-05-02"));
        var text = await File.ReadAllTextAsync(design);
        await File.WriteAllTextAsync(design, text.Replace("- name: A\n", "- name: B\n", StringComparison.Ordinal).Replace("strand: 3/16 in EHS", "strand: 1/4 in EHS", StringComparison.Ordinal));

        foreach (var refused in new[]
        {
            await Journal("correct", "--key", tension, "--why", "x", "--reading", "pulse 10 in 4.4 s"),
            await Journal("correct", "--key", tension, "--why", "x", "--temperature", "20 °C"),
            await Journal("correct", "--key", inspection, "--why", "x", "--seen", "gap=bad: burnt"),
        })
        {
            Assert.Equal(2, refused.ExitCode);
            Assert.Contains("no mast “A” any more", refused.Errors.ReplaceLineEndings(" "));
        }

        // Words alone need no mast. A tension belongs to mast and strand: with the mast named anew, it is found anew.
        Done(await Journal("correct", "--key", inspection, "--why", "x", "--note", "in a hurry"));
        Done(await Journal("export", "--to", In("before.json")));
        Done(await Journal("correct", "--key", tension, "--why", "the mast's new name", "--mast", "B"));
        Done(await Journal("export", "--to", In("after.json")));

        // By hand: T = 4 m L² N²/t². 1/4 in EHS has 121 lb/1000 ft, 3/16 in EHS 73 (ASTM A475); three insulators of 0.8 kg on a chord of 17.8 m.
        var chord = Math.Sqrt((14 * 14) + (11 * 11));
        double Mass(double pounds) => (pounds * 0.45359237 / 304.8) + (3 * 0.8 / chord);
        Assert.Equal(Mass(121) / Mass(73), TensionIn("after.json") / TensionIn("before.json"), 0.02);

        double TensionIn(string file) => JsonDocument.Parse(File.ReadAllText(In(file))).RootElement.GetProperty("entries").EnumerateArray()
            .SelectMany(e => e.EnumerateObject()).Single(p => p.Name.Equals("tensionN", StringComparison.OrdinalIgnoreCase)).Value.GetDouble();
    }

    [Fact]
    public async Task A_damaged_journal_gives_way_to_its_backup()
    {
        Done(await Journal("note", "--note", "before the damage"));
        Done(await Journal("backup", "--to", In("backup.journal")));
        await File.WriteAllTextAsync(In("meadow.journal"), "the first page is gone");

        Assert.Equal(2, (await Journal("restore", "--from", In("none.journal"))).ExitCode);
        Done(await Journal("restore", "--from", In("backup.journal")));

        Assert.Contains("before the damage", (await Journal("list")).Output);
        Assert.Equal("the first page is gone", await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(folder, "*.before-restore-*"), f => !f.EndsWith("-wal", StringComparison.Ordinal) && !f.EndsWith("-shm", StringComparison.Ordinal))));
    }

    [Fact]
    public async Task A_sheet_filled_in_by_hand_becomes_readings_and_the_next_turns()
    {
        Done(await Journal("readings", "--sheet", In("readings.csv")));
        var lines = (await File.ReadAllLinesAsync(In("readings.csv"))).ToList();
        var column = lines.First(l => l.StartsWith("mast,", StringComparison.Ordinal)).Split(',').ToList().IndexOf("gauge");
        var filled = lines.Select(l => l.StartsWith("A,", StringComparison.Ordinal) ? string.Join(',', l.Split(',').Select((f, i) => i == column ? l.Contains("1/", StringComparison.Ordinal) ? "1.5 kN" : "2.6 kN" : i == 3 ? "2026-05-01" : i == 4 ? "15 °C" : f)) : l);
        await File.WriteAllLinesAsync(In("filled.csv"), filled);

        var read = await Journal("readings", "--from", In("filled.csv"));
        var bad = await Journal("readings", "--from", In("readings.csv"));

        Done(read);
        Assert.Contains("Noted 6 readings", read.Output);
        Assert.Contains("tighter", read.Output);
        Assert.Equal(2, bad.ExitCode);
        Assert.Contains("No reading is filled in", bad.Errors);
        Assert.Equal(6, (await Journal("list", "--kind", "tension")).Output.Split("spring gauge").Length - 1);
    }

    [Fact]
    public async Task Several_masts_ask_which_one()
    {
        var run = await Cli.Start("journal", "tension", Repository.File("examples", "pair-80m.yaml"), "--guy", "1/W1", "--gauge", "2 kN", "--journal", In("pair.journal"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("West, East", run.Errors);
    }
}
