using System.Text.RegularExpressions;
using Mastwright.Analysis;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;

namespace Mastwright.Workbench.Edits;

/// <summary>Completion and help for the text, from the one description of the file format. Works on text that is still being typed.</summary>
public static partial class SchemaHelp
{
    /// <summary>One thing that may stand here.</summary>
    /// <param name="Label">What is written.</param>
    /// <param name="Detail">A word about it.</param>
    /// <param name="Info">What it means.</param>
    /// <param name="Apply">What is put into the text.</param>
    public sealed record Option(string Label, string Detail, string Info, string Apply);

    /// <summary>What may stand at a place.</summary>
    /// <param name="From">Column, from 0, where the word being typed begins.</param>
    /// <param name="Options">What may stand there.</param>
    public sealed record Offer(int From, IReadOnlyList<Option> Options);

    /// <summary>What may stand at a place; lines count from 1, columns from 0.</summary>
    public static Offer OfferAt(string text, int line, int column)
    {
        var (shape, before) = BlockAt(text, line, column);
        var start = before.Length - WordStart().Match(before).Value.TrimStart().Length;
        if (shape is null)
        {
            return new Offer(start, []);
        }

        if (KeyBefore().Match(before) is { Success: true } key && shape.Fields.FirstOrDefault(f => f.Field.Key == key.Groups["key"].Value) is { } field)
        {
            return new Offer(before.Length - key.Groups["value"].Length, Values(field));
        }

        return new Offer(start, [.. shape.Fields.Select(f => new Option(f.Field.Key, f.Field.Required ? "needed" : "may be left out", Meaning(f), f.Field.Key + ": "))]);
    }

    /// <summary>What the field on a line means; empty when there is none.</summary>
    public static string WordsAt(string text, int line, int column)
    {
        var lines = text.Split('\n');
        if (line < 1 || line > lines.Length)
        {
            return "";
        }

        foreach (Match m in AnyKey().Matches(lines[line - 1]))
        {
            if (column >= m.Groups["key"].Index && column <= m.Index + m.Length)
            {
                var (shape, _) = BlockAt(text, line, m.Groups["key"].Index);
                return shape?.Fields.FirstOrDefault(f => f.Field.Key == m.Groups["key"].Value) is { } field ? Meaning(field) : "";
            }
        }

        return "";
    }

    // The block a place lies in: the keys of the lines above that stand further left, and the keys of open braces on its own line.
    private static (RecordShape? Shape, string Before) BlockAt(string text, int line, int column)
    {
        var lines = text.Split('\n');
        if (line < 1 || line > lines.Length)
        {
            return (null, "");
        }

        var own = lines[line - 1];
        var before = own[..Math.Clamp(column, 0, own.Length)];
        var indent = Indent(before.Trim().Length == 0 ? before : own);
        var path = new List<string>();
        for (var i = line - 2; i >= 0 && indent > 0; i--)
        {
            if (LineKey().Match(lines[i]) is { Success: true } above && Indent(lines[i]) < indent && above.Groups["rest"].Value.Trim() is "" or ['#', ..])
            {
                path.Insert(0, above.Groups["key"].Value);
                indent = lines[i].Length - lines[i].TrimStart().Length;
            }
        }

        foreach (var open in OpenKeys(before))
        {
            path.Add(open);
        }

        var shape = (RecordShape?)RecordShape.Root;
        foreach (var key in path)
        {
            shape = shape!.Fields.FirstOrDefault(f => f.Field.Key == key) is { Form: FieldForm.Record } field ? RecordShape.Of(field.ItemType) : null;
            if (shape is null)
            {
                break;
            }
        }

        return (shape, before);
    }

    private static IEnumerable<string> OpenKeys(string before)
    {
        var keys = new Stack<string>();
        for (var i = 0; i < before.Length; i++)
        {
            if (before[i] == '{')
            {
                keys.Push(KeyOfBrace().Match(before[..i]) is { Success: true } m ? m.Groups["key"].Value : "");
            }
            else if (before[i] == '}' && keys.Count > 0)
            {
                keys.Pop();
            }
        }

        return keys.Reverse().Where(k => k.Length > 0);
    }

    private static IReadOnlyList<Option> Values(FieldShape field) => field switch
    {
        { Form: FieldForm.Word } => [.. field.Words.Select(w => new Option(w.Word, "", w.Meaning, w.Word))],
        { Form: FieldForm.YesNo } => [new Option("yes", "", "", "yes"), new Option("no", "", "", "no")],
        { CatalogueList: { } list } => [.. (CatalogueNames.Of(list) ?? []).Select(n => new Option(n, list, "", n))],
        { Form: FieldForm.Quantity } => [.. KindWords.Example(field.Quantity?.Kind ?? QuantityKind.Count).Split(" or ").Select(e => new Option(e, "for example", Meaning(field), e))],
        _ => [],
    };

    private static string Meaning(FieldShape field)
    {
        var limits = field.Quantity is { } q ? $"\nAllowed: {QuantityFormat.Show(q.Min, q.Kind, UnitSystem.Metric, 3)} to {QuantityFormat.Show(q.Max, q.Kind, UnitSystem.Metric, 3)}." : "";
        var words = field.Form == FieldForm.Word ? "\nOne of: " + string.Join(", ", field.Words.Select(w => w.Word)) + "." : "";
        var left = field.Field.Default is { Length: > 0 } d ? $"\nLeft out: {d}{(field.Field.Why is { } why ? $" ({why})" : "")}." : "";
        return field.Field.Meaning + limits + words + left;
    }

    // A dash counts as indentation: the key behind it is the item's.
    private static int Indent(string line) => line.Length - line.TrimStart(' ', '-').Length;

    [GeneratedRegex(@"^[ \-]*(?<key>[\p{L}\p{N}\-]+):(?<rest>.*)$")]
    private static partial Regex LineKey();

    [GeneratedRegex(@"(?<key>[\p{L}][\p{L}\p{N}\-]*):")]
    private static partial Regex AnyKey();

    [GeneratedRegex(@"(?<key>[\p{L}][\p{L}\p{N}\-]*):\s*\[?\s*$")]
    private static partial Regex KeyOfBrace();

    [GeneratedRegex(@"(?<key>[\p{L}][\p{L}\p{N}\-]*):\s+(?<value>[^,{}\[\]:]*)$")]
    private static partial Regex KeyBefore();

    [GeneratedRegex(@"[\p{L}\p{N}\-]*$")]
    private static partial Regex WordStart();
}
