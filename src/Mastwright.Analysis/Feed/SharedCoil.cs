using System.Collections.Immutable;
using Mastwright.Circuits.Coils;
using Mastwright.Circuits.Switching;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Feed;

/// <summary>One coil that serves several bands with taps.</summary>
/// <param name="Title">Where it sits in the networks.</param>
/// <param name="Winding">The winding, for the band that needs most of it; null when none can be wound, with the reason among the findings.</param>
/// <param name="Taps">Turns from one end for each band, the rest left open.</param>
public sealed record SharedCoil(string Title, CoilProposal? Winding, ImmutableArray<(string Band, double InductanceH, double? Turns)> Taps)
{
    /// <summary>What to beware of: turns left open ring near their own resonance, and what the winding is short of.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    internal static ImmutableArray<SharedCoil> Of(Station station, IReadOnlyList<BandFeed> bands, SwitchPlan plan)
    {
        var shared = ImmutableArray.CreateBuilder<SharedCoil>();
        foreach (var part in plan.Shared.Where(s => s.ByTaps))
        {
            var largest = bands.First(b => b.Band.Title == part.Uses[0].Band);
            var users = part.Uses.Select(u => bands.First(b => b.Band.Title == u.Band)).ToList();
            var workshop = FeedProblem.Workshop(station, largest.Band);

            // The winding carries the heaviest current of all its bands, and stands the hardest modulation of any.
            var current = users.Max(b => b.Chosen!.Stresses.First(s => s.Section.Title == part.Title).Current);
            var wish = new CoilWish(part.Uses[0].Value, largest.Band.FrequencyHz, current, workshop.CoilDiameterM, workshop.CoilLengthM) { DutyRatio = largest.Band.Duty, PeakFactor = users.Max(b => b.Band.ModulationPeak), LeastQ = station.Feed.CoilQ };
            var (coils, notes) = CoilDesigner.Design(wish, 1);
            if (coils.IsEmpty)
            {
                shared.Add(new SharedCoil(part.Title, null, [.. part.Uses.Select(u => (u.Band, u.Value, (double?)null))]) { Findings = notes });
                continue;
            }

            var taps = part.Uses.Zip(part.TapsOn(coils[0].Report.Coil)).Select(u => (u.First.Band, u.First.Value, u.Second.Turns)).ToImmutableArray();
            var highest = users.Max(b => b.Band.FrequencyHz);
            shared.Add(new SharedCoil(part.Title, coils[0], taps)
            {
                Findings = highest > coils[0].Report.SelfResonance.Value / 2
                    ? notes.Add(new Finding("shared-coil-resonance", Severity.Warning, FormattableString.Invariant($"The whole {part.Title} resonates by itself at {coils[0].Report.SelfResonance.Value / 1e6:0.#} MHz: on bands above half of that the open turns take power and voltage."), WayOut: "Give the high bands a small coil of their own, or short the unused turns (and allow for the lower inductance)."))
                    : notes,
            });
        }

        return shared.ToImmutable();
    }
}
