using System.Globalization;
using System.Net;
using System.Text;

namespace Mastwright.Report.Drawings;

/// <summary>Where a text is held.</summary>
public enum Hold
{
    /// <summary>At its start.</summary>
    Start,

    /// <summary>At its middle.</summary>
    Middle,

    /// <summary>At its end.</summary>
    End,
}

/// <summary>How a line is drawn.</summary>
/// <param name="WidthMm">Its width, mm.</param>
/// <param name="Dash">Its dashes, e.g. <c>"2 1"</c> in mm; empty for an unbroken line.</param>
/// <param name="Colour">Its colour; grey steps keep apart on any printer.</param>
public sealed record Pen(double WidthMm, string Dash = "", string Colour = "#000")
{
    /// <summary>An outline.</summary>
    public static Pen Bold { get; } = new(0.6);

    /// <summary>An ordinary line.</summary>
    public static Pen Plain { get; } = new(0.3);

    /// <summary>A help line.</summary>
    public static Pen Fine { get; } = new(0.15, Colour: "#666");

    /// <summary>A faint line of a grid.</summary>
    public static Pen Faint { get; } = new(0.12, Colour: "#bbb");
}

/// <summary>
/// A drawing sheet in millimetres, x to the right and y down, that becomes an SVG text. Nothing in it depends on
/// colour: kinds of line differ by dash and width.
/// </summary>
/// <param name="widthMm">Width of the sheet, mm.</param>
/// <param name="heightMm">Height of the sheet, mm.</param>
/// <param name="title">What it shows, for readers that cannot see it.</param>
public sealed class Drawing(double widthMm, double heightMm, string title)
{
    /// <summary>Height of ordinary lettering, mm.</summary>
    public const double Letter = 2.6;

    private readonly StringBuilder body = new();

    /// <summary>Width of the sheet, mm.</summary>
    public double WidthMm => widthMm;

    /// <summary>Height of the sheet, mm.</summary>
    public double HeightMm => heightMm;

    /// <summary>A straight line.</summary>
    public Drawing Line(double x1, double y1, double x2, double y2, Pen pen) =>
        Add($"<line x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\"{Stroke(pen)}/>");

    /// <summary>A circle, filled when a fill is named.</summary>
    public Drawing Circle(double x, double y, double radius, Pen pen, string fill = "none") =>
        Add($"<circle cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\" fill=\"{fill}\"{Stroke(pen)}/>");

    /// <summary>A rectangle, filled when a fill is named.</summary>
    public Drawing Box(double x, double y, double width, double height, Pen pen, string fill = "none") =>
        Add($"<rect x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(width)}\" height=\"{N(height)}\" fill=\"{fill}\"{Stroke(pen)}/>");

    /// <summary>A line through points, closed and filled when a fill is named.</summary>
    public Drawing Path(IEnumerable<(double X, double Y)> points, Pen pen, string fill = "none") =>
        Add($"<{(fill == "none" ? "polyline" : "polygon")} points=\"{string.Join(' ', points.Select(p => N(p.X) + "," + N(p.Y)))}\" fill=\"{fill}\"{Stroke(pen)} stroke-linejoin=\"round\"/>");

    /// <summary>An arc of a circle between two angles, clockwise from the right as y runs down, degrees.</summary>
    public Drawing Arc(double x, double y, double radius, double fromDeg, double toDeg, Pen pen) =>
        Path(Enumerable.Range(0, 25).Select(i => (fromDeg + ((toDeg - fromDeg) * i / 24)) * Math.PI / 180).Select(a => (x + (radius * Math.Cos(a)), y + (radius * Math.Sin(a)))), pen);

    /// <summary>Lettering with its baseline at a place, on a white ground so that lines do not run through it.</summary>
    public Drawing Text(double x, double y, string text, double size = Letter, Hold hold = Hold.Start, bool bold = false, double turnDeg = 0, bool ground = true)
    {
        var turn = turnDeg == 0 ? "" : $" transform=\"rotate({N(turnDeg)} {N(x)} {N(y)})\"";
        var anchor = hold switch { Hold.Middle => " text-anchor=\"middle\"", Hold.End => " text-anchor=\"end\"", _ => "" };
        var weight = bold ? " font-weight=\"bold\"" : "";
        if (ground)
        {
            var width = TextWidth(text, size);
            var left = hold switch { Hold.Middle => x - (width / 2), Hold.End => x - width, _ => x };
            Add($"<rect x=\"{N(left - 0.3)}\" y=\"{N(y - (size * 0.82))}\" width=\"{N(width + 0.6)}\" height=\"{N(size * 1.04)}\" fill=\"#fff\"{turn}/>");
        }

        return Add($"<text x=\"{N(x)}\" y=\"{N(y)}\" font-size=\"{N(size)}\" fill=\"#000\"{anchor}{weight}{turn}>{WebUtility.HtmlEncode(text)}</text>");
    }

    /// <summary>A dimension between two points, moved off them sideways by an offset: help lines, arrows and the figure.</summary>
    public Drawing Dimension(double x1, double y1, double x2, double y2, double offsetMm, string text, double size = Letter)
    {
        var length = double.Hypot(x2 - x1, y2 - y1);
        if (length < 1e-6)
        {
            return this;
        }

        var (ux, uy) = ((x2 - x1) / length, (y2 - y1) / length);
        var (nx, ny) = (-uy, ux);
        var (ax, ay, bx, by) = (x1 + (offsetMm * nx), y1 + (offsetMm * ny), x2 + (offsetMm * nx), y2 + (offsetMm * ny));
        var over = 1.2 * Math.Sign(offsetMm);
        Line(x1, y1, ax + (over * nx), ay + (over * ny), Pen.Fine);
        Line(x2, y2, bx + (over * nx), by + (over * ny), Pen.Fine);
        var (wide, turn) = (TextWidth(text, size), Math.Atan2(uy, ux) * 180 / Math.PI);
        turn = turn is > 90.01 or <= -89.99 ? turn + (turn > 0 ? -180 : 180) : turn;
        var outside = length < 5;
        Line(ax, ay, bx, by, Pen.Fine);
        Head(ax, ay, outside ? ux : -ux, outside ? uy : -uy);
        Head(bx, by, outside ? -ux : ux, outside ? -uy : uy);

        // The lettering sits in the line; where the line is too short for it, it goes out sideways.
        var (mx, my) = ((ax + bx) / 2, (ay + by) / 2);
        var rad = turn * Math.PI / 180;
        if (wide + 1 < length)
        {
            return Text(mx - (Math.Sin(rad) * -size * 0.35), my + (Math.Cos(rad) * size * 0.35), text, size, Hold.Middle, turnDeg: turn);
        }

        var side = Math.Sign(offsetMm) >= 0 ? 1 : -1;
        return Math.Abs(uy) > 0.7
            ? Text(mx + (side * nx * 1.4), my + (size * 0.35), text, size, side * nx > 0 ? Hold.Start : Hold.End)
            : Text(mx, my + (side * ny * (ny * side > 0 ? size + 0.8 : 1.2)), text, size, Hold.Middle);
    }

    /// <summary>An arrow head at a point, pointing along a direction.</summary>
    public Drawing Head(double x, double y, double ux, double uy, double size = 1.8) =>
        Path([(x, y), (x - (size * ux) - (size * 0.22 * -uy), y - (size * uy) - (size * 0.22 * ux)), (x - (size * ux) + (size * 0.22 * -uy), y - (size * uy) + (size * 0.22 * ux))], new Pen(0.05), "#000");

    /// <summary>A line from a thing to its name.</summary>
    public Drawing Leader(double x, double y, double textX, double textY, string text, double size = Letter)
    {
        Line(x, y, textX, textY - (size * 0.3), Pen.Fine);
        Circle(x, y, 0.45, new Pen(0.05), "#000");
        return Text(textX + (textX >= x ? 0.8 : -0.8), textY, text, size, textX >= x ? Hold.Start : Hold.End);
    }

    /// <summary>North, up.</summary>
    public Drawing North(double x, double y)
    {
        Path([(x, y - 7), (x - 2.2, y + 1), (x, y - 0.8)], new Pen(0.2), "#000");
        Path([(x, y - 7), (x + 2.2, y + 1), (x, y - 0.8)], new Pen(0.2), "#fff");
        return Text(x, y - 7.8, "N", 3.2, Hold.Middle, bold: true);
    }

    /// <summary>A rough width of lettering, mm: the mean of the face used here.</summary>
    public static double TextWidth(string text, double size) => text.Sum(c => c switch
    {
        ' ' or '.' or ',' or ':' or ';' or 'i' or 'l' or 'I' or 'j' or '\'' or '|' => 0.32,
        'm' or 'w' or 'M' or 'W' or '%' => 0.95,
        >= 'A' and <= 'Z' => 0.69,
        _ => 0.61,
    }) * size;

    /// <summary>The SVG text.</summary>
    public string ToSvg() => string.Create(CultureInfo.InvariantCulture,
        $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{N(widthMm)}mm\" height=\"{N(heightMm)}mm\" viewBox=\"0 0 {N(widthMm)} {N(heightMm)}\" role=\"img\" font-family=\"DejaVu Sans, Verdana, sans-serif\"><title>{WebUtility.HtmlEncode(title)}</title><rect width=\"{N(widthMm)}\" height=\"{N(heightMm)}\" fill=\"#fff\"/>\n{body}</svg>");

    private Drawing Add(string element)
    {
        body.Append(element).Append('\n');
        return this;
    }

    private static string Stroke(Pen pen) => $" stroke=\"{pen.Colour}\" stroke-width=\"{N(pen.WidthMm)}\"" + (pen.Dash.Length > 0 ? $" stroke-dasharray=\"{pen.Dash}\"" : "");

    private static string N(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);
}
