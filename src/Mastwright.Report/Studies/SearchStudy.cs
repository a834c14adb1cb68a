using System.Collections.Immutable;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Studies;

/// <summary>Smallest passing strand, best tension, guy heights and anchor distance, fewest levels: what the design could be instead.</summary>
public static class SearchStudy
{
    private const string Caution =
        "A search knows only what its checks know. What it offers has no more margin than shown; local codes, the makers’ data and a licensed engineer come first. Change nothing on a standing mast without temporary guys.";

    private const int MostShown = 12;

    private const string Everything = "all";

    private static readonly ImmutableDictionary<string, SearchGoal> Goals = Enum.GetValues<SearchGoal>().ToImmutableDictionary(g => g.ToString().ToLowerInvariant());

    /// <summary>The study.</summary>
    public static Study Study { get; } = new("search", "A better mast from real parts: smallest strand, best tension, guy heights, anchor distance, fewest levels, all of them together", Make)
    {
        Choice = new StudyChoice("for", "What to look for", [Everything, .. Enum.GetValues<SearchGoal>().Select(g => g.ToString().ToLowerInvariant())]),
        Long = true,
    };

    private static Document Make(StudyInput input)
    {
        var document = new DocumentBuilder("Search for a better mast", input.Station.Name, input.Station.UnitSystem);
        ImmutableArray<SearchGoal> goals = input.Chosen is { } word && word != Everything ? [Goals[word]] : [.. Enum.GetValues<SearchGoal>()];
        var cost = new SearchCost();
        document.Text("Each line is searched from the design as it is, not one on top of the other. Every design offered passed all structural checks with every wind direction; fields, bands and gap are not judged here, so check the changed file.");
        document.Text(cost.Words);
        foreach (var (mast, index) in input.Station.Masts.Select((m, i) => (m, i)))
        {
            document.Section($"Mast {mast.Name}");
            var results = StandSearch.Run(input.Station, index, goals, cost, input.Progress, input.Cancellation);
            var now = results[0].Now;
            document.Text(now.Passes
                ? $"As it is, the mast passes: {Margin(now)} of capacity left at the check that governs ({now.Worst?.Title.ToLowerInvariant()}), cost {Cost(document, now)}."
                : $"As it is, {now.Failing.Length} structural checks fail; the worst is “{now.Worst?.Title}”, {now.Worst?.GoverningCase}.");
            foreach (var result in results)
            {
                Write(document, input, index, result);
            }
        }

        return document.Caution(Caution).Build();
    }

    private static void Write(DocumentBuilder document, StudyInput input, int mast, SearchResult result)
    {
        document.Add(new Heading(3, Title(result.Goal)));
        if (result.Best is not { } best)
        {
            var near = result.Tried.Where(t => !double.IsInfinity(t.Use)).MinBy(t => t.Use);
            document.Text(near?.Worst is { } worst
                ? $"No candidate passes. The nearest is “{near.Candidate.Words}”; there “{worst.Title}” reaches {StudyWords.Percent(near.Use)} of its capacity. {worst.Cure}"
                : "No candidate passes.");
        }
        else
        {
            document.Text($"{Capital(best.Candidate.Words)}: {Margin(best)} of capacity left, cost {Cost(document, best)}; governed by {best.Worst?.Title.ToLowerInvariant()} ({best.Worst?.GoverningCase}).");
            Change(document, input, mast, best.Candidate);
        }

        if (!result.Front.IsEmpty)
        {
            if (result.Front.Length > 2)
            {
                document.Add(FrontPlot.Of(document.Units, result));
            }

            document.Table("Cost against margin: passing designs that no other beats in both", ["#No.", "Design", "#Cost", "#Margin", "Governed by"], result.Front.Select((j, i) => Row(document, j).Prepend((Cell)$"{i + 1}").ToArray()));
        }

        document.Table(result.Tried.Length > MostShown ? $"First look (few wind directions): the {MostShown} best of {result.Tried.Length}" : "First look (few wind directions)", ["Design", "#Cost", "#Use", "Verdict", "Governed by"], result.Tried.OrderBy(t => t.Use).Take(MostShown).OrderBy(t => t.Cost).Select(t => new Cell[]
        {
            t.Candidate.Words, Cost(document, t), StudyWords.Percent(t.Use), t.Passes ? new Cell("pass", Verdict.Pass) : new Cell("fail", Verdict.Fail), t.Worst?.Title ?? "",
        }));
        foreach (var remark in result.Remarks)
        {
            document.Add(new Note(NoteKind.Remark, remark));
        }
    }

    private static void Change(DocumentBuilder document, StudyInput input, int mast, Candidate candidate)
    {
        if (candidate.Block is { } block)
        {
            document.Text($"Replace the block of the mast’s guys{Line(input, $"masts[{mast}].guys")} by:");
            document.Table("", ["Block"], block.Split('\n').Select(l => new Cell[] { l.Replace(' ', '\u00a0') }));
        }
        else if (candidate.Changes.IsEmpty)
        {
            document.Text("Nothing to change: the design is this already.");
        }
        else
        {
            document.Table("Lines to change in the design file", ["Where", "Line", "Write"], candidate.Changes.Select(c => new Cell[]
            {
                c.Path, input.Reading.Places.TryGetValue(c.Path, out var place) ? $"line {place.Line}" : "add", $"{c.Key}: {c.Value}",
            }));
        }
    }

    private static string Line(StudyInput input, string path) => input.Reading.Places.TryGetValue(path, out var place) ? $" (line {place.Line})" : "";

    private static Cell[] Row(DocumentBuilder document, Judgement j) => [j.Candidate.Words, Cost(document, j), Margin(j), j.Worst?.Title ?? ""];

    private static string Cost(DocumentBuilder document, Judgement j) => document.Show(j.Cost, QuantityKind.Mass, 3);

    private static string Margin(Judgement j) => StudyWords.Percent(j.Margin);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Title(SearchGoal goal) => goal switch
    {
        SearchGoal.Strand => "Smallest passing strand of each level",
        SearchGoal.Tension => "Best initial tension",
        SearchGoal.Heights => "Best heights of the guys",
        SearchGoal.Radius => "Best distance of the anchors",
        SearchGoal.Joint => "Everything together",
        _ => "Fewest guy levels",
    };
}
