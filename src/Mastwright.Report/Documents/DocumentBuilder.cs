using System.Collections.Immutable;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Report.Documents;

/// <summary>Writes a document from top to bottom, showing numbers in the reader's units.</summary>
/// <param name="title">Its title.</param>
/// <param name="subtitle">A line under it.</param>
/// <param name="units">The reader's units.</param>
public sealed class DocumentBuilder(string title, string subtitle, UnitSystem units)
{
    private readonly ImmutableArray<Block>.Builder blocks = ImmutableArray.CreateBuilder<Block>();
    private Verdict verdict = Verdict.Pass;

    /// <summary>The reader's units.</summary>
    public UnitSystem Units => units;

    /// <summary>Adds any block.</summary>
    public DocumentBuilder Add(Block block)
    {
        blocks.Add(block);
        return this;
    }

    /// <summary>Adds a heading of a section.</summary>
    public DocumentBuilder Section(string text) => Add(new Heading(2, text));

    /// <summary>Adds a paragraph.</summary>
    public DocumentBuilder Text(string text) => Add(new Paragraph(text));

    /// <summary>Adds a caution.</summary>
    public DocumentBuilder Caution(string text) => Add(new Note(NoteKind.Caution, text));

    /// <summary>Adds a table; columns whose head begins with # hold numbers and are set right.</summary>
    public DocumentBuilder Table(string caption, string[] columns, IEnumerable<Cell[]> rows) => Add(new DataTable(
        caption, [.. columns.Select(c => c.StartsWith('#') ? new Column(c[1..], Align.Right) : new Column(c))], [.. rows.Select(r => r.ToImmutableArray())]));

    /// <summary>Adds the checks as a table, with the cures of those that do not pass, and counts them into the verdict.</summary>
    public DocumentBuilder Checks(string caption, IEnumerable<Check> checks)
    {
        var all = checks.ToList();
        Table(caption, ["Check", "#Demand", "#Limit", "#Use", "Verdict", "Governed by"], all.Select(c => new Cell[]
        {
            c.Title, Show(c.Demand), Side(c) + Show(c.Capacity), Use(c),
            new(c.Verdict.ToString().ToLowerInvariant(), c.Verdict), c.GoverningCase,
        }));
        foreach (var cure in all.Where(c => c.Verdict is Verdict.Fail or Verdict.Unknown && c.Cure.Length > 0))
        {
            Add(new Note(NoteKind.Remark, $"{cure.Title}: {cure.Cure}"));
        }

        foreach (var check in all)
        {
            Worsen(check.Verdict);
        }

        return this;
    }

    /// <summary>Adds findings as notes.</summary>
    public DocumentBuilder Findings(IEnumerable<Finding> findings)
    {
        foreach (var f in findings)
        {
            Add(new Note(f.Severity == Severity.Note ? NoteKind.Remark : NoteKind.Assumption, Words(f)));
            Worsen(f.Severity == Severity.Error ? Verdict.Fail : Verdict.Pass);
        }

        return this;
    }

    private static string Words(Finding f) =>
        $"{(f.Severity == Severity.Error ? "Error: " : "")}{f.Message}{(f.WayOut is null ? "" : " " + f.WayOut)}{(f.Place is { Line: > 0 } p ? $" ({p.File}, line {p.Line}: {p.Path})" : "")}";

    /// <summary>How much of its capacity a check uses, in per cent.</summary>
    public static string Use(Check check) => double.IsInfinity(check.Ratio) ? "∞" : QuantityFormat.Digits(check.Ratio < 1e-6 ? 0 : 100 * check.Ratio, 3) + " %";

    /// <summary>On which side of its limit a check must stay: a sign and a space.</summary>
    public static string Side(Check check) => check.HasFloor ? "≥ " : "≤ ";

    /// <summary>A trail's value in the reader's units, with a mark when a model underneath is outside its range.</summary>
    public string Show(Trail trail, int digits = 4) => Show(trail.Value, trail.Kind, digits) + (trail.RangeWarnings().Any() ? " (!)" : "");

    /// <summary>A value in the reader's units.</summary>
    public string Show(double valueSi, QuantityKind kind, int digits = 4) => QuantityFormat.Show(IsRounding(valueSi, kind) ? 0 : valueSi, kind, units, digits);

    // A nanonewton on a mast is the rounding of a solver, not a force.
    private static bool IsRounding(double valueSi, QuantityKind kind) =>
        (kind is QuantityKind.Force or QuantityKind.Moment or QuantityKind.FineLength or QuantityKind.Stress) && Math.Abs(valueSi) < 1e-8;

    /// <summary>The document.</summary>
    public Document Build() => new(title, subtitle, blocks.ToImmutable()) { Verdict = verdict };

    private void Worsen(Verdict by)
    {
        static int Rank(Verdict v) => v switch { Verdict.Pass => 0, Verdict.Caution => 1, Verdict.Unknown => 2, _ => 3 };
        verdict = Rank(by) > Rank(verdict) ? by : verdict;
    }
}
