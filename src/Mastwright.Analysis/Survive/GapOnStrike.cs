using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Protection.Gaps;
using Mastwright.Protection.Lightning;

namespace Mastwright.Analysis.Survive;

/// <summary>The set gap on one stroke.</summary>
/// <param name="Stroke">The stroke.</param>
/// <param name="FiringV">What it may need to fire, densest air, set too wide.</param>
/// <param name="Ratio">That over the static spark voltage.</param>
/// <param name="FiresAfterS">When it fires; null when the front ends before.</param>
/// <param name="LateV">What one time in twenty is exceeded, for a gap that waits for its first electron; null when it does not wait.</param>
public sealed record StrokeFiring(string Stroke, Trail FiringV, double Ratio, double? FiresAfterS, double? LateV);

/// <summary>The base gap of a mast with the window of the standard front and that of the strokes the station is held against.</summary>
/// <param name="Request">What was asked, standard front.</param>
/// <param name="Standard">The answer: what stands in the verdict.</param>
/// <param name="Fronts">What each stroke builds up across the open gap; empty when no strike can be followed.</param>
/// <param name="OnStrike">The answer with the worst stroke's volt-time curve in place of the standard front; null without fronts.</param>
/// <param name="SpacingM">The spacing looked at: set by the builder, else proposed, else the smallest that holds off; null without any.</param>
/// <param name="Firings">The gap of that spacing on every stroke.</param>
public sealed record GapReport(
    GapRequest Request, GapAnswer Standard, ImmutableArray<StrikeFront> Fronts, GapAnswer? OnStrike, double? SpacingM, ImmutableArray<StrokeFiring> Firings);

/// <summary>Feeds the strike's spark-over back into the gap window.</summary>
public static class GapOnStrike
{
    // An exponential wait with this many means behind it is over nineteen times in twenty: −ln(0.05).
    private static readonly double LateMeans = -Math.Log(0.05);

    /// <summary>The gap of one mast.</summary>
    /// <param name="station">The station.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="result">Its bands and gap.</param>
    /// <param name="groups">The groups it is driven in.</param>
    public static GapReport Of(Station station, Mast mast, MastResult result, ImmutableArray<GroupResult> groups)
    {
        var request = GapRun.Request(station, mast, result.Bands, GapRun.PeaksInGroups(station, mast, groups));
        var spacing = GapRun.SpacingM(station, result.Gap);
        var fronts = Fronts(station, mast, result);
        if (spacing is not { } s || fronts.IsEmpty)
        {
            return new(request, result.Gap, fronts, null, spacing, []);
        }

        var onStrike = GapWindow.Set(request with { Fronts = fronts });
        return new(request, result.Gap, fronts, onStrike, s, [.. fronts.Select(f => Firing(request, f, s))]);
    }

    private static StrokeFiring Firing(GapRequest request, StrikeFront front, double spacingM)
    {
        var volts = GapWindow.FiringOn(request, front, spacingM);
        var spark = volts.Inputs[0].Value;
        var late = request.StatisticalLagS <= 0 ? null : front.Fires(spark, request.FormativeLagS + (LateMeans * request.StatisticalLagS))?.Volts;
        return new(front.Name, volts, volts.Value / spark, front.Fires(spark, request.FormativeLagS + request.StatisticalLagS)?.TimeS, late);
    }

    private static ImmutableArray<StrikeFront> Fronts(Station station, Mast mast, MastResult result)
    {
        var strokes = StrikeRun.Strokes(station);
        var first = StrikeRun.Scenario(station, mast, result, strokes[0]);
        if (first.Gap is null || !first.Faults().IsEmpty)
        {
            return [];
        }

        var earth = new RadialEarth(first.Earth, Protection.Earthing.SoilIonisation.CriticalFieldCigre);
        return [.. strokes.Select(s => StrikeSimulation.FrontAtGap(first with { Stroke = s }, earth)).OfType<StrikeFront>()];
    }
}
