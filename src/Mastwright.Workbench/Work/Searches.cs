using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis;
using Mastwright.Analysis.Radiate;
using Mastwright.Analysis.Stand.Search;
using Mastwright.Model.Design;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Workbench.Edits;

namespace Mastwright.Workbench.Work;

/// <summary>A long search with a live picture.</summary>
/// <param name="Name">Its word.</param>
/// <param name="Title">What it looks for.</param>
/// <param name="Choices">What may be chosen beside the mast, value and words.</param>
/// <param name="Run">Runs it: station, mast, choice, units.</param>
internal sealed record Search(string Name, string Title, Func<Station, IReadOnlyList<(string Value, string Words)>> Choices, Func<Station, int, string, UnitSystem, StudyTalk, FoundSet> Run);

/// <summary>The searches there are.</summary>
internal static class Searches
{
    private static readonly (string, string)[] Goals =
    [
        ("strand", "smallest strand of each level"), ("tension", "best initial tension"), ("heights", "best heights of the guys"), ("radius", "best distance of the anchors"), ("levels", "fewest guy levels"),
    ];

    /// <summary>All of them, in the order of the job.</summary>
    public static IReadOnlyList<Search> All { get; } =
    [
        new("guys", "Guys: strand, tension, heights, anchors, levels", _ => Goals, Guys),
        new("radials", "Radials: number and length for an amount of wire", s => [.. s.Bands.OrderBy(b => b.FrequencyHz).Select(b => (b.Title, b.Title))], Radials),
    ];

    private static FoundSet Guys(Station station, int mast, string choice, UnitSystem units, StudyTalk talk)
    {
        var goal = Enum.Parse<SearchGoal>(choice, ignoreCase: true);
        var cost = new SearchCost();
        var unit = QuantityFormat.UnitFor(1, QuantityKind.Mass, units);
        var gathered = new Gathered(new FoundSet($"cost, {unit.Symbol}", "capacity left at the check that governs, %", []), talk);
        Found Of(Judgement j) => new(j.Candidate.Words, unit.FromSi(j.Cost), double.IsInfinity(j.Use) ? -100 : Math.Max(-100, 100 * j.Margin), j.Passes, j.Whole, j.Worst is { } w ? $"{w.Title}, {w.GoverningCase}" : "",
            text => Adopt(text, mast, j.Candidate));
        var results = StandSearch.Run(station, mast, [goal], cost, talk.Progress, talk.Cancellation, j => gathered.Add(Of(j), isNow: j.Candidate.Words == "as it is"));
        return gathered.With([.. results.SelectMany(r => r.Remarks), cost.Words,
            "Filled marks passed the whole check of the structure with every wind direction; open ones a first look only. Fields, bands and gap are not judged here: they are as soon as you adopt one."]);
    }

    private static string? Adopt(string text, int mast, Candidate candidate)
    {
        if (candidate.Block is { } block)
        {
            return TextEdits.SetList(text, $"masts[{mast}].guys", [.. block.Split('\n').Skip(1).Select(l => l.Length > 2 ? l[2..] : l)]);
        }

        return candidate.Changes.Aggregate((string?)text, (t, c) => t is null ? null : TextEdits.Set(t, c.Path, c.Value));
    }

    private static FoundSet Radials(Station station, int mast, string choice, UnitSystem units, StudyTalk talk)
    {
        var band = station.Bands.FirstOrDefault(b => b.Title == choice) ?? station.Bands.MinBy(b => b.FrequencyHz)!;
        var unit = QuantityFormat.UnitFor(100, QuantityKind.Length, units);
        var now = station.Masts[mast].Radials;
        var gathered = new Gathered(new FoundSet($"wire in all, {unit.Symbol}", $"efficiency on {band.Title}, %", []) { Mixed = true }, talk);
        var seen = 0;
        talk.Progress.Report(new AnalysisStep($"Solving mast {station.Masts[mast].Name} on {band.Title}", 0));
        var answer = RadialRun.One(station, mast, band, (layout, exact) =>
        {
            var length = Rounded(layout.LengthM, units);
            var isNow = exact && Math.Abs(layout.Count - now.Count) <= 1 && Math.Abs(layout.LengthM - now.LengthM) < 0.02 * now.LengthM;
            gathered.Add(new Found($"{layout.Count} × {length}", unit.FromSi(layout.WireM), 100 * layout.Efficiency, true, exact, exact ? "solved exactly, the mast alone" : "by the quick estimate",
                text => TextEdits.Set(text, $"masts[{mast}].radials.count", layout.Count.ToString(CultureInfo.InvariantCulture)) is { } counted ? TextEdits.Set(counted, $"masts[{mast}].radials.length", length) : null), isNow);
            seen++;
            talk.Progress.Report(new AnalysisStep($"{layout.Count} radials of {length} {(exact ? "solved" : "estimated")}", Math.Min(0.95, seen / 60.0)));
        }, talk.Cancellation);
        return gathered.With(answer is null
            ? ["Nothing could be weighed: the radials are elevated, or the currents could not be solved."]
            : ["The estimate is within about a third of the loss for fifteen or more radials; filled marks lay the present amount of wire otherwise, solved exactly with the mast alone. Compare marks of one kind with each other."]);
    }

    private static string Rounded(double lengthM, UnitSystem units) => units == UnitSystem.Us
        ? (lengthM / 0.3048).ToString("0.#", CultureInfo.InvariantCulture) + " ft" : lengthM.ToString("0.##", CultureInfo.InvariantCulture) + " m";

    // Judgements come from several threads; the page is told at most a few times a second.
    private sealed class Gathered(FoundSet empty, StudyTalk talk)
    {
        private readonly Lock gate = new();
        private FoundSet set = empty;

        public void Add(Found found, bool isNow)
        {
            lock (gate)
            {
                // What was looked at first and then checked in full counts once.
                if (!found.Sure && set.All.Any(f => f.Sure && f.Words == found.Words))
                {
                    return;
                }

                var others = found.Sure ? set.All.RemoveAll(f => !f.Sure && f.Words == found.Words) : set.All;
                set = set with { All = others.Add(found), Now = isNow ? found : set.Now };
                talk.Found(set);
            }
        }

        public FoundSet With(ImmutableArray<string> remarks)
        {
            lock (gate)
            {
                return set with { Remarks = remarks };
            }
        }
    }
}
