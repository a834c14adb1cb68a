using Mastwright.Journal;
using Mastwright.Journal.Entries;
using Mastwright.Model.Design;
using Mastwright.Model.Units;
using Mastwright.Workbench.Parts;
using Microsoft.AspNetCore.Components;

namespace Mastwright.Workbench.Keeping;

/// <summary>A component that shows the journal and is drawn anew whenever it or the desk changes.</summary>
public abstract class JournalPart : DeskPart
{
    private bool gone;

    /// <summary>The journal.</summary>
    [Inject]
    public JournalDesk Journal { get; set; } = null!;

    /// <summary>The station in the units the reader has chosen; null while the text has never been without errors.</summary>
    protected Station? Station => Now.Station is { } s ? s with { Units = View.Units == UnitSystem.Us ? ShownUnits.Us : ShownUnits.Metric } : null;

    /// <summary>The entries, or why they cannot be read.</summary>
    protected Outcome<IReadOnlyList<JournalEntry>> Read() => Journal.Entries();

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Journal.Changed += Later;
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        gone = true;
        Journal.Changed -= Later;
        base.Dispose(disposing);
    }

    /// <summary>Called on the page's own thread after the journal changed, before it is drawn.</summary>
    protected virtual void OnJournalChanged()
    {
    }

    private void Later() => _ = InvokeAsync(() =>
    {
        if (!gone)
        {
            OnJournalChanged();
            StateHasChanged();
        }
    });
}
