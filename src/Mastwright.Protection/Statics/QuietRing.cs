using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;

namespace Mastwright.Protection.Statics;

/// <summary>One ring that keeps a mast quiet.</summary>
/// <param name="Ring">The ring.</param>
/// <param name="OnsetFieldVPerM">Atmospheric field at which the first place sprays with it, in V/m.</param>
public sealed record QuietRingChoice(CoronaRing Ring, double OnsetFieldVPerM);

/// <summary>The answer of the search.</summary>
/// <param name="AlreadyQuiet">True when no ring is needed.</param>
/// <param name="Smallest">The smallest ring found; null when none is needed or none is enough.</param>
/// <param name="Choices">The smallest ring for every tube that can do it, smallest ring first.</param>
/// <param name="Findings">Why there is none, and what to change.</param>
public sealed record QuietRingAnswer(bool AlreadyQuiet, QuietRingChoice? Smallest, ImmutableArray<QuietRingChoice> Choices, ImmutableArray<Finding> Findings);

/// <summary>Searches the smallest ring (diameter and tube) that keeps the mast top quiet in a chosen field.</summary>
public static class QuietRing
{
    /// <summary>Tube diameters tried unless the caller names others, in metres: common trade sizes.</summary>
    public static ImmutableArray<double> UsualTubesM { get; } = [0.010, 0.015, 0.022, 0.028, 0.035, 0.042, 0.054, 0.076];

    private const double LargestRingM = 3.0;

    /// <summary>
    /// Searches, for each tube, the smallest ring diameter with which no place sprays. The ring lies level with the highest point.
    /// </summary>
    /// <param name="mast">The mast; a ring it already has is set aside.</param>
    /// <param name="air">The thinnest air.</param>
    /// <param name="roughness">Roughness factor.</param>
    /// <param name="fieldVPerM">The atmospheric field up to which it shall be quiet, in V/m.</param>
    /// <param name="tubesM">Tube diameters to try in metres; null takes <see cref="UsualTubesM"/>.</param>
    /// <param name="cancellation">Cancels between solutions.</param>
    public static QuietRingAnswer Search(
        MastOutline mast, AirState air, double roughness, double fieldVPerM, ImmutableArray<double>? tubesM = null, CancellationToken cancellation = default) =>
        Search(mast, fieldVPerM, m => Onset(m, air, roughness, cancellation), mast.RadiusM, tubesM ?? UsualTubesM);

    /// <summary>The same for a top whose onset another solution gives, e.g. one with leg ends and whiskers.</summary>
    /// <param name="mast">The outline; its ring is replaced.</param>
    /// <param name="fieldVPerM">Atmospheric field up to which it shall be quiet, in V/m.</param>
    /// <param name="onset">Least atmospheric field at onset of an outline with or without ring, in V/m.</param>
    /// <param name="clearM">Distance from the axis that the ring's inside must clear, in metres.</param>
    /// <param name="tubesM">Tube diameters to try, in metres.</param>
    public static QuietRingAnswer Search(MastOutline mast, double fieldVPerM, Func<MastOutline, double> onset, double clearM, ImmutableArray<double> tubesM)
    {
        var bare = mast with { Ring = null };
        if (bare.Faults() is { IsEmpty: false } faults)
            return new(false, null, [], faults);
        if (onset(bare) >= fieldVPerM)
            return new(true, null, [], []);

        List<QuietRingChoice> choices = [];
        foreach (var tube in tubesM)
        {
            if (ForTube(bare, tube, onset, clearM, fieldVPerM) is { } choice)
                choices.Add(choice);
        }

        var sorted = choices.OrderBy(c => c.Ring.RingDiameterM).ThenBy(c => c.Ring.TubeDiameterM).ToImmutableArray();
        ImmutableArray<Finding> none = sorted.IsEmpty
            ? [new("no-quiet-ring", Severity.Warning, "No ring up to 3 m with these tubes keeps the top quiet in this field.",
                WayOut: "Take a thicker tube, a shorter or blunter rod, a lower mast, or accept corona in the worst weather.")]
            : [];
        return new(false, sorted.IsEmpty ? null : sorted[0], sorted, none);
    }

    private static QuietRingChoice? ForTube(MastOutline mast, double tube, Func<MastOutline, double> onset, double clearM, double target)
    {
        MastOutline With(double diameter) => mast with { Ring = new(diameter, tube, mast.HighestM) };
        var low = (2 * Math.Max(mast.RadiusM, clearM)) + (1.5 * tube);
        // The onset field rises with the ring up to a point, then its shielding of the middle fails: the first size on a widening scan that is quiet brackets the answer.
        var previous = low;
        for (var diameter = low; diameter <= LargestRingM; diameter *= 1.35)
        {
            var at = onset(With(diameter));
            if (at >= target)
                return Refine(With, previous, diameter, at, target, onset);
            previous = diameter;
        }

        return null;
    }

    private static QuietRingChoice Refine(
        Func<double, MastOutline> with, double noisy, double quiet, double found, double target, Func<MastOutline, double> onset)
    {
        while (quiet - noisy > 0.02 * quiet)
        {
            var mid = 0.5 * (noisy + quiet);
            var at = onset(with(mid));
            if (at >= target)
                (quiet, found) = (mid, at);
            else
                noisy = mid;
        }

        return new(with(quiet).Ring!, found);
    }

    private static double Onset(MastOutline mast, AirState air, double roughness, CancellationToken cancellation) =>
        StaticStudy.Solve(mast, air, roughness, [], 0.7, cancellation)!.Places[0].OnsetField.Value;
}
