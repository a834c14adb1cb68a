using Mastwright.Workbench.Work;
using Microsoft.AspNetCore.Components;

namespace Mastwright.Workbench.Parts;

/// <summary>A component that shows the desk and the long work beside it.</summary>
public abstract class QueuePart : DeskPart
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(120);

    private bool gone;
    private int coming;

    /// <summary>The long work.</summary>
    [Inject]
    public StudyQueue Queue { get; set; } = null!;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Queue.Changed += Soon;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        gone = true;
        Queue.Changed -= Soon;
        base.Dispose(disposing);
    }

    /// <summary>Has the page drawn within a moment.</summary>
    // A search tells of hundreds of candidates a second; the page is drawn a few times a second.
    protected void Soon()
    {
        if (Interlocked.Exchange(ref coming, 1) == 0)
        {
            _ = InvokeAsync(async () =>
            {
                await Task.Delay(Pause);
                Interlocked.Exchange(ref coming, 0);
                if (!gone)
                {
                    StateHasChanged();
                }
            });
        }
    }
}
