using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Mastwright.Analysis;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Report.Documents;
using Mastwright.Workbench.Desks;

namespace Mastwright.Workbench.Work;

/// <summary>A text kept to be compared with.</summary>
/// <param name="Name">What the reader calls it.</param>
/// <param name="Text">The text.</param>
/// <param name="At">When it was kept.</param>
public sealed record Variant(string Name, string Text, DateTimeOffset At);

/// <summary>
/// The variants kept beside the desk. They stand in a file next to the unsaved text, so that they outlive the program; what
/// they come to is computed when asked for.
/// </summary>
public sealed class Variants
{
    private const int Most = 12;

    private readonly Lock gate = new();
    private readonly Desk desk;
    private readonly StudyQueue queue;
    private readonly Dictionary<string, StationResult> results = [];

    private string path;
    private bool unread;

    /// <summary>Takes up what an earlier run kept.</summary>
    public Variants(Desk desk, StudyQueue queue)
    {
        (this.desk, this.queue, path) = (desk, queue, desk.VariantsPath);
        All = Read();
        desk.Changed += Follow;
    }

    /// <summary>Told after every change.</summary>
    public event Action? Changed;

    /// <summary>Those kept, the newest first.</summary>
    public ImmutableArray<Variant> All { get; private set; }

    /// <summary>What went wrong when they were last written to the disk; null when nothing did.</summary>
    public string? Problem { get; private set; }

    /// <summary>Keeps the text of the desk under a name; an older one of that name is replaced, and the oldest goes when there are too many.</summary>
    public void Keep(string name)
    {
        var sheet = desk.Now;
        var plain = name.Trim() is { Length: > 0 } n ? n[..Math.Min(60, n.Length)] : "variant";
        Put(all => [new Variant(plain, sheet.Text, DateTimeOffset.Now), .. all.Where(v => v.Name != plain).Take(Most - 1)], sheet is { FieldState: Freshness.Fresh, Result: { } result } ? (sheet.Text, result) : null);
    }

    /// <summary>Drops a variant.</summary>
    public void Drop(string name) => Put(all => [.. all.Where(v => v.Name != name)], null);

    /// <summary>What a variant comes to; null while it is not known.</summary>
    public StationResult? ResultOf(Variant variant)
    {
        lock (gate)
        {
            return results.GetValueOrDefault(variant.Text) ?? (queue.Of(KeyOf(variant)) is { State: JobState.Done, Found: StationResult found } ? results[variant.Text] = found : null);
        }
    }

    /// <summary>Has a variant computed.</summary>
    public void Compute(Variant variant)
    {
        var reading = DesignReader.Read(variant.Text, variant.Name, CatalogueNames.Of);
        if (reading.Ok)
        {
            queue.Ask(KeyOf(variant), "Variant " + variant.Name, Fingerprint.Of(reading.Station!), talk => StationAnalysis.Run(reading, talk.Progress, talk.Cancellation));
        }
    }

    /// <summary>The key of the work that computes a variant.</summary>
    public static string KeyOf(Variant variant) => string.Create(CultureInfo.InvariantCulture, $"variant {variant.At.UtcTicks} {variant.Name}");

    // What was worked out for a text that is no longer kept goes with it: another text of the same name must not inherit it.
    private void Put(Func<ImmutableArray<Variant>, ImmutableArray<Variant>> change, (string Text, StationResult Result)? known)
    {
        Variant[] gone;
        lock (gate)
        {
            var before = All;
            All = change(before);
            gone = [.. before.Except(All)];
            foreach (var variant in gone.Where(g => All.All(v => v.Text != g.Text)))
            {
                results.Remove(variant.Text);
            }

            if (known is var (text, result))
            {
                results[text] = result;
            }

            Write();
        }

        foreach (var variant in gone)
        {
            queue.Forget(KeyOf(variant));
        }

        Changed?.Invoke();
    }

    // A design that gets its name takes its variants along.
    private void Follow()
    {
        if (desk.VariantsPath == path)
        {
            return;
        }

        lock (gate)
        {
            var former = path;
            if (desk.VariantsPath == former)
            {
                return;
            }

            path = desk.VariantsPath;
            var own = All;
            All = [.. own.Concat(Read().Where(v => own.All(o => o.Name != v.Name))).Take(Most)];
            if (own.Length > 0)
            {
                Write();
                if (Problem is null)
                {
                    Delete(former);
                }
            }
        }

        Changed?.Invoke();
    }

    private ImmutableArray<Variant> Read()
    {
        try
        {
            (unread, Problem) = (false, null);
            return File.Exists(path) ? [.. (JsonSerializer.Deserialize<Variant?[]>(File.ReadAllText(path)) ?? []).OfType<Variant>().Where(v => v is { Name: not null, Text: not null })] : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            unread = true;
            Problem = "The variants kept earlier cannot be read: " + e.Message;
            return [];
        }
    }

    // The lock is held. A file that was not read is put aside, not written over.
    private void Write()
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            if (unread && File.Exists(path))
            {
                File.Move(path, Enumerable.Range(1, int.MaxValue - 1).Select(i => path + (i == 1 ? ".bad" : string.Create(CultureInfo.InvariantCulture, $".bad{i}"))).First(f => !File.Exists(f)));
            }

            unread = false;
            Problem = WholeFile.Write(path, JsonSerializer.SerializeToUtf8Bytes(All.ToArray()), replace: true) is { } finding ? Lost(finding.Message) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Problem = Lost(e.Message);
        }
    }

    private static string Lost(string why) => "The variants cannot be written to the disk and will be gone when the program ends: " + why;

    private static void Delete(string former)
    {
        try
        {
            File.Delete(former);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // They stand in both places: nothing is lost.
        }
    }
}
