using System.Collections.Immutable;
using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Workbench.Desks;

/// <summary>Whether a figure belongs to the text as it now stands.</summary>
public enum Freshness
{
    /// <summary>Computed from this very text.</summary>
    Fresh,

    /// <summary>Computed from this very text with few wind directions; the rest is being computed.</summary>
    FirstLook,

    /// <summary>Being computed; what is shown belongs to an earlier text.</summary>
    Computing,

    /// <summary>The text has errors; what is shown belongs to the last text without.</summary>
    LastGood,

    /// <summary>The computing was stopped; what is shown belongs to an earlier text.</summary>
    Stopped,

    /// <summary>Nothing has been computed yet.</summary>
    None,
}

/// <summary>Everything on the desk at one moment. Never changes: a new moment is a new sheet.</summary>
public sealed record Sheet
{
    /// <summary>Counts up with every change of the text.</summary>
    public required int Version { get; init; }

    /// <summary>The design's text.</summary>
    public required string Text { get; init; }

    /// <summary>What reading it gave.</summary>
    public required DesignReading Reading { get; init; }

    /// <summary>Fingerprint of the design; null when the text has errors.</summary>
    public string? Fingerprint { get; init; }

    /// <summary>The checks of the site, of this text or the last one without errors.</summary>
    public ImmutableArray<Check> Site { get; init; } = [];

    /// <summary>The structure, of this text or an earlier one.</summary>
    public StandStage? Stand { get; init; }

    /// <summary>The whole station, of this text or an earlier one.</summary>
    public StationResult? Result { get; init; }

    /// <summary>Sweeps across the bands that belong to <see cref="Result"/>.</summary>
    public ImmutableArray<BandSweepResult> Sweeps { get; init; } = [];

    /// <summary>What is being computed; null when nothing is.</summary>
    public AnalysisStep? Step { get; init; }

    /// <summary>Whether the reader stopped the computing.</summary>
    public bool WasStopped { get; init; }

    /// <summary>A failure of the program itself, in words for the reader.</summary>
    public Finding? Failure { get; init; }

    /// <summary>The design shown: that of the text, or of the last one without errors.</summary>
    public Station? Station => Reading.Station ?? Result?.Station ?? Stand?.Station;

    /// <summary>State of the structure's figures.</summary>
    public Freshness StandState => StateOf(Stand?.Fingerprint) is var state && state == Freshness.Fresh && Stand!.FirstLook ? (WasStopped ? Freshness.Stopped : Freshness.FirstLook) : state;

    /// <summary>State of the fields' figures.</summary>
    public Freshness FieldState => StateOf(Result?.Fingerprint);

    /// <summary>The checks known: all of the result, those of the site and the structure newer where they are.</summary>
    public ImmutableArray<Check> Checks => [.. Site, .. Computed.Where(c => c.Trade != Trade.Site)];

    private ImmutableArray<Check> Computed =>
        Stand is { } stand && stand.Fingerprint == Fingerprint && Result?.Fingerprint != Fingerprint
            ? [.. stand.Checks, .. Result?.Checks.Where(c => !OfTheStructure(c.Trade)) ?? []]
            : Result?.Checks ?? Stand?.Checks ?? [];

    /// <summary>How a mast stands, newest known.</summary>
    public StandResult? StandOf(int mast) =>
        Stand is { } stand && mast < stand.Stands.Length ? stand.Stands[mast] : Result is { } r && mast < r.Masts.Length ? r.Masts[mast].Stand : null;

    /// <summary>State of the figures of a trade.</summary>
    public Freshness StateOf(Trade trade) => trade == Trade.Site ? (Fingerprint is null ? (Site.IsEmpty ? Freshness.None : Freshness.LastGood) : Freshness.Fresh) : OfTheStructure(trade) ? StandState : FieldState;

    /// <summary>Whether the checks of a trade are known as soon as the structure is.</summary>
    public static bool OfTheStructure(Trade trade) => trade is Trade.Site or Trade.Stand or Trade.Build;

    private Freshness StateOf(string? fingerprint) =>
        fingerprint is not null && fingerprint == Fingerprint ? Freshness.Fresh
        : Fingerprint is null ? (fingerprint is null ? Freshness.None : Freshness.LastGood)
        : WasStopped ? Freshness.Stopped
        : Freshness.Computing;
}
