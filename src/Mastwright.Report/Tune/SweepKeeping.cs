using Mastwright.Journal.Entries;
using Mastwright.Model.Trails;
using NodaTime;

namespace Mastwright.Report.Tune;

/// <summary>A sweep as the journal keeps it.</summary>
public static class SweepKeeping
{
    private const int FewestPoints = 3;

    /// <summary>The entry, or the finding that says why the sweep cannot be kept.</summary>
    /// <param name="answer">The sweep, moved to the feed terminal.</param>
    /// <param name="at">When it was taken.</param>
    public static (SweepEntry? Entry, Finding? Problem) Entry(SweepAnswer answer, OffsetDateTime at) => answer.AtBase is { Points.Length: >= FewestPoints } sweep
        ? (new SweepEntry(
            Guid.CreateVersion7(), at, answer.Request.Mast.Name, "", "", Weather.NotNoted, "base", sweep.ReferenceOhm,
            [.. sweep.Points.Select(p => new SweepSample(p.FrequencyHz, p.ImpedanceOhm.Real, p.ImpedanceOhm.Imaginary))],
            Path.GetFileName(answer.Request.Measured.Name), answer.Request.Measured.Text), null)
        : (null, new Finding("sweep-not-kept", Severity.Error, "Only a sweep with phase and some points can be kept.", new Place(answer.Request.Measured.Name, 0, 0, ""), WayOut: "Export R and X or S11 with phase."));
}
