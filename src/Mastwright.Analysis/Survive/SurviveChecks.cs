using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Survive;

/// <summary>What of sparks, static, metals and people is cheap enough to stand in every verdict.</summary>
internal static class SurviveChecks
{
    /// <summary>The checks of one mast.</summary>
    public static ImmutableArray<Check> Of(Station station, Mast mast, MastResult result) =>
    [
        .. FenceRun.Burns(station, mast, result),
        .. StaticsRun.DrainChecks(station, mast, result),
        .. CrossingRun.Of(station, mast, result, null).SelectMany(c => c.Answer.Checks),
    ];
}
