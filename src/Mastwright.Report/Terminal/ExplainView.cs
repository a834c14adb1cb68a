using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Spectre.Console;

namespace Mastwright.Report.Terminal;

/// <summary>Answers "why?" for a check or a number: formula, inputs with units, source, range, down to what was given.</summary>
public sealed class ExplainView(IAnsiConsole console, UnitSystem units)
{
    /// <summary>Writes a check with the trails of both sides.</summary>
    public void Write(Check check)
    {
        console.MarkupLineInterpolated($"[bold]{check.Title}[/]  [grey]{check.Id}[/]");
        console.MarkupLineInterpolated($"  {check.Verdict.ToString().ToLowerInvariant()}, {check.Ratio * 100:0.#} % of what is allowed; governed by {check.GoverningCase}");
        if (check.Cure.Length > 0)
        {
            console.MarkupLineInterpolated($"  [bold]What to change:[/] {check.Cure}");
        }

        Write(check.Demand);
        Write(check.Capacity);
        if (check.Caution is { } caution)
        {
            console.MarkupLineInterpolated($"[yellow]Caution:[/] {caution}");
        }
    }

    /// <summary>Writes a number with everything it rests on.</summary>
    public void Write(Trail trail)
    {
        var tree = new Tree(Node(trail)) { Guide = TreeGuide.Line };
        Grow(tree, trail, []);
        console.Write(tree);
        foreach (var warning in trail.RangeWarnings())
        {
            console.MarkupLineInterpolated($"[yellow]Outside the model's range:[/] {warning}");
        }
    }

    private void Grow(IHasTreeNodes parent, Trail trail, HashSet<Trail> shown)
    {
        if (!shown.Add(trail) && trail.Inputs.Length > 0)
        {
            parent.AddNode("[grey]as above[/]");
            return;
        }

        foreach (var input in trail.Inputs)
        {
            Grow(parent.AddNode(Node(input)), input, shown);
        }
    }

    private string Node(Trail trail)
    {
        var lines = new List<string>
        {
            $"[bold]{Markup.Escape(trail.Name)}[/]  {Markup.Escape(trail.Symbol)} = [bold]{Markup.Escape(QuantityFormat.Show(trail, units, 5))}[/]",
        };
        if (trail.Formula.Length > 0)
        {
            lines.Add(Markup.Escape(trail.Formula));
        }

        var kind = trail.Source.Kind == SourceKind.Assumed ? "assumed: " : "source: ";
        lines.Add($"[grey]{kind}{Markup.Escape(trail.Source.ToString())}[/]");
        if (trail.Range.Length > 0)
        {
            lines.Add($"[grey]holds for: {Markup.Escape(trail.Range)}[/]");
        }

        if (trail.Note is { } note)
        {
            lines.Add($"[grey]{Markup.Escape(note)}[/]");
        }

        return string.Join('\n', lines);
    }
}
