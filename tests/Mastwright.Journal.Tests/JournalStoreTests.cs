using FsCheck.Xunit;
using Mastwright.Journal.Entries;
using Mastwright.Journal.Export;
using Mastwright.Journal.Store;
using Microsoft.Data.Sqlite;
using static Mastwright.Journal.Tests.Samples;

namespace Mastwright.Journal.Tests;

public sealed class JournalStoreTests : IDisposable
{
    private readonly Folder folder = new();

    public void Dispose() => folder.Dispose();

    private static JournalStore Opened(string path)
    {
        var opened = JournalStore.Open(path);
        Assert.True(opened.Done, opened.Problem?.Message);
        return opened.Value!;
    }

    private static void Done(Outcome outcome) => Assert.True(outcome.Done, outcome.Problem?.Message);

    private static JournalContent All(JournalStore store) => store.Content().Value!;

    [Property(MaxTest = 40)]
    public bool What_is_written_is_read_back_after_closing(int seed)
    {
        using var own = new Folder();
        var content = RandomContent(seed);
        using (var store = Opened(own.File("j.db")))
        {
            Done(store.NameStation(content.Station));
            Done(store.Import(content));
            Done(store.CheckIntegrity());
        }
        using var again = Opened(own.File("j.db"));
        return Same(content, All(again));
    }

    [Property(MaxTest = 60)]
    public bool Exports_come_back_without_loss(int seed)
    {
        var content = RandomContent(seed);
        var json = JournalJson.Read(JournalJson.Write(content), "j.json");
        var csv = JournalCsv.Read(JournalCsv.Write(content));
        return json.Done && csv.Done && Same(content, json.Value!) && Same(content, csv.Value!);
    }

    [Fact]
    public void A_long_sweep_with_its_file_comes_back()
    {
        var text = string.Concat(Enumerable.Repeat("3.500000 0.123456 -0.654321 ! comment\n", 60_000));
        var sweep = Sweep(At(2026, 5, 1), 3.6e6) with { Samples = [.. Enumerable.Range(1, 20_000).Select(i => new SweepSample(i, 1.0 / i, -i))], SourceText = text };
        using var store = Opened(folder.File("j.db"));
        Done(store.Add(sweep));
        Assert.True(Same(sweep, store.Find(sweep.Id).Value!));
        var content = All(store);
        Assert.True(Same(content, JournalCsv.Read(JournalCsv.Write(content)).Value!));
        Assert.True(Same(content, JournalJson.Read(JournalJson.Write(content), "j.json").Value!));
    }

    [Fact]
    public async Task Two_programs_may_write_at_once()
    {
        var path = folder.File("j.db");
        using (Opened(path)) { }
        var writers = Enumerable.Range(0, 2).Select(_ => Task.Run(() =>
        {
            using var store = Opened(path);
            for (var i = 0; i < 25; i++) Done(store.Add(Sweep(At(2026, 1, 1), 3.6e6)));
        }));
        await Task.WhenAll(writers);
        using var all = Opened(path);
        Assert.Equal(50, All(all).Entries.Length);
        Done(all.CheckIntegrity());
    }

    [Fact]
    public void A_photo_is_known_again_by_its_digest() =>
        // FIPS 180-2, appendix B.1: the digest of "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", PhotoEntry.DigestOf(new MemoryStream("abc"u8.ToArray())));

    [Fact]
    public void Entries_are_found_by_time_and_kind()
    {
        using var store = Opened(folder.File("j.db"));
        Done(store.AddAll([Note(At(2026, 1, 1)), Tension(At(2026, 2, 1), 3000), Note(At(2026, 3, 1))]));
        Assert.Single(store.Entries(kind: "tension").Value!);
        Assert.Equal(2, store.Entries(from: At(2026, 2, 1).ToInstant()).Value!.Count);
        Assert.Single(store.Entries(to: At(2026, 2, 1).ToInstant()).Value!);
        Assert.Equal("entry-none", store.Find(Guid.NewGuid()).Problem!.Code);
    }

    [Fact]
    public void A_correction_keeps_what_was_said_before()
    {
        using var store = Opened(folder.File("j.db"));
        var note = Note();
        Done(store.Add(note));
        Done(store.Correct(note with { Text = "better" }, At(2026, 6, 1), "misspelt"));
        Done(store.StrikeOut(note.Id, At(2026, 6, 2), "not this station"));
        var content = All(store);
        Assert.Empty(content.Entries);
        Assert.Equal(["misspelt", "not this station"], content.Earlier.Select(e => e.Reason));
        Assert.Contains("\"note\"", content.Earlier[0].Content, StringComparison.Ordinal);
        Assert.Equal("entry-none", store.Correct(note, At(2026, 6, 3), "x").Problem!.Code);
    }

    [Fact]
    public void All_or_none_is_added()
    {
        using var store = Opened(folder.File("j.db"));
        var first = Note();
        Done(store.Add(first));
        Assert.Equal("entry-twice", store.AddAll([Note(), first]).Problem!.Code);
        Assert.Single(All(store).Entries);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(-1)]
    public void A_number_that_cannot_be_is_refused(double tension)
    {
        using var store = Opened(folder.File("j.db"));
        var problem = store.Add(Tension(At(2026, 1, 1), tension)).Problem!;
        Assert.Equal("entry-bad", problem.Code);
        Assert.Equal("tension.tension", problem.Place!.Path);
        Assert.Equal("entry-bad", store.Add(Note(text: "half \ud83d a character")).Problem!.Code);
        Assert.Empty(All(store).Entries);
    }

    [Fact]
    public void A_journal_from_a_newer_program_is_refused_and_not_touched()
    {
        var path = folder.File("j.db");
        using (var store = Opened(path)) Done(store.Add(Note()));
        Sql(path, $"PRAGMA user_version = {JournalStore.FormatVersion + 1}");
        var before = File.ReadAllBytes(path);
        foreach (var opened in new[] { JournalStore.Open(path), JournalStore.OpenReadOnly(path) })
        {
            Assert.Equal("journal-newer", opened.Problem!.Code);
            Assert.False(string.IsNullOrEmpty(opened.Problem.WayOut));
        }
        Assert.Equal(before, File.ReadAllBytes(path));
    }

    [Fact]
    public void An_older_journal_is_brought_up_to_date_and_kept_beside()
    {
        var path = folder.File("j.db");
        using (var connection = JournalFile.Connect(path, SqliteOpenMode.ReadWriteCreate))
        {
            Done(JournalFile.Migrate(connection, path, 1));
            JournalFile.Execute(connection, "INSERT INTO entry VALUES ('01234567-89ab-cdef-0123-456789abcdef', 'note', '2025-05-01T10:00:00+02:00', '2025-05-01T08:00:00.000000000Z', 'A', 'me', 'old', NULL, NULL, '')");
        }
        using (var store = Opened(path))
        {
            Assert.Equal("old", Assert.Single(All(store).Entries).Text);
            Done(store.StrikeOut(All(store).Entries[0].Id, At(2026, 1, 1), "works in the new form"));
        }
        using var kept = JournalFile.Connect(JournalFile.KeptPath(path, 1), SqliteOpenMode.ReadOnly);
        Assert.Equal(1, JournalFile.Version(kept));
    }

    [Fact]
    public void Another_database_and_another_file_are_refused_and_not_touched()
    {
        var foreign = folder.File("other.db");
        Sql(foreign, "CREATE TABLE t(a)");
        Assert.Equal("journal-foreign", JournalStore.Open(foreign).Problem!.Code);
        var text = folder.File("text.db");
        File.WriteAllText(text, new string('x', 5000));
        Assert.Equal("journal-foreign", JournalStore.Open(text).Problem!.Code);
        Assert.Equal(new string('x', 5000), File.ReadAllText(text));
        Assert.Equal("journal-cannot-open", JournalStore.Open(folder.File("no/such/folder/j.db")).Problem!.Code);
        Assert.Equal("journal-none", JournalStore.OpenReadOnly(folder.File("none.db")).Problem!.Code);
    }

    [Fact]
    public void A_full_disk_is_said_and_loses_nothing()
    {
        using var store = Opened(folder.File("j.db"));
        Done(store.Add(Note(text: "before")));
        store.LimitPages(store.PageCount() + 2);
        var problem = store.Add(Note(text: new string('x', 1_000_000))).Problem!;
        Assert.Equal("journal-disk-full", problem.Code);
        Assert.Contains("safe", problem.Message, StringComparison.Ordinal);
        store.LimitPages(1_000_000);
        Done(store.Add(Note(text: "after")));
        Assert.Equal(["after", "before"], All(store).Entries.Select(e => e.Text).Order());
        Done(store.CheckIntegrity());
    }

    [Fact]
    public void A_journal_opened_for_reading_says_so_when_written()
    {
        var path = folder.File("j.db");
        using (var store = Opened(path)) Done(store.Add(Note()));
        using var reading = JournalStore.OpenReadOnly(path).Value!;
        Assert.Single(All(reading).Entries);
        Assert.Equal("journal-read-only", reading.Add(Note()).Problem!.Code);
    }

    [Fact]
    public void Damage_is_found_by_the_check()
    {
        var path = folder.File("j.db");
        using (var store = Opened(path))
            for (var i = 0; i < 40; i++) Done(store.Add(Sweep(At(2026, 1, 1).PlusHours(i), 3.6e6)));
        Sql(path, "PRAGMA wal_checkpoint(TRUNCATE)");
        var bytes = File.ReadAllBytes(path);
        for (var i = bytes.Length / 2; i < (bytes.Length / 2) + 6000; i++) bytes[i] = 0x5A;
        File.WriteAllBytes(path, bytes);
        using var damaged = JournalStore.OpenReadOnly(path).Value!;
        Assert.Equal("journal-damaged", damaged.CheckIntegrity().Problem!.Code);
    }

    [Fact]
    public void A_backup_of_a_journal_in_use_can_be_restored()
    {
        using var store = Opened(folder.File("j.db"));
        Done(store.Add(Note(text: "one")));
        Done(store.Backup(folder.File("backup.db")));
        Done(store.Add(Note(text: "two")));
        Done(store.Restore(folder.File("backup.db"), folder.File("kept.db")));
        Assert.Equal("one", Assert.Single(All(store).Entries).Text);
        Done(store.Add(Note(text: "three")));
        Done(store.CheckIntegrity());
        using var kept = JournalStore.OpenReadOnly(folder.File("kept.db")).Value!;
        Assert.Equal(2, All(kept).Entries.Length);
        Assert.False(File.Exists(folder.File("backup.db-wal")));
    }

    [Fact]
    public void A_bad_backup_is_refused_and_the_journal_stays()
    {
        using var store = Opened(folder.File("j.db"));
        Done(store.Add(Note()));
        File.WriteAllText(folder.File("bad.db"), new string('x', 5000));
        Assert.Equal("journal-foreign", store.Restore(folder.File("bad.db"), folder.File("kept.db")).Problem!.Code);
        Assert.Single(All(store).Entries);
    }

    [Fact]
    public void A_failed_backup_leaves_the_last_one_alone()
    {
        using var store = Opened(folder.File("j.db"));
        Done(store.Backup(folder.File("backup.db")));
        Directory.CreateDirectory(folder.File("backup.db.partial"));
        var before = File.ReadAllBytes(folder.File("backup.db"));
        Assert.False(store.Backup(folder.File("backup.db")).Done);
        Assert.Equal(before, File.ReadAllBytes(folder.File("backup.db")));
    }

    [Fact]
    public void An_import_meets_what_is_there()
    {
        using var store = Opened(folder.File("j.db"));
        var note = Note();
        Done(store.Add(note));
        var content = All(store);
        Done(store.Import(content));
        Assert.Single(All(store).Entries);
        var other = content with { Entries = [Note(), note with { Text = "other" }] };
        Assert.Equal("import-differs", store.Import(other).Problem!.Code);
        Assert.Single(All(store).Entries);
    }

    [Theory]
    [InlineData("", "export-broken")]
    [InlineData("{}", "export-foreign")]
    [InlineData("[1]", "export-foreign")]
    [InlineData("{\"format\":\"station-journal\",\"version\":99}", "export-newer")]
    [InlineData("{\"format\":\"station-journal\",\"version\":1,\"station\":\"x\"}", "export-broken")]
    [InlineData("{\"format\":\"station-journal\",\"version\":1,\"station\":\"x\",\"entries\":[{\"kind\":\"poem\"}],\"earlier\":[]}", "export-broken")]
    [InlineData("{\"format\":\"station-journal\",\"version\":1,\"station\":\"x\",\"entries\":[{\"kind\":\"note\"}],\"earlier\":[]}", "export-broken")]
    public void A_broken_export_is_refused(string text, string code) => Assert.Equal(code, JournalJson.Read(text, "j.json").Problem!.Code);

    [Fact]
    public void An_export_cut_anywhere_is_refused_or_whole()
    {
        var text = JournalJson.Write(RandomContent(7));
        for (var cut = 0; cut < text.Length; cut += 37) Assert.False(JournalJson.Read(text[..cut], "j.json").Done);
        var tables = JournalCsv.Write(RandomContent(7));
        Assert.Equal("export-table-missing", JournalCsv.Read(tables.Remove("sweeps.csv")).Problem!.Code);
        var wrong = JournalCsv.Read(tables.SetItem("entries.csv", tables["entries.csv"] + "x,y\r\n")).Problem!;
        Assert.Equal("export-row", wrong.Code);
        Assert.True(wrong.Place!.Line > 1);
    }

    private static void Sql(string path, string sql)
    {
        using var connection = JournalFile.Connect(path, SqliteOpenMode.ReadWriteCreate);
        JournalFile.Execute(connection, sql);
    }
}
