using System.Collections.Immutable;
using System.Text.Json.Serialization;
using Mastwright.Model.Trails;

namespace Mastwright.Report.Documents;

/// <summary>A report as content without looks: what the terminal, a web page and a printed page show alike.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Subtitle">A line under the title, e.g. the station's name.</param>
/// <param name="Blocks">Its content, in order.</param>
public sealed record Document(string Title, string Subtitle, ImmutableArray<Block> Blocks)
{
    /// <summary>The worst verdict shown in it; pass when it shows none.</summary>
    public Verdict Verdict { get; init; } = Verdict.Pass;
}

/// <summary>A piece of a document.</summary>
public abstract record Block;

/// <summary>A heading.</summary>
/// <param name="Level">1 for a chapter, 2 for a section, 3 below.</param>
/// <param name="Text">Its words.</param>
public sealed record Heading(int Level, string Text) : Block;

/// <summary>Running text.</summary>
/// <param name="Text">One paragraph.</param>
public sealed record Paragraph(string Text) : Block;

/// <summary>What a note is for.</summary>
public enum NoteKind
{
    /// <summary>Worth knowing.</summary>
    Remark,

    /// <summary>An assumption or a model outside its range.</summary>
    Assumption,

    /// <summary>Something that can hurt someone.</summary>
    Caution,
}

/// <summary>A note set apart from the text.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Text">Its words.</param>
public sealed record Note(NoteKind Kind, string Text) : Block;

/// <summary>Steps to do one after the other, each with a box to tick on paper.</summary>
/// <param name="Items">The steps.</param>
public sealed record Steps(ImmutableArray<string> Items) : Block;

/// <summary>How a column is set.</summary>
public enum Align
{
    /// <summary>Words.</summary>
    Left,

    /// <summary>Numbers.</summary>
    Right,
}

/// <summary>A column of a table.</summary>
/// <param name="Header">Its head.</param>
/// <param name="Align">How it is set.</param>
public sealed record Column(string Header, Align Align = Align.Left);

/// <summary>A cell of a table.</summary>
/// <param name="Text">What it shows.</param>
/// <param name="Verdict">A verdict it states, shown by colour beside the word; null for none.</param>
public sealed record Cell(string Text, Verdict? Verdict = null)
{
    /// <summary>A cell of plain text.</summary>
    public static implicit operator Cell(string text) => new(text);
}

/// <summary>A table.</summary>
/// <param name="Caption">What it shows; empty for none.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">Its rows, each with a cell for every column.</param>
public sealed record DataTable(string Caption, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<Cell>> Rows) : Block;

/// <summary>A drawing or plot, composed once as SVG and shown as it is on a page and as vectors on paper.</summary>
/// <param name="Caption">What it shows, readable on its own: the terminal shows only this.</param>
/// <param name="Svg">A complete SVG document with a viewBox, sizes in millimetres, readable in grey.</param>
public sealed record Figure(string Caption, string Svg) : Block
{
    /// <summary>The numbers behind it; null where a drawing has none to show.</summary>
    [JsonIgnore]
    public FigureData? Data { get; init; }
}

/// <summary>A new page on paper.</summary>
public sealed record PageBreak : Block;

/// <summary>A list of the chapters and sections that follow, with pages on paper and links on a page.</summary>
public sealed record Contents : Block;
