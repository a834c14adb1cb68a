using Mastwright.Journal.Store;
using static Mastwright.Journal.Tests.Samples;

namespace Mastwright.Journal.Tests;

/// <summary>A backup takes the place of a journal that is damaged, and nothing of the former is lost whatever goes wrong.</summary>
public sealed class RestoreTests : IDisposable
{
    private readonly Folder folder = new();
    private readonly string path;
    private readonly string backup;
    private readonly string kept;

    public RestoreTests()
    {
        (path, backup, kept) = (folder.File("j.db"), folder.File("backup.db"), folder.File("kept.db"));
        using var store = JournalStore.Open(path).Value!;
        Done(store.AddAll([.. Enumerable.Range(0, 40).Select(i => Sweep(At(2026, 1, 1).PlusHours(i), 3.6e6))]));
        Done(store.Backup(backup));
        Done(store.Add(Note(text: "after the backup")));
    }

    public void Dispose() => folder.Dispose();

    /// <summary>Bytes 0 to 15 name the form of the file, 68 to 71 the program (https://www.sqlite.org/fileformat.html, section 1.3).</summary>
    [Theory]
    [InlineData(0, 100)]
    [InlineData(0, 4096)]
    [InlineData(68, 4)]
    public void A_journal_whose_header_is_overwritten_gives_way_to_its_backup(int from, int count)
    {
        var damaged = Overwrite(from, count);
        Assert.False(JournalStore.Open(path).Done);

        Done(JournalStore.RestoreAt(path, backup, kept));

        Whole(path, 40);
        Assert.Equal(damaged, File.ReadAllBytes(kept));
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(path)!, "*.restored"));
    }

    [Fact]
    public void A_journal_that_is_damaged_within_gives_way_too_and_is_kept()
    {
        var damaged = Overwrite((int)(new FileInfo(path).Length / 2), 6000);
        using (var before = JournalStore.OpenReadOnly(path).Value!)
        {
            Assert.False(before.CheckIntegrity().Done);
        }

        Done(JournalStore.RestoreAt(path, backup, kept));

        Whole(path, 40);
        Assert.InRange(new FileInfo(kept).Length, damaged.Length / 2, long.MaxValue);
    }

    [Fact]
    public void A_bad_backup_leaves_the_damaged_journal_where_it_is()
    {
        var damaged = Overwrite(0, 100);
        File.WriteAllText(backup, new string('x', 5000));

        Assert.Equal("journal-foreign", JournalStore.RestoreAt(path, backup, kept).Problem!.Code);

        Assert.Equal(damaged, File.ReadAllBytes(path));
        Assert.False(File.Exists(kept));
    }

    [Fact]
    public void When_the_former_cannot_be_put_aside_everything_stands_where_it_stood()
    {
        var damaged = Overwrite(0, 100);
        Directory.CreateDirectory(kept);

        Assert.Equal("backup-failed", JournalStore.RestoreAt(path, backup, kept).Problem!.Code);
        Assert.Equal(damaged, File.ReadAllBytes(path));

        // The log is put aside before the file: it has to come back when the file cannot follow.
        File.WriteAllText(path + "-wal", "its log");
        Assert.Equal("backup-failed", JournalFile.Exchange(path, backup, kept).Problem!.Code);

        Assert.Equal(damaged, File.ReadAllBytes(path));
        Assert.Equal("its log", File.ReadAllText(path + "-wal"));
        Assert.Empty(Directory.GetFiles(Path.GetDirectoryName(path)!, "*.restored"));
    }

    [Fact]
    public void When_the_new_one_cannot_take_its_place_the_former_comes_back()
    {
        var damaged = Overwrite(0, 100);
        File.WriteAllText(path + "-wal", "its log");

        Assert.Equal("backup-failed", JournalFile.Exchange(path, folder.File("vanished.db"), kept).Problem!.Code);

        Assert.Equal(damaged, File.ReadAllBytes(path));
        Assert.Equal("its log", File.ReadAllText(path + "-wal"));
        Assert.False(File.Exists(kept));
    }

    private byte[] Overwrite(int from, int count)
    {
        var bytes = File.ReadAllBytes(path);
        bytes.AsSpan(from, count).Fill(0x5A);
        File.WriteAllBytes(path, bytes);
        return bytes;
    }

    private static void Whole(string path, int entries)
    {
        using var store = JournalStore.Open(path).Value!;
        Done(store.CheckIntegrity());
        Assert.Equal(entries, store.Entries().Value!.Count);
    }

    private static void Done(Outcome outcome) => Assert.True(outcome.Done, outcome.Problem?.Message);
}
