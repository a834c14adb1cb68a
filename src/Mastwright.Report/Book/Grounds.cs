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
        book.Table("", ["Field", "Taken", "Why"], result.Assumptions.GroupBy(a => (Path: ListPlace().Replace(a.Path, "[*]"), a.Value, a.Why)).Select(same => new Cell[]
        {
            same.Count() == 1 ? same.First().Path : $"{same.Key.Path} ({same.Count()} times)", same.Key.Value, same.Key.Why,
        }));
        book.Add(new Heading(1, "Findings and cautions")).Findings(result.Findings);
        foreach (var caution in result.Cautions)
        {
            book.Caution(caution);
        }

        book.Add(new PageBreak()).Add(new Heading(1, "Appendix: every check with its grounds"));
        book.Text("Demand and capacity of every check. Under each stand the numbers it was computed from, once; a mark (!) says that a model was used outside its range.");
        foreach (var trade in result.Checks.GroupBy(c => c.Trade).OrderBy(g => g.Key))
        {
            book.Section(TradeName(trade.Key));
            book.Table("", ["Check", "#Demand", "#Limit", "#Use", "Verdict", "Governed by"], trade.Select(c => new Cell[]
            {
                c.Title + "\n" + c.Id, book.Show(c.Demand), DocumentBuilder.Side(c) + book.Show(c.Capacity), DocumentBuilder.Use(c), new(c.Verdict.ToString().ToLowerInvariant(), c.Verdict), c.GoverningCase,
            }));

            // One trail of each kind of check, the hardest: the others differ only in their numbers.
            foreach (var check in trade.GroupBy(c => StationResult.KindOf(c.Id)).Select(g => g.MaxBy(c => c.Ratio)!))
            {
                Trails(book, check);
            }
        }
    }

    private static void Trails(DocumentBuilder book, Check check)
    {
        var rows = new List<Cell[]>();
        var seen = new HashSet<Trail>();
        void Add(Trail trail, int depth)
        {
            if (!seen.Add(trail))
            {
                return;
            }

            var source = trail.Source.Kind == SourceKind.Assumed ? "assumed: " + trail.Source : trail.Source.ToString();
            var range = trail.OutOfRange is { } outside ? "\n(!) " + outside : trail.Range.Length > 0 ? "\nholds for " + trail.Range : "";
            rows.Add([new string('·', Math.Min(depth, 6)) + (depth > 0 ? " " : "") + trail.Name, trail.Symbol, book.Show(trail, 5), trail.Formula, source + range]);
            foreach (var input in trail.Inputs)
            {
                Add(input, depth + 1);
            }
        }

        Add(check.Demand, 0);
        Add(check.Capacity, 0);
        book.Table($"{check.Title} ({check.Id})", ["Quantity", "Sign", "#Value", "Formula", "Source and range"], rows);
    }

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
