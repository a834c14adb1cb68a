using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Analysis;
using Mastwright.Model.Design;
using Mastwright.Model.Schema;
using Mastwright.Model.Trails;
using Mastwright.Model.Units;
using Mastwright.Workbench.Desks;

namespace Mastwright.Workbench.Edits;

/// <summary>One field of the design as a form shows it.</summary>
/// <param name="Path">Its dotted path.</param>
/// <param name="Shape">What it is.</param>
/// <param name="Written">The value as the file has it; null when the file is silent.</param>
/// <param name="Taken">What is taken when the file is silent.</param>
/// <param name="Problem">What is wrong with it; null when nothing is.</param>
public sealed record DesignField(string Path, FieldShape Shape, string? Written, string Taken, Finding? Problem)
{
    /// <summary>The values there are to choose from; empty when it is written freely.</summary>
    public ImmutableArray<(string Value, string Meaning)> Choices => Shape switch
    {
        { IsList: true } => [],
        { Form: FieldForm.Word } => [.. Shape.Words.Select(w => (w.Word, w.Meaning))],
        { Form: FieldForm.YesNo } => [("yes", "yes"), ("no", "no")],
        { CatalogueList: { } list } => [.. (CatalogueNames.Of(list) ?? []).Select(n => (n, n))],
        _ => [],
    };

    /// <summary>What is allowed, in the reader's units; empty when everything is.</summary>
    public string Allowed(UnitSystem units) => Shape.Quantity is { } q && Shape.Form == FieldForm.Quantity
        ? $"{QuantityFormat.Show(q.Min, q.Kind, units, 3)} to {QuantityFormat.Show(q.Max, q.Kind, units, 3)}" : "";
}

/// <summary>A block of fields, and the blocks in it.</summary>
/// <param name="Path">Its dotted path.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Fields">Its own fields.</param>
/// <param name="Blocks">The blocks below.</param>
/// <param name="InList">Whether it is an item of a list and may be taken out.</param>
public sealed record DesignBlock(string Path, string Title, ImmutableArray<DesignField> Fields, ImmutableArray<DesignBlock> Blocks, bool InList)
{
    /// <summary>The fields of the design below a path, from the last design without errors; null when there is no such block.</summary>
    public static DesignBlock? Of(Sheet sheet, string path)
    {
        if (sheet.Station is not { } station || TextOutline.Of(sheet.Text) is not { } text)
        {
            return null;
        }

        object? value = station;
        var shape = RecordShape.Root;
        OutlinePiece? piece = text;
        var title = "";
        foreach (var step in path.Split('.'))
        {
            var bracket = step.IndexOf('[', StringComparison.Ordinal);
            var key = bracket < 0 ? step : step[..bracket];
            if (shape.Fields.FirstOrDefault(f => f.Field.Key == key) is not { Form: FieldForm.Record } field)
            {
                return null;
            }

            value = field.Property.GetValue(value);
            piece = piece is { Kind: PieceKind.Block } ? piece[key] : null;
            title = Words.Label(key);
            if (bracket >= 0)
            {
                var index = int.Parse(step[(bracket + 1)..^1], CultureInfo.InvariantCulture);
                var items = value is IEnumerable list ? list.Cast<object>().ToList() : [];
                value = index < items.Count ? items[index] : null;
                piece = piece is { Kind: PieceKind.List } && index < piece.Items.Count ? piece.Items[index] : null;
            }

            shape = RecordShape.Of(field.ItemType);
        }

        return value is null ? null : Block(sheet, path, title, shape, value, piece, false);
    }

    private static DesignBlock Block(Sheet sheet, string path, string title, RecordShape shape, object value, OutlinePiece? piece, bool inList)
    {
        var fields = ImmutableArray.CreateBuilder<DesignField>();
        var blocks = ImmutableArray.CreateBuilder<DesignBlock>();
        foreach (var field in shape.Fields)
        {
            var at = $"{path}.{field.Field.Key}";
            var inner = piece is { Kind: PieceKind.Block } ? piece[field.Field.Key] : null;
            var held = field.Property.GetValue(value);
            if (field.Form != FieldForm.Record)
            {
                fields.Add(new DesignField(at, field, inner is null ? null : Unquoted(sheet.Text[inner.Start..inner.End]), field.Field.Default ?? "",
                    sheet.Reading.Findings.FirstOrDefault(f => f.Place?.Path == at || f.Place?.Path.StartsWith(at + "[", StringComparison.Ordinal) == true)));
            }
            else if (field.IsList)
            {
                var items = ((IEnumerable)held!).Cast<object>().ToList();
                blocks.AddRange(items.Select((item, i) => Block(sheet, $"{at}[{i}]", TitleOf(field, item, i), RecordShape.Of(field.ItemType), item,
                    inner is { Kind: PieceKind.List } && i < inner.Items.Count ? inner.Items[i] : null, items.Count > 1)));
            }
            else if (held is not null)
            {
                blocks.Add(Block(sheet, at, Words.Label(field.Field.Key), RecordShape.Of(field.ItemType), held, inner, false));
            }
        }

        return new DesignBlock(path, title, fields.ToImmutable(), blocks.ToImmutable(), inList);
    }

    private static string TitleOf(FieldShape field, object item, int index)
    {
        var one = field.Field.Key switch
        {
            "guys" => "Guy level",
            "masts" => "Mast",
            _ => Words.Label(field.Field.Key.TrimEnd('s')),
        };
        return item switch
        {
            Anchor a => $"{one} {a.Name}",
            Mast m => $"{one} {m.Name}",
            WeakPart p => $"{one} {p.Name}",
            _ => $"{one} {index + 1}",
        };
    }

    private static string Unquoted(string written) => written.Length >= 2 && written[0] is '\'' or '"' && written[^1] == written[0]
        ? written[1..^1].Replace("''", "'", StringComparison.Ordinal) : written;
}
