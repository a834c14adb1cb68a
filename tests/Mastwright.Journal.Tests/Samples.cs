using System.Collections.Immutable;
using Mastwright.Journal.Entries;
using NodaTime;

namespace Mastwright.Journal.Tests;

/// <summary>Entries of an invented station.</summary>
internal static class Samples
{
    public static OffsetDateTime At(int year, int month, int day, int hour = 12) => new LocalDateTime(year, month, day, hour, 0).WithOffset(Offset.FromHours(1));

    public static NoteEntry Note(OffsetDateTime? at = null, string text = "note") => new(Guid.NewGuid(), at ?? At(2026, 5, 1), "A", "me", text, Weather.NotNoted);

    public static TensionEntry Tension(OffsetDateTime at, double n, string guy = "A1", double? temperature = 283.15) =>
        new(Guid.NewGuid(), at, "A", "me", "", new(temperature, 2), guy, n, 50, "pulse return", "10 returns in 2.79 s");

    public static InspectionEntry Look(OffsetDateTime at, params InspectedItem[] items) => new(Guid.NewGuid(), at, "A", "me", "", Weather.NotNoted, [.. items]);

    public static StormEntry Storm(OffsetDateTime at, double? gust = null, double? ice = null, bool lightning = false) =>
        new(Guid.NewGuid(), at, "", "me", "", Weather.NotNoted, null, gust, ice, lightning);

    public static SweepEntry Sweep(OffsetDateTime at, double resonanceHz) =>
        new(Guid.NewGuid(), at, "A", "me", "", Weather.NotNoted, "base", 50, [.. Enumerable.Range(0, 21).Select(i => resonanceHz - 1e5 + (i * 1e4) + 3e3).Select(f => new SweepSample(f, 36, (f - resonanceHz) * 4e-4))], "a.s1p", "! text\n");

    /// <summary>A random entry with every kind of difficult word and number in it.</summary>
    public static JournalEntry Random(Random random)
    {
        string[] words = ["", "plain", "comma, and \"quotes\"", "two\nlines", "carriage\r\nreturn", "tab\tand = formula", "=1+1", "  blanks  ", "Ω µ ✓ 🗼", "#", "'", ";", "+3", "null", "\r", "\n", "\\n", "ä\u0301"];
        string Word() => words[random.Next(words.Length)] + (random.Next(4) == 0 ? words[random.Next(words.Length)] : "");
        double Number() => random.Next(6) switch
        {
            0 => 0,
            1 => -0.0,
            2 => double.Epsilon,
            3 => 1.0 / 3,
            4 => random.NextDouble() * Math.Pow(10, random.Next(-300, 300)),
            _ => random.Next(1, 1_000_000),
        };
        double? Maybe() => random.Next(3) == 0 ? null : Number();
        OffsetDateTime Time() => Instant.FromUnixTimeTicks(random.NextInt64(-20_000_000_000_000_000, 100_000_000_000_000_000)).PlusNanoseconds(random.Next(100)).WithOffset(Offset.FromSeconds(random.Next(-50_000, 50_000)));
        var id = new Guid([.. Enumerable.Range(0, 16).Select(_ => (byte)random.Next(256))]);
        var (at, mast, author, text) = (Time(), Word(), Word(), Word());
        var weather = new Weather(random.Next(2) == 0 ? null : 200 + (100 * random.NextDouble()), Maybe(), Word());
        return random.Next(6) switch
        {
            0 => new TensionEntry(id, at, mast, author, text, weather, "g" + Word(), Number(), Maybe(), Word(), Word()),
            1 => new SweepEntry(id, at, mast, author, text, weather, Word(), 50 + random.NextDouble(), [.. Enumerable.Range(1, random.Next(1, 6)).Select(i => new SweepSample(i + random.NextDouble(), -Number(), Number()))], Word(), Word()),
            2 => new InspectionEntry(id, at, mast, author, text, weather, [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => new InspectedItem(Word(), Word(), (ItemState)random.Next(4), Word()))]),
            3 => new PhotoEntry(id, at, mast, author, text, weather, "p" + Word(), Word(), random.Next(2) == 0 ? null : Guid.NewGuid()),
            4 => new StormEntry(id, at, mast, author, text, weather, random.Next(2) == 0 ? null : at.PlusHours(random.Next(0, 50)), Maybe(), Maybe(), random.Next(2) == 0),
            _ => new NoteEntry(id, at, mast, author, text, weather),
        };
    }

    public static JournalContent RandomContent(int seed)
    {
        var random = new Random(seed);
        ImmutableArray<JournalEntry> entries = [.. Enumerable.Range(0, random.Next(0, 12)).Select(_ => Random(random)).OrderBy(e => e.At.ToInstant()).ThenBy(e => e.Id.ToString(), StringComparer.Ordinal)];
        return new("station " + seed, entries, [.. Enumerable.Range(0, random.Next(0, 3)).Select(i => new EarlierEntry(Guid.NewGuid(), At(2026, 1, 1 + i), "reason, \"why\"\n", "{\"a\":1}"))]);
    }

    /// <summary>Field by field, numbers by value, without help from any of the product's own writers.</summary>
    public static bool Same(JournalContent a, JournalContent b) =>
        a.Station == b.Station && a.Earlier.SequenceEqual(b.Earlier) && a.Entries.Length == b.Entries.Length && a.Entries.Zip(b.Entries).All(p => Same(p.First, p.Second));

    public static bool Same(JournalEntry a, JournalEntry b) => (a, b) switch
    {
        (SweepEntry x, SweepEntry y) => x.Samples.SequenceEqual(y.Samples) && (x with { Samples = [] }) == (y with { Samples = [] }),
        (InspectionEntry x, InspectionEntry y) => x.Items.SequenceEqual(y.Items) && (x with { Items = [] }) == (y with { Items = [] }),
        _ => a == b,
    };

    /// <summary>A folder of its own that goes when the test is over.</summary>
    public sealed class Folder : IDisposable
    {
        private readonly DirectoryInfo directory = Directory.CreateTempSubdirectory("journal");

        public string File(string name) => Path.Combine(directory.FullName, name);

        public void Dispose() => directory.Delete(recursive: true);
    }
}
