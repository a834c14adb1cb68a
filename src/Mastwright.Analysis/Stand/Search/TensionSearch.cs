using Mastwright.Model.Design;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// The initial tension, one share of breaking strength for all levels, that leaves the most margin: stiff enough against
/// buckling and sway, no more on base, guys and anchors than needed.
/// </summary>
internal sealed class TensionSearch(Mast mast, string path, Judge judge)
{
    /// <summary>Shares tried: the usual 7 to 15 % (TIA-222, from memory), half a per cent apart.</summary>
    public static IReadOnlyList<double> Shares { get; } = [.. Enumerable.Range(0, 17).Select(i => 0.07 + (0.005 * i))];

    public SearchResult Run(Judgement now)
    {
        // Whole per cents first, then the halves beside the best of them.
        var coarse = Shares.Where((_, i) => i % 2 == 0).Select(s => (Share: s, Judgement: judge.Look(Pick(s)))).ToList();
        var near = coarse.MinBy(c => c.Judgement.Use).Share;
        var all = coarse.Concat(Shares.Where((s, i) => i % 2 == 1 && Math.Abs(s - near) < 0.006).Select(s => (Share: s, Judgement: judge.Look(Pick(s))))).OrderBy(t => t.Share).ToList();
        var looked = all.Select(t => t.Judgement).ToList();
        var confirmed = looked.Where(j => j.Passes).Select(j => judge.Confirm(j.Candidate).WithSetting()).Where(j => j.Passes).ToList();
        return new SearchResult(SearchGoal.Tension, now, confirmed.MinBy(j => j.Use), SearchResult.FrontOf(confirmed.Append(now.WithSetting())), [.. looked], judge.Judged,
            ["The margin counts how far the tension itself lies inside its usual range. Every level gets the same share of its own strand’s breaking strength. Between 8 and 15 % guys are neither slack nor drawn so tight that they sing; common practice, no source."]);
    }

    private Candidate Pick(double share)
    {
        var rounded = Math.Round(share, 4);
        return new Candidate(
            $"initial tension {Written.Percent(rounded)}", mast with { Guys = [.. mast.Guys.Select(g => g with { InitialTension = InitialTension.Share(rounded) })] },
            [.. mast.Guys.Select((g, l) => (g, l)).Where(x => x.g.InitialTension.ShareOfStrength is not { } s || Math.Abs(s - rounded) > 1e-9)
                .Select(x => new DesignChange($"{path}.guys[{x.l}].initial-tension", "initial-tension", Written.Percent(rounded)))]);
    }
}
