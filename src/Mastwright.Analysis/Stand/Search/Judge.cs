using System.Collections.Concurrent;
using System.Collections.Immutable;
using Mastwright.Analysis.Results;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>Judges candidates with the very checks that a station is held to; what was judged once is remembered.</summary>
internal sealed class Judge(Station station, SearchCost cost, Action<string> tell, CancellationToken cancellation, Action<Judgement>? judged = null)
{
    /// <summary>Wind directions of the first look; a multiple of three, so that each guy of a three-way mast is met alike.</summary>
    public const int FirstLook = 6;

    private readonly ConcurrentDictionary<(string Words, bool Whole), Judgement> known = new();

    /// <summary>How many candidates were judged, first looks included.</summary>
    public int Judged => known.Count;

    /// <summary>A first look: few directions, no screens.</summary>
    public Judgement Look(Candidate candidate) => Of(candidate, whole: false);

    /// <summary>The whole of it, as a check of the station does.</summary>
    public Judgement Confirm(Candidate candidate) => Of(candidate, whole: true);

    private Judgement Of(Candidate candidate, bool whole)
    {
        cancellation.ThrowIfCancellationRequested();
        if (known.TryGetValue((candidate.Words, whole), out var before))
        {
            return before;
        }

        tell($"{candidate.Words} ({Judged + 1} judged)");
        var answer = StandRun.Of(station, candidate.Mast, cancellation, whole ? LoadCases.Directions : FirstLook, whole);
        var judgement = From(candidate, answer, cost.Of(station, candidate.Mast, answer.AnchorPullsN), whole);
        known[(candidate.Words, whole)] = judgement;
        judged?.Invoke(judgement);
        return judgement;
    }

    /// <summary>Draws the judgement from the checks.</summary>
    internal static Judgement From(Candidate candidate, StandAnswer answer, double cost, bool whole)
    {
        // Screens only caution, and what cannot be said (an anchor nobody rated) says nothing for or against a candidate.
        // Nor do ranges of a method: they are no strength that could be used up.
        var telling = answer.Checks.Where(c => c.Verdict != Verdict.Unknown && !(c.Verdict == Verdict.Caution && c.Ratio >= 1) && StationResult.KindOf(c.Id) is not ("stand.mast.gust-range" or "stand.mast.free-top")).ToList();
        var settings = telling.Where(c => StationResult.KindOf(c.Id) is "stand.guy.aeolian" or "stand.guy.slackness").ToList();
        var worst = telling.Except(settings).MaxBy(c => c.Ratio);
        var failing = telling.Where(c => c.Verdict == Verdict.Fail).ToImmutableArray();
        var stands = answer.Result.Cases.All(c => c.Stable);
        return new Judgement(candidate, stands || worst is null ? worst?.Ratio ?? 0 : Math.Max(worst.Ratio, 1 + 1e-9), worst, failing, cost, whole)
        {
            Setting = settings.MaxBy(c => c.Ratio),
        };
    }
}
