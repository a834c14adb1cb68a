using Mastwright.Workbench.Desks;
using Microsoft.AspNetCore.Components;

namespace Mastwright.Workbench.Parts;

/// <summary>A component that shows the desk and is drawn anew whenever it changes.</summary>
public abstract class DeskPart : ComponentBase, IDisposable
{
    private bool gone;

    /// <summary>The desk.</summary>
    [Inject]
    public Desk Desk { get; set; } = null!;

    /// <summary>How the reader looks at it.</summary>
    [CascadingParameter]
    public View View { get; set; } = null!;

    /// <summary>The desk at this moment.</summary>
    protected Sheet Now => Desk.Now;

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of the desk.</summary>
    protected virtual void Dispose(bool disposing)
    {
        gone = true;
        Desk.Changed -= Later;
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => Desk.Changed += Later;

    /// <summary>Called on the page's own thread after the desk changed, before it is drawn.</summary>
    protected virtual void OnDeskChanged()
    {
    }

    private void Later() => _ = InvokeAsync(() =>
    {
        if (!gone)
        {
            OnDeskChanged();
            StateHasChanged();
        }
    });
}
