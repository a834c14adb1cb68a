using System.Globalization;
using System.Text;
using Mastwright.Model.Design;
using Mastwright.Model.Units;

namespace Mastwright.Analysis.Stand.Search;

/// <summary>
/// The fewest guy levels: the top level stays where it is, the others are spread evenly below it; each number of levels is
/// tried with the strand of the design and up to three sizes more.
/// </summary>
internal sealed class LevelSearch(Mast mast, UnitSystem units, Judge judge)
{
    private const int MoreSizes = 3;

    public SearchResult Run(Judgement now)
    {
        var looked = new List<Judgement>();
        var confirmed = new List<Judgement>();
        for (var count = 1; count <= mast.Guys.Length + 1 && confirmed.Count == 0; count++)
        {
            foreach (var more in Enumerable.Range(0, MoreSizes + 1))
            {
                if (Pick(count, more) is not { } candidate)
                {
                    continue;
                }

                var look = judge.Look(candidate);
                looked.Add(look);
                if (look.Passes && judge.Confirm(candidate) is { Passes: true } whole)
                {
                    confirmed.Add(whole);
                    break;
                }
            }
        }

        return new SearchResult(SearchGoal.Levels, now, confirmed.FirstOrDefault(), SearchResult.FrontOf(confirmed.Append(now)), [.. looked], judge.Judged,
            ["Levels are spread evenly below the top one. Fewer levels mean that one lost guy is worse: look at the guy-lost checks, and search for heights and strand again from here. Insulators and fittings of a new level are those of its neighbour: look at them too."]);
    }

    private Candidate? Pick(int count, int more)
    {
        var top = mast.Guys[^1];
        var foot = mast.Base.HeightM;
        var levels = new List<GuyLevel>();
        for (var k = 1; k <= count; k++)
        {
            var height = k == count ? top.HeightM : Written.Round(foot + ((top.HeightM - foot) * k / count), units);
            var like = mast.Guys.MinBy(g => Math.Abs(g.HeightM - height))!;
            var sizes = StrandSearch.Sizes(like.Strand);
            var size = sizes.IndexOf(like.Strand) + more;
            if (size >= sizes.Length || height - foot < 1)
            {
                return null;
            }

            levels.Add((Fittings.For(like, sizes[size]) ?? like with { Strand = sizes[size] }) with { HeightM = height, InsulatorsAtM = [.. like.InsulatorsAtM.Where(x => x < height)] });
        }

        return new Candidate($"{count} {(count == 1 ? "level" : "levels")}: " + string.Join(", ", levels.Select(l => $"{l.Strand} at {Written.Length(l.HeightM, units)}")), mast with { Guys = [.. levels] }, [])
        {
            Block = Block(levels),
        };
    }

    private string Block(List<GuyLevel> levels)
    {
        var text = new StringBuilder("guys:");
        foreach (var level in levels)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n  - height: {Written.Length(level.HeightM, units)}\n    strand: {level.Strand}\n    initial-tension: ");
            text.Append(level.InitialTension.ForceN is { } force ? force.ToString("0.#", CultureInfo.InvariantCulture) + " N" : Written.Percent(level.InitialTension.ShareOfStrength!.Value));
            if (!level.Anchors.IsEmpty)
            {
                text.Append(CultureInfo.InvariantCulture, $"\n    anchors: [{string.Join(", ", level.Anchors)}]");
            }

            if (level.AttachmentRadiusM > 0)
            {
                text.Append(CultureInfo.InvariantCulture, $"\n    attachment-radius: {1000 * level.AttachmentRadiusM:0.#} mm");
            }

            if (!level.InsulatorsAtM.IsEmpty)
            {
                text.Append(CultureInfo.InvariantCulture, $"\n    insulators-at: [{string.Join(", ", level.InsulatorsAtM.Select(x => x.ToString("0.###", CultureInfo.InvariantCulture) + " m"))}]");
            }

            text.Append(CultureInfo.InvariantCulture, $"\n    insulator: {level.Insulator}");
            if (level.Hardware is { } hardware)
            {
                text.Append(CultureInfo.InvariantCulture, $"\n    hardware: {HardwareWords.Of(hardware)}");
            }
        }

        return text.ToString();
    }
}
