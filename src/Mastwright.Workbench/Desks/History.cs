namespace Mastwright.Workbench.Desks;

/// <summary>The texts the desk has held, for undo and redo. Quick typing counts as one change.</summary>
public sealed class History
{
    private const int Kept = 200;
    private static readonly TimeSpan Together = TimeSpan.FromSeconds(1.5);

    private readonly List<(string Text, string Why, DateTimeOffset At)> steps;
    private int at;

    /// <summary>Begins with a text.</summary>
    public History(string text) => steps = [(text, "", DateTimeOffset.MinValue)];

    /// <summary>What undo would take back; null when there is nothing.</summary>
    public string? UndoWords => at > 0 ? steps[at].Why : null;

    /// <summary>What redo would do again; null when there is nothing.</summary>
    public string? RedoWords => at + 1 < steps.Count ? steps[at + 1].Why : null;

    /// <summary>Remembers a change.</summary>
    public void Add(string text, string why, DateTimeOffset now)
    {
        steps.RemoveRange(at + 1, steps.Count - at - 1);
        if (at > 0 && why == steps[at].Why && now - steps[at].At < Together)
        {
            steps[at] = (text, why, now);
            return;
        }

        steps.Add((text, why, now));
        if (steps.Count > Kept)
        {
            steps.RemoveAt(0);
        }

        at = steps.Count - 1;
    }

    /// <summary>One step back; null at the beginning.</summary>
    public string? Undo() => at > 0 ? steps[--at].Text : null;

    /// <summary>One step forth; null at the end.</summary>
    public string? Redo() => at + 1 < steps.Count ? steps[++at].Text : null;
}
