using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Analysis;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
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

    /// <summary>Takes up what an earlier run kept.</summary>
    public Variants(Desk desk, StudyQueue queue)
    {
        (this.desk, this.queue) = (desk, queue);
        All = Read();
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
        lock (gate)
        {
            var sheet = desk.Now;
            var plain = name.Trim() is { Length: > 0 } n ? n[..Math.Min(60, n.Length)] : "variant";
            All = [new Variant(plain, sheet.Text, DateTimeOffset.Now), .. All.Where(v => v.Name != plain).Take(Most - 1)];
            if (sheet is { FieldState: Freshness.Fresh, Result: { } result })
            {
                results[sheet.Text] = result;
            }

            Write();
        }

        Changed?.Invoke();
    }

    /// <summary>Drops a variant.</summary>
    public void Drop(string name)
    {
        lock (gate)
        {
            All = [.. All.Where(v => v.Name != name)];
            Write();
        }

        Changed?.Invoke();
    }

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
    public static string KeyOf(Variant variant) => "variant " + variant.Name;

    private ImmutableArray<Variant> Read()
    {
        try
        {
            return File.Exists(desk.VariantsPath) ? [.. JsonSerializer.Deserialize<Variant[]>(File.ReadAllText(desk.VariantsPath)) ?? []] : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or JsonException)
        {
            Problem = "The variants kept earlier cannot be read: " + e.Message;
            return [];
        }
    }

    // The lock is held.
    private void Write()
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(desk.VariantsPath)!);
            var part = desk.VariantsPath + ".part";
            File.WriteAllText(part, JsonSerializer.Serialize(All.ToArray()));
            File.Move(part, desk.VariantsPath, overwrite: true);
            Problem = null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Problem = "The variants cannot be written to the disk and will be gone when the program ends: " + e.Message;
        }
    }
}
