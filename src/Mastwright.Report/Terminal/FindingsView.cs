using Mastwright.Model.Trails;
using Spectre.Console;

namespace Mastwright.Report.Terminal;

/// <summary>Shows findings: where, what, the value, what is allowed, the way out.</summary>
public static class FindingsView
{
    /// <summary>Writes every finding, one block each.</summary>
    public static void Write(IAnsiConsole console, IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            var (word, colour) = finding.Severity switch
            {
                Severity.Error => ("error", "red"),
                Severity.Warning => ("warning", "yellow"),
                _ => ("note", "grey"),
            };
            var place = finding.Place is { } p ? $"{p}  " : "";
            console.MarkupLineInterpolated($"[{colour}]{word}[/]  {place}[bold]{finding.Message}[/]");
            Line(console, "field", finding.Place?.Path);
            Line(console, "value", finding.Value);
            Line(console, "allowed", finding.Allowed);
            Line(console, "way out", finding.WayOut);
        }
    }

    private static void Line(IAnsiConsole console, string label, string? text)
    {
        if (!string.IsNullOrEmpty(text))
        {
            console.MarkupLineInterpolated($"  [grey]{label,-8}[/] {text}");
        }
    }
}
