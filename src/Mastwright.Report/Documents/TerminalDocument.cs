using System.Text.RegularExpressions;
using Mastwright.Model.Trails;
using Spectre.Console;

namespace Mastwright.Report.Documents;

/// <summary>Shows a document in the terminal.</summary>
public static partial class TerminalDocument
{
    /// <summary>Writes it.</summary>
    public static void Write(IAnsiConsole console, Document document)
    {
        console.WriteLine();
        console.MarkupLineInterpolated($"[bold]{document.Title}[/]");
        if (document.Subtitle.Length > 0)
        {
            console.MarkupLineInterpolated($"[grey]{document.Subtitle}[/]");
        }

        console.WriteLine();
        foreach (var block in document.Blocks)
        {
            Write(console, block);
        }
    }

    private static void Write(IAnsiConsole console, Block block)
    {
        switch (block)
        {
            case Heading h:
                console.MarkupLineInterpolated($"[bold]{h.Text}[/]");
                break;
            case Paragraph p:
                console.MarkupLineInterpolated($"{p.Text}");
                console.WriteLine();
                break;
            case Note n:
                var (word, colour) = n.Kind switch { NoteKind.Caution => ("Caution", "yellow"), NoteKind.Assumption => ("Note", "yellow"), _ => ("Remark", "grey") };
                console.MarkupLineInterpolated($"[{colour}]{word}:[/] {n.Text}");
                break;
            case Steps s:
                for (var i = 0; i < s.Items.Length; i++)
                {
                    console.MarkupLineInterpolated($"  {i + 1,2}. {s.Items[i]}");
                }

                console.WriteLine();
                break;
            case DataTable t:
                Write(console, t);
                break;
            case Figure f:
                console.MarkupLineInterpolated($"[grey](drawing) {f.Caption}[/]");
                break;
        }
    }

    private static void Write(IAnsiConsole console, DataTable table)
    {
        var shown = new Table { Border = TableBorder.Simple };
        if (table.Caption.Length > 0)
        {
            shown.Title = new TableTitle($"[bold]{Markup.Escape(table.Caption)}[/]");
        }

        foreach (var column in table.Columns)
        {
            shown.AddColumn(new TableColumn(Markup.Escape(column.Header)) { Alignment = column.Align == Align.Right ? Justify.Right : Justify.Left, Padding = new Padding(0, 0, 1, 0) });
        }

        foreach (var row in table.Rows)
        {
            shown.AddRow([.. row.Select(c => c.Verdict is { } v ? $"[{Colour(v)}]{Markup.Escape(c.Text)}[/]" : Markup.Escape(Folded().Replace(c.Text, " ")))]);
        }

        console.Write(shown);
        console.WriteLine();
    }

    private static string Colour(Verdict verdict) => verdict switch
    {
        Verdict.Pass => "green",
        Verdict.Fail => "red",
        _ => "yellow",
    };

    [GeneratedRegex(@"\s*\n\s*")]
    private static partial Regex Folded();
}
