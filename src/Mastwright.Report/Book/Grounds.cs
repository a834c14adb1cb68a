using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Analysis.Results;
using Mastwright.Model.Trails;
using Mastwright.Report.Documents;

namespace Mastwright.Report.Book;

/// <summary>What all rests on: every check with its formula, inputs and sources; assumptions; findings; cautions.</summary>
internal static partial class Grounds
{
    public static void Write(DocumentBuilder book, StationResult result)
    {
        book.Add(new PageBreak()).Add(new Heading(1, "Assumptions"));
        book.Text("The design file is silent on these, so a default was taken. Each is your decision once you build: measure, look up or write down your own.");
        book.Table("", ["Field", "Taken", "Why"], result.Assumptions.GroupBy(a => (Path: ListPlace().Replace(a.Path, "[*]"), Value: a.Shown(result.Station.UnitSystem), a.Why)).Select(same => new Cell[]
        {
            same.Count() == 1 ? same.First().Path : $"{same.Key.Path} ({same.Count()} times)", same.Key.Value, same.Key.Why,
        }));
        book.Add(new Heading(1, "Findings and cautions")).Findings(result.Findings);
        foreach (var caution in result.Cautions)
        {
            book.Caution(caution);
        }

        book.Add(new PageBreak()).Add(new Heading(1, "Appendix: every check with its grounds"));
        book.Text("Demand and capacity of every check, and under them every number they were computed from. Each number is worked out once and has a number of its own; where it serves again, only that is named. Checks worked out by the same formulas are shown in full once, the others with their own numbers. A mark (!) says that a model was used outside its range.");
        var known = new Dictionary<TrailKey, int>();
        foreach (var trade in result.Checks.GroupBy(c => c.Trade).OrderBy(g => g.Key))
        {
            book.Section(TradeName(trade.Key));
            book.Table("", ["Check", "#Demand", "#Limit", "#Use", "Verdict", "Governed by"], trade.Select(c => new Cell[]
            {
                c.Title + "\n" + c.Id, book.Show(c.Demand), DocumentBuilder.Side(c) + book.Show(c.Capacity), DocumentBuilder.Use(c), new(c.Verdict.ToString().ToLowerInvariant(), c.Verdict), c.GoverningCase,
            }));
            foreach (var kind in trade.GroupBy(c => StationResult.KindOf(c.Id)))
            {
                Trails(book, [.. kind], known);
            }
        }
    }

    // What makes two numbers the same to a reader.
    private sealed record TrailKey(string Name, double Value, string Formula, string Source, string? OutOfRange, string Inputs)
    {
        public static TrailKey Of(Trail trail) => new(trail.Name, trail.Value, trail.Formula, trail.Source.ToString(), trail.OutOfRange, string.Join(';', trail.Inputs.Select(i => string.Create(CultureInfo.InvariantCulture, $"{i.Name}={i.Value:R}"))));
    }

    private static void Trails(DocumentBuilder book, IReadOnlyList<Check> checks, Dictionary<TrailKey, int> known)
    {
        // Checks worked out by the same formulas differ only in their numbers: the first is shown in full, the others by those that are new.
        var alike = checks.GroupBy(c => Shape(c.Demand) + "|" + Shape(c.Capacity)).Select(g => g.ToList()).ToList();
        foreach (var group in alike)
        {
            var rows = new List<Cell[]>();
            Add(book, rows, known, group[0].Demand, 0);
            Add(book, rows, known, group[0].Capacity, 0);
            book.Table($"{group[0].Title} ({group[0].Id})", ["#No.", "Quantity", "Sign", "#Value", "Formula", "Source and range"], rows);
            if (group.Count > 1)
            {
                book.Table("By the same formulas", ["Check", "Its own numbers; those not named are as above"], group.Skip(1).Select(c => new Cell[] { c.Id, Own(book, c, known) }));
            }
        }
    }

    private static void Add(DocumentBuilder book, List<Cell[]> rows, Dictionary<TrailKey, int> known, Trail trail, int depth)
    {
        var name = new string('·', Math.Min(depth, 6)) + (depth > 0 ? " " : "") + trail.Name;
        if (known.TryGetValue(TrailKey.Of(trail), out var number))
        {
            rows.Add(["", name, trail.Symbol, book.Show(trail, 5), $"see no. {number.ToString(CultureInfo.InvariantCulture)}", ""]);
            return;
        }

        known.Add(TrailKey.Of(trail), known.Count + 1);
        var source = trail.Source.Kind == SourceKind.Assumed ? "assumed: " + trail.Source : trail.Source.ToString();
        var range = trail.OutOfRange is { } outside ? "\n(!) " + outside : trail.Range.Length > 0 ? "\nholds for " + trail.Range : "";
        rows.Add([known.Count.ToString(CultureInfo.InvariantCulture), name, trail.Symbol, book.Show(trail, 5), trail.Formula, source + range]);
        foreach (var input in trail.Inputs)
        {
            Add(book, rows, known, input, depth + 1);
        }
    }

    private static string Own(DocumentBuilder book, Check check, Dictionary<TrailKey, int> known)
    {
        var words = new List<string>();
        var seen = new HashSet<TrailKey>();
        void Add(Trail trail)
        {
            if (known.ContainsKey(TrailKey.Of(trail)) || !seen.Add(TrailKey.Of(trail)))
            {
                return;
            }

            words.Add($"{(trail.Symbol.Length > 0 ? trail.Symbol : trail.Name)} = {book.Show(trail)}" + (trail.OutOfRange is { } outside ? $" (!) {outside}" : ""));
            foreach (var input in trail.Inputs)
            {
                Add(input);
            }
        }

        Add(check.Demand);
        Add(check.Capacity);
        return words.Count > 0 ? string.Join("; ", words) : "all as above";
    }

    private static string Shape(Trail trail) => $"{trail.Symbol}:{trail.Formula}:{trail.Source}[{string.Join(',', trail.Inputs.Select(Shape))}]";

    private static string TradeName(Trade trade) => trade switch
    {
        Trade.Site => "Site",
        Trade.Stand => "It stands",
        Trade.Radiate => "It radiates",
        Trade.Feed => "It is fed",
        Trade.Survive => "It survives",
        Trade.Build => "It is built",
        _ => "It is kept",
    };

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex ListPlace();
}
